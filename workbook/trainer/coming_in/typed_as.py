"""Who worked under another name than the trainer's: `typed-as.csv` in the course, a row each.

Their questions were drawn for the name they typed, so their work is graded by it, under their own id.
"""

import csv
from io import StringIO
from pathlib import Path

from solver import SolverError
from solver.sets.work_set import person_id
from workbook.ui.spreadsheet import as_typed, csv_of

__all__ = ["TYPED_AS", "keep_typed_as", "typed_as"]

TYPED_AS = "typed-as.csv"
HEADS = ("set", "typed", "id")


def typed_as(course: Path, name: str) -> dict[str, str]:
    """By person, the name they typed in the set `name` of the course in a folder, where it was another."""
    return {person: typed for (of, person), typed in _rows(course).items() if of == name}


def _rows(course: Path) -> dict[tuple[str, str], str]:
    try:
        text = (course / TYPED_AS).read_text(encoding="utf-8-sig")
    except OSError:
        return {}
    found = {}
    for row in csv.DictReader(StringIO(text, newline="")):
        try:
            typed = person_id(as_typed(row.get("typed") or ""))
            person = person_id(as_typed(row.get("id") or ""))
        except SolverError:
            continue
        found[(row.get("set") or "", person)] = typed
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
