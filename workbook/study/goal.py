"""What somebody studies for: the day of the exam, minutes a day, the pass mark; and the file of it.

    {"v": 1, "when": "2026-11-25T18:04:31.250000Z", "exam": "2027-01-28", "minutes": 20,
     "pass_mark": 70, "check": "…"}

A line is written each time something is changed, and the last one that can be read holds. The file
is beside the log and only grows; its check is that of the log's lines. `exam` is empty without a date.
"""

import contextlib
import os
from datetime import date
from pathlib import Path
from typing import Any, NamedTuple

from workbook.log import NotALine, NotKept, add_lines, checked_line, default_path, fields_of, now

__all__ = ["MINUTES", "PASS_MARKS", "Goal", "keep_goal", "own_goal_path", "read_goal"]

VERSION = 1
MINUTES = (10, 15, 20, 30, 45, 60, 90, 120)  # a day, to choose from
PASS_MARKS = (60, 65, 70, 75, 80, 85, 90)  # percent, to choose from
MOST_MINUTES, HUNDRED = 600, 100


class Goal(NamedTuple):
    """The day of the exam, minutes a day, the pass mark in percent; `asked` once it was answered."""

    exam: date | None = None
    minutes: int = 20
    pass_mark: int = 70
    asked: bool = False

    def days_left(self, today: date) -> int | None:
        """The days until the exam: 0 on its day, less after it; None without a date."""
        return (self.exam - today).days if self.exam else None

    def ahead(self, today: date) -> "Goal":
        """The same without a day that has passed, which is nothing to plan for."""
        return self._replace(exam=None) if self.exam and self.exam < today else self


def own_goal_path() -> Path:
    """Where a reader's own goal is: beside the log."""
    return default_path().with_name("goal.jsonl")


def read_goal(path: Path) -> Goal:
    """The goal as it was set last; one that was never asked for where there is none to read."""
    try:
        with path.open("rb") as file:
            # No more than its size: a device that is there might never end.
            data = file.read(os.fstat(file.fileno()).st_size)
    except OSError:
        return Goal()
    for line in reversed(data.splitlines()):
        with contextlib.suppress(NotALine, KeyError, TypeError, ValueError):
            return _goal_of(fields_of(line, VERSION))
    return Goal()


def _goal_of(found: dict[str, Any]) -> Goal:
    minutes, mark = found["minutes"], found["pass_mark"]
    for value, most in ((minutes, MOST_MINUTES), (mark, HUNDRED)):
        if type(value) is not int or not 1 <= value <= most:
            raise ValueError(value)
    return Goal(date.fromisoformat(found["exam"]) if found["exam"] else None, minutes, mark, True)


def keep_goal(path: Path, goal: Goal) -> str:
    """Write it through to the disk; a sentence where that cannot be."""
    exam = goal.exam.isoformat() if goal.exam else ""
    fields = {"when": now(), "exam": exam, "minutes": goal.minutes, "pass_mark": goal.pass_mark}
    try:
        add_lines(path, [checked_line(VERSION, fields)])
    except NotKept as fault:
        return str(fault)
    return ""
