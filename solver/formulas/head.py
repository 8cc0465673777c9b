"""Total dynamic head, from two gauges or from its parts; static head and pipes stand beside it."""

from collections.abc import Iterator, Mapping
from itertools import chain, combinations
from typing import NamedTuple

from ..expression import Expr, Known, Sum
from ..formula import Formula, Slip
from .constants import HEAD_PER_PRESSURE
from .head_factors import HEAD_PER_VACUUM
from .pipes import FITTINGS, PIPES, velocity_head_of, velocity_of
from .static import STATIC, SUCTION

__all__ = ["HEAD"]

GAUGES = "common practice, no source: each gauge as head at the pump, then discharge less suction"
PARTS = "common practice, no source: static head, friction, and what else the water must overcome"
ALWAYS = "The pump must lift the water and make up for every loss on the way."
MISSES_HEIGHT = "A gauge above the pump misses the water that stands between them."
MISSES_SPEED = "A gauge feels the pressure, and not the speed of the water."
COUNTS_AS_LEVEL = "Where no height is given, a gauge counts as level with the pump."
LEVEL = "The gauges sit level and the pipes are of one size, so the pressures alone count."

pressure, discharge_head, suction_head = map(Known, ("pressure", "discharge_head", "suction_head"))
discharge_gauge, suction_gauge = map(Known, ("discharge_gauge", "suction_gauge"))
static_head, friction_head = map(Known, ("static_head", "friction_head"))


# What a reader gives to have gauge heights counted, and speeds. One gauge may sit level with the
# pump while the other does not; but water runs in both pipes, so speeds count on both sides.
HEIGHTS = ("discharge_gauge_height", "suction_gauge_height")
SPEEDS = tuple(
    f"{part}_{end}"
    for part in ("discharge", "suction")
    for end in ("diameter", "velocity", "velocity_head")
)
BY_THEMSELVES = (*HEIGHTS, *SPEEDS)


class Part(NamedTuple):
    """A part that a sum may have: why, and the names of which one brings it when it is given.

    `without` is said where it is not in the sum.
    """

    why: str
    brought_by: tuple[str, ...]
    without: str = ""


def with_parts(
    result: str,
    base: tuple[Known, ...],
    parts: Mapping[str, Part],
    source: str,
    slips: tuple[Slip, ...],
) -> Iterator[Formula]:
    """A sum with each set of its optional parts.

    It is turned round for what is always in it: what is left over is no sign of any one part.
    """
    names = tuple(known.name for known in base)
    for chosen in chain.from_iterable(combinations(parts, n) for n in range(len(parts) + 1)):
        total: Expr = sum(map(Known, (*names[1:], *chosen)), start=base[0])
        absent = [part for name, part in parts.items() if name not in chosen]
        whys = [parts[name].why for name in chosen] + [part.without for part in absent]
        yield Formula(
            result,
            total,
            source,
            " ".join(dict.fromkeys(filter(None, whys))) or ALWAYS,
            tuple(slip for slip in slips if slip.expr != total),
            unless=tuple(chain.from_iterable(part.brought_by for part in absent)),
            turns=names,
        )


def at_the_pump(part: str) -> Iterator[Formula]:
    """One side of the pump: its gauge as head, set right to the pump, with its velocity head."""
    gauge, diameter, velocity = map(
        Known, (f"{part}_{end}" for end in ("gauge", "diameter", "velocity"))
    )
    height = f"{part}_gauge_height"
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
            height: Part(MISSES_HEIGHT, (height,), COUNTS_AS_LEVEL),
            f"{part}_velocity_head": Part(MISSES_SPEED, SPEEDS),
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
        "suction_gauge_head",
        Sum((), (Known("suction_vacuum") * HEAD_PER_VACUUM,)),
        HEAD_PER_VACUUM.source,
        "A vacuum is a gauge below zero.",
        turns=(),
    ),
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
        unless=BY_THEMSELVES,
        yields_to=("suction_gauge",),
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
