"""The shape of an impeller, by its specific speed."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Judgement, Level
from solver.topics.drawn.pumps import pump
from solver.topics.drawn.readings import noted, round_flow
from solver.topics.limits import SPECIFIC_SPEED, against

from .kinds import judged, numeric
from .scenes import SPEEDS, to_step

__all__ = ["IMPELLER"]


LEAST_A_STAGE = {"us": 15, "si": 4.5}


def staged(draw: Draw, units: str) -> dict[str, float]:
    """A pump of one to eight stages at the speed of its motor."""
    machine = pump(draw, units)
    return machine | {
        "pump_speed": float(draw.pick(SPEEDS[units])),
        "stages": draw.step(2, max(2, min(8, machine["head"] // LEAST_A_STAGE[units])), 1),
    }


BEST = "At its best efficiency point, {place} moves"
ASKED = (
    "US units use rpm, gpm and feet; metric uses rpm, m³/s and meters. What is its specific speed?"
)

SPECIFIC = numeric(
    "specific_speed",
    "SS",
    "Specific speed",
    "specific_speed",
    staged,
    Level(
        ("pump_speed", "flow", "head"),
        f"{BEST} {{flow}} against {{head}} of head at {{pump_speed}}. It has one stage. {ASKED}",
    ),
    Level(
        ("pump_speed", "flow", "head", "stages"),
        f"{BEST} {{flow}} against {{head}} of head at {{pump_speed}}. It has {{stages}} stages. {ASKED}",
    ),
    Level(
        ("pump_speed", "flow", "pressure"),
        f"{BEST} {{flow}} at {{pump_speed}}, and the gauges show a pressure rise of {{pressure}}. "
        f"It has one stage. {ASKED}",
    ),
)

SHAPES = {"us": (4000, 9000), "si": (80, 175)}
SHAPED = (
    (
        "radial",
        "Radial: it throws the water outward",
        "A low specific speed means a wide, flat impeller that makes a lot of head.",
    ),
    (
        "mixed",
        "Mixed flow: partly outward, partly along the shaft",
        "In between, the impeller throws the water outward and pushes it along.",
    ),
    (
        "axial",
        "Axial: it pushes the water along the shaft",
        "A high specific speed means a propeller: a lot of flow and little head.",
    ),
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
    "Radial impellers run up to about 4,000 (metric 80), mixed-flow up to about 9,000 (metric 175). "
    "Axial impellers run above that. "
)

IMPELLER_TYPE = judged(
    "impeller_type",
    "ST",
    "Which impeller goes with a specific speed",
    judge_shape,
    any_shape,
    Level(
        ("specific_speed",),
        f"{{place}} has a specific speed of {{specific_speed}}. {BANDS}"
        "What kind of impeller does it have?",
    ),
    Level(
        ("pump_speed", "flow", "head"),
        f"{BEST} {{flow}} against {{head}} at {{pump_speed}}, with one stage. "
        f"{BANDS}What kind of impeller does it have?",
        find=("specific_speed",),
    ),
)

IMPELLER = (SPECIFIC, IMPELLER_TYPE)
