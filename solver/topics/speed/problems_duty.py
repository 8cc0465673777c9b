"""Where a pump's curve meets the system's: with one pump, and with two side by side."""

from functools import partial

from solver.engine.family import Level

from .kinds import numeric
from .scenes import on_a_system

__all__ = ["DUTY_POINTS"]

CURVE = "{place} has a shutoff head of {shutoff_head} and makes {rated_head} at {rated_flow}. "
PUMP = ("shutoff_head", "rated_head", "rated_flow")
AT_RATED = (
    "The static head is {static_head}, and friction loss is {rated_friction} at {rated_flow}. "
)
AT_KNOWN = (
    "It pumps from elevation {suction_elevation} to {discharge_elevation}, and friction loss is "
    "{known_friction} at {known_flow}. "
)
LEVELS = ("suction_elevation", "discharge_elevation", "known_friction", "known_flow")
SQUARES = "Treat both curves as changing with the square of the flow."
TWINS = (
    "A second pump just like {place} runs with it on the same main. The table shows what one pump "
    "does alone, and the head that the main needs. "
)

DUTY_POINTS = (
    numeric(
        "operating_flow",
        "SO",
        "The flow where the curves cross",
        "flow",
        on_a_system,
        Level(
            (*PUMP, "static_head", "rated_friction"),
            f"{CURVE}{AT_RATED}{SQUARES} What flow does it move?",
        ),
        Level(
            (*PUMP, *LEVELS),
            f"{CURVE}{AT_KNOWN}{SQUARES} What flow does it move?",
        ),
    ),
    numeric(
        "operating_head",
        "SC",
        "The head where the curves cross",
        "head",
        on_a_system,
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
    numeric(
        "parallel_flow",
        "SQ",
        "Two pumps on one main",
        "parallel_flow",
        on_a_system,
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
    numeric(
        "second_pump",
        "SR",
        "The flow that a second pump adds",
        "added_flow",
        partial(on_a_system, friction=(0.15, 0.5)),
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
