"""The answer sheet: what one person answered to one set, a line of the attempt log each.

It stands beside the set's notebook and is handed in with it. Its lines carry the code of the set
(`of`) and the id of the person (`who`).
"""

from pathlib import Path
from typing import NamedTuple

from solver import Verdict
from solver.sets.work_set import case_for, person_id
from workbook.log import SHOWN, Attempt, Log, NotKept, Strange, made, parse
from workbook.trainer.sets.set_file import Assigned

__all__ = ["SHEET", "AnswerSheet", "Sheet", "read_sheet"]

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

    def tries(self, number: int) -> list[Attempt]:
        """This person's answers to question `number`, from 1; raises as `read` does."""
        code = case_for(self.assigned.work, self.person, number).code
        return [line for line in self.read() if line.code == code]

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
            self._log.keep(line)
        except NotKept as fault:
            return str(fault)
        return ""
