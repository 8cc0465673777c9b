"""Total dynamic head, from two gauges or from its parts; static head and pipes stand beside it."""

from collections.abc import Iterator, Mapping
from itertools import chain, combinations
from typing import NamedTuple

from ..expression import Expr, Known
from ..formula import Formula, Slip
from .constants import HEAD_PER_PRESSURE
from .pipes import FITTINGS, PIPES, velocity_head_of, velocity_of
from .static import STATIC, SUCTION

__all__ = ["HEAD"]

GAUGES = "common practice, no source: each gauge as head at the pump, then discharge less suction"
PARTS = "common practice, no source: static head, friction, and what else the water must overcome"
ALWAYS = "The pump must lift the water and make up for every loss on the way."
MISSES_HEIGHT = "A gauge above the pump misses the water that stands between them."
MISSES_SPEED = "A gauge feels the pressure, and not the speed of the water."
LEVEL = "The gauges sit level and the pipes are of one size, so the pressures alone count."

pressure, discharge_head, suction_head = map(Known, ("pressure", "discharge_head", "suction_head"))
discharge_gauge, suction_gauge = map(Known, ("discharge_gauge", "suction_gauge"))
static_head, friction_head = map(Known, ("static_head", "friction_head"))


def brought_by(part: str) -> tuple[str, ...]:
    """What a reader gives when one side of the pump has its gauge height, or its pipe, counted."""
    return f"{part}_gauge_height", f"{part}_diameter", f"{part}_velocity", f"{part}_velocity_head"


BY_THEMSELVES = (*brought_by("discharge"), *brought_by("suction"))


class Part(NamedTuple):
    """A part that a sum may have: why, and the names of which one brings it when it is given."""

    why: str
    brought_by: tuple[str, ...]


def with_parts(
    result: str, base: tuple[Known, ...], parts: Mapping[str, Part], **more
) -> Iterator[Formula]:
    """A sum with each set of its optional parts.

    It is turned round for what is always in it: what is left over is no sign of any one part.
    """
    for chosen in chain.from_iterable(combinations(parts, n) for n in range(len(parts) + 1)):
        terms = (*base, *map(Known, chosen))
        if len(terms) > 1:
            absent = chain.from_iterable(
                part.brought_by for name, part in parts.items() if name not in chosen
            )
            why = " ".join(dict.fromkeys(parts[name].why for name in chosen)) or ALWAYS
            total: Expr = sum(terms[1:], start=terms[0])
            turns = tuple(known.name for known in base)
            yield Formula(result, total, why=why, unless=tuple(absent), turns=turns, **more)


def at_the_pump(part: str) -> Iterator[Formula]:
    """One side of the pump: its gauge as head, set right to the pump, with its velocity head."""
    gauge, height, diameter, velocity = map(
        Known, (f"{part}_{end}" for end in ("gauge", "gauge_height", "diameter", "velocity"))
    )
    as_head = Known(f"{part}_gauge_head")
    yield Formula(
        as_head.name,
        gauge * HEAD_PER_PRESSURE,
        HEAD_PER_PRESSURE.source,
        "A gauge shows pressure; head is the height of water it holds up.",
    )
    yield velocity_of(velocity.name, diameter)
    yield velocity_head_of(f"{part}_velocity_head", velocity)
    yield from with_parts(
        f"{part}_head",
        (as_head,),
        {
            height.name: Part(MISSES_HEIGHT, (height.name,)),
            f"{part}_velocity_head": Part(MISSES_SPEED, brought_by(part)[1:]),
        },
        source=GAUGES,
        slips=(Slip("gauge_alone", as_head, "This is the gauge alone. Add what it misses."),),
    )


TWO_GAUGES = (
    Formula(
        "pressure",
        discharge_gauge - suction_gauge,
        GAUGES,
        f"The pump adds only what the discharge has over the suction. {LEVEL}",
        slips=(
            Slip(
                "suction_left_out",
                discharge_gauge,
                "This is the discharge alone. Take away what the water brings to the pump.",
            ),
        ),
        unless=BY_THEMSELVES,
    ),
    Formula(
        "pressure_now",
        Known("discharge_gauge_now") - Known("suction_gauge_now"),
        GAUGES,
        "The same for the readings of today.",
    ),
    *at_the_pump("discharge"),
    *at_the_pump("suction"),
    Formula(
        "head",
        discharge_head - suction_head,
        GAUGES,
        "The pump adds only what the discharge side has over the suction side.",
        slips=(
            Slip(
                "suction_left_out",
                discharge_head,
                "This is the discharge side alone. Take away what the water brings to the pump.",
            ),
            Slip(
                "gauges_alone",
                (discharge_gauge - suction_gauge) * HEAD_PER_PRESSURE,
                "These are the gauges alone. Set each right to the pump first.",
            ),
        ),
        turns=("discharge_head",),
    ),
    Formula(
        "head",
        Known("discharge_gauge_head") + Known("dynamic_suction_lift"),
        GAUGES,
        "A vacuum is below zero, so the pump makes up for it too: add.",
        slips=(
            Slip(
                "vacuum_left_out",
                Known("discharge_gauge_head"),
                "Left out: the lift that the vacuum shows.",
            ),
            Slip(
                "vacuum_taken_away",
                Known("discharge_gauge_head") - Known("dynamic_suction_lift"),
                "The vacuum is taken away. It is below zero, so it adds to the head.",
            ),
        ),
        unless=(*BY_THEMSELVES, "suction_gauge"),
        turns=("discharge_gauge_head",),
    ),
)

FROM_PARTS = (
    *with_parts(
        "head",
        (static_head, friction_head),
        {
            "minor_loss": Part(ALWAYS, ("minor_loss", "loss_coefficient", "elbows")),
            "outlet_velocity_head": Part(ALWAYS, ("outlet_velocity", "outlet_velocity_head")),
            "delivery_head": Part(ALWAYS, ("delivery_pressure", "delivery_head")),
        },
        source=PARTS,
        slips=(
            Slip("static_alone", static_head, "This is the static head alone. Add the rest."),
            Slip("friction_alone", friction_head, "This is the friction alone. Add the rest."),
        ),
    ),
    velocity_head_of("outlet_velocity_head", Known("outlet_velocity")),
    Formula(
        "delivery_head",
        Known("delivery_pressure") * HEAD_PER_PRESSURE,
        HEAD_PER_PRESSURE.source,
        "Pressure that must be left at the end is head that the pump must give.",
    ),
)

HEAD = (*STATIC, *SUCTION, *PIPES, *FITTINGS, *TWO_GAUGES, *FROM_PARTS)
