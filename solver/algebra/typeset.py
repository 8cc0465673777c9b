"""An expression written out: as words or as numbers, as plain text or as LaTeX.

One walk over the tree serves all four; a `Notation` says how the marks look, and a leaf function
says whether a quantity stands as its name or as its value.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from math import floor, isclose, log10

from solver.units.show import constant_unit, exact, figures, latex_with_unit, with_unit
from solver.vocabulary import quantity_named

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
from .tree import children, is_one

__all__ = ["LATEX", "TEXT", "Notation", "labelled", "numbers", "symbols", "unit_after", "words"]


@dataclass(frozen=True)
class Notation:
    """The marks of one way of writing."""

    times: str
    minus: str
    word: Callable[[str], str]
    valued: Callable[[str, str], str]
    fraction: Callable[[str, str], str]
    root: Callable[[str], str]
    power: Callable[[str, str], str]
    percent: str
    stacked: bool = False  # fractions stand over a line, so they need no brackets


TEXT = Notation(
    times=" × ",
    minus=" − ",
    word=str,
    valued=with_unit,
    fraction=lambda over, under: f"{over} / {under}",
    root=lambda inner: f"√{inner}",
    power=lambda base, exponent: f"{base}^{exponent}",
    percent="100%",
)
LATEX = Notation(
    times=r" \times ",
    minus=" - ",
    word=lambda text: rf"\text{{{text}}}".replace("%", r"\%").replace("$", r"\$"),
    valued=latex_with_unit,
    fraction=lambda over, under: rf"\dfrac{{{over}}}{{{under}}}",
    root=lambda inner: rf"\sqrt{{{inner}}}",
    power=lambda base, exponent: f"{{{base}}}^{{{exponent}}}",
    percent=r"100\%",
    stacked=True,
)

Leaf = Callable[[Expr], str]
TOO_LONG = 1e10  # a constant above this is written as a power of ten
NUMBER = "\0"  # where a number goes


@lru_cache(maxsize=4096)
def words(expr: Expr, units: str, notation: Notation = TEXT) -> str:
    """The expression in the names of its quantities."""

    def leaf(node: Expr) -> str:
        match node:
            case Known(name):
                return notation.word(quantity_named(name).label(units))
            case Fraction(of):
                return notation.word(f"{quantity_named(of.name).label(units)} (as a decimal)")
        return _constant(node, units, notation)

    return _written(expr, units, notation, leaf)


def labelled(expr: Expr, units: str, notation: Notation = TEXT) -> str:
    """The expression in the names of its quantities, each with its unit in brackets."""

    def leaf(node: Expr) -> str:
        match node:
            case Known(name):
                return notation.word(unit_after(name, units))
            case Fraction(of):
                return notation.word(f"{quantity_named(of.name).label(units)} (decimal)")
        return _constant(node, units, notation)

    return _written(expr, units, notation, leaf)


def unit_after(name: str, units: str) -> str:
    """A quantity's label with its unit in brackets; "slip in rpm" says it already.

    >>> unit_after("flow", "us"), unit_after("power_factor", "us")
    ('flow (gpm)', 'power factor')
    """
    quantity = quantity_named(name)
    unit = with_unit("", quantity.unit(units)).strip()
    label = quantity.label(units)
    return label if quantity.says_unit(units) else f"{label} ({unit})"


def symbols(expr: Expr, units: str) -> str:
    """The expression in LaTeX symbols, as a formula sheet has it."""

    def leaf(node: Expr) -> str:
        match node:
            case Known(name):
                return quantity_named(name).symbol(units)
            case Fraction(of):
                return quantity_named(of.name).symbol(units)
        return _constant(node, units, LATEX)

    return _written(expr, units, LATEX, leaf)


def numbers(
    expr: Expr,
    units: str,
    known: Mapping[str, float],
    given,
    notation: Notation = TEXT,
    *,
    cancel: bool = False,
) -> str:
    """The expression with its numbers put in; given ones whole, worked ones to four figures.

    With `cancel` its constants have their units too, so that a reader can cancel them.

    >>> from solver.topics.formulas import POWER
    >>> numbers(POWER[3].expr, "us", {"flow": 150.0, "head": 66.0}, {"flow", "head"}, cancel=True)
    '150 gpm × 66 ft / (3,960 gpm·ft/hp)'
    """
    pieces, slots = _frame(expr, units, notation, cancel)
    written = [pieces[0]]
    for (name, unit), piece in zip(slots, pieces[1:], strict=True):
        write = exact if name in given else figures
        value = known[name]
        written.append(
            write(value / 100) if unit is None else notation.valued(write(value, unit), unit)
        )
        written.append(piece)
    return "".join(written)


Slot = tuple[str, str | None]


@lru_cache(maxsize=4096)
def _frame(
    expr: Expr, units: str, notation: Notation, cancel: bool
) -> tuple[tuple[str, ...], tuple[Slot, ...]]:
    """What stands around the numbers of an expression; and its numbers as (name, unit).

    The unit is None for a percentage that is put in as a decimal.
    """
    slots: list[Slot] = []

    def leaf(node: Expr) -> str:
        match node:
            case Known(name):
                slots.append((name, quantity_named(name).unit(units)))
                return NUMBER
            case Fraction(of):
                slots.append((of.name, None))
                return NUMBER
        return _constant(node, units, notation, cancel)

    return tuple(_written(expr, units, notation, leaf).split(NUMBER)), tuple(slots)


def _constant(node: Expr, units: str, notation: Notation, cancel: bool = False) -> str:
    value, unit = node.figure(units)[:2] if isinstance(node, Constant) else (node.value, "")
    if value >= TOO_LONG:
        exponent = floor(log10(value))
        return exact(value / 10**exponent) + notation.times + notation.power("10", str(exponent))
    behind = constant_unit(unit) if cancel else ""
    written = notation.valued(exact(value), behind) if behind else exact(value)
    return f"({written})" if " per " in behind else written


def _written(expr: Expr, units: str, notation: Notation, leaf: Leaf) -> str:
    def inside(node: Expr) -> str:
        return _written(node, units, notation, leaf)

    def factors(nodes: tuple[Expr, ...]) -> str:
        kept = [node for node in nodes if not is_one(node, units)] or [Number(1)]
        many = len(kept) > 1
        return notation.times.join(_bracketed(n, inside(n), many) for n in kept)

    match expr:
        case Known() | Constant() | Number() | Fraction(Known()):
            return leaf(expr)
        case Fraction(of):
            return notation.fraction(_bracketed(of, inside(of), True), "100")
        case Percent(of):
            return (
                _bracketed(of, inside(of), isinstance(of, Sum)) + notation.times + notation.percent
            )
        case Product(over, under) if any(not is_one(node, units) for node in under):
            above = _sum_bracketed(factors(over), over, units, notation)
            return _over_line(above, factors(under), under, units, notation)
        case Product(over, _):
            return factors(over)
        case Sum(plus, minus):
            taken = (notation.minus + _bracketed(n, inside(n), True) for n in minus)
            return (" + ".join(map(inside, plus)) + "".join(taken)).lstrip()
        case Power(base, 0.5):
            within = inside(base)
            return notation.root(within if notation.stacked else _grouped(base, within, notation))
        case Power(base, exponent):
            return notation.power(
                _grouped(base, inside(base), notation), _raised(exponent, notation)
            )
        case Exponential(base, exponent):
            raised = inside(exponent)
            return notation.power(f"{base:g}", raised if notation.stacked else f"({raised})")
        case Abs(of):
            return f"|{inside(of)}|"
        case Mean(of):
            total = " + ".join(map(inside, of))
            over = total if notation.stacked else f"({total})"
            return notation.fraction(over, str(len(of)))
        case Largest() | Smallest():
            which = "largest of " if isinstance(expr, Largest) else "smallest of "
            return notation.word(which) + f"({', '.join(map(inside, children(expr)))})"
        case Lookup(of):
            return notation.word(f"{expr.rule} ") + inside(of)
    raise TypeError(f"{expr!r} cannot be written out")


def _sum_bracketed(text: str, nodes, units: str, notation: Notation) -> str:
    """Brackets around a sum that stands alone on one side of a line written as a stroke."""
    kept = [node for node in nodes if not is_one(node, units)]
    alone = len(kept) == 1 and isinstance(kept[0], Sum)
    return f"({text})" if alone and not notation.stacked else text


def _over_line(over: str, under: str, nodes, units: str, notation: Notation) -> str:
    kept = [node for node in nodes if not is_one(node, units)]
    strokes = notation.times in under or ("/" in under and not under.startswith("("))
    long = isinstance(kept[0], Constant) and strokes
    if not notation.stacked and (len(kept) > 1 or isinstance(kept[0], Sum) or long):
        under = f"({under})"
    return notation.fraction(over, under)


def _grouped(base: Expr, text: str, notation: Notation) -> str:
    """Brackets around what a power or a root takes, unless it is one sign or is typeset as one.

    In plain text a quantity always has them, for its value has a unit behind it.
    """
    one_sign = isinstance(base, Constant | Number) and text.isalnum()
    typeset = isinstance(base, Known | Constant | Number) and notation.stacked
    return text if one_sign or typeset else f"({text})"


def _raised(exponent: float, notation: Notation) -> str:
    """An exponent; a third is written as one."""
    if isclose(exponent, 1 / 3):
        return "1/3" if notation.stacked else "(1/3)"
    return f"{exponent:g}"


def _bracketed(node: Expr, text: str, needed: bool) -> str:
    """Brackets where a sum, or a percentage, stands among factors."""
    return f"({text})" if needed and isinstance(node, Sum | Percent) else text
