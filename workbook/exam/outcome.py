"""What came of an exam, as plain data: how each question ended, counted in time and after it."""

from collections.abc import Iterable
from functools import cached_property
from typing import NamedTuple

from solver import Case
from solver.fault.case import FaultCase
from workbook.study import Suggestion

from .question import Marked
from .sitting import Sitting

__all__ = ["Flaw", "Outcome", "Tally"]


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
            of.setdefault(mark.question.case.family.chapter, []).append(mark)
        return {name: self._tally(marks) for name, marks in of.items() if marks}

    @cached_property
    def flaws(self) -> tuple[Flaw, ...]:
        """The named mistakes, the most frequent first."""
        found: dict[str, list[int]] = {}
        for mark in self.marks:
            if mark.verdict and mark.verdict.mistake:
                found.setdefault(_named(mark), []).append(mark.question.number)
        flaws = (Flaw(says, tuple(numbers)) for says, numbers in found.items())
        return tuple(sorted(flaws, key=lambda flaw: -len(flaw.numbers)))

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

    def state(self, mark: Marked) -> str:
        """How a question ended: right, late, wrong, unread, empty, or lost."""
        if mark.question.why and not mark.verdict:
            return "lost"
        if mark.answer is None or mark.verdict is None:
            return "empty"
        if not mark.verdict.counts:
            return "unread"
        if not mark.right:
            return "wrong"
        return "late" if self.late(mark) else "right"

    @cached_property
    def missed(self) -> tuple[Marked, ...]:
        """The questions that were not right, in order."""
        return tuple(mark for mark in self.marks if not mark.right and self.state(mark) != "lost")

    @cached_property
    def to_practice(self) -> tuple[Suggestion, ...]:
        """The kinds of the questions that were not right, each once, at its level, and the mistake made."""
        found: dict[tuple[str, int], Suggestion] = {}
        for mark in self.missed:
            if mark.question.why or isinstance(mark.question.case, FaultCase):
                continue
            case, number = mark.question.problem, mark.question.number
            mistake = (mark.verdict and mark.verdict.mistake) or ""
            why = f"Question {number} on your exam was this kind."
            kind = Suggestion(case.family, case.level, "missed", why, mistake)
            found.setdefault((case.family.name, case.level), kind)
        return tuple(found.values())


def _named(mark: Marked) -> str:
    """What the mistake of an answer is, in words without its numbers, so that the same ones are one."""
    assert mark.verdict is not None
    case, named = mark.question.case, mark.verdict.mistake
    mistakes = case.mistakes if isinstance(case, Case) else ()
    return next((each.says for each in mistakes if each.id == named), mark.verdict.says)
