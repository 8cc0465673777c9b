"""The formula sheet on paper, and its command: at most two pages, in type of at least 8 points.

Where not all formulas of the chapters fit, those that the first levels use come first, and among
those of one level the ones that most kinds of problem use. What is left out is said.
"""

import argparse
import sys
from collections import Counter
from collections.abc import Iterable, Sequence
from functools import lru_cache
from pathlib import Path
from typing import Any, NamedTuple

from solver import SolverError
from solver.algebra.formula import Formula
from solver.render.print import formula_marked
from solver.topics.formulas import FORMULAS
from solver.units.show import counted, with_unit
from solver.units.unit import convert
from workbook.ui.cautions import caution_lines
from workbook.ui.chapter import formulas_of, levels_of
from workbook.ui.contents import in_words
from workbook.ui.pages import titles
from workbook.ui.printing import PAPER, UNITS, compiled, page_count, pictures

from .entry import long
from .formulas import by_chapter
from .tables import constants_in, value_said

__all__ = [
    "CONVERSIONS",
    "MOST_PAGES",
    "NoChapter",
    "Sheet",
    "laid_out",
    "pictures_of",
    "run",
    "sheet_of",
]

TEMPLATE = Path(__file__).with_name("sheet.typ")
MOST_PAGES = 2
LAYOUTS = ((10, 2), (9, 3), (8, 3))  # points and columns, the best to read first
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


class NoChapter(LookupError):
    """A chapter without formulas; the sentence lists those that have some."""


class Sheet(NamedTuple):
    """What is printed, as data for sheet.typ; and the formulas that found no room."""

    units: str
    chapters: tuple[str, ...]
    data: dict[str, Any]
    left: tuple[Formula, ...]

    @property
    def name(self) -> str:
        """What its file is called."""
        return f"formula-sheet-{self.units}.pdf"

    @property
    def pdf(self) -> bytes:
        """The PDF.

        Raises:
            CannotPrint: typst is not installed.
        """
        return compiled(TEMPLATE, self.data)

    @property
    def says(self) -> tuple[str, str]:
        """How it came out, in two sentences; the second is empty when all is there."""
        pages = counted(page_count(TEMPLATE, self.data), "page")
        on_it = counted(sum(len(part["formulas"]) for part in self.data["parts"]), "formula")
        letters = f"It has {pages} and {on_it}, in type of {self.data['size']} points."
        return letters, self.data["left"]


def pictures_of(sheet: Sheet, dots: float = 96) -> list[bytes]:
    """The pages as PNG pictures, `dots` an inch.

    Raises:
        CannotPrint: typst is not installed.
    """
    return pictures(TEMPLATE, sheet.data, dots)


@lru_cache(maxsize=4)
def sheet_of(chapters: Sequence[str], units: str) -> Sheet:
    """The sheet of these chapters in "us" (letter) or "si" (A4) units.

    Raises:
        NoChapter: a name is not that of a chapter with formulas.
        CannotPrint: typst is not installed.
    """
    if strange := [name for name in chapters if name not in by_chapter()]:
        raise NoChapter(
            f"There is no chapter {strange[0]} with formulas. Choose from {', '.join(by_chapter())}."
        )
    chosen = tuple(name for name in by_chapter() if name in chapters)
    wanted = _in_order_of_use(chosen, units)
    for size, columns in LAYOUTS:
        data = laid_out(chosen, wanted, (), units, size, columns)
        if page_count(TEMPLATE, data) <= MOST_PAGES:
            return Sheet(units, chosen, data, ())
    return _as_much_as_fits(chosen, wanted, units)


def _as_much_as_fits(chosen: tuple[str, ...], wanted: list[Formula], units: str) -> Sheet:
    """In the smallest letters: the most formulas for which two pages have room."""

    def made(count: int) -> dict[str, Any]:
        return laid_out(chosen, wanted[:count], wanted[count:], units, *LAYOUTS[-1])

    fits, too_many = 0, len(wanted)
    while too_many - fits > 1:
        middle = (fits + too_many) // 2
        if page_count(TEMPLATE, made(middle)) <= MOST_PAGES:
            fits = middle
        else:
            too_many = middle
    return Sheet(units, chosen, made(fits), tuple(wanted[fits:]))


def _in_order_of_use(chosen: tuple[str, ...], units: str) -> list[Formula]:
    """The formulas of the chapters: of the first levels first, then of the most problems."""
    level: dict[Formula, int] = {}
    problems: Counter[Formula] = Counter()
    for chapter in chosen:
        for number, formula in levels_of(chapter):
            if units in formula.systems:
                level[formula] = min(number, level.get(formula, number))
                problems[formula] += 1
    return sorted(level, key=lambda formula: (level[formula], -problems[formula]))


def laid_out(
    chapters: Sequence[str],
    formulas: Iterable[Formula],
    left: Sequence[Formula],
    units: str,
    size: float,
    columns: int,
) -> dict[str, Any]:
    """A sheet of these formulas, under their chapters, in the order of the library.

    `left` are those that found no room; letters are of `size` points, in so many columns.
    """
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


def run(options: argparse.Namespace) -> int:
    """Write the sheet and say what it holds; return the exit status."""
    wanted = tuple(name.strip() for name in (options.chapters or "").split(",") if name.strip())
    if options.chapters is not None and not wanted:
        return _refuse(f"Type at least one chapter after --chapters: {', '.join(by_chapter())}.")
    try:
        sheet = sheet_of(wanted or tuple(by_chapter()), options.units)
        Path(options.pdf).write_bytes(sheet.pdf)
    except (NoChapter, SolverError) as refusal:
        return _refuse(str(refusal))
    except OSError as error:
        return _refuse(f"{options.pdf}: {error.strerror}. Check the name and the folder.")
    print(" ".join(filter(None, (f"{options.pdf} is written.", *sheet.says))))
    return 0


def _refuse(sentence: str) -> int:
    print(sentence, file=sys.stderr)
    return 2
