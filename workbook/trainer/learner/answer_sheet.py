"""The answer sheet: what one person answered to one set, a line of the attempt log each; and a question's tries.

It stands beside the set's notebook and is handed in with it. Its lines carry the code of the set
(`of`) and the id of the person (`who`). There are no widgets here; set_card.py shows what this holds.
"""

from collections.abc import Callable, Sequence
from datetime import datetime
from pathlib import Path
from time import monotonic
from typing import NamedTuple

from solver import Case, Verdict, grade
from solver.fault.case import FAMILY
from solver.sets.work_set import case_for, person_id
from workbook.log import SHOWN, Attempt, Log, NotKept, Strange, made, parse
from workbook.practice import Reply
from workbook.trainer.sets.set_file import Assigned

from .timing import after_said, opened_at

__all__ = ["SHEET", "AnswerSheet", "Asked", "Sheet", "in_words", "read_sheet"]

SHEET = "answer-sheet.jsonl"
MOST_LINES = 5_000  # eighty tries at each of sixty questions
MOST = 2_000_000  # bytes
TOO_LONG = "the sheet is too long, and was read up to here"


class Sheet(NamedTuple):
    """The lines of a sheet in the order of the file, and those that are no answers."""

    lines: tuple[Attempt, ...]
    strange: tuple[Strange, ...]


def read_sheet(data: bytes | None) -> Sheet:
    """What was handed in as a sheet, whatever it is; it never raises."""
    if not data:
        return Sheet((), ())
    lines = data[:MOST].split(b"\n", MOST_LINES)
    more = lines.pop() if len(lines) > MOST_LINES else b""
    attempts, strange = parse(b"\n".join(lines))
    if more or len(data) > MOST:
        strange.append(Strange(len(lines), TOO_LONG, b""))
    return Sheet(tuple(attempts), tuple(strange))


class AnswerSheet:
    """The sheet of one person, for a card that adds to it.

    Raises:
        SolverError: nobody can have this id; the sentence says what one is made of.
    """

    def __init__(self, path: Path, assigned: Assigned, person: str):
        self.assigned, self.person = assigned, person_id(person)
        self._log = Log(path)

    def read(self) -> list[Attempt]:
        """This person's answers to this set, in order of time.

        Raises:
            NotRead: the file is there and cannot be read; the sentence says why.
        """
        self._log.read()
        ours = (self.assigned.work.code, self.person)
        return [line for line in self._log.attempts if (line.of, line.who) == ours]

    def opened(self) -> datetime | None:
        """When the questions of a set with a time limit were opened; None before.

        Raises:
            NotRead: the sheet is there and cannot be read; the sentence says why.
        """
        return opened_at(self.read())

    def tries(self, number: int) -> list[Attempt]:
        """This person's answers to question `number`, from 1, in order of time.

        Raises:
            NotRead: the sheet is there and cannot be read; the sentence says why.
        """
        code = case_for(self.assigned.work, self.person, number).code
        return [line for line in self.read() if line.code == code]

    def answered(self) -> set[str]:
        """The codes of the problems and cases that this person has answered.

        Raises:
            NotRead: the sheet is there and cannot be read; the sentence says why.
        """
        return {line.code for line in self.read() if _answers(line)}

    def keep(
        self,
        number: int,
        verdict: Verdict | None,
        *,
        typed: str = "",
        tries: int = 1,
        hints: int = 0,
        seconds: float = 0.0,
    ) -> str:
        """Write one answer to question `number` through to the disk; a sentence where it cannot.

        Without a verdict it tells that the worked solution was opened. An answer that could not
        be written waits, and goes with the next one.
        """
        case = case_for(self.assigned.work, self.person, number)
        line = made(
            code=case.code,
            family=case.family.name,
            level=case.level,
            typed=typed,
            status=verdict.status if verdict else SHOWN,
            mistake=(verdict.mistake if verdict else None) or "",
            seconds=round(seconds, 1),
            tries=tries,
            hints=hints,
            solution=verdict is None,
            of=self.assigned.work.code,
            who=self.person,
        )
        try:
            self.add(line)
        except NotKept as fault:
            return str(fault)
        return ""

    def add(self, line: Attempt) -> None:
        """Write a line through to the disk.

        Raises:
            NotKept: it cannot be written; the sentence says why.
        """
        self._log.keep(line)


class Asked:
    """Question `number` of a sheet's set, from 1, which is `case`. Tries are read from the sheet each time.

    Raises:
        NotRead: the sheet is there and cannot be read; the sentence says why. So do all its methods.
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
        limit = self.assigned.tries_for(self.case)
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
        """Which try it was, and how many are left where that still matters; and whether time was up."""
        said = f"Try {len(tries)}.{after_said(self.assigned, self.sheet.read(), tries[-1])}"
        limit = self.assigned.tries_for(self.case)
        if tries[-1].status == "right" or not (limit or self.assigned.credit.each_try):
            return said
        left = max(limit - len(tries), 0)
        told = f"{said} You have {in_words(left)} left." if limit else said
        return f"{told}{self._next_worth(len(tries) + 1)}" if left or not limit else told

    def _next_worth(self, number: int) -> str:
        """What a right answer earns at this try, where earlier ones cost something."""
        credit = self.assigned.credit
        if not credit.each_try or self.assigned.counts == "first":
            return ""
        share = max(0.0, credit.right - credit.each_try * (number - 1))
        return f" A right answer now earns {share:.0%} of the points."


def _answers(line: Attempt) -> bool:
    """Whether a line answers its question: a case does once a fault is named, or it is given up."""
    if line.family == FAMILY.name:
        return line.status == SHOWN or line.tries > 0
    return line.status != SHOWN


def in_words(tries: int) -> str:
    """A number of tries.

    >>> in_words(0), in_words(1), in_words(3)
    ('no tries', 'one try', '3 tries')
    """
    return {0: "no tries", 1: "one try"}.get(tries, f"{tries} tries")
