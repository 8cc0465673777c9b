"""The results of a group as HTML."""

from collections.abc import Mapping
from html import escape
from urllib.parse import quote

from workbook.figures import table_html
from workbook.trainer.report.flaws import Flaw
from workbook.ui.contents import chapters, titles

from . import words
from .facts import AT_ONCE, LATER, NOT_YET, UNTRIED, Cell, GroupFacts
from .posed import Question

__all__ = ["flaws_html", "questions_html", "table_of_counts"]

MOST = 5  # mistakes told; a group makes many that one member makes
LOOKS = {
    AT_ONCE: ("✓", "right"),
    LATER: ("✓", "right"),
    NOT_YET: ("✗", "wrong"),
    UNTRIED: ("–", "plain"),
}
NO_FLAWS = "Nobody made a mistake that this workbook knows by name."


def table_of_counts(told: GroupFacts) -> str:
    """How many members stand how with each question."""
    view = words.table(told)
    return table_html(view, view.headline)


def flaws_html(told: GroupFacts) -> str:
    """The mistakes most members made, the commonest first, each with what to read again."""
    if not told.flaws:
        return f"<p>{NO_FLAWS}</p>"
    items = "".join(_flaw(flaw, len(told.members)) for flaw in told.flaws[:MOST])
    return f'<ol class="w2w-flaws">{items}</ol>'


def _flaw(flaw: Flaw, members: int) -> str:
    what = f"{flaw.what[:1].upper()}{flaw.what[1:]}"
    lines = "".join(f"<p>{escape(line)}</p>" for line in words.flaw_lines(flaw, members))
    return f"<li><b>{escape(what)}</b>{lines}<p>Read again: {_chapter(flaw.chapter)}</p></li>"


def _chapter(name: str) -> str:
    title = titles().get(name, "")
    file = next((each.file for each in chapters() if each.title == title), "")
    if not file:
        return escape(name)
    return f'<a class="w2w-save" href="{quote(file)}" target="_blank">{escape(title)}</a>'


def questions_html(told: GroupFacts, names: Mapping[str, str]) -> str:
    """Every question to open: how each member stands with it, and their mistakes."""
    return "".join(
        _question(question, words.by_member(told, names, row))
        for question, row in zip(told.questions, told.cells, strict=True)
    )


def _question(question: Question, standing: Mapping[str, Cell]) -> str:
    right = sum(cell.state in (AT_ONCE, LATER) for cell in standing.values())
    items = "".join(_member(question, name, cell) for name, cell in standing.items())
    return (
        f'<details class="w2w-marked"><summary>Question {question.number}. '
        f"{escape(question.title)}: <b>{right} of {len(standing)} right</b></summary>"
        f'<ul class="w2w-flaws">{items}</ul></details>'
    )


def _member(question: Question, name: str, cell: Cell) -> str:
    mark, look = LOOKS[cell.state]
    lines = "".join(f"<p>{escape(line)}</p>" for line in words.mistakes_in(question, cell))
    return (
        f'<li class="w2w-member w2w-{look}"><b>{escape(name)}</b>: '
        f'<span class="w2w-mark" aria-hidden="true">{mark}</span>{escape(words.state(cell))}{lines}</li>'
    )
