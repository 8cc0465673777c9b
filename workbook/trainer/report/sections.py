"""A class report as its parts, in order; a page and a terminal show the same ones.

Each picture comes with the same numbers as a table. Here the report is text for a terminal;
`class_panel.py` shows it on a page.
"""

from collections.abc import Callable, Sequence
from functools import partial
from textwrap import wrap
from typing import NamedTuple

from workbook.figures import BLUE, Axis, Bar, Chart, Note, View, shares, steps
from workbook.trainer.people import counted_people
from workbook.ui.pages import titles

from .facts import BINS, ClassFacts, Question
from .ways import WAY_HEADS, way_lines, way_rows
from .words import (
    HAND_HEADS,
    LOW,
    QUESTION_HEADS,
    flaw_lines,
    hand_rows,
    hands,
    names_for,
    percent,
    question_rows,
    summary,
    telling_lines,
)

__all__ = [
    "Pictured",
    "Point",
    "Section",
    "hardest_picture",
    "report",
    "report_text",
    "spread_picture",
]

HARDEST = 8  # questions in the picture; all of them stand in the table
HANDS = 60  # people told at once
FLAWS = 10  # mistakes told; a class makes many that one person makes
WIDTH = 100
NARROWEST = 24  # characters of a column whose words are wrapped


class Pictured(NamedTuple):
    """A picture: its name, what it shows, and what draws that."""

    name: str
    view: View
    draw: Callable[[View], Sequence[Chart]]


def spread_picture(told: ClassFacts) -> Pictured:
    """How many people have how much of the points, a tenth at a time."""
    names = [_tenth(at) for at in range(BINS)]
    rows = tuple((name, str(many)) for name, many in zip(names, told.spread, strict=True))
    known = dict(zip(names, told.spread, strict=True))
    said = "; ".join(f"{name} of the points: {counted_people(int(many))}" for name, many in rows)
    alt = f"How many people got what percent of the points. {said}."
    view = View("How the points are spread out", alt, ("Points", "People"), rows, known, "")
    return Pictured("class-spread", view, _draw_spread)


def _tenth(at: int) -> str:
    """A tenth of the points as a label; the last one holds all of them too."""
    low, high = 100 * at // BINS, 100 * (at + 1) // BINS
    return f"{low} to {high}%" if at == BINS - 1 else f"{low} to under {high}%"


def _draw_spread(view: View) -> tuple[Chart]:
    """A bar for each tenth, with its number above it."""
    counts = list(view.known.values())
    most = max(*counts, 1)
    people = [(many, f"{many:,.0f}") for many in steps(0, most) if many == int(many)]
    tenths = [(at, str(100 * at // BINS)) for at in range(0, BINS + 1, 2)]
    across = Axis(0, BINS, "Points, %", tenths)
    chart = Chart(across, Axis(0, 1.14 * most, "People", people), 170, right=20)
    for at, many in enumerate(counts):
        chart.put(Bar(at + 0.04, 0, 0.92, many, BLUE))
        if many:
            chart.put(Note(at + 0.5, many, f"{many:,.0f}", "middle", dy=-5))
    return (chart,)


def hardest_picture(hardest: Sequence[Question]) -> Pictured:
    """The share of the points in each of these questions, the hardest first."""
    rows = tuple(
        (
            f"{one.number}. {one.family.title}",
            percent(one.share),
            str(one.missed),
            str(one.counts["blank"]),
        )
        for one in hardest
    )
    known = {row[0]: 100 * one.share for row, one in zip(rows, hardest, strict=True)}
    said = "; ".join(f"question {name}: {share}" for name, share, *_ in rows)
    alt = f"The share of the points that the class has in its hardest questions. {said}."
    columns = ("Question", "Of the points", "Wrong answers", "Blank")
    view = View("The hardest questions", alt, columns, rows, known, "")
    return Pictured("class-hardest", view, partial(shares, label="Of the points, %"))


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
        *_ways(told, hidden),
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


def _ways(told: ClassFacts, hidden: bool) -> list[Section]:
    """The ways through cases of find the fault side by side, where the set has any that were worked."""
    if not told.ways:
        return []
    lines, rows = way_lines(told.ways), way_rows(told.ways, names_for(told, hidden))
    if (more := len(rows) - HANDS) > 0:
        lines.append(f"These {HANDS} come first; {more:,} more are in the cases file.")
    table = _table("The ways, unsafe ones first", WAY_HEADS, rows[:HANDS])
    return [Section("Find the fault", lines, table=table)]


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
