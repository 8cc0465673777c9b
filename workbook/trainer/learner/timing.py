"""A set with a time limit: when its questions were opened, and how long there is from then on.

The answer sheet has a line for it, with the code of the set in the place of a problem's. The time is that of
the learner's own computer, as is the time of each answer. So it can be set back, and the line taken out:
grading says what does not fit, and can prove no more. Where it matters, somebody watches.
"""

from collections.abc import Iterable
from datetime import datetime, timedelta

from solver.units.show import counted
from workbook.log import SHOWN, Attempt, made
from workbook.trainer.sets.set_file import Assigned
from workbook.trainer.sets.set_keys import COUNTS

__all__ = [
    "after_said",
    "is_opening",
    "limit_in_words",
    "moment",
    "opened_at",
    "opening_line",
    "over_said",
    "time_end",
]

FAMILY = "set"  # of the line, which is of no problem


def opening_line(assigned: Assigned, person: str) -> Attempt:
    """The line that says: this person opens the questions now."""
    code = assigned.work.code
    return made(
        code=code, family=FAMILY, level=1, typed="", status=SHOWN, tries=0, of=code, who=person
    )


def is_opening(line: Attempt) -> bool:
    """Whether a line says when the questions were opened."""
    return line.family == FAMILY and line.code == line.of


def moment(line: Attempt) -> datetime:
    """When a line was written, by the clock of its computer."""
    return datetime.fromisoformat(line.when)


def opened_at(lines: Iterable[Attempt]) -> datetime | None:
    """When the questions were opened first; None where no line says so."""
    return min((moment(line) for line in lines if is_opening(line)), default=None)


def time_end(assigned: Assigned, opened: datetime) -> datetime:
    """When the time of a set is over."""
    return opened + timedelta(minutes=assigned.minutes)


def after_said(assigned: Assigned, lines: Iterable[Attempt], line: Attempt) -> str:
    """What to say of an answer that came after the time; "" where it did not."""
    opened = opened_at(lines) if assigned.minutes else None
    if not opened or moment(line) <= time_end(assigned, opened):
        return ""
    if assigned.after_time == COUNTS:
        return " The time was up. It counts all the same."
    return " The time was up, so it doesn't count."


def limit_in_words(assigned: Assigned) -> str:
    """How long a person has, and what becomes of answers after that."""
    counts = "counts too, and shows" if assigned.after_time == COUNTS else "doesn't count"
    long = counted(assigned.minutes, "minute")
    return f"You have {long} from when you open the questions. What you answer after that {counts}."


def over_said(assigned: Assigned) -> str:
    """What becomes of answers after the time."""
    if assigned.after_time == COUNTS:
        return "Answers from now on count too, and your trainer sees which they are."
    return "Answers from now on are kept, and don't count."
