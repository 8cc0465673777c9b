"""What a trainer gives by hand: more time, and points; two small files in the course that stay.

`extensions.csv` has a row for each person and set with a later due time, `overrides.csv` one for each
question whose points the trainer gives. Each has the trainer's words. Every grading follows them.
"""

from collections.abc import Sequence
from datetime import UTC, datetime
from pathlib import Path
from typing import NamedTuple

from solver import SolverError
from solver.sets.work_set import person_id
from workbook.ui.spreadsheet import csv_of, rows_in

__all__ = [
    "EXTENSIONS", "OVERRIDES", "Extension", "Override", "extensions_of", "keep_extension",
    "keep_override", "overrides_of",
]  # fmt: skip

EXTENSIONS, OVERRIDES = "extensions.csv", "overrides.csv"
HEADS = {
    EXTENSIONS: ("set", "id", "due", "note"),
    OVERRIDES: ("set", "id", "question", "points", "reason"),
}


class Extension(NamedTuple):
    """A later due time, in UTC without an offset, and why."""

    due: datetime
    note: str


class Override(NamedTuple):
    """Points for a question that the trainer gave, and why."""

    points: float
    reason: str


def _rows(course: Path, file: str) -> list[tuple[str, ...]]:
    rows = rows_in(course / file, HEADS[file])
    return [tuple(cell.strip() for cell in row.values()) for row in rows]


def _write(course: Path, file: str, rows: Sequence[Sequence[str]]) -> None:
    (course / file).write_bytes(csv_of([HEADS[file], *rows]))


def _id(text: str) -> str:
    try:
        return person_id(text)
    except SolverError:
        return ""


def extensions_of(course: Path, name: str) -> dict[str, Extension]:
    """The later due times for a set, by person; a row that cannot be read is left out."""
    found = {}
    for of, person, due, note in _rows(course, EXTENSIONS):
        try:
            moment = datetime.fromisoformat(due).astimezone(UTC).replace(tzinfo=None)
        except (ValueError, OverflowError):
            continue
        if of == name and _id(person):
            found[_id(person)] = Extension(moment, note)
    return found


def overrides_of(course: Path, name: str) -> dict[str, dict[int, Override]]:
    """The points given by hand for a set, by person and question."""
    found: dict[str, dict[int, Override]] = {}
    for of, person, question, points, reason in _rows(course, OVERRIDES):
        try:
            number, worth = int(question), float(points)
        except ValueError:
            continue
        if of == name and _id(person):
            found.setdefault(_id(person), {})[number] = Override(worth, reason)
    return found


def keep_extension(course: Path, name: str, person: str, given: Extension | None) -> None:
    """Keep a later due time in the place of one before; None takes it away."""
    rows = [row for row in _rows(course, EXTENSIONS) if (row[0], _id(row[1])) != (name, person)]
    if given:
        rows.append((name, person, f"{given.due:%Y-%m-%dT%H:%M:%S}+00:00", given.note))
    _write(course, EXTENSIONS, sorted(rows))


def keep_override(
    course: Path, name: str, person: str, number: int, given: Override | None
) -> None:
    """Keep the points of a question in the place of those before; None takes them away."""
    here = (name, person, str(number))
    rows = [row for row in _rows(course, OVERRIDES) if (row[0], _id(row[1]), row[2]) != here]
    if given:
        rows.append((*here, f"{given.points:g}", given.reason))
    _write(course, OVERRIDES, sorted(rows))
