"""The sheets of a set: one for each person, with its number, its code and its problems.

Beside them goes a file for a spreadsheet, to type the answers into.
"""

from collections.abc import Sequence
from typing import NamedTuple

from solver import Case, SolverError
from solver.fault.case import FaultCase
from solver.sets.sheet_code import SheetCode, sheet_code
from solver.sets.work_set import WorkSet, cases_for, faults_for, plan_of
from workbook.trainer.course import Person
from workbook.trainer.sets.set_file import Assigned
from workbook.ui.spreadsheet import csv_of

__all__ = ["Sheet", "answers_csv", "numbered", "numbered_id", "sheets_of"]


class Sheet(NamedTuple):
    """A person's sheet. `name` is "" where none is known; `is_named`, whether it is somebody's."""

    code: SheetCode
    person: str
    name: str
    cases: tuple[Case, ...]
    faults: tuple[FaultCase, ...] = ()

    @property
    def asked(self) -> int:
        """How many questions are on it."""
        return len(self.cases) + len(self.faults)

    @property
    def number(self) -> int:
        """The number of the sheet, from 1."""
        return self.code.number

    @property
    def is_named(self) -> bool:
        """Whether it is for somebody known, and not for whoever gets it."""
        return self.person != numbered_id(self.number)

    @property
    def who(self) -> str:
        """The name, or the id where there is none; "" where nobody is known."""
        return (self.name or self.person) if self.is_named else ""


def numbered_id(number: int) -> str:
    """The id of whoever gets the sheet with this number.

    >>> numbered_id(17)
    'sheet-017'
    """
    return f"sheet-{number:03}"


def numbered(count: int) -> tuple[Person, ...]:
    """As many people as asked for, known by the number of their sheet alone."""
    return tuple(Person(numbered_id(number)) for number in range(1, count + 1))


def sheets_of(
    assigned: Assigned, people: Sequence[Person], first: int = 1, last: int | None = None
) -> tuple[Sheet, ...]:
    """A sheet for each of them, in this order; or for those with the numbers `first` to `last`.

    Raises:
        SolverError: a question of the set cannot be asked any more.
    """
    work = assigned.work
    for number, (kind, _) in enumerate(plan_of(work), 1):
        if kind.why:
            raise SolverError(f"Question {number}: {kind.why} Make a new set to print.")
    same = () if work.each or not people else _cases(work, people[0].id)
    return tuple(
        Sheet(
            sheet_code(work.code, number, each.id),
            each.id,
            each.name,
            same or _cases(work, each.id),
            faults_for(work, each.id),
        )
        for number, each in enumerate(people[first - 1 : last], first)
    )


def _cases(work: WorkSet, person: str) -> tuple[Case, ...]:
    """A person's problems; none is refused, as each kind was looked at before."""
    return tuple(case for case in cases_for(work, person) if isinstance(case, Case))


def answers_csv(sheets: Sequence[Sheet]) -> bytes:
    """A row for each sheet, with its code and whose it is, and a column for each question."""
    count = sheets[0].asked if sheets else 0
    blank = [""] * count
    heads = ["sheet", "person", "name", *range(1, count + 1)]
    rows = ([str(each.code), each.person, each.name, *blank] for each in sheets)
    return csv_of([heads, *rows])
