"""Every generic way to get one expression wrong, whatever the topic: its shape tells.

Each says what was done ("You multiplied by the pump efficiency.") and what to do instead.
"""

from collections.abc import Iterator
from dataclasses import replace
from math import isclose
from typing import NamedTuple, assert_never

from solver.algebra.expression import (
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
from solver.algebra.notation import TOO_LONG
from solver.algebra.tree import is_one, names
from solver.units.show import exact
from solver.units.unit import unit
from solver.vocabulary import quantity_named

__all__ = ["Variant", "variants"]

COUNTS = ("time", "run schedule", "ratio")


class Variant(NamedTuple):
    """An expression with one thing done wrong, the kind of wrong, and the factor it touches.

    `did` and `instead` may have slots of `spoken` (vocabulary.py).
    """

    kind: str
    factor: str
    expr: Expr
    did: str
    instead: str


class _Called(NamedTuple):
    """A factor in an id, and in a sentence: with its article, after "by", and as "it" or "them"."""

    key: str
    the: str
    by: str
    it: str = "it"


def _called(expr: Expr, units: str) -> _Called:
    match expr:
        case Known(name):
            said = f"the {{{name}:name}}"
            return _Called(name, said, said, f"{{{name}:them}}")
        case Constant():
            value = expr.figure(units).value
            if value >= TOO_LONG:
                return _Called(expr.name, f"the {expr.label}", f"the {expr.label}")
            return _Called(expr.name, f"the {exact(value)}", exact(value))
        case Fraction(of) | Percent(of) | Power(of):
            return _called(of, units)
        case Largest():
            return _Called("highest", "the highest reading", "the highest reading")
        case Smallest():
            return _Called("lowest", "the lowest reading", "the lowest reading")
        case Number() | Product() | Sum() | Exponential() | Abs() | Mean() | Lookup():
            said = _part(expr)
            return _Called("term", said, said)
        case _:
            assert_never(expr)


def _part(expr: Expr) -> str:
    """A part of a formula as people would point at it: by the quantity in it, where it has only one."""
    match [*dict.fromkeys(names(expr))]:
        case [name]:
            return f"the part with the {{{name}:name}}"
    return "part of the formula"


def _can_move(factor: Expr, units: str) -> bool:
    """Whether people put this factor on the wrong side of the line, or leave it out."""
    match factor:
        case Fraction():
            return True
        case Constant():
            return not is_one(factor, units)
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
            key, the, *_ = _called(of, units)
            did = f"You put {the} in as a whole number."
            yield Variant("percent_as_whole", key, of, did, "Use the decimal: 82% is 0.82.")
        case Percent(of):
            did = "You left your result as a decimal."
            yield Variant("left_as_decimal", "", of, did, "Multiply by 100 to make it a percent.")
            yield from (v._replace(expr=Percent(v.expr)) for v in variants(of, units))
        case Mean(of):
            did = "You added the readings and didn't divide."
            instead = f"For the average, divide the total by {len(of)}."
            yield Variant("not_divided", "", Sum(of), did, instead)
        case Power(base, exponent):
            key, the, *_ = _called(base, units)
            key, the = ("", "what is in the parentheses") if key == "term" else (key, the)
            did, instead = _power_left_out(exponent, the, units)
            yield Variant("power_left_out", key, base, did, instead)
            yield from (v._replace(expr=replace(expr, base=v.expr)) for v in variants(base, units))
        case Exponential(base, exponent):
            yield Variant(
                "wrong_way", "", replace(expr, base=1 / base),
                "You corrected in the wrong direction.", "Change the sign of the exponent.",
            )  # fmt: skip
            changed = variants(exponent, units)
            yield from (v._replace(expr=replace(expr, exponent=v.expr)) for v in changed)
        case Lookup(of):
            yield from (v._replace(expr=replace(expr, of=v.expr)) for v in variants(of, units))
        case Known() | Number() | Constant() | Abs() | Largest() | Smallest():
            return
        case _:
            assert_never(expr)


def _power_left_out(exponent: Expr | float, the: str, units: str) -> tuple[str, str]:
    if isinstance(exponent, Known):
        called = _called(exponent, units)
        return f"You left out {called.the}.", f"Take {the} to the power of {called.by}."
    if not isinstance(exponent, int | float):
        return "You left out the root.", f"Take {the} to the power of 1 over the exponent."
    match exponent:
        case 0.5:
            return "You left out the square root.", f"Take the square root of {the}."
        case 2:
            return "You left out the square.", f"Multiply {the} by itself."
        case 3:
            return "You left out the cube.", f"Take {the} to the third power."
    if isclose(exponent, 1 / 3):
        return "You left out the cube root.", f"Take the cube root of {the}."
    return "You left out the exponent.", f"Take {the} to the power of {exponent:.4g}."


def _of_product(expr: Product, units: str) -> Iterator[Variant]:
    over, under = expr.over, expr.under
    match over, under:
        case (Known(),), (Known(),):
            key, the, *_ = _called(over[0], units)
            did = "You turned the ratio upside down."
            yield Variant("upside_down", key, Product(under, over), did, f"Put {the} on top.")
    for i, factor in enumerate(over):
        before, after = over[:i], over[i + 1 :]
        for v in variants(factor, units):
            yield v._replace(expr=Product((*before, v.expr, *after), under))
        if _can_move(factor, units) and before + after:
            yield from _not_above(factor, Product(before + after, under), units)
    for i, factor in enumerate(under):
        before, after = under[:i], under[i + 1 :]
        for v in variants(factor, units):
            yield v._replace(expr=Product(over, (*before, v.expr, *after)))
        if _can_move(factor, units):
            yield from _not_below(factor, Product(over, before + after), units)


def _not_above(factor: Expr, rest: Product, units: str) -> Iterator[Variant]:
    """A factor that belongs above the line left out, or put below it."""
    key, the, by, _ = _called(factor, units)
    instead = f"Multiply by {by}."
    yield Variant("left_out", key, rest, f"You left out {the}.", instead)
    wrong = Product(rest.over, (*rest.under, factor))
    yield Variant("divided_by", key, wrong, f"You divided by {by}.", instead)


def _not_below(factor: Expr, rest: Product, units: str) -> Iterator[Variant]:
    """A factor that belongs below the line left out, or put above it."""
    key, the, by, _ = _called(factor, units)
    instead = f"Divide by {by}."
    yield Variant("left_out", key, rest, f"You left out {the}.", instead)
    wrong = Product((*rest.over, factor), rest.under)
    yield Variant("multiplied_by", key, wrong, f"You multiplied by {by}.", instead)


def _of_sum(expr: Sum, units: str) -> Iterator[Variant]:
    for i, term in enumerate(expr.minus):
        key, the, _, it = _called(term, units)
        wrong = Sum((*expr.plus, term), expr.minus[:i] + expr.minus[i + 1 :])
        yield Variant("added", key, wrong, f"You added {the}.", f"Subtract {it}.")
    for i, term in enumerate(expr.plus):
        key, the, _, it = _called(term, units)
        rest = expr.plus[:i] + expr.plus[i + 1 :]
        if rest and len(rest) + len(expr.minus) > 1:
            wrong = Sum(rest, expr.minus)
            yield Variant("left_out", key, wrong, f"You left out {the}.", f"Add {it} in.")
