"""One question of a set as one person has it: its tries, and what becomes of an answer.

There are no widgets here; set_card.py shows what this holds.
"""

from collections.abc import Callable, Sequence
from time import monotonic

from solver import Case, Verdict, grade
from workbook.log import SHOWN, Attempt
from workbook.practice import Reply

from .answer_sheet import AnswerSheet

__all__ = ["Asked", "in_words"]


class Asked:
    """Question `number` of a sheet's set, from 1, which is `case`. Tries are read from the sheet each time.

    Everything here raises NotRead where the sheet is there and cannot be read.
    """

    def __init__(
        self,
        sheet: AnswerSheet,
        number: int,
        case: Case,
        clock: Callable[[], float] = monotonic,
    ):
        self.sheet, self.number, self.case, self._clock = sheet, number, case, clock
        self.assigned = sheet.assigned
        self._since = clock()

    def tries(self) -> Sequence[Attempt]:
        """The answers so far, oldest first."""
        return [line for line in self.sheet.tries(self.number) if line.status != SHOWN]

    def last(self) -> tuple[str, Reply] | None:
        """The last answer as it was typed, and what became of it; None before the first."""
        tries = self.tries()
        if not tries:
            return None
        typed = tries[-1].typed
        return typed, Reply(grade(self.case, typed), True, self._after(tries))

    def answer(self, text: str) -> Reply:
        """Grade an answer and keep it. What does not count is told and not kept."""
        before = self.tries()
        limit = self.assigned.tries
        if limit and len(before) >= limit:
            said = f"You have used {in_words(limit)}. This answer doesn't count."
            return Reply(Verdict("note", said), False, "Your earlier answers are kept.")
        verdict = grade(self.case, text)
        if note := self._why_uncounted(verdict, before):
            return Reply(verdict, False, note)
        seconds = self._clock() - self._since
        number = len(before) + 1
        fault = self.sheet.keep(self.number, verdict, typed=text, tries=number, seconds=seconds)
        return Reply(verdict, True, self._after(self.tries()), fault)

    def _why_uncounted(self, verdict: Verdict, before: Sequence[Attempt]) -> str:
        if not verdict.counts:
            return "This doesn't count as a try."
        if any(line.status == "right" for line in before):
            return "You already have the right answer, so this one doesn't count."
        # Where the last answer counts, going back to an earlier one is a change.
        compared = before[-1:] if self.assigned.counts == "last" else before
        if verdict.value in [grade(self.case, line.typed).value for line in compared]:
            return "You already gave this answer, so it doesn't count again."
        return ""

    def _after(self, tries: Sequence[Attempt]) -> str:
        """Which try it was, and how many are left where that still matters."""
        said = f"Try {len(tries)}."
        if tries[-1].status == "right" or not self.assigned.tries:
            return said
        left = max(self.assigned.tries - len(tries), 0)
        return f"{said} You have {in_words(left)} left."


def in_words(tries: int) -> str:
    """A number of tries.

    >>> in_words(0), in_words(1), in_words(3)
    ('no tries', 'one try', '3 tries')
    """
    return {0: "no tries", 1: "one try"}.get(tries, f"{tries} tries")
