"""A whole class marked at once: sheets read as data, marks written into nbgrader's gradebook.

It gives what `nbgrader autograde` gives in a settled course, score for score, and hundreds of times
as fast: no notebook is opened for it and no kernel started.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import partial
from itertools import islice
from pathlib import Path
from typing import NamedTuple

from solver import SolverError
from workbook.trainer.coming_in.handed_in import Handed, read_handed
from workbook.trainer.coming_in.typed_as import typed_as
from workbook.trainer.course import Course, course_at
from workbook.trainer.gradebook.applying import apply_given, totals
from workbook.trainer.gradebook.rules import grade_id, scores_of
from workbook.trainer.gradebook.tables import AT_ONCE, GradebookFault, SetRows, opened, set_rows
from workbook.trainer.gradebook.writing import Scored, keep_scores
from workbook.trainer.sets.set_file import SET_FILE, Assigned, read_set_file

from .marked import Marked, mark_handed
from .odd import plain

__all__ = ["Summary", "mark_all", "marks_of", "moved_between", "set_in"]


class Summary(NamedTuple):
    """What marking a class came to: how many people, how many late, whom to look at and why.

    `notes` are sentences about what was left out, or could not be read. `moved` are those whose points
    are others than at the last grading, with both; `new` those of whom anything is new since.
    """

    people: int
    late: int
    to_look_at: tuple[tuple[str, str], ...]
    notes: tuple[str, ...]
    moved: tuple[tuple[str, float, float], ...] = ()
    new: tuple[str, ...] = ()


def mark_all(
    folder: Path,
    name: str,
    db: str | None = None,
    *,
    people: Sequence[str] | None = None,
    mapper: Callable[[Callable, Iterable], Iterable] = map,
) -> Summary:
    """Mark all that was handed in for the set `name` of the course in `folder`.

    Scores and sentences go into the course's gradebook, or into the one at the address `db`, in one
    transaction. `people` are the folder names of those to mark; all where left out. `mapper` may be
    another `map`, such as that of a pool of processes.

    Raises:
        SolverError: the course, the set or the gradebook cannot be used; the sentence says why.
    """
    course = course_at(folder)
    assigned = set_in(course, name)
    found = mapper(partial(_score, assigned), _handed(course, name, people))
    done, look, notes, new = 0, [], [], []
    with opened(db or course.gradebook) as connection:
        rows = set_rows(connection, name)
        _check(rows, assigned)
        before = totals(connection, rows)
        results = iter(found)
        while batch := list(islice(results, AT_ONCE)):
            notes += [each for _, note in batch for each in note]
            scored = [each for each, _ in batch if each]
            new += keep_scores(connection, rows, scored)
            look += [(each.person, each.reason) for each in scored if each.to_look_at]
            done += len(scored)
        given = apply_given(connection, assigned, rows, course.root)
        moved = moved_between(before, totals(connection, rows))
    return Summary(done, given.late, tuple(look), (*given.notes, *notes), moved, tuple(new))


def moved_between(
    before: Mapping[str, float], after: Mapping[str, float]
) -> tuple[tuple[str, float, float], ...]:
    """Whose points are others now, with those before and those now; whoever is new has not moved."""
    both = sorted(before.keys() & after.keys())
    return tuple((one, before[one], after[one]) for one in both if before[one] != after[one])


def set_in(course: Course, name: str) -> Assigned:
    """The set of a course, by the trainer's own copy.

    Raises:
        SetFault: there is none, or its file cannot be used; the sentence says what to do.
    """
    return read_set_file(course.folder("source", name) / SET_FILE)


def marks_of(
    course: Course, name: str, people: Sequence[str] | None = None
) -> Iterator[tuple[Handed, Marked]]:
    """What each person handed in for a set, and its marks; those with no possible id are left out.

    Raises:
        SetFault: the set cannot be read.
    """
    assigned = set_in(course, name)
    for handed in _handed(course, name, people):
        try:
            yield handed, mark_handed(assigned, handed)
        except SolverError:
            continue


def _handed(course: Course, name: str, people: Sequence[str] | None = None) -> Iterator[Handed]:
    """What each person handed in for a set; it is read when it is asked for."""
    typed = typed_as(course.root, name)
    for person in course.handed_in(name) if people is None else people:
        found = read_handed(course.folder("submitted", name, person), name, person)
        yield found._replace(typed=typed.get(person, ""))


def _score(assigned: Assigned, handed: Handed) -> tuple[Scored | None, list[str]]:
    """The scores of one person, as plain data that another process can send; and what to say."""
    person = handed.person
    notes = [f"{person}: {handed.note}"] if handed.note else []
    try:
        marked = mark_handed(assigned, handed)
    except SolverError as fault:
        return None, [*notes, f"{person}: not graded. {fault}"]
    except Exception as error:  # one person's work must not keep the others from their grades
        why = plain(f"{type(error).__name__}: {error}", 80)
        return None, [*notes, f"{person}: not graded, because the sheet can't be handled ({why})."]
    scored = Scored(person, handed.when, scores_of(marked), marked.reason, marked.needs_person)
    return scored, notes


def _check(rows: SetRows, assigned: Assigned) -> None:
    """That the gradebook has just the questions that the set has, and what they are worth."""
    numbers = range(1, assigned.work.asked + 1)
    if {grade_id(number): assigned.worth(number) for number in numbers} != rows.worth:
        raise GradebookFault(
            f"The gradebook has other questions or points than the set “{assigned.name}” now. "
            f"Type: python3 -m workbook set {assigned.name}"
        )
