"""The cycles of a wet well: filling, emptying, starts, the volume between floats."""

from solver.engine.family import Level

from .stations import (
    ALONE,
    ALONE_CORNERS,
    ALONE_ROUND,
    CHAPTER,
    PER_DEPTH,
    ROUND_WELL,
    TURNS,
    TWO_PUMPS,
    WELL,
)

__all__ = ["CYCLES"]

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
