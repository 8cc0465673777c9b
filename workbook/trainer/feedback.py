"""A mark in words: for the gradebook as plain text, for the learner as a piece of a page."""

from html import escape

from solver.show import exact, figures, with_unit

from .. import fragments
from ..saying import STATES
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


def points_of(mark: QuestionMark) -> str:
    """The points as they are said: "8 of 10 points"."""
    return (
        f"{exact(mark.points)} of {exact(mark.out_of)} {'point' if mark.out_of == 1 else 'points'}"
    )


def comment_of(mark: QuestionMark) -> str:
    """What became of a question, as plain text in one line."""
    return " ".join(filter(None, (_head(mark), _typed(mark), mark.says, mark.reason)))


def feedback_html(mark: QuestionMark) -> str:
    """The question, what was answered and what it was, and the worked solution of these numbers."""
    case, known = mark.case, mark.status in STATES
    sign, colour = (STATES[mark.status][0], mark.status) if known else NO_ANSWER
    said = (_typed(mark), mark.says, mark.reason, LOOK if mark.needs_person else "")
    sentences = "".join(f"<p>{escape(each)}</p>" for each in said if each)
    where = fragments.chain(case, mark.mistake)
    return (
        f'<section class="w2w-marked w2w-{colour}">{fragments.problem(case)}'
        f'<p class="w2w-state"><span class="w2w-mark" aria-hidden="true">{sign}</span>'
        f"{escape(_head(mark))}</p>{sentences}{where}"
        f"<p><b>The answer is {escape(_answer(mark))}.</b></p>{fragments.steps(case)}"
        f'<p class="w2w-about">Code of this problem: {escape(case.code)}</p></section>'
    )


def _head(mark: QuestionMark) -> str:
    return f"Question {mark.number}: {WORDS[mark.status]}, {points_of(mark)}."


def _typed(mark: QuestionMark) -> str:
    if not mark.typed:
        return ""
    read = f", which was read as {mark.read_as}" if mark.read_as else ""
    return f"You typed “{mark.typed}”{read}."


def _answer(mark: QuestionMark) -> str:
    case = mark.case
    if case.choices:
        number = int(case.answer)
        return f"choice {number}, {case.choices[number - 1].rstrip('.')}"
    return with_unit(figures(case.answer, case.unit), case.unit)
