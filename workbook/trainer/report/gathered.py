"""A class as its course has it: all that was handed in for a set, marked by the trainer's copy."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import suppress
from pathlib import Path
from typing import NamedTuple

from solver import SolverError
from solver.sets.work_set import person_id
from workbook.trainer.course import Course, course_at, names_in, people_in
from workbook.trainer.marking.bulk import marks_of, set_in
from workbook.trainer.marking.given import with_given
from workbook.trainer.marking.marked import Marked
from workbook.trainer.sets.set_file import Assigned

from .facts import ClassFacts, facts

__all__ = ["Gathered", "gathered"]

NAMED = 5  # folders named in a sentence


class Gathered(NamedTuple):
    """A set, what its marks say, and how many were handed in and marked.

    `left_out` are folders named as no id can be.
    """

    assigned: Assigned
    facts: ClassFacts
    marked: int
    left_out: tuple[str, ...]

    def notes(self, hidden: bool) -> list[str]:
        """What must be known about the marks, in sentences; `hidden` leaves all names out."""
        return [*_left_out(self.left_out, hidden), *_late(self.assigned)]


def gathered(
    folder: Path, name: str, step: Callable[[int, int], object] = lambda done, of: None
) -> Gathered:
    """Mark what was handed in for the set `name` of the course in `folder`, and say what it shows.

    `step` hears how many are marked, and of how many. Nothing is written.

    Raises:
        SolverError: there is no course or no such set; the sentence says what to do.
    """
    course = course_at(folder)
    assigned, people = set_in(course, name), course.handed_in(name)
    left = set(people)
    # Before anybody has handed in, nobody is behind.
    absent = sorted(people_in(course, assigned.group) - _ids(people)) if people else []
    marks = with_given(course, name, _marked(course, name, people, left, step))
    told = facts(marks, absent)._replace(called=names_in(course))
    return Gathered(assigned, told, len(people) - len(left), tuple(sorted(left)))


def _ids(folders: Iterable[str]) -> set[str]:
    """Those whose folders these are; a folder may have another form of an id."""
    found = set()
    for folder in folders:
        with suppress(SolverError):
            found.add(person_id(folder))
    return found


def _marked(
    course: Course, name: str, people: list[str], left: set[str], step: Callable[[int, int], object]
) -> Iterator[Marked]:
    for done, (handed, marked) in enumerate(marks_of(course, name, people), 1):
        left.discard(handed.person)
        step(done, len(people))
        yield marked


def _left_out(folders: Sequence[str], hidden: bool) -> list[str]:
    if not folders:
        return []
    were = "folder was" if len(folders) == 1 else "folders were"
    many = f"{len(folders):,} {were} left out, because that can't be an id"
    if hidden:
        return [f"{many}."]
    named = ", ".join(f"“{each[:40]}”" for each in folders[:NAMED])
    more = f" and {len(folders) - NAMED:,} more" if len(folders) > NAMED else ""
    return [f"{many}: {named}{more}.", "Rename each one to the person's id, and look again."]


def _late(assigned: Assigned) -> list[str]:
    if not (assigned.due and assigned.late):
        return []
    return ["These points are before anything is taken off for being late."]
