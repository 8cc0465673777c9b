"""What being late costs. One rule, for both ways of marking."""

from datetime import datetime, timedelta

from workbook.trainer.assigned import Assigned

__all__ = ["penalty", "seconds_late"]


def seconds_late(
    when: datetime | None, due: datetime | None, extension: timedelta | None = None
) -> float:
    """How long after its time work came, in seconds; 0 where it was in time or no time is set.

    All times are in UTC without an offset, as nbgrader keeps them.
    """
    if when is None or due is None:
        return 0.0
    return max(0.0, (when - due - (extension or timedelta())).total_seconds())


def penalty(assigned: Assigned, score: float) -> float | None:
    """The points that are taken off a score for being late; None where it costs nothing.

    >>> from workbook.trainer.set_file import parse_set_file
    >>> week = parse_set_file('draw = 1\\nchapters = ["head"]\\nlate = 0.1', "week-3")
    >>> penalty(week, 8.5)
    0.85
    """
    return round(assigned.late * score, 4) if assigned.late else None
