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
from solver.algebra.tree import children, is_one, walk

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
    match expr:
        case Known(name):
            return known.get(name, expr)
        case Product(over, under):
            return _multiplied([put_in(f, known) for f in over], [put_in(f, known) for f in under])
        case Sum(plus, minus):
            return Sum(
                tuple(put_in(t, known) for t in plus), tuple(put_in(t, known) for t in minus)
            )
        case Fraction(of):
            inner = put_in(of, known)
            return inner.of if isinstance(inner, Percent) else Fraction(inner)
        case Percent(of):
            inner = put_in(of, known)
            return inner.of if isinstance(inner, Fraction) else Percent(inner)
        case Power(base, exponent):
            return Power(put_in(base, known), exponent)
    return expr if not set(known) & {n.name for n in walk(expr) if isinstance(n, Known)} else Odd()


class Odd(Expr):
    """What is not written in one line, such as a table or an average of worked values."""


def _multiplied(over: Sequence[Expr], under: Sequence[Expr]) -> Expr:
    top = reduce(product, over) if over else Product(())
    for factor in under:
        top = product(top, Product((), (factor,)))
    return top


def _is_plain(expr: Expr, units: str) -> bool:
    """Whether it is products of quantities, constants and powers of them, or one sum of those."""
    leaves = [n for n in walk(expr) if not children(n) and not is_one(n, units)]
    if len(leaves) > MOST or any(isinstance(n, Odd) for n in leaves):
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
