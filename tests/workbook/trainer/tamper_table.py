"""The table of what people may send and what comes of it, for a trainer to read.

Type `python -m tests.workbook.trainer.tamper_table` with the Python in `.venv`.
"""

import os
import tempfile
from pathlib import Path
from textwrap import wrap
from typing import NamedTuple

from tests.workbook.trainer.tamper_cases import (
    ANA,
    BEN,
    CASES,
    DUE,
    FULL,
    MARIA,
    NAME,
    WEEK,
    Case,
    packed,
    right_sheet,
)
from workbook.trainer.coming_in.taking_in import take_in
from workbook.trainer.course import Person, keep_people, make_course
from workbook.trainer.gradebook.rules import seconds_late
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.marking.bulk import marks_of
from workbook.trainer.sets.notebook import write_source

__all__ = ["Outcome", "outcome_of", "table"]

PEOPLE = [Person(MARIA, "Maria", "Okafor"), Person(BEN, "Ben"), Person(ANA, "Ana", "Ruiz")]
WIDTHS = (52, 26, 70)


class Outcome(NamedTuple):
    """What came of a case: the points of the one who sent it, Ana's, what was said, all files kept."""

    counts: float | None
    late: bool
    ana: float
    said: tuple[str, ...]
    reason: str
    stored: tuple[str, ...]


def outcome_of(case: Case, folder: Path) -> Outcome:
    """Take in what is sent, with Ana's honest work, and mark both."""
    course, mail = make_course(folder / "pumps"), folder / "mail"
    write_source(WEEK, course.root)
    keep_people(course, PEOPLE)
    mail.mkdir()
    packed(mail / f"{NAME}-{ANA}.zip", {f"{ANA}/{NAME}/{SHEET}": right_sheet(ANA)}, DUE - 30)
    case.send(mail)
    taken = take_in(course, NAME, mail, said_as=case.said_as)
    found = {handed.person: (handed, marked) for handed, marked in marks_of(course, NAME)}
    handed, marked = found.get(case.whose, (None, None))
    stored = sorted({name for _, _, names in os.walk(course.root / "submitted") for name in names})
    told = " ".join([marked.reason, *(one.reason for one in marked.questions)]) if marked else ""
    return Outcome(
        marked.points if marked else None,
        bool(handed and WEEK.due and seconds_late(handed.when, WEEK.due.replace(tzinfo=None))),
        found[ANA][1].points,
        taken.notes,
        told,
        tuple(stored),
    )


def _happened(outcome: Outcome) -> str:
    if outcome.counts is None:
        return "not taken"
    late = ", late" if outcome.late else ""
    return f"{outcome.counts:g} of {FULL:g} points{late}"


def table() -> list[str]:
    """The lines of the table: what was sent, what happened, and what the trainer reads."""
    rows = [("What was sent", "What happened", "What the trainer reads")]
    for case in CASES:
        with tempfile.TemporaryDirectory() as folder:
            outcome = outcome_of(case, Path(folder))
            said = (*outcome.said, outcome.reason) if outcome.counts is not None else outcome.said
            rows.append((case.about, _happened(outcome), " ".join(filter(None, said)) or "–"))
    lines = []
    for row in rows:
        cells = [wrap(cell, width) for cell, width in zip(row, WIDTHS, strict=True)]
        for at in range(max(map(len, cells))):
            parts = [cell[at] if at < len(cell) else "" for cell in cells]
            lines.append("  ".join(f"{p:{w}}" for p, w in zip(parts, WIDTHS, strict=True)).rstrip())
    return lines


if __name__ == "__main__":
    print("\n".join(table()))
