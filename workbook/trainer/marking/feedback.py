"""A mark in words: for the gradebook as plain text, for the learner as a piece of a page."""

from collections.abc import Sequence
from typing import Protocol

from solver import Case
from solver.fault.case import FaultCase
from solver.fault.review import sure_way
from solver.fault.way import Way
from solver.render.fault import way_in_words
from solver.sets.credit import in_points
from solver.topics.catalogue import Refused
from solver.units.show import exact, figures, with_unit
from workbook.fault import LOOK as FAULT_LOOK
from workbook.fault import head_html, review_html
from workbook.practice import after_state, chain_html, in_order, problem_html, worked_html
from workbook.ui.markup import Child, Markup, tag
from workbook.ui.pieces import STATES, state_line

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
NO_ANSWER = ("–", "close")  # its mark, and whose color it has
LOOK = "Your trainer will look at this."


class Scored(Protocol):
    """Something that has points, of a question or of a whole set."""

    @property
    def points(self) -> float: ...
    @property
    def out_of(self) -> float: ...


def points_of(mark: Scored) -> str:
    """The points as they are said: "8 of 10 points"."""
    return f"{exact(mark.points)} of {in_points(mark.out_of)}"


def comment_of(mark: QuestionMark) -> str:
    """What became of a question, as plain text in one line."""
    return " ".join((_head(mark), *_said(mark)))


def feedback_html(mark: QuestionMark) -> Markup:
    """The question, what was answered and what it was, and the worked solution of these numbers.

    It is a piece for a page that has the workbook's look, and needs no program running.
    """
    if isinstance(mark.case, Refused):
        return _section(mark, tag("p", comment_of(mark)))
    if isinstance(mark.case, FaultCase) and mark.read_as:
        return _section(mark, *_of_paper_case(mark, mark.case))
    if isinstance(mark.case, FaultCase):
        return _section(mark, *_of_case(mark, mark.way or Way(mark.case)))
    case = mark.case
    sign, color = _sign(mark)
    answer = tag("p", tag("b", f"The answer is {_answer(case)}."))
    became = tag(
        "div",
        state_line(sign, _head(mark)),
        (tag("p", sentence) for sentence in _said(mark)),
        chain_html(case, mark.mistake),
        None if mark.status == "right" else answer,
        cls=f"w2w-say w2w-{color}",
    )
    return _section(
        mark,
        problem_html(case),
        became,
        tag("h4", "The worked solution"),
        worked_html(case),
        tag("p", f"Code of this problem: {case.code}", cls="w2w-about"),
    )


def _sign(mark: QuestionMark) -> tuple[str, str]:
    known = mark.status in STATES
    return (STATES[mark.status][0], mark.status) if known else NO_ANSWER


def _of_case(mark: QuestionMark, way: Way) -> Sequence[Child]:
    """A case, what became of it, and the review of the way through it."""
    sign, color = _sign(mark)
    look = LOOK if mark.needs_person else ""
    became = tag(
        "div",
        state_line(sign, _head(mark)),
        (tag("p", sentence) for sentence in (mark.reason, look) if sentence),
        cls=f"w2w-say w2w-{color}",
    )
    reviewed = tag("div", review_html(way), cls="w2w-review")
    return FAULT_LOOK, head_html(way), became, reviewed


def _of_paper_case(mark: QuestionMark, case: FaultCase) -> Sequence[Child]:
    """A case that was answered on paper: what became of it, and which readings would have told."""
    sign, color = _sign(mark)
    said = (tag("p", sentence) for sentence in _said(mark))
    became = tag("div", state_line(sign, _head(mark)), said, cls=f"w2w-say w2w-{color}")
    sure = way_in_words(sure_way(str(case.code)))
    told = tag("p", f"With these readings alone you can be sure: {sure}. Case {case.code}.")
    return FAULT_LOOK, became, told


def _section(mark: QuestionMark, *parts: Child) -> Markup:
    return tag("section", parts, cls="w2w-feedback", aria_label=f"Question {mark.number}")


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
    return f"You {'named' if mark.way else 'typed'} “{mark.typed}”{read}."


def _answer(case: Case) -> str:
    if case.ordered:
        return in_order(case)
    if case.choices:
        number = int(case.answer)
        return f"choice {number}: {case.choices[number - 1].rstrip('.')}"
    return with_unit(figures(case.answer, case.unit), case.unit)
