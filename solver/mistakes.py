"""A mistake is the same chain with one link changed.

Mistakes come from the shape of each link's expression, whatever the topic; a formula adds the
slips particular to it. Each is named by where it stands in the chain and what was done there.
"""

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from itertools import chain
from typing import NamedTuple

from .algebra import Compute, compiled
from .constant import Constant
from .expression import (
    Exponential,
    Expr,
    Fraction,
    Known,
    Largest,
    Lookup,
    Mean,
    Percent,
    Power,
    Product,
    Smallest,
    Sum,
)
from .plan import Plan
from .spoken import spoken
from .steps import reason
from .tree import is_one, names
from .units import unit
from .vocabulary import quantity_named

__all__ = ["Change", "mistaken_changes"]


class Change(NamedTuple):
    """Link number `at` computed by `compute` instead; `says` is what a learner is told."""

    id: str
    at: int
    compute: Compute
    says: str


class Variant(NamedTuple):
    """An expression with one thing done wrong, the kind of wrong, and the factor it touches."""

    kind: str
    factor: str
    expr: Expr
    says: str


COUNTS = ("time", "run schedule", "ratio")


def _called(expr: Expr) -> tuple[str, str]:
    """What an id and what a sentence calls a factor."""
    match expr:
        case Known(name):
            return name, quantity_named(name).label
        case Constant():
            return expr.name, expr.label
        case Fraction(of) | Percent(of) | Power(of):
            return _called(of)
        case Largest():
            return "highest", "highest reading"
        case Smallest():
            return "lowest", "lowest reading"
    return "term", "part of the formula"


def _can_move(factor: Expr) -> bool:
    """Whether people put this factor on the wrong side of the line, or leave it out."""
    match factor:
        case Fraction() | Constant():
            return True
        case Known(name):
            return unit(quantity_named(name).us).kind in COUNTS
    return False


def variants(expr: Expr, units: str) -> Iterator[Variant]:
    """Every generic way to get one expression wrong."""
    match expr:
        case Product():
            yield from _of_product(expr, units)
        case Sum():
            yield from _of_sum(expr, units)
        case Fraction(of):
            key, name = _called(of)
            says = f"{name.capitalize()} went in as a whole number. Use the decimal: 82 % is 0.82."
            yield Variant("percent_as_whole", key, of, says)
        case Percent(of):
            yield Variant(
                "left_as_decimal",
                "",
                of,
                "The result is still a decimal. Times 100 makes it percent.",
            )
            yield from (v._replace(expr=Percent(v.expr)) for v in variants(of, units))
        case Mean(of):
            yield Variant(
                "not_divided", "", Sum(of), f"The readings are added but not divided by {len(of)}."
            )
        case Power(base, exponent):
            sign = "root" if exponent == 0.5 else "exponent"
            key, name = _called(base)
            key, of = ("", "") if key == "term" else (key, f" of the {name}")
            yield Variant("power_left_out", key, base, f"Left out: the {sign}{of}.")
            yield from (v._replace(expr=replace(expr, base=v.expr)) for v in variants(base, units))
        case Exponential(base, exponent):
            yield Variant(
                "wrong_way", "", replace(expr, base=1 / base),
                "This corrects the wrong way. The exponent has the wrong sign.",
            )  # fmt: skip
            changed = variants(exponent, units)
            yield from (v._replace(expr=replace(expr, exponent=v.expr)) for v in changed)
        case Lookup(of):
            yield from (v._replace(expr=replace(expr, of=v.expr)) for v in variants(of, units))


def _of_product(expr: Product, units: str) -> Iterator[Variant]:
    over, under = expr.over, expr.under
    match over, under:
        case (Known(),), (Known(),):
            key, name = _called(over[0])
            says = f"The ratio is upside down. {name.capitalize()} stands above the line."
            yield Variant("upside_down", key, Product(under, over), says)
    for side in ("over", "under"):
        for i, factor in enumerate(getattr(expr, side)):
            yield from _inside(expr, side, i, units)
            if _can_move(factor) and not is_one(factor, units):
                yield from _misplaced(expr, side, i)


def _misplaced(expr: Product, side: str, i: int) -> Iterator[Variant]:
    """One factor left out, or put on the other side of the line."""
    factors = getattr(expr, side)
    factor, rest = factors[i], factors[:i] + factors[i + 1 :]
    key, name = _called(factor)
    if side == "under":
        yield Variant("left_out", key, Product(expr.over, rest), f"Left out: the {name}.")
        wrong = Product((*expr.over, factor), rest)
        yield Variant("multiplied_by", key, wrong, f"This multiplies by the {name}. Divide by it.")
    elif rest:
        yield Variant("left_out", key, Product(rest, expr.under), f"Left out: the {name}.")
        wrong = Product(rest, (*expr.under, factor))
        yield Variant("divided_by", key, wrong, f"This divides by the {name}. Multiply by it.")


def _inside(expr: Product, side: str, i: int, units: str) -> Iterator[Variant]:
    factors = getattr(expr, side)
    for v in variants(factors[i], units):
        changed = (*factors[:i], v.expr, *factors[i + 1 :])
        yield v._replace(expr=replace(expr, **{side: changed}))


def _of_sum(expr: Sum, units: str) -> Iterator[Variant]:
    for i, term in enumerate(expr.minus):
        key, name = _called(term)
        wrong = Sum((*expr.plus, term), expr.minus[:i] + expr.minus[i + 1 :])
        says = f"The {name} is added. The formula takes it away."
        yield Variant("added", key, wrong, says)
    for i, term in enumerate(expr.plus):
        key, name = _called(term)
        rest = expr.plus[:i] + expr.plus[i + 1 :]
        if rest and len(rest) + len(expr.minus) > 1:
            yield Variant("left_out", key, Sum(rest, expr.minus), f"Left out: the {name}.")


@lru_cache(maxsize=1024)
def mistaken_changes(plan: Plan) -> tuple[Change, ...]:
    """Every mistake of a chain: first the slips of its formulas, then those of its shape."""
    return tuple(chain(_slips(plan), _generic(plan), _stopped_early(plan)))


def _slips(plan: Plan) -> Iterator[Change]:
    known = set(plan.given)
    for at, link in enumerate(plan.links):
        for slip in link.formula.slips if link.as_defined else ():
            if known >= set(names(slip.expr)):
                says = f"{_where(plan, at)} {spoken(slip.says, plan.units)}"
                yield Change(f"{link.target}.{slip.id}", at, compiled(slip.expr, plan.units), says)
        known.add(link.target)


def _generic(plan: Plan) -> Iterator[Change]:
    for at, link in enumerate(plan.links):
        for v in variants(link.expr, plan.units):
            name = ".".join(filter(None, (link.target, v.kind, v.factor)))
            says = f"{_where(plan, at)} {v.says} {reason(link, plan.units)}"
            yield Change(name, at, compiled(v.expr, plan.units), says)


def _stopped_early(plan: Plan) -> Iterator[Change]:
    real = [at for at in range(len(plan.links)) if not plan.only_renames(at)]
    for at in real[-2:-1]:
        here, asked = (quantity_named(n).label for n in (plan.links[at].target, plan.asked))
        says = f"This is the {here}, one step short. Work on from it to the {asked}."
        stop = compiled(Known(plan.links[at].target), plan.units)
        yield Change(
            f"{plan.asked}.stopped_at.{plan.links[at].target}", len(plan.links) - 1, stop, says
        )


def _where(plan: Plan, at: int) -> str:
    return f"Look at step {at + 1}, the {quantity_named(plan.links[at].target).label}."
