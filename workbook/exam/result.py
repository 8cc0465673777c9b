"""The result of an exam: what came of it, counted in time and after it, and all of that as HTML."""

from collections.abc import Iterable
from functools import cached_property
from typing import NamedTuple

from workbook.practice import question_html, worked_html
from workbook.ui.contents import titled
from workbook.ui.markup import Child, Markup, joined, tag
from workbook.ui.pieces import listed, table

from .earlier import duration
from .question import Marked, said_of
from .sitting import Sitting

__all__ = ["Flaw", "Outcome", "Tally", "result_html", "summary"]

COMPARE = "Compare each step and its units with the worked solution."
NO_FLAWS = "You made no mistake that this workbook knows by name."
STATES = {  # a mark, a word, and the class that gives the color
    "right": ("✓", "right", "right"),
    "late": ("✓", "right, with extra time", "right"),
    "wrong": ("✗", "not right", "wrong"),
    "unread": ("?", "not read", "close"),
    "empty": ("–", "no answer", "close"),
    "lost": ("–", "can't be graded any more", "close"),
}


class Tally(NamedTuple):
    """Of so many questions, how many were right in time, and how many more with extra time.

    A question that cannot be graded any more is none of them, unless its mark was recorded.
    """

    of: int
    in_time: int
    later: int


class Flaw(NamedTuple):
    """A mistake: what to look at, and the questions in which it was made."""

    says: str
    numbers: tuple[int, ...]


class Outcome:
    """The marks of a sitting, and what they come to."""

    def __init__(self, sitting: Sitting):
        self.sitting = sitting
        self.marks = sitting.marks()

    @cached_property
    def whole(self) -> Tally:
        """All questions together."""
        return self._tally(self.marks)

    @cached_property
    def chapters(self) -> dict[str, Tally]:
        """Each chapter of the paper, in its order."""
        of: dict[str, list[Marked]] = {name: [] for name in self.sitting.paper.chapters}
        for mark in self.marks:
            of[mark.question.case.family.chapter].append(mark)
        return {name: self._tally(marks) for name, marks in of.items() if marks}

    @cached_property
    def flaws(self) -> tuple[Flaw, ...]:
        """The named mistakes, the most frequent first."""
        found: dict[str, list[int]] = {}
        for mark in self.marks:
            if mark.verdict and mark.verdict.mistake:
                found.setdefault(mark.verdict.says, []).append(mark.question.number)
        flaws = (Flaw(says, tuple(numbers)) for says, numbers in found.items())
        return tuple(sorted(flaws, key=lambda flaw: -len(flaw.numbers)))

    @cached_property
    def unnamed(self) -> tuple[int, ...]:
        """The questions answered wrong by no mistake that is known."""
        return tuple(
            mark.question.number
            for mark in self.marks
            if mark.verdict and not mark.right and not mark.verdict.mistake
        )

    @cached_property
    def empty(self) -> tuple[int, ...]:
        """The questions without an answer."""
        return tuple(
            mark.question.number for mark in self.marks if not mark.answer and not mark.question.why
        )

    @cached_property
    def lost(self) -> tuple[int, ...]:
        """The questions that cannot be graded any more, and whose marks were not recorded."""
        return tuple(
            mark.question.number for mark in self.marks if mark.question.why and not mark.verdict
        )

    def late(self, mark: Marked) -> bool:
        """Whether the answer came after the time was over."""
        return mark.answer is not None and not self.sitting.in_time(mark.answer)

    def _tally(self, marks: Iterable[Marked]) -> Tally:
        marks = [mark for mark in marks if mark.verdict or not mark.question.why]
        right = [mark for mark in marks if mark.right]
        later = sum(map(self.late, right))
        return Tally(len(marks), len(right) - later, later)


def summary(outcome: Outcome) -> list[str]:
    """The result in sentences."""
    whole, sitting = outcome.whole, outcome.sitting
    share = f" ({whole.in_time / whole.of:.0%})" if whole.of else ""
    said = [f"{whole.in_time} of {whole.of} right in time{share}."]
    if outcome.lost:
        noun = "Question" if len(outcome.lost) == 1 else "Questions"
        said.append(f"{noun} {listed(outcome.lost)} can't be graded any more and don't count.")
    if whole.later:
        said.append(f"{whole.later} more right with extra time.")
    said.append(f"You used {duration(sitting.elapsed)} of {sitting.paper.minutes} min.")
    return said


def result_html(outcome: Outcome) -> Markup:
    """Everything but the sentences on top."""
    return joined(
        tag("h4", "By chapter"),
        _chapters(outcome),
        tag("h4", "What to look at"),
        _flaws(outcome),
        tag("h4", "Every question"),
        tag("p", "Open one to see its worked solution."),
        (_question(outcome, mark) for mark in outcome.marks),
    )


def _chapters(outcome: Outcome) -> Markup:
    tallies = outcome.chapters
    rows = [
        (title, tallies[name].in_time, tallies[name].later, tallies[name].of)
        for name, title in titled(tallies).items()
    ]
    heads = ("Chapter", "Right in time", "With extra time", "Questions")
    return table(rows, "Right answers", heads, "w2w-givens w2w-tallies")


def _flaws(outcome: Outcome) -> Markup:
    told = [(flaw.says, flaw.numbers) for flaw in outcome.flaws]
    if outcome.unnamed:
        told.append((COMPARE, outcome.unnamed))
    if outcome.empty:
        told.append(("You didn't answer.", outcome.empty))
    items = (tag("li", says, " ", _where(numbers)) for says, numbers in told)
    return tag("ul", items, cls="w2w-flaws") if told else tag("p", NO_FLAWS)


def _where(numbers: tuple[int, ...]) -> Markup:
    noun = "Question" if len(numbers) == 1 else "Questions"
    return tag("span", f"{noun} {listed(numbers)}.", cls="w2w-about")


def _state(outcome: Outcome, mark: Marked) -> str:
    if mark.question.why and not mark.verdict:
        return "lost"
    if mark.answer is None or mark.verdict is None:
        return "empty"
    if not mark.verdict.counts:
        return "unread"
    if not mark.right:
        return "wrong"
    return "late" if outcome.late(mark) else "right"


def _question(outcome: Outcome, mark: Marked) -> Markup:
    """One question to open: its state and the answer given, then all of it with its solution."""
    sign, word, color = STATES[_state(outcome, mark)]
    head = tag(
        "summary",
        tag("span", sign, cls="w2w-mark", aria_hidden="true"),
        tag("b", f"Question {mark.question.number}: {word}."),
        _given(mark),
    )
    return tag("details", head, _inside(outcome, mark), cls=f"w2w-marked w2w-{color}")


def _given(mark: Marked) -> str:
    """The answer given, as it was read."""
    if not mark.answer:
        return ""
    typed = mark.answer.typed
    read = mark.verdict and mark.verdict.counts and not mark.question.why
    return f" You answered {said_of(mark.question, typed) if read else f'“{typed[:60]}”'}."


def _inside(outcome: Outcome, mark: Marked) -> Child:
    asked, verdict = mark.question, mark.verdict
    if asked.why:
        return tag("p", asked.why)
    says = verdict.says if verdict and _state(outcome, mark) in ("wrong", "unread") else ""
    case = asked.problem
    return (
        question_html(case, asked.texts),
        tag("p", tag("b", f"The answer is {asked.answer}."), " ", says),
        worked_html(case),
        tag("p", f"Code of this problem: {case.code}", cls="w2w-about"),
    )
