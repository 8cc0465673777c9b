"""A mark in words: for the gradebook as plain text, for the learner as a piece of a page."""

from html import escape
from typing import Protocol

from solver import Case
from solver.topics.catalogue import Refused
from solver.units.show import exact, figures, with_unit
from workbook.practice import after_state, chain_html, problem_html, worked_html
from workbook.ui.pieces import STATES

from .tries import QuestionMark

__all__ = ["comment_of", "feedback_html", "points_of"]

WORDS = {
    "right": "right",
    "mistake": "a known mistake",
    "close": "close",
    "wrong": "not right",
    "unreadable": "not read",
    "blank": "no answer",
}
NO_ANSWER = ("–", "close")  # its mark, and whose colour it has
LOOK = "Your trainer will look at this."


class Scored(Protocol):
    """Something that has points, of a question or of a whole set."""

    @property
    def points(self) -> float: ...
    @property
    def out_of(self) -> float: ...


def points_of(mark: Scored) -> str:
    """The points as they are said: "8 of 10 points"."""
    return (
        f"{exact(mark.points)} of {exact(mark.out_of)} {'point' if mark.out_of == 1 else 'points'}"
    )


def comment_of(mark: QuestionMark) -> str:
    """What became of a question, as plain text in one line."""
    return " ".join((_head(mark), *_said(mark)))


def feedback_html(mark: QuestionMark) -> str:
    """The question, what was answered and what it was, and the worked solution of these numbers.

    It is a piece for a page that has the workbook's look, and needs no program running.
    """
    if isinstance(mark.case, Refused):
        said = " ".join((_head(mark), *_said(mark)))
        return (
            f'<section class="w2w-feedback" aria-label="Question {mark.number}">'
            f"<p>{escape(said)}</p></section>"
        )
    case, known = mark.case, mark.status in STATES
    sign, colour = (STATES[mark.status][0], mark.status) if known else NO_ANSWER
    said = "".join(f"<p>{escape(sentence)}</p>" for sentence in _said(mark))
    answer = (
        "" if mark.status == "right" else f"<p><b>The answer is {escape(_answer(case))}.</b></p>"
    )
    return (
        f'<section class="w2w-feedback" aria-label="Question {mark.number}">'
        f"{problem_html(case)}"
        f'<div class="w2w-say w2w-{colour}">'
        f'<p class="w2w-state"><span class="w2w-mark" aria-hidden="true">{sign}</span>'
        f"{escape(_head(mark))}</p>{said}{chain_html(case, mark.mistake)}{answer}</div>"
        f"<h4>The worked solution</h4>{worked_html(case)}"
        f'<p class="w2w-about">Code of this problem: {escape(case.code)}</p></section>'
    )


def _said(mark: QuestionMark) -> list[str]:
    """What was typed, what it is, and why somebody must look, each where there is something."""
    look = LOOK if mark.needs_person else ""
    said = (_typed(mark), after_state(mark.says), mark.reason, look)
    return [sentence for sentence in said if sentence]


def _head(mark: QuestionMark) -> str:
    return f"Question {mark.number}: {WORDS[mark.status]}, {points_of(mark)}."


def _typed(mark: QuestionMark) -> str:
    if not mark.typed:
        return ""
    read = f", which was read as {mark.read_as}" if mark.read_as else ""
    return f"You typed “{mark.typed}”{read}."


def _answer(case: Case) -> str:
    if case.choices:
        number = int(case.answer)
        return f"choice {number}: {case.choices[number - 1].rstrip('.')}"
    return with_unit(figures(case.answer, case.unit), case.unit)
