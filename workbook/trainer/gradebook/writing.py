"""The marks of many people into nbgrader's gradebook at once: the rows that its autograde writes."""

from collections.abc import Sequence
from datetime import datetime
from typing import NamedTuple

from sqlalchemy import Connection, Table, bindparam, insert, select, update

from .rules import NEW, Score, must_look
from .tables import COMMENT, GRADE, PAGE, STUDENT, WORK, Entry, SetRows, entries_of, new_id

__all__ = ["Scored", "keep_scores"]


class Scored(NamedTuple):
    """What marking one person's work came to, as plain data; `scores` are by grade cell's name."""

    person: str
    when: datetime | None
    scores: dict[str, Score]
    reason: str
    to_look_at: bool


class _Rows:
    """Rows to add and to change; each table is then written to with one statement for each."""

    def __init__(self) -> None:
        self._new: dict[Table, list[dict]] = {t: [] for t in (STUDENT, WORK, PAGE, GRADE, COMMENT)}
        self._changed: dict[Table, list[dict]] = {t: [] for t in (WORK, PAGE, GRADE, COMMENT)}

    def add(self, table: Table, **values) -> str:
        values.setdefault("id", new_id())
        self._new[table].append(values)
        return values["id"]

    def change(self, table: Table, its_id: str, **values) -> None:
        self._changed[table].append({"its_id": its_id, **values})

    def write(self, connection: Connection) -> None:
        for table, rows in self._new.items():
            if rows:
                _insert(connection, table, rows)
        for table, rows in self._changed.items():
            if rows:
                connection.execute(update(table).where(table.c.id == bindparam("its_id")), rows)


def _insert(connection: Connection, table: Table, rows: Sequence[dict]) -> None:
    """Add rows, which all have the same columns."""
    statement = insert(table)
    if table is WORK or connection.dialect.positional:  # times have a form of each database's own
        connection.execute(statement, rows)
        return
    # Without looking at each value once more it takes half as long.
    compiled = statement.compile(connection, column_keys=list(rows[0]))
    connection.exec_driver_sql(str(compiled), rows)


def keep_scores(connection: Connection, rows: SetRows, scored: Sequence[Scored]) -> list[str]:
    """Put what marking came to into the gradebook; those of whom something in it is new.

    A score, an extra or a comment given by hand stays as it is. What being late costs is worked out
    afterwards, by `applying.py`, which knows all that counts for it.
    """
    people = [each.person for each in scored]
    entries = entries_of(connection, rows, people)
    known = select(STUDENT.c.id).where(STUDENT.c.id.in_(people))
    found = set(connection.execute(known).scalars())
    to_write, new = _Rows(), []
    for each in scored:
        if each.person not in found:
            to_write.add(STUDENT, id=each.person)
        entry = entries.get(each.person) or _new_entry(to_write, rows, each)
        if _keep(to_write, rows, each, entry):
            new.append(each.person)
    to_write.write(connection)
    return new


def _new_entry(to_write: _Rows, rows: SetRows, scored: Scored) -> Entry:
    work = to_write.add(
        WORK,
        assignment_id=rows.assignment,
        student_id=scored.person,
        timestamp=scored.when,
        extension=None,
    )
    return Entry(work, None, scored.when, None, None, {})


def _keep(to_write: _Rows, rows: SetRows, scored: Scored, entry: Entry) -> bool:
    """The rows of one person; whether a score or a sentence is new."""
    when = scored.when or entry.when
    if when != entry.when:
        to_write.change(WORK, entry.work, timestamp=when)
    page = entry.page or to_write.add(
        PAGE,
        assignment_id=entry.work,
        notebook_id=rows.notebook,
        flagged=False,
        late_submission_penalty=None,
    )
    new = False
    for name, score in scored.scores.items():
        graded = entry.graded.get(rows.cells[name])
        before = (graded.kept.score, graded.kept.said) if graded else None
        new = new or before != (score.points, score.said)
        _keep_score(to_write, page, rows.cells[name], score, entry)
    return new


def _keep_score(to_write: _Rows, page: str, cell: str, score: Score, entry: Entry) -> None:
    points, said, needs_person = score
    graded = entry.graded.get(cell)
    if graded is None:
        to_write.add(
            GRADE,
            cell_id=cell,
            notebook_id=page,
            auto_score=points,
            needs_manual_grade=must_look(needs_person, points, said, NEW),
        )
        to_write.add(COMMENT, cell_id=cell, notebook_id=page, auto_comment=said)
        return
    kept = graded.kept
    look = must_look(needs_person, points, said, kept)
    if (kept.score, kept.to_look_at) != (points, look):
        to_write.change(GRADE, graded.grade, auto_score=points, needs_manual_grade=look)
    if graded.remark is None:
        to_write.add(COMMENT, cell_id=cell, notebook_id=page, auto_comment=said)
    elif kept.said != said:
        to_write.change(COMMENT, graded.remark, auto_comment=said)
