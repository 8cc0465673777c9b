"""The formula sheet on paper: at most two pages, in type of at least 8 points.

Where not all formulas of the chapters fit, those that the first levels use come first, and among
those of one level the ones that most kinds of problem use. What is left out is said.
"""

from collections import Counter
from collections.abc import Sequence
from functools import lru_cache
from pathlib import Path
from typing import Any, NamedTuple

from solver.algebra.formula import Formula
from solver.units.show import counted
from workbook.ui.chapter import levels_of
from workbook.ui.printing import compiled, page_count, pictures

from .formulas import by_chapter
from .sheet_data import laid_out

__all__ = ["LAYOUTS", "MOST_PAGES", "NoChapter", "Sheet", "pictures_of", "sheet_of"]

TEMPLATE = Path(__file__).with_name("sheet.typ")
MOST_PAGES = 2
LAYOUTS = ((10, 2), (9, 3), (8, 3))  # points and columns, the best to read first


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
        """The PDF."""
        return compiled(TEMPLATE, self.data)

    @property
    def says(self) -> tuple[str, str]:
        """How it came out, in two sentences; the second is empty when all is there."""
        pages = counted(page_count(TEMPLATE, self.data), "page")
        on_it = counted(sum(len(part["formulas"]) for part in self.data["parts"]), "formula")
        letters = f"It has {pages} and {on_it}, in type of {self.data['size']} points."
        return letters, self.data["left"]


def pictures_of(sheet: Sheet, dots: float = 96) -> list[bytes]:
    """The pages as PNG pictures."""
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
