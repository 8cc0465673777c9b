"""Where curves cross, with one pump and with two; specific speed."""

from solver.engine.family import Level

from .stations import (
    BEST,
    CHAPTER,
    CROSSING,
    PUMP,
    PUMP_AT_BEST,
    SQUARES,
    STAGES,
    TWINS,
    TWO_GAUGES,
)

__all__ = ["DUTY_POINTS", "SPECIFIC"]

CURVE = "{place} has a shutoff head of {shutoff_head} and makes {rated_head} at {rated_flow}. "

AT_RATED = (
    "The static head is {static_head}, and friction loss is {rated_friction} at {rated_flow}. "
)

AT_KNOWN = (
    "It pumps from elevation {suction_elevation} to {discharge_elevation}, and friction loss is "
    "{known_friction} at {known_flow}. "
)

LEVELS = ("suction_elevation", "discharge_elevation", "known_friction", "known_flow")

DUTY_POINTS = (
    CHAPTER.numeric(
        "operating_flow",
        "SO",
        "The flow where the curves cross",
        "flow",
        CROSSING,
        Level(
            (*PUMP, "static_head", "rated_friction"),
            f"{CURVE}{AT_RATED}{SQUARES} What flow does it move?",
        ),
        Level(
            (*PUMP, *LEVELS),
            f"{CURVE}{AT_KNOWN}{SQUARES} What flow does it move?",
        ),
    ),
    CHAPTER.numeric(
        "operating_head",
        "SC",
        "The head where the curves cross",
        "head",
        CROSSING,
        Level(
            ("static_head", "rated_friction", "rated_flow", "flow"),
            "{place} works against a static head of {static_head}. Friction loss is {rated_friction} "
            "at {rated_flow} and changes with the square of the flow. The pump moves {flow}. "
            "What is the total dynamic head (TDH)?",
        ),
        Level(
            (*PUMP, "static_head", "rated_friction"),
            f"{CURVE}{AT_RATED}{SQUARES} What head does it run at?",
        ),
    ),
    CHAPTER.numeric(
        "parallel_flow",
        "SQ",
        "Two pumps on one main",
        "parallel_flow",
        CROSSING,
        Level(
            (*PUMP, "static_head", "rated_friction"),
            f"{TWINS}{SQUARES} What flow do the two move together?",
            table=(*PUMP, "static_head", "rated_friction"),
        ),
        Level(
            (*PUMP, *LEVELS),
            f"{TWINS}{SQUARES} What flow do the two move together?",
            table=(*PUMP, *LEVELS),
        ),
    ),
    CHAPTER.numeric(
        "second_pump",
        "SR",
        "The flow that a second pump adds",
        "added_flow",
        CROSSING,
        Level(
            ("flow", "parallel_flow"),
            "{place} moves {flow} alone. With a second pump just like it on the same main, the two "
            "move {parallel_flow} together. What flow does the second pump add?",
        ),
        Level(
            (*PUMP, "static_head", "rated_friction"),
            f"{TWINS}{SQUARES} What flow does the second pump add?",
            table=(*PUMP, "static_head", "rated_friction"),
        ),
    ),
)

ASKED = (
    "US units use rpm, gpm and feet; metric uses rpm, m³/s and meters. What is its specific speed?"
)

SPECIFIC = CHAPTER.numeric(
    "specific_speed",
    "SS",
    "Specific speed",
    "specific_speed",
    PUMP_AT_BEST,
    Level(
        ("pump_speed", "flow", "head"),
        f"{BEST} {{flow}} against {{head}} of head at {{pump_speed}}. It has one stage. {ASKED}",
    ),
    Level(
        ("pump_speed", "flow", "head", "stages"),
        f"{BEST} {{flow}} against {{head}} of head at {{pump_speed}}. It has {{stages}} stages. {ASKED}",
        scene=STAGES,
    ),
    Level(
        ("pump_speed", "flow", "pressure"),
        f"{BEST} {{flow}} at {{pump_speed}}, and the gauges show a pressure rise of {{pressure}}. "
        f"It has one stage. {ASKED}",
        scene=TWO_GAUGES,
    ),
)
