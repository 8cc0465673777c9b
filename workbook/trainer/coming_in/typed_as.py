"""Who worked under another name than the trainer's: `typed-as.csv` in the course, a row each.

Their questions were drawn for the name they typed, so their work is graded by it, under their own id.
"""

from pathlib import Path

from solver import SolverError
from solver.sets.work_set import person_id
from workbook.ui.spreadsheet import csv_of, rows_in

__all__ = ["TYPED_AS", "keep_typed_as", "typed_as"]

TYPED_AS = "typed-as.csv"
HEADS = ("set", "typed", "id")


def typed_as(course: Path, name: str) -> dict[str, str]:
    """By person, the name they typed in the set `name` of the course in a folder, where it was another."""
    return {person: typed for (of, person), typed in _rows(course).items() if of == name}


def _rows(course: Path) -> dict[tuple[str, str], str]:
    found = {}
    for row in rows_in(course / TYPED_AS, HEADS):
        try:
            typed, person = person_id(row["typed"]), person_id(row["id"])
        except SolverError:
            continue
        found[(row["set"], person)] = typed
    return found


def keep_typed_as(course: Path, name: str, person: str, typed: str) -> None:
    """Keep that this person typed that name in the set; nothing typed takes it away."""
    rows = _rows(course)
    before = dict(rows)
    rows.pop((name, person), None)
    if typed and typed != person:
        rows[(name, person)] = typed
    if rows != before:
        lines = [(of, typed, person) for (of, person), typed in sorted(rows.items())]
        (course / TYPED_AS).write_bytes(csv_of([HEADS, *lines]))
