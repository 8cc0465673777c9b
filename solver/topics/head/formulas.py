"""Total dynamic head, from two gauges or from its parts; with static head and pipes."""

from collections.abc import Iterator, Mapping
from itertools import chain, combinations
from typing import NamedTuple

from solver.algebra.expression import Expr, Known, Sum
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import HEAD_PER_PRESSURE, PER_PRESSURE

from .formulas_pipes import FITTINGS, PIPES, velocity_head_of, velocity_of
from .formulas_static import HEAD_PER_VACUUM, STATIC, SUCTION

__all__ = ["HEAD"]

GAUGES = "common practice, no source: each gauge as head at the pump, then discharge less suction"
PARTS = "common practice, no source: static head, friction, and what else the water must overcome"
ALWAYS = "The pump has to lift the water and make up for every loss on the way."
MISSES_HEIGHT = "A gauge mounted above the pump doesn't feel the water between it and the pump."
MISSES_SPEED = "A gauge feels pressure, not speed, so velocity head is counted separately."
COUNTS_AS_LEVEL = "With no gauge height given, count the gauge as level with the pump."
LEVEL = "The gauges are level and the pipes are the same size, so you can compare the pressures directly."

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
        "A gauge shows pressure. Head is the height of water that makes this pressure.",
        back=PER_PRESSURE,
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
        slips=(
            Slip(
                "gauge_alone",
                as_head,
                "You used the gauge alone. Correct it to the pump: add what the gauge doesn't feel.",
            ),
        ),
    )


TWO_GAUGES = (
    Formula(
        "pressure",
        discharge_gauge - suction_gauge,
        GAUGES,
        f"The pump adds only the difference between the two pressures. {LEVEL}",
        slips=(
            Slip(
                "suction_left_out",
                discharge_gauge,
                "You used the discharge gauge alone. Subtract the pressure the water already has at "
                "the suction.",
            ),
        ),
        unless=BY_THEMSELVES,
    ),
    Formula(
        "pressure_now",
        Known("discharge_gauge_now") - Known("suction_gauge_now"),
        GAUGES,
        "Take the same difference with today's readings.",
    ),
    *at_the_pump("discharge"),
    *at_the_pump("suction"),
    Formula(
        "suction_gauge_head",
        Sum((), (Known("suction_vacuum") * HEAD_PER_VACUUM,)),
        HEAD_PER_VACUUM.source,
        "A vacuum is a gauge reading below zero.",
        turns=(),
    ),
    Formula(
        "head",
        discharge_head - suction_head,
        GAUGES,
        "The pump adds only the difference between the discharge side and the suction side.",
        slips=(
            Slip(
                "suction_left_out",
                discharge_head,
                "You used the discharge side alone. Subtract the head the water already has at the "
                "suction.",
            ),
            Slip(
                "gauges_alone",
                (discharge_gauge - suction_gauge) * HEAD_PER_PRESSURE,
                "You used the gauges as they read. Correct each one to the pump first.",
            ),
        ),
        turns=("discharge_head",),
    ),
    Formula(
        "head",
        Known("discharge_gauge_head") + Known("dynamic_suction_lift"),
        GAUGES,
        "A vacuum is below zero, so the pump has to make up for it too.",
        slips=(
            Slip(
                "vacuum_left_out",
                Known("discharge_gauge_head"),
                "You left out the suction lift that the vacuum shows. The pump makes up for it too: "
                "add it.",
            ),
            Slip(
                "vacuum_taken_away",
                Known("discharge_gauge_head") - Known("dynamic_suction_lift"),
                "You subtracted the vacuum. It is below zero, so it adds to the head.",
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
            Slip(
                "static_alone",
                static_head,
                "You used the static head alone. Add the friction loss: the pump makes up for that too.",
            ),
            Slip(
                "friction_alone",
                friction_head,
                "You used the friction loss alone. Add the static head: the water still has to be lifted.",
            ),
        ),
    ),
    velocity_head_of("outlet_velocity_head", Known("outlet_velocity")),
    Formula(
        "delivery_head",
        Known("delivery_pressure") * HEAD_PER_PRESSURE,
        HEAD_PER_PRESSURE.source,
        "Pressure you need at the end of the pipe is head the pump has to supply.",
    ),
)

HEAD = (*STATIC, *SUCTION, *PIPES, *FITTINGS, *TWO_GAUGES, *FROM_PARTS)
