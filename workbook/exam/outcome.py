"""What came of an exam: counted in time and after it, by chapter and by mistake. No widgets."""

from collections.abc import Iterable
from functools import cached_property
from typing import NamedTuple

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
        of = {name: [] for name in self.sitting.paper.chapters}
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
