"""The ways through the cases of find the fault in one sitting, each by the number of its question."""

import contextlib
from functools import cached_property

from solver import SolverError
from solver.fault.case import FaultCase
from solver.fault.way import Way
from solver.sets.paper import Paper
from solver.sets.paper_questions import faults_of

from .question import Answer

__all__ = ["Ways"]


class Ways:
    """What was done so far in each case of a paper; no problem is drawn for them."""

    def __init__(self, paper: Paper):
        self._paper = paper
        self._so_far: dict[int, Way] = {}
        self._since: dict[int, float] = {}

    @cached_property
    def cases(self) -> dict[int, FaultCase]:
        """The cases, by the number of the question."""
        return dict(enumerate(faults_of(self._paper), self._paper.count + 1))

    def __contains__(self, number: int) -> bool:
        """Whether anything was done in this case."""
        return number in self._so_far

    def way(self, number: int) -> Way:
        """The way so far through the case that is this question."""
        return self._so_far.get(number) or Way(self.cases[number])

    def take(self, number: int, at: float, after: int, words: str, when: str) -> Answer | None:
        """What was done in a case; the answer to its question once its way has ended.

        The same again, or one that can't follow, changes nothing.
        """
        if number not in self.cases:
            return None
        way = self.way(number)
        if after != len(way.words):
            return None
        with contextlib.suppress(SolverError):
            self._so_far[number] = way = way.then(*words.split())
            since = self._since.setdefault(number, at)
            if way.ended:
                return Answer(" ".join(way.words), when, at, round(at - since, 1))
        return None
