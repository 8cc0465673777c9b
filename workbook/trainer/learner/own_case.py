"""A case of find the fault of a set, as its learner works it: each thing done is a line of the answer sheet.

What is typed in a line is all that was done so far, as words (`solver.fault.way`). So the last line that fits the
one before it tells the whole way, for the learner's page and for marking alike.
"""

from collections.abc import Iterable
from typing import NamedTuple

from solver import SolverError
from solver.fault.case import FaultCase
from solver.fault.way import NAME, Way
from workbook.fault import attempt_of_way
from workbook.log import Attempt

from .answer_sheet import AnswerSheet, in_words

__all__ = ["OwnCase", "Replayed", "replayed"]

APART = "Two lines of this case don't follow each other; the first of them counted."
NOT_DONE = "A line of this case has a step that can't be done there, and was not counted."
CALLED = "The sheet calls this case {} after step {}; it is {}."
STATES = {"right": "found", "wrong": "not found yet", "shown": "given up"}


class Replayed(NamedTuple):
    """The way that the lines of a case tell, and what is odd about them."""

    way: Way
    odd: tuple[str, ...]


def replayed(case: FaultCase, lines: Iterable[Attempt]) -> Replayed:
    """The way through a case that these lines tell, oldest first; of what they say only the words count."""
    way, odd = Way(case), list[str]()
    for line in lines:
        words, held = tuple(line.typed.split()), way.words
        if words == held[: len(words)]:
            continue  # two pages may have had the same case open
        if held != words[: len(held)]:
            odd.append(APART)
            continue
        try:
            longer = way.then(*words[len(held) :])
        except SolverError:
            odd.append(NOT_DONE)
            continue
        way = longer
        status = attempt_of_way(way).status
        if line.status != status:
            called = STATES.get(line.status, "something else")
            odd.append(CALLED.format(called, len(words), STATES[status]))
    return Replayed(way, tuple(odd))


class OwnCase:
    """A case of one person's set: the way so far, from the sheet each time, and one thing more.

    Raises:
        NotRead: the sheet is there and cannot be read; the sentence says why. So do all its methods.
    """

    def __init__(self, sheet: AnswerSheet, number: int, case: FaultCase):
        self.sheet, self.number, self.case = sheet, number, case

    @property
    def way(self) -> Way:
        """All that was done so far."""
        code = str(self.case.code)
        return replayed(self.case, [line for line in self.sheet.read() if line.code == code]).way

    def do(self, *words: str) -> None:
        """Do one thing more: on the disk first.

        Raises:
            NotKept: nothing was done.
            SolverError: it can't be done here; the sentence says what can.
        """
        way = self.way
        for word in words:
            self._may(way, word)
            way = way.then(word)
        assigned = self.sheet.assigned
        self.sheet.add(attempt_of_way(way, assigned.work.code, self.sheet.person))

    def _may(self, way: Way, word: str) -> None:
        """Naming a fault is a try, and a set may limit those."""
        limit = self.sheet.assigned.tries
        if word.startswith(NAME) and limit and len(way.names) >= limit:
            raise SolverError(
                f"You have used {in_words(limit)}. Another name doesn't count. "
                "Finish this case with the link below."
            )
