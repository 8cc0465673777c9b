"""Walking an expression: its nodes, and the quantities and constants in it."""

from collections.abc import Iterator

from .constant import Constant
from .expression import (
    Abs,
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

__all__ = ["children", "constants", "is_one", "names", "walk"]


def children(expr: Expr) -> tuple[Expr, ...]:
    """The nodes one level down, in reading order."""
    match expr:
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
        case Mean(of) | Largest(of) | Smallest(of):
            return of
    return ()


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
