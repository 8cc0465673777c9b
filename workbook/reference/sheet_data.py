"""What stands on the formula sheet, as plain data for sheet.typ; no layout."""

from collections.abc import Iterable, Sequence
from typing import Any

from solver.algebra.formula import Formula
from solver.render.print import formula_marked
from solver.topics.formulas import FORMULAS
from solver.units.show import counted, with_unit
from solver.units.unit import convert
from workbook.ui.cautions import caution_lines
from workbook.ui.chapter import formulas_of
from workbook.ui.contents import in_words
from workbook.ui.pages import titles
from workbook.ui.printing import PAPER, UNITS

from .entry import long
from .tables import constants_in, value_said

__all__ = ["CONVERSIONS", "laid_out"]

ABOUT = (
    "The unit of each quantity comes after it. (decimal): put the percentage in as a decimal, "
    "82% as 0.82. Numbers are as the trade rounds them."
)
FOUR = 4  # figures of a conversion
# Which unit in which; the numbers are the solver's own.
CONVERSIONS = {
    "us": (
        *(("MGD", "gpm"), ("cfs", "gpm"), ("m3/h", "gpm"), ("L/s", "gpm"), ("ft3", "gal")),
        *(("gal", "L"), ("m3", "gal"), ("MG", "m3"), ("ft", "m"), ("in", "mm"), ("psi", "kPa")),
        *(("bar", "psi"), ("inHg", "psi"), ("lb", "kg"), ("hp", "kW"), ("hp", "ft-lb/s")),
        *(("kWh", "MJ"), ("day", "min"), ("year", "h")),
    ),
    "si": (
        *(("m3/h", "L/s"), ("ML/day", "L/s"), ("m3/s", "L/s"), ("gpm", "L/s"), ("MGD", "ML/day")),
        *(("m3", "L"), ("gal", "L"), ("ft3", "L"), ("ft", "m"), ("in", "mm"), ("bar", "kPa")),
        *(("psi", "kPa"), ("inHg", "kPa"), ("lb", "kg"), ("hp", "kW"), ("kWh", "MJ")),
        *(("day", "min"), ("year", "h")),
    ),
}
DEGREES = "°F = 1.8 × °C + 32"


def laid_out(
    chapters: Sequence[str],
    formulas: Iterable[Formula],
    left: Sequence[Formula],
    units: str,
    size: float,
    columns: int,
) -> dict[str, Any]:
    """A sheet of these formulas, under their chapters, in the order of the library."""
    kept = set(formulas)
    return {
        "paper": PAPER[units],
        "size": size,
        "columns": columns,
        "title": f"Formulas, {UNITS[units]}",
        "about": ABOUT,
        "left": _left(left),
        "parts": _parts(chapters, kept, units),
        "constants": _constants(kept, units),
        "conversions": [*(_equal(*pair) for pair in CONVERSIONS[units]), DEGREES],
        "always": caution_lines()[-1],
    }


def _left(left: Sequence[Formula]) -> str:
    if not left:
        return ""
    return (
        f"Left out because there was no room: {counted(len(left), 'formula')} from later levels or "
        "few problems. A sheet with fewer chapters has them."
    )


def _parts(chapters: Sequence[str], kept: set[Formula], units: str) -> list[dict[str, Any]]:
    """Each formula once, under the first of the chapters that has it."""
    named, waiting, parts = titles(), set(kept), []
    for chapter in chapters:
        here = [formula for formula in formulas_of(chapter) if formula in waiting]
        waiting.difference_update(here)
        if here:
            rows = [list(formula_marked(formula, units)) for formula in here]
            parts.append({"title": named.get(chapter) or in_words(chapter), "formulas": rows})
    return parts


def _constants(kept: set[Formula], units: str) -> list[list[str]]:
    in_order = [formula for formula in FORMULAS if formula in kept]
    return [[one.label, value_said(one, units)] for one in constants_in(in_order, units)]


def _equal(one: str, other: str) -> str:
    return f"{with_unit('1', one)} = {with_unit(long(convert(1, one, other), FOUR), other)}"
