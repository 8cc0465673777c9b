"""The table of what people may send and what comes of it, for a trainer to read.

Type `python -m tests.workbook.trainer.tamper_table` with the Python in `.venv`. With `--page FILE` it is
written as a page for a browser.
"""

import argparse
import os
import tempfile
from collections.abc import Iterator
from pathlib import Path
from shutil import copytree
from textwrap import wrap
from typing import NamedTuple

from solver.units.show import exact
from tests.workbook.trainer.sheets import line, right, sheet
from tests.workbook.trainer.tamper_cases import (
    ANA,
    BEN,
    DUE,
    MARIA,
    NAME,
    PARTS,
    Case,
    packed,
)
from tests.workbook.trainer.tamper_contents import MORE
from workbook.trainer.coming_in.taking_in import take_in
from workbook.trainer.course import Person, course_at, keep_people, make_course
from workbook.trainer.gradebook.rules import seconds_late
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.marking.bulk import marks_of
from workbook.trainer.marking.feedback import feedback_html
from workbook.trainer.sets.notebook import write_source
from workbook.trainer.sets.set_file import Assigned
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import css

__all__ = ["EVERY", "Outcome", "outcome_of", "table"]

PEOPLE = [Person(MARIA, "Maria", "Okafor"), Person(BEN, "Ben"), Person(ANA, "Ana", "Ruiz")]
EVERY = (*PARTS, *MORE)
HEADS = ("What was sent", "What happened", "What the trainer reads")
WIDTHS = (52, 26, 70)
SILENT = "–"
_MADE: dict[str, tempfile.TemporaryDirectory] = {}
ABOUT = (
    "Ben sends each of these. Ana's honest work lies in the same folder, and her points never change. "
    "Nothing that Ben sends is run."
)
LOOK = tag(
    "style",
    Markup("""
body { margin: 1em auto; max-width: 75rem; padding: 0 1em; }
table { border-collapse: collapse; width: 100%; table-layout: fixed; }
th, td { text-align: left; vertical-align: top; padding: .4em .6em; overflow-wrap: anywhere;
  border-bottom: 1px solid var(--w2w-line); }
th:nth-child(1) { width: 32%; } th:nth-child(2) { width: 18%; }
@media (max-width: 40rem) {
  thead { position: absolute; left: -999rem; }
  tr, td { display: block; }
  td { border: 0; padding: .2em 0; }
  td:first-child { font-weight: bold; padding-top: .8em; border-top: 1px solid var(--w2w-line); }
}
"""),
)


class Outcome(NamedTuple):
    """What came of a case: the points of the one who sent it, whether Ana has all of hers, what was said,
    all files kept, and what Ben gets back."""

    counts: float | None
    out_of: float
    late: bool
    ana_has_all: bool
    said: tuple[str, ...]
    reason: str
    stored: tuple[str, ...]
    feedback: str


def _honest(week: Assigned) -> bytes:
    """Ana's work: every problem right."""
    return sheet(*(line(week, ANA, n, right) for n in range(1, week.work.count + 1)))


def _ready(week: Assigned) -> Path:
    """A course with the set and its people, made once."""
    folder = _MADE.get(week.work.code)
    if folder is None:
        folder = _MADE[week.work.code] = tempfile.TemporaryDirectory(prefix="tamper-")
        course = make_course(Path(folder.name) / "pumps")
        write_source(week, course.root)
        keep_people(course, PEOPLE)
    return Path(folder.name) / "pumps"


def outcome_of(case: Case, folder: Path) -> Outcome:
    """Take in what is sent, with Ana's honest work, and mark both."""
    week, mail = case.week, folder / "mail"
    copytree(_ready(week), folder / "pumps")
    course = course_at(folder / "pumps")
    mail.mkdir()
    packed(mail / f"{NAME}-{ANA}.zip", {f"{ANA}/{NAME}/{SHEET}": _honest(week)}, DUE - 30)
    case.send(mail)
    taken = take_in(course, NAME, mail, said_as=case.said_as)
    found = {handed.person: (handed, marked) for handed, marked in marks_of(course, NAME)}
    handed, marked = found.get(case.whose, (None, None))
    stored = sorted({name for _, _, names in os.walk(course.root / "submitted") for name in names})
    told = [marked.reason, *(one.reason for one in marked.questions)] if marked else []
    return Outcome(
        marked.points if marked else None,
        found[ANA][1].out_of,
        bool(handed and week.due and seconds_late(handed.when, week.due.replace(tzinfo=None))),
        found[ANA][1].points == week.work.count * week.points,
        taken.notes,
        " ".join(filter(None, told)),
        tuple(stored),
        "".join(map(feedback_html, marked.questions)) if marked else "",
    )


def _happened(outcome: Outcome) -> str:
    if outcome.counts is None:
        return "not taken"
    late = ", late" if outcome.late else ""
    return f"{exact(outcome.counts)} of {exact(outcome.out_of)} points{late}"


def _rows(cases: tuple[Case, ...]) -> Iterator[tuple[str, str, str]]:
    """What was sent, what happened, and what the trainer reads."""
    for case in cases:
        with tempfile.TemporaryDirectory() as folder:
            outcome = outcome_of(case, Path(folder))
            said = (*outcome.said, outcome.reason) if outcome.counts is not None else outcome.said
            read = " ".join(filter(None, said)).replace(f"{folder}/", "")
            yield case.about, _happened(outcome), read or SILENT


def table() -> Iterator[str]:
    """The lines of the table, part by part."""
    yield from wrap(ABOUT, sum(WIDTHS))
    for part in EVERY:
        yield ""
        yield part.title.upper()
        for row in (HEADS, *_rows(part.cases)):
            cells = [wrap(cell, width) for cell, width in zip(row, WIDTHS, strict=True)]
            for at in range(max(map(len, cells))):
                parts = [cell[at] if at < len(cell) else "" for cell in cells]
                padded = (f"{p:{w}}" for p, w in zip(parts, WIDTHS, strict=True))
                yield "  ".join(padded).rstrip()


def page() -> str:
    """The same as a page."""
    title = "What people may send, and what comes of it"
    parts = [
        joined(
            tag("h2", part.title),
            tag(
                "table",
                tag("thead", tag("tr", (tag("th", head, scope="col") for head in HEADS))),
                tag("tbody", (tag("tr", (tag("td", c) for c in r)) for r in _rows(part.cases))),
            ),
        )
        for part in EVERY
    ]
    head = tag("head", tag("meta", charset="utf-8"), tag("title", title), css(), LOOK)
    main = tag("main", tag("h1", title), tag("p", ABOUT), parts, cls="w2w-panel")
    return f"<!DOCTYPE html>\n{tag('html', head, tag('body', main), lang='en')}\n"


if __name__ == "__main__":
    reader = argparse.ArgumentParser()
    reader.add_argument("--page", type=Path)
    if where := reader.parse_args().page:
        where.write_text(page(), encoding="utf-8")
    else:
        for each in table():
            print(each, flush=True)
