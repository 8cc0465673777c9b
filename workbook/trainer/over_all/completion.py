"""The record of completion: a page for each person, to print. It has no seal and claims nothing more."""

from collections.abc import Sequence
from datetime import date

from solver.sets.credit import in_points
from solver.units.show import exact
from workbook.ui.markup import Child, Markup, tag
from workbook.ui.pieces import css

from .rows import Over, Row

__all__ = ["completion_html"]

LOOK = tag(
    "style",
    Markup("""
body { margin: 0; }
.w2w-record { max-width: 46rem; margin: 2em auto; padding: 2em; break-after: page; }
.w2w-record table { width: 100%; border-collapse: collapse; margin: 1em 0; }
.w2w-record th, .w2w-record td { text-align: left; padding: .3em .6em; border-bottom: 1px solid #888; }
.w2w-sign { margin-top: 4em; display: flex; gap: 3em; }
.w2w-sign p { flex: 1; border-top: 1px solid; padding-top: .3em; }
@media print { .w2w-record { margin: 0; } @page { margin: 2cm; } }
"""),
)
NOTE = (
    "This is the trainer's own record of a class. It isn't accredited, and it isn't a license or "
    "continuing-education credit. Ask your state agency what counts there."
)


def completion_html(told: Over, rows: Sequence[Row], course: str, trainer: str, today: date) -> str:
    """The records of these people as one page for a browser, each on paper of its own."""
    head = tag(
        "head", tag("meta", charset="utf-8"), tag("title", f"{course}: records"), css(), LOOK
    )
    body = tag("body", (_record(told, row, course, trainer, today) for row in rows))
    return f"<!DOCTYPE html>\n{tag('html', head, body, lang='en')}\n"


def _record(told: Over, row: Row, course: str, trainer: str, today: date) -> Markup:
    who = row.person
    name = who.name or who.id
    there = [meeting for meeting in told.held if who.id not in meeting.absent]
    share = f"{100 * told.share(row):.0f}%"
    points = f"{exact(row.points)} of {in_points(told.worth(who))} ({share})"
    return tag(
        "section",
        tag("h1", "Record of completion"),
        tag("p", tag("b", name), f" (id {who.id}) completed the class ", tag("b", course), "."),
        tag("p", f"Graded work: {points}. Hours in class: {row.hours:g}."),
        _table(("Day", "Topic", "Hours"), [(_day(m.day), m.topic, f"{m.hours:g}") for m in there]),
        _table(("Work", "Points", "Out of"), [_work(told, row, n) for n in range(len(told.sets))]),
        tag("div", tag("p", f"{trainer}, trainer"), tag("p", _day(today)), cls="w2w-sign"),
        tag("p", NOTE, cls="w2w-about"),
        cls="w2w-record",
        aria_label=f"Record of {name}",
    )


def _day(day: date) -> str:
    return f"{day:%B} {day.day}, {day.year}"


def _work(told: Over, row: Row, number: int) -> tuple[str, str, str]:
    assigned = told.sets[number]
    one = row.sets.get(assigned.name)
    return assigned.title, exact(one.points) if one else "–", exact(assigned.out_of)


def _table(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> Child:
    if not rows:
        return None
    top = tag("thead", tag("tr", (tag("th", head, scope="col") for head in heads)))
    body = tag("tbody", (tag("tr", (tag("td", cell) for cell in row)) for row in rows))
    return tag("table", top, body)
