"""The wet well: its volume, the pump tested by drawdown, its cycle, its storage.

The families here are of volumes and flows; cycles are in well_cycles.py, hours and storage
in well_hours.py, what is to be judged in
judged_wells.py and rises.py. `WET_WELL` has the whole chapter, in the order of teaching.
"""

from solver.engine.family import Level

from .judged import DRAWDOWN_CAUSE, DRAWDOWN_CHECK, STARTS_LIMIT
from .judged_rises import LEAKING_VALVE, RISE_SOURCE
from .kinds import FALLS, LOSES, PER_DEPTH, numeric
from .problems_cycles import CYCLES
from .problems_hours import HOURS, STORAGE
from .scenes import leaking_well

__all__ = ["WET_WELL"]

RECTANGULAR = "The wet well of {station} measures {well_length} by {well_width} inside."
ROUND = "The wet well of {station} is round and {well_diameter} across inside."

VOLUMES = (
    numeric(
        "well_volume",
        "WV",
        "The volume of water in a wet well",
        "well_volume",
        Level(
            ("well_length", "well_width", "water_depth"),
            f"{RECTANGULAR} The water is {{water_depth}} deep. How much water is in it?",
        ),
        Level(
            ("well_diameter", "water_depth"),
            f"{ROUND} The water is {{water_depth}} deep. How much water is in it?",
        ),
        Level(
            ("well_diameter", "depth_to_floor", "depth_to_water"),
            f"{ROUND} Measured from outside, it is {{depth_to_floor}} from the rim to the floor "
            "and {depth_to_water} to the water. How much water is in it?",
        ),
    ),
    numeric(
        "volume_per_depth",
        "WD",
        "Volume per foot or meter of depth",
        "volume_per_depth",
        Level(
            ("well_length", "well_width"),
            f"{RECTANGULAR} How much water does each foot or meter of depth hold, in {{unit}}?",
        ),
        Level(
            ("well_diameter",),
            "{person} measures the round wet well of {station}. It is {well_diameter} across inside. "
            "How much water does each foot or meter of depth hold, in {unit}?",
        ),
        Level(
            ("working_volume", "on_level", "off_level"),
            "The drawings of {station} show {working_volume} between floats. The pump-on level is "
            "{on_level} and the pump-off level is {off_level}. "
            "How much water does each foot or meter of depth hold, in {unit}?",
        ),
    ),
)

FLOWS = (
    numeric(
        "drawdown_flow",
        "WR",
        "A pump's flow from a drawdown test",
        "flow",
        Level(
            ("drawdown_rate", "inflow"),
            f"{LOSES} Inflow is {{inflow}} during the test. What is the pump's flow?",
        ),
        Level(
            ("volume_per_depth", "drawdown_read", "drawdown_time", "inflow"),
            f"{PER_DEPTH} {FALLS} Inflow is {{inflow}} during the test. What is the pump's flow?",
        ),
        Level(
            ("well_diameter", "drawdown_read", "drawdown_time", "rise_read", "rise_time"),
            f"{ROUND} {FALLS} With all pumps off, a rise of {{rise_read}} takes {{rise_time}}. "
            "What is the pump's flow?",
        ),
    ),
    numeric(
        "inflow",
        "WI",
        "Inflow from a rising level",
        "inflow",
        Level(
            ("closed_rise_volume", "closed_rise_time"),
            "The pumps at {station} are locked out and their discharge valves are closed. The wet "
            "well takes in {closed_rise_volume} in {closed_rise_time}. What is the inflow?",
        ),
        Level(
            ("volume_per_depth", "closed_rise_read", "closed_rise_time"),
            f"{PER_DEPTH} With the pumps locked out and their discharge valves closed, the level "
            "takes {closed_rise_time} to rise {closed_rise_read}. What is the inflow?",
        ),
        Level(
            ("well_diameter", "closed_rise_read", "closed_rise_time"),
            f"{ROUND} With the pumps locked out and their discharge valves closed, the level "
            "takes {closed_rise_time} to rise {closed_rise_read}. What is the inflow?",
        ),
    ),
    numeric(
        "leakage",
        "WL",
        "Leakage back through check valves",
        "leakage",
        Level(
            ("rise_rate", "inflow"),
            "With the pumps at {station} off, the wet well takes in {rise_rate}. With their "
            "discharge valves closed too, it takes in {inflow}. "
            "How much leaks back through the check valves?",
        ),
        Level(
            ("volume_per_depth", "rise_read", "rise_time", "inflow"),
            f"{PER_DEPTH} With the pumps off, the level takes {{rise_time}} to rise {{rise_read}}. "
            "With their discharge valves closed too, it takes in {inflow}. "
            "How much leaks back through the check valves?",
        ),
        Level(
            ("volume_per_depth", "rise_read", "rise_time", "closed_rise_read", "closed_rise_time"),
            f"{PER_DEPTH} With the pumps off, the level takes {{rise_time}} to rise {{rise_read}}. "
            "With their discharge valves closed too, it takes {closed_rise_time} to rise "
            "{closed_rise_read}. How much leaks back through the check valves?",
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
