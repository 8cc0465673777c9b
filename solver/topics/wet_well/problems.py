"""The wet well by numbers: its volume, the pump tested by drawdown, its cycles, hours, storage.

What is to be judged is in `judgments.py`. `WET_WELL` has the whole chapter, in the order of
teaching.
"""

from solver.engine.family import Level

from .judgments import DRAWDOWN_CAUSE, DRAWDOWN_CHECK, STARTS_LIMIT
from .judgments_rise import LEAKING_VALVE, RISE_SOURCE
from .stations import (
    ALONE,
    ALONE_CORNERS,
    ALONE_ROUND,
    CHAPTER,
    CORNERS,
    FALLS,
    LEAKING,
    LOSES,
    PER_DEPTH,
    ROUND_WELL,
    TURNS,
    TWO_PUMPS,
    WELL,
)

__all__ = ["WET_WELL"]

RECTANGULAR = "The wet well of {station} measures {well_length} by {well_width} inside."
ROUND = "The wet well of {station} is round and {well_diameter} across inside."

VOLUMES = (
    CHAPTER.numeric(
        "well_volume",
        "WV",
        "The volume of water in a wet well",
        "well_volume",
        WELL,
        Level(
            ("well_length", "well_width", "water_depth"),
            f"{RECTANGULAR} The water is {{water_depth}} deep. How much water is in it?",
            scene=CORNERS,
        ),
        Level(
            ("well_diameter", "water_depth"),
            f"{ROUND} The water is {{water_depth}} deep. How much water is in it?",
            scene=ROUND_WELL,
        ),
        Level(
            ("well_diameter", "depth_to_floor", "depth_to_water"),
            f"{ROUND} Measured from outside, it is {{depth_to_floor}} from the rim to the floor "
            "and {depth_to_water} to the water. How much water is in it?",
            scene=ROUND_WELL,
        ),
    ),
    CHAPTER.numeric(
        "volume_per_depth",
        "WD",
        "Volume per foot or meter of depth",
        "volume_per_depth",
        WELL,
        Level(
            ("well_length", "well_width"),
            f"{RECTANGULAR} How much water does it hold, in {{unit}} of depth?",
            scene=CORNERS,
        ),
        Level(
            ("well_diameter",),
            "{person} measures the round wet well of {station}. It is {well_diameter} across inside. "
            "How much water does the wet well hold, in {unit} of depth?",
            scene=ROUND_WELL,
        ),
        Level(
            ("working_volume", "on_level", "off_level"),
            "The drawings of {station} show {working_volume} between floats. The pump-on level is "
            "{on_level} and the pump-off level is {off_level}. "
            "How much water does the wet well hold, in {unit} of depth?",
        ),
    ),
)

FLOWS = (
    CHAPTER.numeric(
        "drawdown_flow",
        "WR",
        "A pump's flow from a drawdown test",
        "flow",
        WELL,
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
            scene=ROUND_WELL,
        ),
    ),
    CHAPTER.numeric(
        "inflow",
        "WI",
        "Inflow from a rising level",
        "inflow",
        WELL,
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
            scene=ROUND_WELL,
        ),
    ),
    CHAPTER.numeric(
        "leakage",
        "WL",
        "Leakage back through check valves",
        "leakage",
        LEAKING,
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
    ),
)

FLOATS = (
    "The wet well of {station} is round and {well_diameter} across inside. The pump starts at "
    "{on_level} and stops at {off_level} above the floor."
)

ROUND_FLOATS = ("well_diameter", "on_level", "off_level")
PUMPED = "The pump moves {flow}, and inflow is {inflow}."
BETWEEN = "The wet well of {station} holds {working_volume} between floats."

CYCLES = (
    CHAPTER.numeric(
        "fill_time",
        "WF",
        "How long a wet well takes to fill",
        "fill_time",
        WELL,
        Level(
            ("working_volume", "inflow"),
            f"{BETWEEN} Inflow is {{inflow}}. How long does it take to fill, in {{unit}}?",
        ),
        Level(
            ("volume_per_depth", "on_level", "off_level", "inflow"),
            f"{PER_DEPTH} The pump starts at {{on_level}} and stops at {{off_level}} above the "
            "floor. Inflow is {inflow}. How long does it take to fill, in {unit}?",
        ),
        Level(
            (*ROUND_FLOATS, "inflow"),
            f"{FLOATS} Inflow is {{inflow}}. How long does it take to fill, in {{unit}}?",
            scene=ROUND_WELL,
        ),
    ),
    CHAPTER.numeric(
        "pump_down_time",
        "WT",
        "How long a pump-down takes",
        "pump_down_time",
        WELL,
        Level(
            ("working_volume", "flow", "inflow"),
            f"{BETWEEN} {PUMPED} How long does the pump run each cycle, in {{unit}}?",
        ),
        Level(
            ("volume_per_depth", "working_depth", "flow", "inflow"),
            f"{PER_DEPTH} The floats are {{working_depth}} apart. {PUMPED} "
            "How long does the pump run each cycle, in {unit}?",
        ),
        Level(
            (*ROUND_FLOATS, "flow", "inflow"),
            f"{FLOATS} {PUMPED} How long does the pump run each cycle, in {{unit}}?",
            scene=ROUND_WELL,
        ),
    ),
    CHAPTER.numeric(
        "cycle_time",
        "WC",
        "Cycle time from start to start",
        "cycle_time",
        WELL,
        Level(
            ("fill_time", "pump_down_time"),
            "The wet well of {station} takes {fill_time} to fill and {pump_down_time} to pump down. "
            "What is the cycle time?",
        ),
        Level(
            ("working_volume", "flow", "inflow"),
            f"{BETWEEN} {PUMPED} What is the cycle time, in {{unit}}?",
        ),
        Level(
            (*ROUND_FLOATS, "flow", "inflow"),
            f"{FLOATS} {PUMPED} What is the cycle time, in {{unit}}?",
            scene=ROUND_WELL,
        ),
    ),
    CHAPTER.numeric(
        "starts_per_hour",
        "WS",
        "Starts per hour",
        "starts_per_hour",
        WELL,
        Level(
            ("cycle_time",),
            "At {station}, the pump starts every {cycle_time}. How many starts per hour is that?",
        ),
        Level(
            ("working_volume", "flow", "inflow"),
            f"{BETWEEN} {PUMPED} How many starts per hour is that?",
        ),
        Level(
            ("volume_per_depth", "on_level", "off_level", "flow", "inflow"),
            f"{PER_DEPTH} The pump starts at {{on_level}} and stops at {{off_level}} above the "
            f"floor. {PUMPED} How many starts per hour is that?",
        ),
    ),
    CHAPTER.numeric(
        "pump_starts",
        "WN",
        "Starts of each pump when they alternate",
        "pump_starts",
        WELL,
        Level(
            ("starts_per_hour", "alternating_pumps"),
            f"{TURNS} Together they make {{starts_per_hour}}. "
            "How many times an hour does each pump start?",
        ),
        Level(
            ("cycle_time", "alternating_pumps"),
            f"{TURNS} One of them starts every {{cycle_time}}. "
            "How many times an hour does each pump start?",
        ),
        Level(
            ("working_volume", "flow", "inflow", "alternating_pumps"),
            f"{TURNS} The wet well holds {{working_volume}} between floats. One pump moves "
            "{flow}, and inflow is {inflow}. How many times an hour does each pump start?",
        ),
    ),
    CHAPTER.numeric(
        "least_volume",
        "WM",
        "The minimum volume between floats",
        "least_volume",
        WELL,
        Level(
            ("least_cycle", "flow"),
            "The pump at {station} moves {flow} and may start no more than once every {least_cycle}. "
            "What is the minimum volume between floats?",
            scene=ALONE,
        ),
        Level(
            ("most_starts", "flow"),
            "The pump at {station} moves {flow}. Its manufacturer allows {most_starts}. "
            "What is the minimum volume between floats?",
            scene=ALONE,
        ),
        Level(
            ("most_starts", "alternating_pumps", "flow"),
            f"{TURNS} Each one moves {{flow}}, and the manufacturer allows it {{most_starts}}. "
            "What is the minimum volume between floats?",
            scene=TWO_PUMPS,
        ),
    ),
    CHAPTER.numeric(
        "least_depth",
        "WZ",
        "How far apart the floats must be",
        "least_depth",
        WELL,
        Level(
            ("least_volume", "volume_per_depth"),
            f"{PER_DEPTH} It needs {{least_volume}} between floats. How far apart must the floats be?",
            scene=ALONE,
        ),
        Level(
            ("least_cycle", "flow", "well_diameter"),
            "The wet well of {station} is round and {well_diameter} across inside. The pump moves "
            "{flow} and may start no more than once every {least_cycle}. "
            "How far apart must the floats be?",
            scene=ALONE_ROUND,
        ),
        Level(
            ("most_starts", "flow", "well_length", "well_width"),
            "The wet well of {station} measures {well_length} by {well_width} inside. The pump moves "
            "{flow}, and its manufacturer allows {most_starts}. How far apart must the floats be?",
            scene=ALONE_CORNERS,
        ),
    ),
    CHAPTER.numeric(
        "shortest_cycle",
        "WQ",
        "The shortest possible cycle",
        "shortest_cycle",
        WELL,
        Level(
            ("working_volume", "flow"),
            f"{BETWEEN} The pump moves {{flow}}. Inflow changes all day. "
            "What is the shortest possible cycle, in {unit}?",
            scene=ALONE,
        ),
        Level(
            (*ROUND_FLOATS, "flow"),
            f"{FLOATS} The pump moves {{flow}}. Inflow changes all day. "
            "What is the shortest possible cycle, in {unit}?",
            scene=ALONE_ROUND,
        ),
    ),
)

HOURS = (
    CHAPTER.numeric(
        "run_hours",
        "WU",
        "How many hours a day a pump has to run",
        "hours_per_day",
        WELL,
        Level(
            ("daily_inflow", "flow"),
            "Inflow at {station} is {daily_inflow}. Its only pump moves {flow}. "
            "How many hours a day does it have to run?",
            scene=ALONE,
        ),
        Level(
            ("daily_inflow", "drawdown_rate", "inflow"),
            "Inflow at {station} is {daily_inflow}. In a drawdown test of its only pump, the wet well "
            "loses {drawdown_rate} while {inflow} flows in. "
            "How many hours a day does the pump have to run?",
            scene=ALONE,
        ),
    ),
    CHAPTER.numeric(
        "pump_hours",
        "WK",
        "Hours on each pump's meter",
        "pump_hours",
        WELL,
        Level(
            ("hours_per_day", "alternating_pumps"),
            f"{TURNS} Together they run {{hours_per_day}}. How many hours a day does each one run?",
        ),
        Level(
            ("daily_inflow", "flow", "alternating_pumps"),
            f"{TURNS} Each one moves {{flow}}, and inflow is {{daily_inflow}}. "
            "How many hours a day does each one have to run?",
        ),
    ),
    CHAPTER.numeric(
        "daily_inflow",
        "WJ",
        "Daily inflow from the hour meters",
        "daily_inflow",
        WELL,
        Level(
            ("hours_per_day", "flow"),
            "The only pump at {station} moves {flow} and runs {hours_per_day}. "
            "What is the station's daily inflow, in {unit}?",
            scene=ALONE,
        ),
        Level(
            ("pump_hours", "alternating_pumps", "flow"),
            f"{TURNS} Each one moves {{flow}}, and each hour meter shows {{pump_hours}}. "
            "What is the station's daily inflow, in {unit}?",
        ),
    ),
)

STORAGE = (
    CHAPTER.numeric(
        "storage_time",
        "WO",
        "Time until the well overflows",
        "storage_time",
        WELL,
        Level(
            ("storage_volume", "inflow"),
            "The power fails at {station}. The wet well can still hold {storage_volume}, and "
            "inflow is {inflow}. How long until it overflows, in {unit}?",
        ),
        Level(
            ("well_diameter", "storage_depth", "inflow"),
            "The power fails at {station}. The round wet well is {well_diameter} across inside, and "
            "the overflow is {storage_depth} above the water. Inflow is {inflow}. "
            "How long until it overflows, in {unit}?",
            scene=ROUND_WELL,
        ),
        Level(
            (
                "volume_per_depth",
                "depth_to_water",
                "depth_to_overflow",
                "sewer_storage",
                "inflow",
            ),
            f"The power fails. {PER_DEPTH} Measured from outside, it is {{depth_to_water}} from "
            "the rim to the water and {depth_to_overflow} to the overflow. The sewer can hold "
            "{sewer_storage} more. Inflow is {inflow}. "
            "How long until it overflows, in {unit}?",
        ),
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
