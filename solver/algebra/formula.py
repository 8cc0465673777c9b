"""One equation, and all its readings: its value, its unit check, itself rearranged.

A formula proves itself when it is defined: every name must be in the vocabulary, and the units
on the right must cancel to the unit on the left, in both systems, constants included.
"""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from functools import cached_property
from math import isclose
from typing import assert_never

from solver.errors import BadDefinition
from solver.units.unit import SYSTEMS, Powers, factors, measure, units
from solver.vocabulary import quantity_named, spoken

from .expression import (
    Abs,
    Constant,
    Exponential,
    Expr,
    Fraction,
    Known,
    Largest,
    Lookup,
    Mean,
    Number,
    Percent,
    Power,
    Product,
    Smallest,
    Sum,
)
from .tree import children, isolate, names
from .typeset import words

__all__ = ["Formula", "Slip", "units_of"]


@dataclass(frozen=True)
class Slip:
    """A mistake particular to one formula: the wrong equation, and what is right instead.

    `id` is a short name. `says` begins with one sentence on what the learner did, "You added flow
    and head.", then has one or two on what is right and why: "Multiply them: ...". Its numbers
    are put in front by themselves ("Your 3.2 hp is (450 gpm + 62 ft) / 3,960."), so `says` has
    none of the learner's numbers, nor the right result. `expr` may use any quantity that the
    chain knows by that step. A slip counts only where the formula is used as defined.

    Raises:
        BadDefinition: `says` names a quantity that there is not.
    """

    id: str
    expr: Expr
    says: str

    def __post_init__(self) -> None:
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

    Raises:
        BadDefinition: its units do not cancel, a quantity in it is not in the vocabulary, or it has
            no source or no why; the sentence tells which.
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

    def __post_init__(self) -> None:
        if not (self.source.strip() and self.why.strip()):
            raise BadDefinition(f"formula for {self.result!r}: give both its source and its why")
        if not isinstance(self.expr, Expr):
            raise BadDefinition(f"formula for {self.result!r}: {self.expr!r} is no expression")
        spoken(self.why + self.back, "us")
        for slip in self.slips:
            for name in names(slip.expr):
                quantity_named(name)
        for name in (*self.unless, *self.yields_to):
            quantity_named(name)
        if len({slip.id for slip in self.slips}) < len(self.slips):
            raise BadDefinition(f"formula for {self.result!r}: give each slip an id of its own")
        if strange := set(self.turns or ()) - set(names(self.expr)):
            raise BadDefinition(
                f"formula for {self.result!r}: turns names {sorted(strange)}, which is not in it"
            )
        for system in () if self.empirical else self.systems:
            self._prove(system)

    def _prove(self, system: str) -> None:
        """Check that its units cancel to that of the result."""
        wanted = factors(quantity_named(self.result).unit(system))
        try:
            _expect(self.expr, wanted, system)
        except BadDefinition as fault:
            said = "US" if system == "us" else "metric"
            raise BadDefinition(
                f"the formula for {self.result!r}, in {said} units: {fault}"
            ) from None

    def set_aside(self, known: Collection[str]) -> bool:
        """Whether no chain uses it from what is known."""
        return not self.set_aside_by.isdisjoint(known)

    @cached_property
    def set_aside_by(self) -> frozenset[str]:
        """What, once it is known, keeps the formula out of a chain."""
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
        """The expression that gives `name`.

        Raises:
            BadDefinition: the equation cannot be rearranged for it.
        """
        try:
            return self._turned[name]
        except KeyError:
            raise BadDefinition(
                f"the formula for {self.result!r} cannot be rearranged for {name!r}; "
                f"it gives {', '.join(self.solvable)}"
            ) from None


def units_of(expr: Expr, system: str) -> Powers:
    """The units of an expression in one system, each with its power; its numbers do not count.

    Raises:
        BadDefinition: a part of it does not take the unit it gets; the sentence tells both.
    """
    match expr:
        case Known(name):
            return factors(quantity_named(name).unit(system))
        case Constant():
            return factors(expr.figure(system).unit)
        case Number():
            return {}
        case Product(over, under):
            above = [(units_of(factor, system), 1.0) for factor in over]
            return _multiplied([*above, *((units_of(factor, system), -1.0) for factor in under)])
        case Power(base, exponent):
            if isinstance(exponent, int | float):
                return _multiplied([(units_of(base, system), exponent)])
            _expect(base, {}, system, "what a looked-up exponent stands on: ")
            return _taken(exponent, "", "", system, "an exponent: ")
        case Fraction(of):
            return _taken(of, "%", "", system, "a percent put in as a decimal: ")
        case Percent(of):
            return _taken(of, "", "%", system, "a decimal made a percent: ")
        case Exponential(_, raised):
            return _taken(raised, "", "", system, "an exponent: ")
        case Lookup(of):
            at = SYSTEMS.index(system)
            return _taken(of, expr.reads[at], expr.gives[at], system, f"the table {expr.rule!r}: ")
        case Abs(of):
            return units_of(of, system)
        case Sum() | Mean() | Largest() | Smallest():
            first, *others = children(expr)
            for other in others:
                where = f"the terms of one {type(expr).__name__} are of one unit: "
                _expect(other, units_of(first, system), system, where)
            return units_of(first, system)
        case _:
            assert_never(expr)


def _multiplied(parts: Iterable[tuple[Powers, float]]) -> Powers:
    """The product of these units, each to its exponent; those that cancel are gone."""
    found: dict[str, float] = {}
    for powers, exponent in parts:
        for name, power in powers.items():
            found[name] = found.get(name, 0.0) + power * exponent
    return {name: power for name, power in found.items() if power}


def _taken(expr: Expr, takes: str, gives: str, system: str, where: str) -> Powers:
    _expect(expr, factors(takes), system, where)
    return factors(gives)


def _expect(expr: Expr, wanted: Powers, system: str, where: str = "") -> None:
    got = units_of(expr, system)
    (dimension, scale), (other, size) = measure(got), measure(wanted)
    if dimension != other or not isclose(scale, size, rel_tol=1e-9):
        raise BadDefinition(
            f"{where}{words(expr, system)} gives {_written(got)}, should give {_written(wanted)}"
        )


def _written(powers: Powers) -> str:
    """Units as one that the table has, or else as a product: "gal", "gpm·ft/hp"."""
    if [*powers.values()] == [1]:
        return next(iter(powers))
    dimension, scale = measure(powers)
    for one in units().values():
        if any(dimension) and one.dimension == dimension and isclose(one.scale, scale):
            return one.name
    raised = {name: f"{name}^{abs(p):g}" if abs(p) != 1 else name for name, p in powers.items()}
    above = "·".join(raised[name] for name, power in powers.items() if power > 0)
    below = "·".join(raised[name] for name, power in powers.items() if power < 0)
    return f"{above or 1}/{below}" if below else above or "a plain number"
