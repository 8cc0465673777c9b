"""The right-hand side of an equation, as frozen data built with ordinary arithmetic.

`flow * head / WATER_POWER` makes a `Product`; nothing is computed until `compiled` (tree.py) makes
a function of it. `Expr` is the closed union of the nodes. Behavior lives in functions over the tree,
so a new reading of an equation (typeset, rearranged, a mistake) never touches the nodes. Each such
function names every node and ends in `assert_never`, so that a node it misses is an error of mypy;
tests/solver/test_nodes.py runs each of them over one of every node.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import NamedTuple, TypeAlias

from solver.errors import BadDefinition

__all__ = [
    "Abs",
    "Constant",
    "Exponential",
    "Expr",
    "Figure",
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
    "terms",
]


class _Node:
    """Any node; the operators build products and sums with their factors side by side."""

    __slots__ = ()

    def __mul__(self, other: "Expr | float") -> "Expr":
        return product(_node(self), _node(other))

    def __truediv__(self, other: "Expr | float") -> "Expr":
        return product(_node(self), Product((), (_node(other),)))

    def __add__(self, other: "Expr | float") -> "Expr":
        plus, minus = terms(_node(self))
        return Sum((*plus, _node(other)), minus)

    def __sub__(self, other: "Expr | float") -> "Expr":
        plus, minus = terms(_node(self))
        return Sum(plus, (*minus, _node(other)))

    def __pow__(self, exponent: "Expr | float") -> "Expr":
        return Power(_node(self), exponent)


@dataclass(frozen=True)
class Known(_Node):
    """A named quantity of the vocabulary."""

    name: str


@dataclass(frozen=True)
class Number(_Node):
    """A pure number that belongs to the equation itself, such as the 4 in a least volume."""

    value: float


class Figure(NamedTuple):
    """A constant in one system: the trade's value, its unit, other roundings in use, the exact."""

    value: float
    unit: str
    also: tuple[float, ...] = ()
    exact: float | None = None


@dataclass(frozen=True)
class Constant(_Node):
    """A constant of the trade.

    Raises:
        BadDefinition: it has no source.
    """

    name: str
    label: str
    us: Figure
    si: Figure
    source: str

    def __post_init__(self) -> None:
        if not self.source.strip():
            raise BadDefinition(
                f"constant {self.name!r} has no source: name one, or write "
                "'common practice, no source'"
            )

    def figure(self, units: str) -> Figure:
        """The constant as the system `units` ("us" or "si") has it."""
        return self.us if units == "us" else self.si


@dataclass(frozen=True)
class Product(_Node):
    """Factors above the line over factors below it."""

    over: tuple["Expr", ...]
    under: tuple["Expr", ...] = ()


@dataclass(frozen=True)
class Sum(_Node):
    """Terms added, less the terms taken away."""

    plus: tuple["Expr", ...]
    minus: tuple["Expr", ...] = ()


@dataclass(frozen=True)
class Power(_Node):
    """A base to an exponent: a number, or one that is looked up, such as a flume's."""

    base: "Expr"
    exponent: "Expr | float"


@dataclass(frozen=True)
class Exponential(_Node):
    """A constant base to an exponent that is worked out, such as halving every ten degrees."""

    base: float
    exponent: "Expr"


@dataclass(frozen=True)
class Fraction(_Node):
    """A percentage written as a decimal: 82 % is 0.82."""

    of: "Expr"


@dataclass(frozen=True)
class Percent(_Node):
    """A decimal written as a percentage: 0.82 is 82 %."""

    of: "Expr"


@dataclass(frozen=True)
class Abs(_Node):
    """A difference taken without its sign."""

    of: "Expr"


@dataclass(frozen=True)
class Mean(_Node):
    """The average of several readings."""

    of: tuple["Expr", ...]


@dataclass(frozen=True)
class Largest(_Node):
    """The largest of several readings."""

    of: tuple["Expr", ...]


@dataclass(frozen=True)
class Smallest(_Node):
    """The smallest of several readings."""

    of: tuple["Expr", ...]


@dataclass(frozen=True)
class Lookup(_Node):
    """A value read from a published table: `read(value, units)`; `rule` says how it is read."""

    of: "Expr"
    read: Callable[[float, str], float]
    rule: str
    reads: tuple[str, str]
    gives: tuple[str, str]


Expr: TypeAlias = (
    Known
    | Number
    | Constant
    | Product
    | Sum
    | Power
    | Exponential
    | Fraction
    | Percent
    | Abs
    | Mean
    | Largest
    | Smallest
    | Lookup
)


def _node(value: object) -> Expr:
    if isinstance(value, Expr):
        return value
    if isinstance(value, int | float):
        return Number(value)
    raise BadDefinition(f"{value!r} stands in an expression: write Known(...) or a number")


def product(left: Expr, right: Expr) -> Expr:
    """`left` times `right`, with all factors side by side over one line."""
    over: list[Expr] = []
    under: list[Expr] = []
    for side in (left, right):
        if isinstance(side, Product):
            over += side.over
            under += side.under
        else:
            over.append(side)
    # A quotient below the line turns round: a / (b / c) is a c / b.
    for factor in [f for f in under if isinstance(f, Product)]:
        under.remove(factor)
        over += factor.under
        under += factor.over
    if len(over) == 1 and not under:
        return over[0]
    return Product(tuple(over), tuple(under))


def terms(expr: Expr) -> tuple[tuple[Expr, ...], tuple[Expr, ...]]:
    """The terms added and those taken away, of a sum or of anything as one term."""
    return (expr.plus, expr.minus) if isinstance(expr, Sum) else ((expr,), ())
