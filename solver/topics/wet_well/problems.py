"""The wet well by numbers: its volume, the hours of its pumps, its storage.

Drawdown and cycles are in `problems_drawdown.py` and `problems_cycles.py`, what is to be judged in
`judgments*.py`. `WET_WELL` has the whole chapter, in the order of teaching.
"""

from solver.engine.family import Level

from .judgments import DRAWDOWN_CAUSE, DRAWDOWN_CHECK, STARTS_LIMIT
from .judgments_rise import LEAKING_VALVE, RISE_SOURCE
from .problems_cycles import CYCLES
from .problems_drawdown import FLOWS
from .stations import ALONE, CHAPTER, CORNERS, PER_DEPTH, ROUND, ROUND_WELL, TURNS, WELL

__all__ = ["WET_WELL"]

RECTANGULAR = "The wet well of {station} measures {well_length} by {well_width} inside."

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
