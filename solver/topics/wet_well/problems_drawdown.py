"""A pump tested by drawdown: its flow, what comes in, what leaks back."""

from solver.engine.family import Level

from .stations import CHAPTER, FALLS, LEAKING, LOSES, PER_DEPTH, ROUND, ROUND_WELL, WELL

__all__ = ["FLOWS"]

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
