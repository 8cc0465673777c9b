"""The wet well: its volume, the pump tested by drawdown, its cycle, its storage.

The families here are of volumes and flows; cycles are in well_cycles.py, hours and storage
in well_hours.py, what is to be judged in
judged_wells.py and rises.py. `WET_WELL` has the whole chapter, in the order of teaching.
"""

from ..family import Level
from .judged_wells import DRAWDOWN_CAUSE, DRAWDOWN_CHECK, STARTS_LIMIT
from .rises import LEAKING_VALVE, RISE_SOURCE
from .scenes_wells import leaking_well
from .well_cycles import CYCLES
from .well_family import PER_DEPTH, numeric
from .well_hours import HOURS, STORAGE

__all__ = ["WET_WELL"]

RECTANGULAR = "The wet well of {station} is {well_length} by {well_width} inside."
ROUND = "The wet well of {station} is round, {well_diameter} across inside."

VOLUMES = (
    numeric(
        "well_volume",
        "WV",
        "The volume in a wet well",
        "well_volume",
        Level(
            ("well_length", "well_width", "water_depth"),
            f"{RECTANGULAR} The water is {{water_depth}} deep. What volume is in it?",
        ),
        Level(
            ("well_diameter", "water_depth"),
            f"{ROUND} The water is {{water_depth}} deep. What volume is in it?",
        ),
        Level(
            ("well_diameter", "depth_to_floor", "depth_to_water"),
            f"{ROUND} Measured from outside, it is {{depth_to_floor}} from the rim to the floor "
            "and {depth_to_water} to the water. What volume is in it?",
        ),
    ),
    numeric(
        "volume_per_depth",
        "WD",
        "The volume of one unit of depth",
        "volume_per_depth",
        Level(
            ("well_length", "well_width"),
            f"{RECTANGULAR} What volume does each unit of depth hold, in {{unit}}?",
        ),
        Level(
            ("well_diameter",),
            "{person} finds the round wet well of {station} to be {well_diameter} across inside. "
            "What volume does each unit of depth hold, in {unit}?",
        ),
        Level(
            ("working_volume", "on_level", "off_level"),
            "The drawings of {station} give {working_volume} between floats. The pump-on level "
            "is {on_level} and the pump-off level {off_level}. "
            "What volume does each unit of depth hold, in {unit}?",
        ),
    ),
)

FLOWS = (
    numeric(
        "drawdown_flow",
        "WR",
        "A pump's flow by drawdown",
        "flow",
        Level(
            ("drawdown_rate", "inflow"),
            "While {place} runs, the wet well loses {drawdown_rate}, by how fast its level falls. "
            "The inflow is {inflow} meanwhile. What flow does the pump move?",
        ),
        Level(
            ("volume_per_depth", "drawdown_read", "drawdown_time", "inflow"),
            f"{PER_DEPTH} While one pump runs, its level takes {{drawdown_time}} to fall "
            "{drawdown_read}. The inflow is {inflow} meanwhile. What flow does the pump move?",
        ),
        Level(
            ("well_diameter", "drawdown_read", "drawdown_time", "rise_read", "rise_time"),
            f"{ROUND} While one pump runs, its level takes {{drawdown_time}} to fall "
            "{drawdown_read}. With all pumps off it takes {rise_time} to rise {rise_read}. "
            "What flow does the pump move?",
        ),
    ),
    numeric(
        "inflow",
        "WI",
        "Inflow by the rise of the level",
        "inflow",
        Level(
            ("closed_rise_volume", "closed_rise_time"),
            "The pumps of {station} are locked out and their discharge valves closed. The wet "
            "well takes in {closed_rise_volume} in {closed_rise_time}. What is the inflow?",
        ),
        Level(
            ("volume_per_depth", "closed_rise_read", "closed_rise_time"),
            f"{PER_DEPTH} With its pumps locked out and their discharge valves closed, its level "
            "takes {closed_rise_time} to rise {closed_rise_read}. What is the inflow?",
        ),
        Level(
            ("well_diameter", "closed_rise_read", "closed_rise_time"),
            f"{ROUND} With its pumps locked out and their discharge valves closed, its level "
            "takes {closed_rise_time} to rise {closed_rise_read}. What is the inflow?",
        ),
    ),
    numeric(
        "leakage",
        "WL",
        "Leakage back through a check valve",
        "leakage",
        Level(
            ("rise_rate", "inflow"),
            "With the pumps of {station} off, the wet well takes in {rise_rate}. With their "
            "discharge valves closed as well it takes in {inflow}. "
            "What leaks back through the check valves?",
        ),
        Level(
            ("volume_per_depth", "rise_read", "rise_time", "inflow"),
            f"{PER_DEPTH} With its pumps off its level takes {{rise_time}} to rise {{rise_read}}. "
            "With their discharge valves closed as well it takes in {inflow}. "
            "What leaks back through the check valves?",
        ),
        Level(
            ("volume_per_depth", "rise_read", "rise_time", "closed_rise_read", "closed_rise_time"),
            f"{PER_DEPTH} With its pumps off its level takes {{rise_time}} to rise {{rise_read}}. "
            "With their discharge valves closed as well it takes {closed_rise_time} to rise "
            "{closed_rise_read}. What leaks back through the check valves?",
        ),
        scene=leaking_well,
    ),
)

WET_WELL = (
    *VOLUMES,
    *FLOWS,
    DRAWDOWN_CHECK,
    DRAWDOWN_CAUSE,
    RISE_SOURCE,
    LEAKING_VALVE,
    *CYCLES,
    STARTS_LIMIT,
    *HOURS,
    *STORAGE,
)
