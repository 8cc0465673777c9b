"""What is printed of a set's sheets, as plain data for sheets.typ; no layout."""

import re
from collections.abc import Collection, Sequence
from pathlib import Path
from typing import Any

from solver import Case, SolverError
from solver.engine.order import right_orders
from solver.fault.case import FaultCase
from solver.fault.remedies import ACTIONS, RIGHT
from solver.fault.review import sure_way
from solver.render.fault import way_in_words
from solver.render.text import ROUNDING, label_of
from solver.sets.credit import in_points
from solver.station.faults import FAULTS
from solver.units.show import counted, figures, with_unit
from workbook.fault import case_on_paper
from workbook.practice import answer_label, in_order
from workbook.trainer.marking.odd import plain
from workbook.trainer.marking.paper_case import answer_on_paper
from workbook.trainer.sets.set_file import Assigned
from workbook.ui.cautions import caution_lines
from workbook.ui.printing import PAPER, UNITS, asked, compiled, solved

from .sheets import Sheet

__all__ = ["MOST_ASKED", "TooMany", "check_room", "pdf_of", "printed"]

TEMPLATE = Path(__file__).with_name("sheets.typ")
MOST_ASKED = 10_000  # questions on all sheets together; they take 1.3 GB while they are set
HOW = (
    "Show your work. Write each answer on its line, with its unit. Keep three figures or more in "
    "every step."
)
CASES = (
    "A case of find the fault gives you all of its readings. Write the number of what is behind it and the "
    "letter of what to do, such as 2B."
)
PAGES = 8  # questions that take the paper and the time of one case
KEY_HOW = (
    "Under each answer is the range that is accepted, in the same unit. Any unit of the same kind is "
    "right too. A choice is just its number, and an order its letters. Where several orders are right, type "
    "the answers in to have them graded."
)
EVERYBODY = "all"
LONGEST_NAME = 60
LONG_WORD = re.compile(r"\S{8}(?=\S)")


class TooMany(SolverError, ValueError):
    """More sheets than one PDF holds; the sentence says what to do."""


def check_room(assigned: Assigned, sheets: int) -> None:
    """See that so many sheets of the set find room in one PDF.

    Raises:
        TooMany: they do not; the sentence says what to type.
    """
    work = assigned.work
    most = MOST_ASKED // (work.count + PAGES * (work.asked - work.count))
    if sheets > most:
        raise TooMany(
            f"One PDF holds {most:,} sheets of this set. Print them in parts: --sheets 1-{most}."
        )


def pdf_of(
    assigned: Assigned,
    sheets: Sequence[Sheet],
    in_full: Collection[str] = (),
    *,
    two_sided: bool = False,
) -> bytes:
    """The sheets and their key; with the worked solutions of the people `in_full` names.

    With `two_sided`, each sheet begins a new leaf.

    Raises:
        TooMany: there are too many for one PDF.
        CannotPrint: typst is not installed.
    """
    data = printed(assigned, sheets, in_full)
    return compiled(TEMPLATE, {**data, "two-sided": two_sided})


def printed(
    assigned: Assigned, sheets: Sequence[Sheet], in_full: Collection[str] = ()
) -> dict[str, Any]:
    """All that is on the pages, but for how they are laid out.

    Raises:
        TooMany: there are too many for one PDF.
    """
    check_room(assigned, len(sheets))
    each = assigned.work.each
    # Where all have the same problems, these stand in the data once.
    different = sheets if each else sheets[:1]
    solved = [one for one in sheets if one.person in in_full]
    return {
        **_head(assigned),
        "sheets": [_sheet(sheet, at if each else 0) for at, sheet in enumerate(sheets)],
        "questions": [_questions(sheet) for sheet in different],
        "key": _key(different, each),
        "solved": [_solved(sheet, each) for sheet in (solved if each else solved[:1])],
    }


def _head(assigned: Assigned) -> dict[str, str]:
    work = assigned.work
    points = f"{in_points(assigned.points)} each"
    return {
        "paper": PAPER[work.units],
        "title": _breakable(assigned.title),
        "about": f"{counted(work.count, 'question')}, {points}, {UNITS[work.units]}.",
        "how": f"{HOW} {CASES}" if work.faults else HOW,
        "always": caution_lines()[-1],
        "rounding": ROUNDING,
        "set-code": work.code,
    }


def _sheet(sheet: Sheet, questions: int) -> dict[str, Any]:
    """A sheet, and which of all the questions are on it."""
    return {
        "number": sheet.number,
        "who": _breakable(sheet.who),
        "code": str(sheet.code),
        "questions": questions,
    }


def _breakable(text: str) -> str:
    """A name in which a word longer than a column can be broken; of a very long one, the start."""
    return LONG_WORD.sub("\\g<0>\u200b", plain(text, LONGEST_NAME))


def _questions(sheet: Sheet) -> list[dict[str, Any]]:
    return [*map(_asked, sheet.cases), *map(_case, sheet.faults)]


def _case(case: FaultCase) -> dict[str, Any]:
    """A case of find the fault, with all that can be read in it."""
    held = case_on_paper(case)
    shown = {name: held[name] for name in ("title", "report", "suspects", "plates", "record")}
    readings = [
        [title, [[label, finding] for label, _, finding in rows]]
        for title, _, rows in held["readings"]
    ]
    return {"case": True, **shown, "readings": readings, "calls": [*ACTIONS.values()]}


def _asked(case: Case) -> dict[str, Any]:
    """A question; each says all that is given, so that a table of it would only take room."""
    return asked(case, case.choices, asks=answer_label(case), table=False)


def _key(sheets: Sequence[Sheet], each: bool) -> dict[str, Any]:
    first = [*map(_short, sheets[0].cases), *["fault"] * len(sheets[0].faults)] if sheets else []
    return {
        "how": KEY_HOW,
        "heads": [[str(number), short] for number, short in enumerate(first, 1)],
        "rows": [
            [
                str(sheet.number) if each else EVERYBODY,
                _breakable(sheet.who) if each else "",
                [*map(_answer, sheet.cases), *map(_fault, sheet.faults)],
            ]
            for sheet in sheets
        ],
    }


def _short(case: Case) -> str:
    return "choice" if case.choices and not case.ordered else label_of(case.asked, case.units)


def _answer(case: Case) -> tuple[str, str]:
    """The answer with its unit, and the lowest and the highest that are accepted."""
    if case.ordered:
        return figures(case.answer, case.unit), _others(case)
    if case.choices:
        return figures(case.answer), ""
    low, high = (figures(value, case.unit) for value in (case.low, case.high))
    return with_unit(figures(case.answer, case.unit), case.unit), f"{low} to {high}"


def _fault(case: FaultCase) -> tuple[str, str]:
    return answer_on_paper(case), FAULTS[case.fault].label


def _others(case: Case) -> str:
    """How many orders are right, where it is not the only one."""
    many = right_orders(len(case.choices), case.pairs)
    return f"one of {many} right orders" if many > 1 else ""


def _solved(sheet: Sheet, each: bool) -> dict[str, Any]:
    whose = f"Sheet {sheet.number}" if each else "All sheets"
    return {
        "title": f"{whose}, solved",
        "questions": [
            *(solved(case, _in_words(case)) for case in sheet.cases),
            *map(_fault_solved, sheet.faults),
        ],
    }


def _fault_solved(case: FaultCase) -> dict[str, Any]:
    best, why = RIGHT[case.fault]
    sure = way_in_words(sure_way(str(case.code)))
    answer = f"{answer_on_paper(case)}, {FAULTS[case.fault].label}"
    says = f"What to do: {ACTIONS[best[0]].lower()}. {why} These readings are enough to be sure: {sure}."
    return {"answer": answer, "code": str(case.code), "steps": [], "one_line": "", "says": says}


def _in_words(case: Case) -> str:
    answer, _ = _answer(case)
    if case.ordered:
        return in_order(case)
    return f"choice {answer}, {case.choices[int(case.answer) - 1]}" if case.choices else answer
