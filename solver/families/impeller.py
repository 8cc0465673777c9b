"""The shape of an impeller, by its specific speed."""

from collections.abc import Mapping

from ..draw import Draw
from ..family import Judgement, Level
from ..limits import SPECIFIC_SPEED
from .against import against
from .scenes import noted, pump, round_flow
from .scenes_speed import SPEEDS, to_step
from .speed_family import judged, numeric

__all__ = ["IMPELLER"]


LEAST_A_STAGE = {"us": 15, "si": 4.5}


def staged(draw: Draw, units: str) -> dict[str, float]:
    """A pump of one to eight stages at the speed of its motor."""
    machine = pump(draw, units)
    return machine | {
        "pump_speed": float(draw.pick(SPEEDS[units])),
        "stages": draw.step(2, max(2, min(8, machine["head"] // LEAST_A_STAGE[units])), 1),
    }


SPECIFIC = numeric(
    "specific_speed",
    "SS",
    "Specific speed",
    "specific_speed",
    staged,
    Level(
        ("pump_speed", "flow", "head"),
        "At its best point, {place} moves {flow} against {head} of head at {pump_speed}. It "
        "has one stage. What is its specific speed (in US units rpm, gpm and ft; in metric "
        "rpm, m³/s and m)?",
    ),
    Level(
        ("pump_speed", "flow", "head", "stages"),
        "At its best point, {place} moves {flow} against {head} of head at {pump_speed}. It "
        "has {stages} stages. What is its specific speed (in US units rpm, gpm and ft; in "
        "metric rpm, m³/s and m)?",
    ),
    Level(
        ("pump_speed", "flow", "pressure"),
        "At its best point, {place} moves {flow} at {pump_speed}, and the gauges show a "
        "pressure rise of {pressure}. It has one stage. What is its specific speed (in US "
        "units rpm, gpm and ft; in metric rpm, m³/s and m)?",
    ),
)

SHAPES = {"us": (4000, 9000), "si": (80, 175)}
SHAPED = (
    ("radial", "Radial: it throws the water outward", "Low specific speed: head by a wide wheel."),
    (
        "mixed",
        "Mixed flow: partly outward, partly along the shaft",
        "In between: it throws the water outward and pushes it along.",
    ),
    ("axial", "Axial: a propeller", "High specific speed: much flow, little head."),
)


def any_shape(draw: Draw, units: str) -> dict[str, float]:
    """A pump from a narrow radial one to a propeller."""
    low, high = SHAPES[units]
    zones = (
        ((low / 5, low / 1.1), (25, 110)),
        ((low * 1.1, high / 1.1), (12, 40)),
        ((high * 1.1, high * 1.4), (6, 15)),
    )
    shape, feet = draw.pick(zones)
    wanted, lift = draw.between(*shape), draw.between(*feet)
    machine = pump(draw, units)
    speed = float(draw.pick(SPEEDS[units][2:]))
    head = to_step(lift if units == "us" else 0.3 * lift, units)
    flow = (wanted * head**0.75 / speed) ** 2 * (1 if units == "us" else 1000)
    return machine | {
        "pump_speed": speed,
        "head": head,
        "flow": round_flow(flow),
        "specific_speed": noted(wanted),
    }


def judge_shape(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Radial, mixed or axial, by the limits of the system."""
    low, high = SHAPES[units]
    limits = SPECIFIC_SPEED._replace(low=low, high=high)
    return against(limits, SPECIFIC_SPEED.rule, *SHAPED)(values, units, draw)


BANDS = (
    "Common practice: radial up to 4,000 (metric 80), mixed flow up to 9,000 (metric 175), axial "
    "above. "
)

IMPELLER_TYPE = judged(
    "impeller_type",
    "ST",
    "Which impeller fits a specific speed",
    judge_shape,
    any_shape,
    Level(
        ("specific_speed",),
        f"The specific speed of {{place}} is {{specific_speed}}. {BANDS}"
        "What kind of impeller has it?",
    ),
    Level(
        ("pump_speed", "flow", "head"),
        "At its best point, {place} moves {flow} against {head} at {pump_speed}, with one stage. "
        f"{BANDS}What kind of impeller has it?",
        find=("specific_speed",),
    ),
)

IMPELLER = (SPECIFIC, IMPELLER_TYPE)
