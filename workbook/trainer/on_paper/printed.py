"""What is printed of a set's sheets, as plain data for sheets.typ; no layout."""

import re
from collections.abc import Collection, Sequence
from pathlib import Path
from typing import Any

from solver import Case, SolverError
from solver.render import ROUNDING, label_of
from solver.show import counted, exact, figures, with_unit

from ...cautions import caution_lines
from ...fragments import answer_label
from ...printing import PAPER, UNITS, asked, solved
from ...typst_pdf import compiled
from ..assigned import Assigned
from ..odd import plain
from .sheets import Sheet

__all__ = ["MOST_ASKED", "TooMany", "pdf_of", "pictures_of", "printed"]

TEMPLATE = Path(__file__).with_name("sheets.typ")
MOST_ASKED = 10_000  # questions on all sheets together; they take 1.3 GB while they are set
HOW = (
    "Show your work. Write each answer on its line, with its unit. Keep three figures or more in "
    "every step."
)
KEY_HOW = (
    "Under each answer stands what is accepted, in the same unit. Any unit of the same kind is "
    "right too. The number of a choice stands alone."
)
EVERYBODY = "all"
LONGEST_NAME = 60
LONG_WORD = re.compile(r"\S{8}(?=\S)")


class TooMany(SolverError, ValueError):
    """More sheets than one PDF holds; the sentence says what to do."""


def pdf_of(assigned: Assigned, sheets: Sequence[Sheet], in_full: Collection[str] = ()) -> bytes:
    """The sheets and their key; with the worked solutions of the people `in_full` names.

    Raises:
        TooMany: there are too many for one PDF.
        CannotPrint: typst is not installed.
    """
    return compiled(TEMPLATE, printed(assigned, sheets, in_full))


def pictures_of(
    assigned: Assigned, sheets: Sequence[Sheet], in_full: Collection[str] = (), dots: float = 96
) -> list[bytes]:
    """The pages as PNG pictures, so many dots an inch; raises as `pdf_of` does."""
    return compiled(TEMPLATE, printed(assigned, sheets, in_full), "png", dots)


def printed(
    assigned: Assigned, sheets: Sequence[Sheet], in_full: Collection[str] = ()
) -> dict[str, Any]:
    """All that stands on the pages; raises TooMany."""
    work = assigned.work
    if len(sheets) * work.count > MOST_ASKED:
        most = MOST_ASKED // work.count
        raise TooMany(
            f"One PDF holds {most:,} sheets of this set. Print them in parts: --sheets 1-{most}."
        )
    # Where all have the same problems, these stand in the data once.
    different = sheets if work.each else sheets[:1]
    points = "point" if assigned.points == 1 else "points"
    return {
        "paper": PAPER[work.units],
        "title": _breakable(assigned.title),
        "about": f"{counted(work.count, 'question')}, {exact(assigned.points)} {points} each, "
        f"{UNITS[work.units]}.",
        "how": HOW,
        "always": caution_lines()[-1],
        "rounding": ROUNDING,
        "set-code": work.code,
        "sheets": [
            {
                "number": sheet.number,
                "who": _breakable(sheet.who),
                "code": str(sheet.code),
                "questions": at if work.each else 0,
            }
            for at, sheet in enumerate(sheets)
        ],
        "questions": [[_asked(case) for case in sheet.cases] for sheet in different],
        "key": _key(different, work.each),
        "solved": [
            _solved(sheet, work.each)
            for sheet in (sheets if work.each else different * bool(in_full))
            if sheet.person in in_full or not work.each
        ],
    }


def _breakable(text: str) -> str:
    """A name in which a word longer than a column can be broken; of a very long one, the start."""
    return LONG_WORD.sub("\\g<0>\u200b", plain(text, LONGEST_NAME))


def _asked(case: Case) -> dict[str, Any]:
    """A question; each says all that is given, so that a table of it would only take room."""
    return asked(case, case.choices, asks=answer_label(case), table=False)


def _key(sheets: Sequence[Sheet], each: bool) -> dict[str, Any]:
    first = sheets[0].cases if sheets else ()
    return {
        "how": KEY_HOW,
        "heads": [[str(number), _short(case)] for number, case in enumerate(first, 1)],
        "rows": [
            [
                str(sheet.number) if each else EVERYBODY,
                _breakable(sheet.who) if each else "",
                [_answer(case) for case in sheet.cases],
            ]
            for sheet in sheets
        ],
    }


def _short(case: Case) -> str:
    return "choice" if case.choices else label_of(case.asked)


def _answer(case: Case) -> tuple[str, str]:
    """The answer with its unit, and the lowest and the highest that are accepted."""
    if case.choices:
        return figures(case.answer), ""
    low, high = (figures(value, case.unit) for value in (case.low, case.high))
    return with_unit(figures(case.answer, case.unit), case.unit), f"{low} to {high}"


def _solved(sheet: Sheet, each: bool) -> dict[str, Any]:
    whose = f"Sheet {sheet.number}" if each else "All sheets"
    return {
        "title": f"{whose}, solved",
        "questions": [solved(case, _in_words(case)) for case in sheet.cases],
    }


def _in_words(case: Case) -> str:
    answer, _ = _answer(case)
    return f"choice {answer}, {case.choices[int(case.answer) - 1]}" if case.choices else answer
