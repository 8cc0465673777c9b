"""What is read from the tree of an expression: its nodes and names, itself rearranged, its value."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from math import fsum, pow
from operator import itemgetter
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
    product,
    terms,
)

__all__ = [
    "Compute",
    "Values",
    "children",
    "compiled",
    "constants",
    "is_one",
    "isolate",
    "names",
    "walk",
    "with_children",
]

Values = Mapping[str, float]
Compute = Callable[[Values], float]


def children(expr: Expr) -> tuple[Expr, ...]:
    """The nodes one level down, in reading order."""
    match expr:
        case Known() | Number() | Constant():
            return ()
        case Product(over, under):
            return over + under
        case Sum(plus, minus):
            return plus + minus
        case Power(base, exponent):
            return (base,) if isinstance(exponent, int | float) else (base, exponent)
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
            base, *raised = inner
            return Power(base, raised[0] if raised else expr.exponent)
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


def isolate(expr: Expr, name: str, result: Expr) -> Expr | None:
    """Rearrange `result = expr` for the quantity `name`; None where that cannot be done."""
    if expr == Known(name):
        return result
    holders = [c for c in children(expr) if name in names(c)]
    if len(holders) != 1 or sum(Known(name) == n for n in walk(expr)) != 1:
        return None
    inner = _undo(expr, holders[0], result)
    return None if inner is None else isolate(holders[0], name, inner)


def _undo(expr: Expr, holder: Expr, result: Expr) -> Expr | None:
    """What `holder`, one child of `expr`, equals when `expr` equals `result`."""
    match expr:
        case Product(over, under) if holder in over:
            return product(result, Product(under, _without(over, holder)))
        case Product(over, under):
            return product(Product(over, _without(under, holder)), Product((), (result,)))
        case Sum(plus, minus) if holder in plus:
            added, taken = terms(result)
            return Sum((*added, *minus), (*taken, *_without(plus, holder)))
        case Sum(plus, minus):
            return Sum(plus, (*_without(minus, holder), result))
        case Power(base, exponent):
            back = 1 / exponent if isinstance(exponent, int | float) else Number(1) / exponent
            return Power(result, back) if holder == base else None
        case Fraction(_):
            return Percent(result)
        case Percent(_):
            return Fraction(result)
        case Mean(of):
            return Sum((product(Number(len(of)), result),), _without(of, holder))
        case Exponential() | Abs() | Largest() | Smallest() | Lookup():
            return None
        case Known() | Number() | Constant():
            return None
        case _:
            assert_never(expr)


def compiled(expr: Expr, units: str, instead: Mapping[Constant, float] | None = None) -> Compute:
    """A function from known values (in the system's own units) to the expression's value.

    `instead` gives other values for some constants: another rounding that is in use.
    """
    inner = [compiled(child, units, instead) for child in children(expr)]
    match expr:
        case Known(name):
            return itemgetter(name)
        case Number(value):
            return _always(value)
        case Constant():
            return _always((instead or {}).get(expr, expr.figure(units).value))
        case Product(over, _):
            return _multiply(inner[: len(over)], inner[len(over) :])
        case Sum(plus, _):
            return _add(inner[: len(plus)], inner[len(plus) :])
        case Mean(of):
            return lambda v: fsum(f(v) for f in inner) / len(of)
        case Largest(_):
            return lambda v: max(f(v) for f in inner)
        case Smallest(_):
            return lambda v: min(f(v) for f in inner)
        case Power(_, exponent):
            raised = _always(exponent) if isinstance(exponent, int | float) else inner[1]
            return lambda v: pow(inner[0](v), raised(v))
        case Exponential() | Fraction() | Percent() | Abs() | Lookup():
            return _of_one(expr, inner[0], units)
        case _:
            assert_never(expr)


def _always(value: float) -> Compute:
    return lambda v: value


def _of_one(
    expr: Exponential | Fraction | Percent | Abs | Lookup, of: Compute, units: str
) -> Compute:
    """A node over one other."""
    match expr:
        case Exponential(base, _):
            return lambda v: pow(base, of(v))
        case Fraction(_):
            return lambda v: of(v) / 100
        case Percent(_):
            return lambda v: of(v) * 100
        case Abs(_):
            return lambda v: abs(of(v))
        case Lookup(_, read):
            return lambda v: read(of(v), units)
        case _:
            assert_never(expr)


def _add(plus: list[Compute], minus: list[Compute]) -> Compute:
    return lambda v: fsum([*(f(v) for f in plus), *(-f(v) for f in minus)])


def _multiply(over: list[Compute], under: list[Compute]) -> Compute:
    if len(over) == 1 and len(under) == 1:
        top, bottom = over[0], under[0]
        return lambda v: top(v) / bottom(v)

    def value(v: Values) -> float:
        result = 1.0
        for factor in over:
            result *= factor(v)
        for factor in under:
            result /= factor(v)
        return result

    return value


def _without(items: tuple[Expr, ...], item: Expr) -> tuple[Expr, ...]:
    where = items.index(item)
    return items[:where] + items[where + 1 :]
