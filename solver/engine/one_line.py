"""A chain of formulas as one line: gpm × TDH / (3,960 × pump efficiency)."""

from collections.abc import Mapping, Sequence
from functools import lru_cache, reduce

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
from solver.algebra.tree import children, is_one, walk, with_children

from .plan import Plan

__all__ = ["composed", "in_one_line", "put_in"]

MOST = 8  # quantities and constants that are still read at a glance


def composed(plan: Plan, instead: Mapping[int, Expr] | None = None) -> Expr | None:
    """What is asked as one expression of what is given; None where that is not short.

    `instead` has other expressions for some links, by their number.
    """
    known: dict[str, Expr] = {}
    for at, link in enumerate(plan.links):
        expr = (instead or {}).get(at, link.expr)
        known[link.target] = put_in(expr, known)
        if sum(1 for _ in walk(known[link.target])) > 4 * MOST:
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
    if len(leaves) > MOST:
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
