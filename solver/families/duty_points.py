"""Where a pump's curve meets the system's: with one pump, and with two side by side."""

from functools import partial

from ..family import Level
from .scenes_speed import on_a_system
from .speed_family import numeric

__all__ = ["DUTY_POINTS"]

CURVE = "{place} has a shutoff head of {shutoff_head}, and gives {rated_head} at {rated_flow}. "
PUMP = ("shutoff_head", "rated_head", "rated_flow")
AT_RATED = "The static head is {static_head}, and friction is {rated_friction} at {rated_flow}. "
AT_KNOWN = (
    "It pumps from a level of {suction_elevation} to one of {discharge_elevation}, and friction is "
    "{known_friction} at {known_flow}. "
)
LEVELS = ("suction_elevation", "discharge_elevation", "known_friction", "known_flow")
SQUARES = "Take both curves as going with the square of the flow."
SECOND = "A second pump like it joins it on the same main. "

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
            "{place} lifts water by a static head of {static_head}. Friction is {rated_friction} "
            "at {rated_flow}, and goes with the square of the flow. The pump moves {flow}. "
            "What is the total head?",
        ),
        Level(
            (*PUMP, "static_head", "rated_friction"),
            f"{CURVE}{AT_RATED}{SQUARES} At what head does it run?",
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
            f"{CURVE}{AT_RATED}{SECOND}{SQUARES} What flow do both move together?",
        ),
        Level(
            (*PUMP, *LEVELS),
            f"{CURVE}{AT_KNOWN}{SECOND}{SQUARES} What flow do both move together?",
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
            "{place} alone moves {flow}. With a second one like it on the same main, both "
            "together move {parallel_flow}. What flow does the second pump add?",
        ),
        Level(
            (*PUMP, "static_head", "rated_friction"),
            f"{CURVE}{AT_RATED}{SECOND}{SQUARES} What flow does the second pump add?",
        ),
    ),
)
