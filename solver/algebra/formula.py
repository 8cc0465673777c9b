"""One equation, and all its readings: its value, its unit check, itself rearranged.

A formula proves itself when it is defined: every name must be in the vocabulary, and the units
on the right must cancel to the unit on the left, in both systems, constants included.
"""

from collections.abc import Collection
from dataclasses import dataclass
from functools import cached_property
from math import isclose

from solver.errors import BadDefinition
from solver.units.unit import compose
from solver.vocabulary import quantity_named, spoken

from .expression import (
    Constant,
    Exponential,
    Expr,
    Fraction,
    Known,
    Lookup,
    Number,
    Percent,
    Power,
    Product,
)
from .solve import isolate
from .tree import children, names

__all__ = ["Formula", "Slip"]

SYSTEMS = ("us", "si")
Dimension = tuple[float, ...]


@dataclass(frozen=True)
class Slip:
    """A mistake particular to one formula: the wrong equation, and what is right instead.

    `id` is a short name. `says` begins with one sentence on what the learner did, "You added flow
    and head.", then has one or two on what is right and why: "Multiply them: ...". Its numbers
    are put in front by themselves ("Your 3.2 hp is (450 gpm + 62 ft) / 3,960."), so `says` has
    none of the learner's numbers, nor the right result. `expr` may use any quantity that the
    chain knows by that step. A slip counts only where the formula is used as defined.
    """

    id: str
    expr: Expr
    says: str

    def __post_init__(self):
        spoken(self.says, "us")


# A formula, and a plan, is itself and equal to no other: looking one up need not hash its tree.
@dataclass(frozen=True, eq=False)
class Formula:
    """`result` equals `expr`; with its source and one sentence on why it is so.

    `why` is told for the formula as defined, in the direction it goes: from water horsepower to
    brake horsepower the number grows, because the pump wastes part. `back` is the reason that fits
    it rearranged: from wire to water each machine passes on less. Where it has none, steps.py
    makes one from its shape.

    `systems` leaves out a system in which the equation is not used. `unless` names what it takes
    to be absent: with a drive between, brake power is not motor output. `yields_to` names what
    it is not wanted for once that is known: it stays true, and another formula makes more of it.
    `empirical` marks one fitted to measurements, such as Hazen-Williams, in which the units do
    not cancel; its source must then name the units it holds in. `turns` names the quantities it
    may be rearranged for, where not all: a pump has a suction lift or a suction head, and
    what is left over is no sign of which.
    """

    result: str
    expr: Expr
    source: str
    why: str
    slips: tuple[Slip, ...] = ()
    systems: tuple[str, ...] = SYSTEMS
    unless: tuple[str, ...] = ()
    yields_to: tuple[str, ...] = ()
    empirical: bool = False
    turns: tuple[str, ...] | None = None
    back: str = ""

    def __post_init__(self):
        if not (self.source.strip() and self.why.strip()):
            raise BadDefinition(f"formula for {self.result!r}: give both its source and its why")
        spoken(self.why + self.back, "us")
        for slip in self.slips:
            for name in names(slip.expr):
                quantity_named(name)
        if strange := set(self.turns or ()) - set(names(self.expr)):
            raise BadDefinition(
                f"formula for {self.result!r}: turns names {sorted(strange)}, which is not in it"
            )
        for system in () if self.empirical else self.systems:
            wanted = compose(quantity_named(self.result).unit(system))
            _expect(unit_of(self.expr, system), wanted, f"the formula for {self.result!r}")

    def set_aside(self, known: Collection[str]) -> bool:
        """Whether no chain uses it from what is known."""
        return not self._set_aside_by.isdisjoint(known)

    @cached_property
    def _set_aside_by(self) -> frozenset[str]:
        return frozenset((*self.unless, *self.yields_to))

    @cached_property
    def names(self) -> tuple[str, ...]:
        """Every quantity in the equation, the result first."""
        return (self.result, *names(self.expr))

    @cached_property
    def quantities(self) -> frozenset[str]:
        """The same as a set, for a quick look at what is not known."""
        return frozenset(self.names)

    @cached_property
    def _turned(self) -> dict[str, Expr]:
        wanted = names(self.expr) if self.turns is None else self.turns
        turned = {n: isolate(self.expr, n, Known(self.result)) for n in wanted}
        return {self.result: self.expr} | {n: e for n, e in turned.items() if e is not None}

    @cached_property
    def solvable(self) -> tuple[str, ...]:
        """The quantities the equation can be rearranged for, the result first."""
        return tuple(self._turned)

    def solved_for(self, name: str) -> Expr:
        """The expression that gives `name`; BadDefinition where the equation cannot give it."""
        try:
            return self._turned[name]
        except KeyError:
            raise BadDefinition(
                f"the formula for {self.result!r} cannot be rearranged for {name!r}; "
                f"it gives {', '.join(self.solvable)}"
            ) from None


def unit_of(expr: Expr, system: str) -> tuple[Dimension, float]:
    """Dimension and scale of an expression in one system; its numbers do not count."""
    inside = [unit_of(child, system) for child in children(expr)]
    match expr:
        case Fraction():
            _expect(inside[0], compose("%"), f"the percentage {expr.of!r}")
            return compose("")
        case Percent():
            _expect(inside[0], compose(""), f"the decimal {expr.of!r}")
            return compose("%")
        case Known(name):
            return compose(quantity_named(name).unit(system))
        case Constant():
            return compose(expr.figure(system).unit)
        case Number():
            return compose("")
        case Product(over, _):
            signs = [1] * len(over) + [-1] * (len(inside) - len(over))
            return _combined(inside, signs)
        case Power(_, exponent):
            return _combined(inside, [exponent])
        case Exponential():
            _expect(inside[0], compose(""), f"the exponent of {expr!r}")
            return compose("")
        case Lookup():
            which = SYSTEMS.index(system)
            _expect(inside[0], compose(expr.reads[which]), f"the table of {expr.rule!r}")
            return compose(expr.gives[which])
    for unit in inside[1:]:
        _expect(unit, inside[0], f"the terms of {expr!r}")
    return inside[0]


def _combined(units: list[tuple[Dimension, float]], exponents: list[float]):
    dimension, scale = compose("")
    for (powers, size), exponent in zip(units, exponents, strict=True):
        dimension = tuple(d + p * exponent for d, p in zip(dimension, powers, strict=True))
        scale *= size**exponent
    return dimension, scale


def _expect(got: tuple[Dimension, float], wanted: tuple[Dimension, float], where: str) -> None:
    if got[0] != wanted[0] or not isclose(got[1], wanted[1], rel_tol=1e-9):
        raise BadDefinition(f"the units in {where} do not cancel: got {got}, wanted {wanted}")
