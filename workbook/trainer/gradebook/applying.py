"""What the set's file and the trainer's hand say, brought into the gradebook after either way of grading.

The due time is the one of the file; more time and points given by hand are those of their files. Then
what being late costs is worked out anew for everybody, so no number is left over from before.
"""

from collections.abc import Mapping, Sequence
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import NamedTuple

from sqlalchemy import Connection, func, insert, select, update

from workbook.trainer.sets.set_file import Assigned

from .given import Override, extensions_of, overrides_of
from .rules import grade_id, penalty, seconds_late
from .tables import (
    ASSIGNMENT,
    COMMENT,
    GRADE,
    PAGE,
    WORK,
    Entry,
    SetRows,
    entries_of,
    everybody,
    new_id,
)

__all__ = ["Applied", "apply_given", "take_back", "take_back_time", "totals"]


class Applied(NamedTuple):
    """How many are late, and sentences about what changed."""

    late: int
    notes: tuple[str, ...]


def totals(connection: Connection, rows: SetRows) -> dict[str, float]:
    """The points of everybody in a set as the gradebook counts them, less what being late cost."""
    counted = func.coalesce(GRADE.c.manual_score, GRADE.c.auto_score, 0.0)
    points = func.sum(counted + func.coalesce(GRADE.c.extra_credit, 0.0))
    found = connection.execute(
        select(WORK.c.student_id, points, func.max(PAGE.c.late_submission_penalty))
        .join(PAGE, PAGE.c.assignment_id == WORK.c.id)
        .join(GRADE, GRADE.c.notebook_id == PAGE.c.id)
        .where(
            WORK.c.assignment_id == rows.assignment,
            PAGE.c.notebook_id == rows.notebook,
            GRADE.c.cell_id.in_(list(rows.cells.values())),  # by the key that nbgrader has
        )
        .group_by(WORK.c.student_id)
    )
    return {person: round((score or 0.0) - (late or 0.0), 4) for person, score, late in found}


def apply_given(
    connection: Connection,
    assigned: Assigned,
    rows: SetRows,
    course: Path,
    people: Sequence[str] = (),
) -> Applied:
    """Bring the due time, more time, points by hand and the cost of being late up to date.

    It does so for these people, or for everybody.
    """
    due = assigned.due.astimezone(UTC).replace(tzinfo=None) if assigned.due else None
    notes = _bring_due(connection, rows, due)
    more, by_hand = extensions_of(course, assigned.name), overrides_of(course, assigned.name)
    late = 0
    found = entries_of(connection, rows, people).items() if people else everybody(connection, rows)
    for person, entry in found:
        until = more[person].due - due if due and person in more else entry.extension
        if until != entry.extension:
            _change(connection, WORK, entry.work, extension=until)
        scores = _bring_points(connection, rows, entry, by_hand.get(person, {}))
        late += _bring_penalty(connection, assigned, due, until, entry, sum(scores))
    return Applied(late, tuple(notes))


def take_back(connection: Connection, rows: SetRows, person: str, number: int) -> None:
    """Take points given by hand out of the gradebook; what was graded counts again."""
    entry = entries_of(connection, rows, [person]).get(person)
    graded = entry and entry.graded.get(rows.cells[grade_id(number)])
    if graded:
        _change(connection, GRADE, graded.grade, manual_score=None)
        if graded.remark:
            _change(connection, COMMENT, graded.remark, manual_comment=None)


def take_back_time(connection: Connection, rows: SetRows, person: str) -> None:
    """Take more time out of the gradebook."""
    if entry := entries_of(connection, rows, [person]).get(person):
        _change(connection, WORK, entry.work, extension=None)


def _change(connection: Connection, table, its_id: str, **values) -> None:
    connection.execute(update(table).where(table.c.id == its_id).values(**values))


def _bring_due(connection: Connection, rows: SetRows, due: datetime | None) -> list[str]:
    if rows.due == due:
        return []
    _change(connection, ASSIGNMENT, rows.assignment, duedate=due)
    was, now = (f"{one:%Y-%m-%d %H:%M} UTC" if one else "no due time" for one in (rows.due, due))
    return [f"The set's file has another due time now: {now}; it was {was}. The new one counts."]


def _bring_points(
    connection: Connection, rows: SetRows, entry: Entry, given: Mapping[int, Override]
) -> list[float]:
    """The points of each question; those given by hand are written where they differ."""
    by_cell = {rows.cells.get(grade_id(number)): each for number, each in given.items()}
    points = []
    for cell, graded in entry.graded.items():
        hand, wanted = graded.kept.by_hand, by_cell.get(cell)
        if wanted and (hand, graded.said_by_hand) != (wanted.points, wanted.reason):
            hand = wanted.points
            _change(connection, GRADE, graded.grade, manual_score=hand, needs_manual_grade=False)
            _say(connection, entry, cell, graded.remark, wanted.reason)
        points.append((graded.kept.score or 0.0) if hand is None else hand)
        points[-1] += graded.extra or 0.0
    return points


def _say(connection: Connection, entry: Entry, cell: str, remark: str | None, why: str) -> None:
    if remark:
        _change(connection, COMMENT, remark, manual_comment=why)
        return
    row = {"id": new_id(), "cell_id": cell, "notebook_id": entry.page, "manual_comment": why}
    connection.execute(insert(COMMENT), [row])


def _bring_penalty(
    connection: Connection,
    assigned: Assigned,
    due: datetime | None,
    more: timedelta | None,
    entry: Entry,
    score: float,
) -> bool:
    is_late = seconds_late(entry.when, due, more) > 0
    cost = penalty(assigned, score) if is_late else None
    if entry.page and cost != entry.penalty:
        _change(connection, PAGE, entry.page, late_submission_penalty=cost)
    return is_late
