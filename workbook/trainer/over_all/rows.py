"""A row for each person of a course's list: how they did in every set, and in all."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from workbook.log import SHOWN
from workbook.trainer.coming_in.handed_in import read_handed
from workbook.trainer.course import Course
from workbook.trainer.gradebook.applying import totals
from workbook.trainer.gradebook.rules import seconds_late
from workbook.trainer.gradebook.tables import GradebookFault, everybody, opened, set_rows
from workbook.trainer.learner.answer_sheet import read_sheet
from workbook.trainer.marking.bulk import set_in
from workbook.trainer.people import Person, listed
from workbook.trainer.sets.set_file import SET_FILE, Assigned, SetFault

from .attendance import Meeting, hours_of, meetings

__all__ = ["OneSet", "Over", "Row", "over_all"]

LONGEST = 1_800  # seconds of one answer that count; a page left open says nothing of the work


class OneSet(NamedTuple):
    """How one person did in one set. `points` are as they count, less what being late took."""

    points: float
    late: bool
    tries: int
    minutes: float


class Row(NamedTuple):
    """A person, what they did by the name of the set, and their hours; a set not handed in is not there."""

    person: Person
    sets: Mapping[str, OneSet]
    hours: float

    @property
    def points(self) -> float:
        """The points of all sets together."""
        return round(sum(each.points for each in self.sets.values()), 4)


class Over(NamedTuple):
    """The sets in their order, what each is worth, the rows in the order of the list, the meetings.

    `gone` are those who handed in something and are not on the list any more.
    """

    sets: tuple[Assigned, ...]
    rows: tuple[Row, ...]
    held: tuple[Meeting, ...]
    gone: tuple[str, ...]

    def worth(self, person: Person | None = None) -> float:
        """The points there are to have, or that this person could have."""
        return sum(each.out_of for each in self.sets if person is None or _is_for(each, person))

    def share(self, row: Row) -> float:
        """The share of the points that a person has of what their sets are worth, 0 to 1."""
        worth = self.worth(row.person)
        return row.points / worth if worth else 0.0


def _is_for(assigned: Assigned, person: Person) -> bool:
    return not assigned.group or assigned.group == person.group


def over_all(course: Course, names: Sequence[str] = ()) -> Over:
    """Everybody of the list over these sets, or over all that have been graded.

    Raises:
        SetFault: a set that is named is not there.
        GradebookFault: the gradebook cannot be used.
    """
    found: dict[str, dict[str, OneSet]] = {}
    sets = []
    for name in names or _sets(course):
        try:
            assigned = set_in(course, name)
            graded = _of_set(course, assigned)
        except (GradebookFault, SetFault):
            if names:
                raise
            continue
        sets.append(assigned)
        for person, one in graded.items():
            found.setdefault(person, {})[name] = one
    people = listed(course) or [Person(person) for person in sorted(found)]
    held = meetings(course.root)
    hours = hours_of(held, [one.id for one in people])
    rows = tuple(Row(one, found.get(one.id, {}), hours[one.id]) for one in people)
    gone = tuple(sorted(found.keys() - {one.id for one in people}))
    return Over(tuple(sets), rows, tuple(held), gone)


def _sets(course: Course) -> list[str]:
    """The sets of a course, as they are due, and those without a time by name."""
    return sorted(path.parent.name for path in course.root.glob(f"source/*/{SET_FILE}"))


def _of_set(course: Course, assigned: Assigned) -> dict[str, OneSet]:
    found = {}
    with opened(course.gradebook) as connection:
        rows = set_rows(connection, assigned.name)
        points = totals(connection, rows)
        for person, entry in everybody(connection, rows):
            if person in points:
                late = seconds_late(entry.when, rows.due, entry.extension) > 0
                found[person] = OneSet(points[person], late, *_work(course, assigned.name, person))
    return found


def _work(course: Course, name: str, person: str) -> tuple[int, float]:
    """How many tries the sheet has, and the minutes of all of them."""
    handed = read_handed(course.folder("submitted", name, person), name, person)
    lines = [line for line in read_sheet(handed.sheet).lines if line.status != SHOWN]
    seconds = sum(min(max(line.seconds, 0.0), LONGEST) for line in lines)
    return len(lines), round(seconds / 60, 1)
