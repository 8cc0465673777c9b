"""The meetings of a class, as the trainer types them: `attendance.csv` in the course, a row each."""

from collections.abc import Iterable, Sequence
from datetime import date
from pathlib import Path
from typing import NamedTuple

from workbook.ui.spreadsheet import csv_of, rows_in

__all__ = ["ATTENDANCE", "Meeting", "hours_of", "keep_meeting", "meetings"]

ATTENDANCE = "attendance.csv"
HEADS = ("date", "topic", "hours", "absent")


class Meeting(NamedTuple):
    """A meeting: its day, its topic, how many hours, and the ids of those who were not there."""

    day: date
    topic: str
    hours: float
    absent: tuple[str, ...] = ()


def meetings(course: Path) -> list[Meeting]:
    """The meetings of a course by day; a row that cannot be read is left out."""
    found = []
    for row in rows_in(course / ATTENDANCE, HEADS):
        try:
            day, hours = date.fromisoformat(row["date"].strip()), float(row["hours"])
        except ValueError:
            continue
        found.append(Meeting(day, row["topic"].strip(), hours, tuple(row["absent"].split())))
    return sorted(found)


def keep_meeting(course: Path, meeting: Meeting) -> bool:
    """Keep a meeting; one of the same day and topic is replaced, and that is what is returned."""
    before = meetings(course)
    others = [one for one in before if one[:2] != meeting[:2]]
    rows = [
        (f"{d}", topic, f"{hours:g}", " ".join(gone))
        for d, topic, hours, gone in sorted([*others, meeting])
    ]
    (course / ATTENDANCE).write_bytes(csv_of([HEADS, *rows]))
    return len(others) < len(before)


def hours_of(held: Sequence[Meeting], people: Iterable[str]) -> dict[str, float]:
    """The hours of each person: all but those they were absent from."""
    return {one: sum(m.hours for m in held if one not in m.absent) for one in people}
