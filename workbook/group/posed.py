"""The problems of a set, each to be worked as often as its learner likes.

There are no widgets here; posed_card.py shows what this holds.
"""

from collections.abc import Callable, Iterable
from time import monotonic
from typing import NamedTuple

from solver import BadCode, Case, case_from_code, grade
from solver.engine.telling import hints_of
from workbook.log import SHOWN, Attempt
from workbook.practice import Practice, Reply, Try

from .set_text import ProblemSet

__all__ = ["Posed", "Question", "questions_of"]


class Question(NamedTuple):
    """A problem in its place, from 1. `fault` says why there is no case."""

    number: int
    code: str
    case: Case | None
    fault: str = ""

    @property
    def title(self) -> str:
        """What it is called, and at which level."""
        case = self.case
        return f"{case.family.title}, level {case.level}" if case else self.code


def questions_of(problems: ProblemSet) -> tuple[Question, ...]:
    """The problems of a set in order; one that another edition made has a sentence instead."""
    return tuple(_question(number, code) for number, code in enumerate(problems.codes, 1))


def _question(number: int, code: str) -> Question:
    try:
        return Question(number, code, case_from_code(code))
    except BadCode as refusal:
        return Question(number, code, None, str(refusal))


class Posed(Practice):
    """Practice of one problem alone, which goes on from what was tried before."""

    def __init__(
        self,
        case: Case,
        on_try: Callable[[Try], str | None] | None = None,
        clock: Callable[[], float] = monotonic,
    ):
        self._posed = case
        super().__init__([case.family], on_try=on_try, clock=clock)
        self.level, self.units = case.level, case.units

    def _drawn(self, before: Case | None = None) -> Case:
        return self._posed

    def restore(self, before: Iterable[Attempt]) -> tuple[str, Reply] | None:
        """Stand as after these tries, oldest first; the last answer and what became of it."""
        self._show(self._posed)
        last = None
        for made in before:
            self.hints = min(max(self.hints, made.hints), len(hints_of(self.case)))
            if made.status == SHOWN:
                self.solution = True
            elif (verdict := grade(self.case, made.typed)).counts:
                self.tries += 1
                if verdict.value is not None:
                    self._answers.add(verdict.value)
                self.solved = self.solved or verdict.status == "right"
                note = f"Try {self.tries}. This answer is kept."
                last = made.typed, Reply(verdict, True, note)
        return last
