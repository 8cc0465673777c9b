"""The commands extend and override: more time, and points by hand; what each does, in sentences."""

import argparse
from collections.abc import Callable, Iterator
from datetime import datetime

from sqlalchemy import Connection

from solver import SolverError
from solver.sets.credit import in_points
from solver.sets.work_set import person_id
from solver.units.show import exact

from .coming_in.times import in_words
from .course import Course, course_at, people_in
from .gradebook.applying import apply_given, take_back, take_back_time, totals
from .gradebook.given import (
    Extension,
    Override,
    extensions_of,
    keep_extension,
    keep_override,
    overrides_of,
)
from .gradebook.tables import GradebookFault, SetRows, opened, set_rows
from .marking.bulk import moved_between, set_in
from .people import listed
from .sets.set_file import SET_FILE, Assigned

__all__ = ["bring_up_to_date", "extend", "moved_lines", "override"]

MOST_SAID = 20


def extend(options: argparse.Namespace) -> Iterator[str]:
    """Give somebody more time for a set, or take that away."""
    course, assigned, people = _of_which(options)
    if not assigned.due:
        path = course.folder("source", assigned.name) / SET_FILE
        raise SolverError(
            f"“{assigned.name}” has no due time, so nobody needs more time for it. To give it one, put a "
            f"line such as due = 2026-12-01T18:00:00 into {path}, above the first [."
        )
    who = people[0] if len(people) == 1 else f"{len(people)} people"
    has = "has" if len(people) == 1 else "have"
    if options.remove:
        for person in people:
            _take_back(course, assigned, person)
        yield f"{who} {has} the same time for “{assigned.name}” as everybody now."
    else:
        until: datetime | None = options.due
        if until is None:
            raise SolverError("Type until when, such as --due 2026-12-05T18:00.")
        for person in people:
            keep_extension(course.root, assigned.name, person, Extension(until, options.note))
        yield f"{who} {has} until {in_words(until)} for “{assigned.name}”."
    yield from bring_up_to_date(course, assigned)


def _of_which(options: argparse.Namespace) -> tuple[Course, Assigned, list[str]]:
    """The one person that is named, or everybody of a group."""
    if not options.group:
        course, assigned, person = _of_whom(options)
        return course, assigned, [person]
    course = course_at(options.course)
    people = sorted(people_in(course, options.group))
    if options.person or not people:
        groups = sorted({one.group for one in listed(course) if one.group})
        there = (
            f"There are: {', '.join(groups)}." if groups else "people.csv has no column “group”."
        )
        raise SolverError(f"Type one person, or --group and one that there is. {there}")
    return course, set_in(course, options.set), people


def _take_back(course: Course, assigned: Assigned, person: str) -> None:
    if person not in extensions_of(course.root, assigned.name):
        raise SolverError(f"{person} has no more time for “{assigned.name}” than the others.")
    keep_extension(course.root, assigned.name, person, None)
    _in_gradebook(course, assigned, lambda here, rows: take_back_time(here, rows, person))


def override(options: argparse.Namespace) -> Iterator[str]:
    """Give points for a question by hand, or take that back."""
    course, assigned, person = _of_whom(options)
    number, most = options.question, assigned.work.asked
    if not 1 <= number <= most:
        raise SolverError(f"“{assigned.name}” has questions 1 to {most}; there is no {number}.")
    if options.remove:
        if number not in overrides_of(course.root, assigned.name).get(person, {}):
            raise SolverError(f"{person} has no points by hand for question {number}.")
        keep_override(course.root, assigned.name, person, number, None)
        _in_gradebook(course, assigned, lambda here, rows: take_back(here, rows, person, number))
        yield f"Question {number} of {person} counts as it was graded."
    else:
        given = _points(options, assigned.worth(number))
        keep_override(course.root, assigned.name, person, number, given)
        yield f"{person} has {in_points(given.points)} for question {number}: {given.reason}"
    yield from bring_up_to_date(course, assigned)


def _of_whom(options: argparse.Namespace) -> tuple[Course, Assigned, str]:
    course = course_at(options.course)
    assigned, person = set_in(course, options.set), person_id(options.person)
    known = people_in(course)
    if known and person not in known:
        raise SolverError(
            f"“{person}” isn't on the list of this class. Check the id in people.csv."
        )
    return course, assigned, person


def _points(options: argparse.Namespace, worth: float) -> Override:
    points, reason = options.points, " ".join(options.reason.split())
    if points is None or not reason:
        raise SolverError('Type the points and why: --points 2 --reason "shown at the board".')
    if not 0 <= points <= worth:
        raise SolverError(f"This question is worth {in_points(worth)}; you typed {points:g}.")
    return Override(points, reason)


def _in_gradebook(
    course: Course, assigned: Assigned, change: Callable[[Connection, SetRows], None]
) -> None:
    try:
        with opened(course.gradebook) as connection:
            change(connection, set_rows(connection, assigned.name))
    except GradebookFault:
        return  # nothing is graded yet


def bring_up_to_date(course: Course, assigned: Assigned) -> Iterator[str]:
    """Bring into the gradebook what was given; whose points that moved."""
    try:
        with opened(course.gradebook) as connection:
            rows = set_rows(connection, assigned.name)
            before = totals(connection, rows)
            notes = apply_given(connection, assigned, rows, course.root).notes
            moved = moved_between(before, totals(connection, rows))
    except GradebookFault:
        yield "It counts as soon as the set is graded."
        return
    yield from notes
    yield from moved_lines(moved)


def moved_lines(moved: tuple[tuple[str, float, float], ...]) -> Iterator[str]:
    """Whose points moved, and by how much."""
    if not moved:
        return
    who = "1 person" if len(moved) == 1 else f"{len(moved):,} people"
    yield f"The points of {who} changed:"
    for person, before, now in moved[:MOST_SAID]:
        step = now - before
        yield f"  {person}: {exact(now)}, and it was {exact(before)} ({step:+.4g})"
    if len(moved) > MOST_SAID:
        yield f"  And {len(moved) - MOST_SAID:,} more."
