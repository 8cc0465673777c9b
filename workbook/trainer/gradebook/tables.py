"""nbgrader's gradebook, read many people at a time, with SQLAlchemy's plain tables.

Only the columns that marking needs stand here; a test holds them against nbgrader's own models.
Importing those takes longer than marking a class.
"""

import os
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from datetime import datetime, timedelta
from pathlib import Path
from typing import NamedTuple

from sqlalchemy import (
    Boolean,
    Column,
    Connection,
    DateTime,
    Float,
    Interval,
    MetaData,
    String,
    Table,
    and_,
    create_engine,
    select,
)
from sqlalchemy.exc import DBAPIError

from solver import SolverError

from .rules import Kept

__all__ = [
    "AT_ONCE", "Entry", "GradebookFault", "Graded", "SetRows", "entries_of", "everybody", "new_id",
    "opened", "set_rows",
]  # fmt: skip

TABLES = MetaData()
BY_NAME = {"paramstyle": "named"}
AT_ONCE = 500  # people whose rows are read or written together


def _table(called: str, /, **columns) -> Table:
    made = [Column(key, kind) for key, kind in columns.items()]
    return Table(called, TABLES, Column("id", String, primary_key=True), *made)


ASSIGNMENT = _table("assignment", name=String, duedate=DateTime)
NOTEBOOK = _table("notebook", name=String, assignment_id=String)
CELL = _table("base_cell", name=String, notebook_id=String)
GRADE_CELL = _table("grade_cells", max_score=Float)
STUDENT = _table("student")
WORK = _table(
    "submitted_assignment",
    assignment_id=String,
    student_id=String,
    timestamp=DateTime,
    extension=Interval,
)
PAGE = _table(
    "submitted_notebook",
    assignment_id=String,
    notebook_id=String,
    flagged=Boolean,
    late_submission_penalty=Float,
)
GRADE = _table(
    "grade",
    cell_id=String,
    notebook_id=String,
    auto_score=Float,
    manual_score=Float,
    extra_credit=Float,
    needs_manual_grade=Boolean,
)
COMMENT = _table(
    "comment", cell_id=String, notebook_id=String, auto_comment=String, manual_comment=String
)


def new_id() -> str:
    """A row's id, in the form of nbgrader's own."""
    return os.urandom(16).hex()


class GradebookFault(SolverError):
    """The gradebook cannot be used, or lacks the set; the sentence says what to type."""


class SetRows(NamedTuple):
    """A set as the gradebook has it: its ids, when it is due, and its grade cells by name.

    Of these `cells` has the ids, and `worth` the most points.
    """

    assignment: str
    notebook: str
    due: datetime | None
    cells: Mapping[str, str]
    worth: Mapping[str, float]


class Graded(NamedTuple):
    """What the gradebook has of one question of one person, with the ids of its two rows."""

    grade: str
    remark: str | None
    kept: Kept
    extra: float | None
    said_by_hand: str | None


class Entry(NamedTuple):
    """What the gradebook has of one person's work for a set; `graded` is by grade cell's id."""

    work: str
    page: str | None
    when: datetime | None
    extension: timedelta | None
    penalty: float | None
    graded: dict[str, Graded]


@contextmanager
def opened(address: str) -> Iterator[Connection]:
    """The gradebook at an address, in one transaction: all of it is written, or nothing.

    Raises:
        GradebookFault: it is not there, or refuses; the sentence says what to do.
    """
    # By name in every database, so that rows can be handed on as they are.
    engine = create_engine(address, **(BY_NAME if address.startswith("sqlite") else {}))
    try:
        where = engine.url.database or ""
        if engine.dialect.name == "sqlite" and not Path(where).exists():
            raise GradebookFault(f"There is no gradebook {where} yet. Set work first.")
        with engine.begin() as connection:
            yield connection
    except DBAPIError as error:
        raise GradebookFault(
            f"The gradebook couldn't be used, and nothing in it was changed: {error.orig}. "
            "Close other programs that use it, then type the same command again."
        ) from error
    finally:
        engine.dispose()


def set_rows(connection: Connection, name: str) -> SetRows:
    """The set `name` as the gradebook has it.

    Raises:
        GradebookFault: nbgrader has not made it ready, or it has notebooks besides its own.
    """
    found = connection.execute(
        select(ASSIGNMENT.c.id, ASSIGNMENT.c.duedate, NOTEBOOK.c.id, NOTEBOOK.c.name)
        .join(NOTEBOOK, NOTEBOOK.c.assignment_id == ASSIGNMENT.c.id)
        .where(ASSIGNMENT.c.name == name)
    ).all()
    if name not in [row[3] for row in found]:
        raise GradebookFault(
            f"The gradebook has no set “{name}” yet. Type: python3 -m workbook set {name}"
        )
    if len(found) > 1:
        raise GradebookFault(f"“{name}” has other notebooks too; grade it with --nbgrader.")
    assignment, due, notebook, _ = found[0]
    cells = connection.execute(
        select(CELL.c.name, CELL.c.id, GRADE_CELL.c.max_score)
        .join(GRADE_CELL, GRADE_CELL.c.id == CELL.c.id)
        .where(CELL.c.notebook_id == notebook)
    ).all()
    ids, worth = {cell[0]: cell[1] for cell in cells}, {cell[0]: cell[2] for cell in cells}
    return SetRows(assignment, notebook, due, ids, worth)


def entries_of(connection: Connection, rows: SetRows, people: Sequence[str]) -> dict[str, Entry]:
    """What the gradebook has of these people's work for a set, by person."""
    entries: dict[str, Entry] = {}
    for row in connection.execute(_kept(rows, people)):
        person, work, page, when, extension, penalty, *graded = row
        entry = entries.setdefault(person, Entry(work, page, when, extension, penalty, {}))
        cell, grade, score, by_hand, extra, to_look_at, remark, said, said_by_hand = graded
        if grade:
            kept = Kept(score, by_hand, to_look_at, said)
            entry.graded[cell] = Graded(grade, remark, kept, extra, said_by_hand)
    return entries


def everybody(connection: Connection, rows: SetRows) -> Iterator[tuple[str, Entry]]:
    """What the gradebook has of each person with work for a set, in the order of ids; some are read at once."""
    people = select(WORK.c.student_id).where(WORK.c.assignment_id == rows.assignment)
    ids = sorted(connection.execute(people).scalars())
    for at in range(0, len(ids), AT_ONCE):
        yield from entries_of(connection, rows, ids[at : at + AT_ONCE]).items()


def _kept(rows: SetRows, people: Sequence[str]):
    of_page = and_(PAGE.c.assignment_id == WORK.c.id, PAGE.c.notebook_id == rows.notebook)
    # With the cells named, the key that nbgrader has on both columns is used.
    of_grade = and_(
        GRADE.c.notebook_id == PAGE.c.id, GRADE.c.cell_id.in_(list(rows.cells.values()))
    )
    of_remark = and_(COMMENT.c.notebook_id == PAGE.c.id, COMMENT.c.cell_id == GRADE.c.cell_id)
    return (
        select(
            WORK.c.student_id, WORK.c.id, PAGE.c.id, WORK.c.timestamp, WORK.c.extension,
            PAGE.c.late_submission_penalty, GRADE.c.cell_id, GRADE.c.id, GRADE.c.auto_score,
            GRADE.c.manual_score, GRADE.c.extra_credit, GRADE.c.needs_manual_grade, COMMENT.c.id,
            COMMENT.c.auto_comment, COMMENT.c.manual_comment,
        )
        .outerjoin(PAGE, of_page)
        .outerjoin(GRADE, of_grade)
        .outerjoin(COMMENT, of_remark)
        .where(WORK.c.assignment_id == rows.assignment, WORK.c.student_id.in_(people))
    )  # fmt: skip
