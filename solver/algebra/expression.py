"""The right-hand side of an equation, as frozen data built with ordinary arithmetic.

`flow * head / WATER_POWER` makes a `Product`; nothing is computed until `compiled` turns the
tree (in algebra.py) into a function of the known values. Behaviour lives in functions over the
tree, so a new reading of an equation (typeset, turned round, a mistake) never touches the nodes.
"""

from collections.abc import Callable
from dataclasses import dataclass

__all__ = [
    "Abs",
    "Exponential",
    "Expr",
    "Fraction",
    "Known",
    "Largest",
    "Lookup",
    "Mean",
    "Number",
    "Percent",
    "Power",
    "Product",
    "Smallest",
    "Sum",
    "product",
]


class Expr:
    """Any node; the operators build products and sums with their factors side by side."""

    __slots__ = ()

    def __mul__(self, other: "Expr | float") -> "Expr":
        return product(self, _node(other))

    def __truediv__(self, other: "Expr | float") -> "Expr":
        return product(self, Product((), (_node(other),)))

    def __add__(self, other: "Expr | float") -> "Expr":
        return Sum((*_plus(self), _node(other)), _minus(self))

    def __sub__(self, other: "Expr | float") -> "Expr":
        return Sum(_plus(self), (*_minus(self), _node(other)))

    def __pow__(self, exponent: float) -> "Expr":
        return Power(self, exponent)


@dataclass(frozen=True)
class Known(Expr):
    """A named quantity of the vocabulary."""

    name: str


@dataclass(frozen=True)
class Number(Expr):
    """A pure number that belongs to the equation itself, such as the 4 in a least volume."""

    value: float


@dataclass(frozen=True)
class Product(Expr):
    """Factors above the line over factors below it."""

    over: tuple[Expr, ...]
    under: tuple[Expr, ...] = ()


@dataclass(frozen=True)
class Sum(Expr):
    """Terms added, less the terms taken away."""

    plus: tuple[Expr, ...]
    minus: tuple[Expr, ...] = ()


@dataclass(frozen=True)
class Power(Expr):
    """A base to a constant exponent."""

    base: Expr
    exponent: float


@dataclass(frozen=True)
class Exponential(Expr):
    """A constant base to an exponent that is worked out, such as halving every ten degrees."""

    base: float
    exponent: Expr


@dataclass(frozen=True)
class Fraction(Expr):
    """A percentage written as a decimal: 82 % is 0.82."""

    of: Expr


@dataclass(frozen=True)
class Percent(Expr):
    """A decimal written as a percentage: 0.82 is 82 %."""

    of: Expr


@dataclass(frozen=True)
class Abs(Expr):
    """A difference taken without its sign."""

    of: Expr


@dataclass(frozen=True)
class Mean(Expr):
    """The average of several readings."""

    of: tuple[Expr, ...]


@dataclass(frozen=True)
class Largest(Expr):
    """The largest of several readings."""

    of: tuple[Expr, ...]


@dataclass(frozen=True)
class Smallest(Expr):
    """The smallest of several readings."""

    of: tuple[Expr, ...]


@dataclass(frozen=True)
class Lookup(Expr):
    """A value read from a published table: `read(value, units)`; `rule` says how it is read."""

    of: Expr
    read: Callable[[float, str], float]
    rule: str
    reads: tuple[str, str]
    gives: tuple[str, str]


def _node(value: "Expr | float") -> Expr:
    return value if isinstance(value, Expr) else Number(value)


def product(left: Expr, right: Expr) -> Expr:
    """`left` times `right`, with all factors side by side over one line."""
    over, under = [], []
    for side in (left, right):
        match side:
            case Product(o, u):
                over += o
                under += u
            case _:
                over.append(side)
    # A quotient below the line turns round: a / (b / c) is a c / b.
    for factor in [f for f in under if isinstance(f, Product)]:
        under.remove(factor)
        over += factor.under
        under += factor.over
    if len(over) == 1 and not under:
        return over[0]
    return Product(tuple(over), tuple(under))


def _plus(expr: Expr) -> tuple[Expr, ...]:
    return expr.plus if isinstance(expr, Sum) else (expr,)


def _minus(expr: Expr) -> tuple[Expr, ...]:
    return expr.minus if isinstance(expr, Sum) else ()
