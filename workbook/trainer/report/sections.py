"""A class report as its parts, in order; a page and a terminal show the same ones.

Here it is text for a terminal; `class_panel.py` shows it on a page.
"""

from collections.abc import Sequence
from textwrap import wrap
from typing import NamedTuple

from workbook.figures import View
from workbook.ui.pages import titles

from .facts import ClassFacts
from .pictures import Pictured, hardest_picture, spread_picture
from .words import (
    HAND_HEADS,
    LOW,
    QUESTION_HEADS,
    flaw_lines,
    hand_rows,
    hands,
    names_for,
    question_rows,
    summary,
    telling_lines,
)

__all__ = ["Point", "Section", "report", "report_text"]

HARDEST = 8  # questions in the picture; all of them stand in the table
HANDS = 60  # people told at once
FLAWS = 10  # mistakes told; a class makes many that one person makes
WIDTH = 100
NARROWEST = 24  # characters of a column whose words are wrapped


class Point(NamedTuple):
    """One thing in a list: its head, its lines, and the name of the chapter where it is taught."""

    head: str
    lines: Sequence[str]
    chapter: str


class Section(NamedTuple):
    """A part of the report: sentences, then a picture with its numbers, points, or a table."""

    title: str
    lines: Sequence[str]
    pictured: Pictured | None = None
    points: Sequence[Point] = ()
    table: View | None = None


def report(
    told: ClassFacts,
    title: str,
    notes: Sequence[str] = (),
    *,
    hidden: bool = False,
    low: float = LOW,
) -> tuple[Section, ...]:
    """Every part of the report on a set with this title; `hidden` leaves all names out.

    Whoever has under the share `low` of the points needs a hand. `notes` stand with the summary.
    """
    first = Section(title, [*summary(told), *notes])
    if not told.there:
        return (first, _hands(told, hidden, low)) if told.people else (first,)
    return (
        first,
        Section("How the points are spread out", (), spread_picture(told)),
        Section("The hardest questions", (), hardest_picture(told.hardest[:HARDEST])),
        _flaws(told),
        _hands(told, hidden, low),
        _questions(told),
    )


def _flaws(told: ClassFacts) -> Section:
    there = len(told.there)
    points = [
        Point(
            flaw.what[:1].upper() + flaw.what[1:],
            flaw_lines(flaw, there),
            flaw.chapter,
        )
        for flaw in told.flaws[:FLAWS]
    ]
    lines = [
        "These are from the answers that count, most common first.",
        "The mistakes file has all of them, with the name each one has in a set's file.",
    ]
    if not points:
        lines = ["None of the answers that count has a known mistake."]
    return Section("Mistakes to go over again", lines, points=points)


def _hands(told: ClassFacts, hidden: bool, low: float) -> Section:
    found = hands(told.people, low)
    lines = [] if found else ["Nobody, going by what was turned in."]
    if (more := len(found) - HANDS) > 0:
        lines = [f"These {HANDS} come first; {more:,} more are in the people file."]
    rows = hand_rows(found[:HANDS], names_for(told, hidden))
    table = _table("See these people first", HAND_HEADS, rows) if rows else None
    return Section("Who needs help", lines, table=table)


def _questions(told: ClassFacts) -> Section:
    rows = question_rows(told.questions)
    lines = telling_lines(len(told.there))
    table = _table("How the answers came out", QUESTION_HEADS, rows)
    return Section("Question by question", lines, table=table)


def _table(caption: str, heads: tuple[str, ...], rows: tuple[tuple[str, ...], ...]) -> View:
    return View(caption, "", heads, rows, {}, "")


def report_text(sections: Sequence[Section]) -> str:
    """Every part under its title, pictures as their tables."""
    return "\n\n".join(_section(section) for section in sections) + "\n"


def _section(section: Section) -> str:
    lines = [section.title, "-" * len(section.title), *section.lines]
    if section.pictured:
        lines += _columns(section.pictured[1])
    named = titles() if section.points else {}
    for point in section.points:
        lines += [f"* {point.head}", *(f"  {line}" for line in point.lines)]
        lines.append(f"  Chapter: {named.get(point.chapter, point.chapter)}")
    if section.table:
        lines += _columns(section.table)
    return "\n".join(lines)


def _columns(view: View) -> list[str]:
    """Columns under their heads; the last cell of a row goes on below itself where it is long."""
    rows = [view.columns, *view.rows]
    widths = [max(len(row[at]) for row in rows) for at in range(len(view.columns))]
    start = sum(widths[:-1]) + 2 * len(widths[:-1])
    lines = []
    for row in rows:
        head = "".join(
            f"{cell:<{width + 2}}" for cell, width in zip(row[:-1], widths, strict=False)
        )
        last = wrap(row[-1], max(WIDTH - start, NARROWEST)) or [""]
        lines += [head + last[0], *(" " * start + more for more in last[1:])]
    return [line.rstrip() for line in lines]
