"""Walking an expression: its nodes, the quantities and constants in it, and other nodes in their place."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import assert_never

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

__all__ = ["children", "constants", "is_one", "names", "walk", "with_children"]


def children(expr: Expr) -> tuple[Expr, ...]:
    """The nodes one level down, in reading order."""
    match expr:
        case Known() | Number() | Constant():
            return ()
        case Product(over, under):
            return over + under
        case Sum(plus, minus):
            return plus + minus
        case Power(base, _):
            return (base,)
        case Exponential(_, exponent):
            return (exponent,)
        case Fraction(of) | Percent(of) | Abs(of) | Lookup(of):
            return (of,)
        case Mean(readings) | Largest(readings) | Smallest(readings):
            return readings
        case _:
            assert_never(expr)


def with_children(expr: Expr, inner: Sequence[Expr]) -> Expr:
    """The same node over other nodes, which stand in the order of `children`."""
    match expr:
        case Known() | Number() | Constant():
            return expr
        case Product(over, _):
            return Product(tuple(inner[: len(over)]), tuple(inner[len(over) :]))
        case Sum(plus, _):
            return Sum(tuple(inner[: len(plus)]), tuple(inner[len(plus) :]))
        case Power():
            return replace(expr, base=inner[0])
        case Exponential():
            return replace(expr, exponent=inner[0])
        case Fraction() | Percent() | Abs() | Lookup():
            return replace(expr, of=inner[0])
        case Mean() | Largest() | Smallest():
            return replace(expr, of=tuple(inner))
        case _:
            assert_never(expr)


def walk(expr: Expr) -> Iterator[Expr]:
    """Every node of the tree, the root first."""
    yield expr
    for child in children(expr):
        yield from walk(child)


def names(expr: Expr) -> tuple[str, ...]:
    """The quantities an expression needs, each once, in reading order."""
    return tuple(dict.fromkeys(n.name for n in walk(expr) if isinstance(n, Known)))


def constants(expr: Expr) -> tuple[Constant, ...]:
    """The constants an expression uses, each once."""
    return tuple(dict.fromkeys(n for n in walk(expr) if isinstance(n, Constant)))


def is_one(expr: Expr, units: str) -> bool:
    """Whether a factor is exactly one in this system, so that nobody writes it."""
    return isinstance(expr, Constant) and expr.figure(units)[:2] == (1, "")
