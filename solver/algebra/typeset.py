"""An expression in words, in symbols or with its numbers, as plain text or as LaTeX (notation.py)."""

from collections.abc import Container, Mapping
from functools import lru_cache

from solver.units.show import exact, figures, with_unit
from solver.vocabulary import quantity_named

from .expression import Expr
from .notation import LATEX, TEXT, Notation, Writer

__all__ = ["labelled", "numbers", "symbols", "unit_after", "words"]

NUMBER = "\0"  # where a number goes
Slot = tuple[str, str | None]


@lru_cache(maxsize=4096)
def words(expr: Expr, units: str, notation: Notation = TEXT) -> str:
    """The expression in the names of its quantities, as the system "us" or "si" has them."""

    def named(name: str, as_decimal: bool) -> str:
        label = quantity_named(name).label(units)
        return notation.word(f"{label} (as a decimal)" if as_decimal else label)

    return Writer(units, notation, named).written(expr)


def labelled(expr: Expr, units: str, notation: Notation = TEXT) -> str:
    """The expression in the names of its quantities, each with its unit in parentheses."""

    def named(name: str, as_decimal: bool) -> str:
        label = quantity_named(name).label(units)
        return notation.word(f"{label} (decimal)" if as_decimal else unit_after(name, units))

    return Writer(units, notation, named).written(expr)


def unit_after(name: str, units: str) -> str:
    """A quantity's label with its unit in parentheses; "slip in rpm" says it already.

    >>> unit_after("flow", "us"), unit_after("power_factor", "us")
    ('flow (gpm)', 'power factor')
    """
    quantity = quantity_named(name)
    unit = with_unit("", quantity.unit(units)).strip()
    label = quantity.label(units)
    return label if quantity.says_unit(units) else f"{label} ({unit})"


def symbols(expr: Expr, units: str) -> str:
    """The expression in LaTeX symbols, as a formula sheet has it."""
    return Writer(units, LATEX, lambda name, _: quantity_named(name).symbol(units)).written(expr)


def numbers(
    expr: Expr,
    units: str,
    known: Mapping[str, float],
    given: Container[str],
    notation: Notation = TEXT,
    *,
    cancel: bool = False,
) -> str:
    """The expression with its numbers put in; given ones whole, worked ones to four figures.

    `known` has each quantity in its unit of the system `units`. With `cancel` its constants have
    their units too, so that a reader can cancel them.

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


@lru_cache(maxsize=4096)
def _frame(
    expr: Expr, units: str, notation: Notation, cancel: bool
) -> tuple[tuple[str, ...], tuple[Slot, ...]]:
    """What stands around the numbers of an expression; and its numbers as (name, unit).

    The unit is None for a percentage that is put in as a decimal.
    """
    slots: list[Slot] = []

    def slot(name: str, as_decimal: bool) -> str:
        slots.append((name, None if as_decimal else quantity_named(name).unit(units)))
        return NUMBER

    text = Writer(units, notation, slot, cancel).written(expr)
    return tuple(text.split(NUMBER)), tuple(slots)
