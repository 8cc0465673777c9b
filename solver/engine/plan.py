"""The chain of formulas from what is known to what is asked, and that chain as one line.

The search moves forward: each round adds every quantity that one formula gives from those
already known, so the chain found is the shallowest. Formulas that stand earlier win a tie.
One line is gpm × TDH / (3,960 × pump efficiency).
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache, reduce
from typing import NamedTuple

from solver.algebra.expression import (
    Expr,
    Fraction,
    Known,
    Number,
    Percent,
    Power,
    Product,
    Sum,
    product,
)
from solver.algebra.formula import Formula
from solver.algebra.tree import Compute, children, compiled, is_one, names, walk, with_children
from solver.errors import NotSolvable
from solver.vocabulary import quantity_named

__all__ = [
    "Link",
    "Plan",
    "composed",
    "find_plan",
    "in_one_line",
    "put_in",
    "reachable",
    "worked_on",
]

LONGEST = 8  # quantities and constants that are still read at a glance


class Link(NamedTuple):
    """One step of a chain: `target` equals `expr`, which is `formula`, perhaps rearranged."""

    target: str
    expr: Expr
    formula: Formula

    @property
    def as_defined(self) -> bool:
        """Whether the formula is used the way it is written, not rearranged."""
        return self.target == self.formula.result


@dataclass(frozen=True, eq=False)
class Plan:
    """An ordered chain of links for one set of givens, in one system of units."""

    given: tuple[str, ...]
    asked: str
    links: tuple[Link, ...]
    units: str

    @cached_property
    def functions(self) -> tuple[tuple[str, Compute], ...]:
        """Each link as (target, function of what is known before it)."""
        return tuple((link.target, compiled(link.expr, self.units)) for link in self.links)

    def run(self, given: Mapping[str, float]) -> dict[str, float]:
        """Every quantity of the chain, in the system's own units, from the given values."""
        return worked_on(dict(given), self.functions)

    def follow(self, known: Mapping[str, float], at: int, value: float) -> dict[str, float]:
        """The chain again when link number `at` gives `value` instead, and all after it follow."""
        again = {**known, self.links[at].target: value}
        return worked_on(again, self.functions[at + 1 :])

    def only_renames(self, at: int) -> bool:
        """Whether a link changes nothing but the name: motor kW is meter kW in metric."""
        expr = self.links[at].expr
        factors = children(expr) if isinstance(expr, Product) else (expr,)
        kept = [factor for factor in factors if not is_one(factor, self.units)]
        return len(kept) == 1 and isinstance(kept[0], Known)


def worked_on(
    known: dict[str, float], functions: Iterable[tuple[str, Compute]]
) -> dict[str, float]:
    """What is known, with what each function gives of all before it put in."""
    for target, function in functions:
        known[target] = function(known)
    return known


class _Places(NamedTuple):
    """The formulas of one system, and at which of them each quantity stands or sets it aside."""

    formulas: tuple[Formula, ...]
    sizes: tuple[int, ...]
    within: Mapping[str, Sequence[int]]
    aside: Mapping[str, Sequence[int]]


@lru_cache(maxsize=16)
def _places(formulas: tuple[Formula, ...], units: str) -> _Places:
    usable = tuple(formula for formula in formulas if units in formula.systems)
    within, aside = defaultdict(list), defaultdict(list)
    for at, formula in enumerate(usable):
        for name in formula.quantities:
            within[name].append(at)
        for name in formula.set_aside_by:
            aside[name].append(at)
    return _Places(usable, tuple(len(f.quantities) for f in usable), within, aside)


def reachable(
    given: Iterable[str], formulas: tuple[Formula, ...], units: str
) -> dict[str, Link | None]:
    """Every quantity that follows from `given`, each with the link that gives it, in order."""
    found: dict[str, Link | None] = dict.fromkeys(given)
    usable, sizes, within, aside = _places(formulas, units)
    unknown = list(sizes)  # how many quantities of each formula are
    for name in found:
        for at in aside.get(name, ()):
            unknown[at] = 0
    fresh: Iterable[str] = list(found)
    while True:
        for name in fresh:
            for at in within.get(name, ()):
                unknown[at] -= 1
        links: dict[str, Link] = {}
        for formula in (usable[at] for at, many in enumerate(unknown) if many == 1):
            name = next(name for name in formula.names if name not in found)
            if name not in links and name in formula.solvable:
                links[name] = Link(name, formula.solved_for(name), formula)
        if not links:
            return found
        found |= links
        fresh = links


@lru_cache(maxsize=1024)
def find_plan(
    given: tuple[str, ...], asked: str, formulas: tuple[Formula, ...], units: str
) -> Plan:
    """The chain from `given` to `asked` in the system `units` ("us" or "si").

    Raises:
        NotSolvable: no chain leads there.
    """
    found = reachable(given, formulas, units)
    if asked not in found:
        label = quantity_named(asked).label(units)
        raise NotSolvable(f"{label} can't be calculated from {', '.join(given) or 'nothing'}")
    needed: dict[str, Link] = {}
    queue = [asked]
    while queue:
        name = queue.pop()
        if (link := found[name]) is not None and name not in needed:
            needed[name] = link
            queue += names(link.expr)
    ordered = tuple(needed[name] for name in found if name in needed)
    return Plan(given, asked, ordered, units)


def composed(plan: Plan, instead: Mapping[int, Expr] | None = None) -> Expr | None:
    """What is asked as one expression of what is given; None where that is not short.

    `instead` has other expressions for some links, by their number.
    """
    known: dict[str, Expr] = {}
    for at, link in enumerate(plan.links):
        expr = (instead or {}).get(at, link.expr)
        known[link.target] = put_in(expr, known)
        if sum(1 for _ in walk(known[link.target])) > 4 * LONGEST:
            return None
    whole = known[plan.asked]
    return whole if _is_plain(whole, plan.units) else None


@lru_cache(maxsize=1024)
def in_one_line(plan: Plan) -> Expr | None:
    """The whole chain as one expression; None where it has one step only, or is not short."""
    real = [at for at in range(len(plan.links)) if not plan.only_renames(at)]
    return composed(plan) if len(real) > 1 else None


def put_in(expr: Expr, known: Mapping[str, Expr]) -> Expr:
    """The expression with others for some of its quantities."""
    inner = [put_in(child, known) for child in children(expr)]
    match expr, inner:
        case Known(name), _:
            return known.get(name, expr)
        case Product(over, _), _:
            return _multiplied(inner[: len(over)], inner[len(over) :])
        case (Fraction(), [Percent(of)]) | (Percent(), [Fraction(of)]):
            return of
    return with_children(expr, inner)


def _multiplied(over: Sequence[Expr], under: Sequence[Expr]) -> Expr:
    top = reduce(product, over) if over else Product(())
    for factor in under:
        top = product(top, Product((), (factor,)))
    return top


def _is_plain(expr: Expr, units: str) -> bool:
    """Whether it is products of quantities, constants and powers of them, or one sum of those."""
    leaves = [n for n in walk(expr) if not children(n) and not is_one(n, units)]
    if len(leaves) > LONGEST:
        return False
    match expr:
        case Sum(plus, minus):
            return all(_is_term(term) for term in plus + minus)
        case Percent(of):
            return _is_term(of)
    return _is_term(expr)


def _is_term(expr: Expr) -> bool:
    match expr:
        case Product(over, under):
            return all(map(_is_factor, over + under))
    return _is_factor(expr)


def _is_factor(expr: Expr) -> bool:
    match expr:
        case Fraction(of) | Power(of):
            return _is_leaf(of)
        case Sum(plus, minus):
            return all(map(_is_leaf, plus + minus))
    return _is_leaf(expr)


def _is_leaf(expr: Expr) -> bool:
    return isinstance(expr, Known | Number) or not children(expr)
