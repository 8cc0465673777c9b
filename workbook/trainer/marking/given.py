"""Marks with the points that a trainer gave by hand, as the gradebook has them."""

from collections.abc import Iterable, Iterator
from itertools import islice

from workbook.trainer.course import Course
from workbook.trainer.gradebook.rules import grade_id
from workbook.trainer.gradebook.tables import (
    AT_ONCE,
    Entry,
    GradebookFault,
    SetRows,
    entries_of,
    opened,
    set_rows,
)

from .marked import Marked
from .odd import told

__all__ = ["with_given"]

GIVEN = "Your trainer gave the points for question {}."


def with_given(course: Course, name: str, marks: Iterable[Marked]) -> Iterator[Marked]:
    """The same marks, with points by hand in the place of those graded; as they are before any grading.

    Raises:
        GradebookFault: the gradebook refuses; the sentence says what to do.
    """
    marks = iter(marks)
    while batch := list(islice(marks, AT_ONCE)):
        found = _entries(course, name, [each.person for each in batch])
        for marked in batch:
            entry = found[1].get(marked.person) if found else None
            yield _given(marked, found[0], entry) if found and entry else marked


def _entries(
    course: Course, name: str, people: list[str]
) -> tuple[SetRows, dict[str, Entry]] | None:
    try:
        with opened(course.gradebook) as connection:
            rows = set_rows(connection, name)
            return rows, entries_of(connection, rows, people)
    except GradebookFault:
        return None


def _given(marked: Marked, rows: SetRows, entry: Entry) -> Marked:
    questions, given = [], []
    for each in marked.questions:
        graded = entry.graded.get(rows.cells.get(grade_id(each.number), ""))
        hand = graded.kept.by_hand if graded else None
        extra = (graded.extra or 0.0) if graded else 0.0
        if hand is None and not extra:
            questions.append(each)
            continue
        given.append(GIVEN.format(each.number))
        points = (each.points if hand is None else hand) + extra
        questions.append(each._replace(points=points, needs_person=False))
    if not given:
        return marked
    look = any(each.needs_person for each in questions)
    reason = told([marked.reason, *given] if look else given)
    return marked._replace(questions=tuple(questions), reason=reason, needs_person=look)
