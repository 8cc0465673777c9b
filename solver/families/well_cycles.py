"""The wet well in time: filling, emptying, starts, and the least volume between floats."""

from ..family import Level
from .scenes_wells import small_pair
from .well_family import PER_DEPTH, TURNS, numeric

__all__ = ["CYCLES"]

FLOATS = (
    "The wet well of {station} is round, {well_diameter} across. Its pump starts at {on_level} "
    "and stops at {off_level} above the floor."
)
ROUND = ("well_diameter", "on_level", "off_level")
PUMPED = "The pump moves {flow} and the inflow is {inflow}."
BETWEEN = "The wet well of {station} holds {working_volume} between floats."

CYCLES = (
    numeric(
        "fill_time",
        "WF",
        "How long a wet well takes to fill",
        "fill_time",
        Level(
            ("working_volume", "inflow"),
            f"{BETWEEN} The inflow is {{inflow}}. How long does it take to fill, in {{unit}}?",
        ),
        Level(
            ("volume_per_depth", "on_level", "off_level", "inflow"),
            f"{PER_DEPTH} Its pump starts at {{on_level}} and stops at {{off_level}} above the "
            "floor. The inflow is {inflow}. How long does it take to fill, in {unit}?",
        ),
        Level(
            (*ROUND, "inflow"),
            f"{FLOATS} The inflow is {{inflow}}. How long does it take to fill, in {{unit}}?",
        ),
    ),
    numeric(
        "pump_down_time",
        "WT",
        "How long a pump takes to empty the well",
        "pump_down_time",
        Level(
            ("working_volume", "flow", "inflow"),
            f"{BETWEEN} {PUMPED} How long does the pump run in a cycle, in {{unit}}?",
        ),
        Level(
            ("volume_per_depth", "working_depth", "flow", "inflow"),
            f"{PER_DEPTH} Its floats are {{working_depth}} apart. {PUMPED} "
            "How long does the pump run in a cycle, in {unit}?",
        ),
        Level(
            (*ROUND, "flow", "inflow"),
            f"{FLOATS} {PUMPED} How long does the pump run in a cycle, in {{unit}}?",
        ),
    ),
    numeric(
        "cycle_time",
        "WC",
        "The cycle from start to start",
        "cycle_time",
        Level(
            ("fill_time", "pump_down_time"),
            "The wet well of {station} fills in {fill_time} and its pump takes "
            "{pump_down_time} to empty it. What is the cycle time?",
        ),
        Level(
            ("working_volume", "flow", "inflow"),
            f"{BETWEEN} {PUMPED} What is the cycle time, in {{unit}}?",
        ),
        Level(
            (*ROUND, "flow", "inflow"), f"{FLOATS} {PUMPED} What is the cycle time, in {{unit}}?"
        ),
    ),
    numeric(
        "starts_per_hour",
        "WS",
        "Starts in an hour",
        "starts_per_hour",
        Level(
            ("cycle_time",),
            "At {station} it is {cycle_time} from one start to the next. "
            "How many starts is that in an hour?",
        ),
        Level(
            ("working_volume", "flow", "inflow"),
            f"{BETWEEN} {PUMPED} How many starts are there in an hour?",
        ),
        Level(
            ("volume_per_depth", "on_level", "off_level", "flow", "inflow"),
            f"{PER_DEPTH} Its pump starts at {{on_level}} and stops at {{off_level}} above the "
            f"floor. {PUMPED} How many starts are there in an hour?",
        ),
    ),
    numeric(
        "pump_starts",
        "WN",
        "Starts of each pump, taking turns",
        "pump_starts",
        Level(
            ("starts_per_hour", "alternating_pumps"),
            f"{TURNS} The station has {{starts_per_hour}}. How often does each pump start?",
        ),
        Level(
            ("cycle_time", "alternating_pumps"),
            f"{TURNS} It is {{cycle_time}} from one start to the next. "
            "How many starts in an hour does each pump have?",
        ),
        Level(
            ("working_volume", "flow", "inflow", "alternating_pumps"),
            f"{TURNS} The wet well holds {{working_volume}} between floats. One pump moves "
            "{flow} and the inflow is {inflow}. How many starts in an hour does each pump have?",
        ),
    ),
    numeric(
        "least_volume",
        "WM",
        "The least volume between floats",
        "least_volume",
        Level(
            ("least_cycle", "flow"),
            "The pump of {station} moves {flow} and may start once in {least_cycle} at most. "
            "What is the least volume between floats?",
        ),
        Level(
            ("most_starts", "flow"),
            "The pump of {station} moves {flow}. Its maker allows {most_starts}. "
            "What is the least volume between floats?",
        ),
        Level(
            ("most_starts", "alternating_pumps", "flow"),
            f"{TURNS} Each moves {{flow}}, and its maker allows it {{most_starts}}. "
            "What is the least volume between floats?",
            scene=small_pair,
        ),
    ),
    numeric(
        "least_depth",
        "WZ",
        "How far apart the floats must be",
        "least_depth",
        Level(
            ("least_volume", "volume_per_depth"),
            f"{PER_DEPTH} It needs {{least_volume}} between floats. How far apart must they be?",
        ),
        Level(
            ("least_cycle", "flow", "well_diameter"),
            "The wet well of {station} is round, {well_diameter} across. Its pump moves {flow} and "
            "may start once in {least_cycle} at most. How far apart must the floats be?",
        ),
        Level(
            ("most_starts", "flow", "well_length", "well_width"),
            "The wet well of {station} is {well_length} by {well_width}. Its pump moves {flow}, "
            "and its maker allows {most_starts}. How far apart must the floats be?",
        ),
    ),
    numeric(
        "shortest_cycle",
        "WQ",
        "The shortest cycle there can be",
        "shortest_cycle",
        Level(
            ("working_volume", "flow"),
            f"{BETWEEN} The pump moves {{flow}}. The inflow changes all day. "
            "What is the shortest cycle there can be, in {unit}?",
        ),
        Level(
            (*ROUND, "flow"),
            f"{FLOATS} The pump moves {{flow}}. The inflow changes all day. "
            "What is the shortest cycle there can be, in {unit}?",
        ),
    ),
)
