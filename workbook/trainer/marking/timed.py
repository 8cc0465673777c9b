"""What the time limit of a set does to its answers, as far as a sheet can show it.

The clock is that of the learner's own computer. What does not fit together is said, so that somebody looks.
"""

from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta
from typing import NamedTuple

from solver.units.show import counted
from workbook.log import Attempt
from workbook.trainer.learner.timing import moment, opened_at, time_end
from workbook.trainer.sets.set_file import Assigned
from workbook.trainer.sets.set_keys import COUNTS

__all__ = ["NO_TIME", "Timed", "in_time"]

SLACK = timedelta(seconds=10)  # an answer that was on its way as the time ran out
ASTRAY = timedelta(minutes=2)  # between two ways of telling how long somebody was there
NOT_OPENED = (
    "The sheet doesn't show when the questions were opened, so the time runs from the first answer."
)
BEFORE = (
    "Answers are from before the questions were opened, so the time runs from the first of them."
)
SET_BACK = (
    "An answer took longer than its clock says has passed, so that clock may have been set back."
)
NO_TIME = "It was written into the page, which shows no time."


class Timed(NamedTuple):
    """The lines that count, by problem; sentences for each problem and for the whole; and what is odd."""

    lines: Mapping[str, Sequence[Attempt]]
    said: Mapping[str, Sequence[str]]
    said_whole: Sequence[str]
    odd_whole: Sequence[str]


def in_time(
    assigned: Assigned, opening: Sequence[Attempt], lines: Mapping[str, Sequence[Attempt]]
) -> Timed:
    """What counts of these lines, by problem, where the questions were opened as `opening` says."""
    every = [line for each in lines.values() for line in each]
    if not assigned.minutes or not every:
        return Timed(lines, {}, (), ())
    start, odd = _start(opening, every)
    if any(
        timedelta(seconds=min(line.seconds, 1e6)) > moment(line) - start + ASTRAY for line in every
    ):
        odd.append(SET_BACK)
    end = time_end(assigned, start) + SLACK
    late = {code: [one for one in each if moment(one) > end] for code, each in lines.items()}
    many = sum(map(len, late.values()))
    if not many:
        return Timed(lines, {}, (), odd)
    after = f"{_lines(many)} after the {counted(assigned.minutes, 'minute')}"
    if assigned.after_time == COUNTS:
        return Timed(lines, {}, [f"{after}; your trainer lets that count."], odd)
    kept = {code: [one for one in each if one not in late[code]] for code, each in lines.items()}
    said = {code: [_dropped(assigned, each)] for code, each in late.items() if each}
    return Timed(kept, said, [f"{after} and didn't count."], odd)


def _start(opening: Sequence[Attempt], every: Sequence[Attempt]) -> tuple[datetime, list[str]]:
    first, opened = min(map(moment, every)), opened_at(opening)
    if opened is None:
        return first, [NOT_OPENED]
    return (opened, []) if opened <= first else (first, [BEFORE])


def _lines(many: int) -> str:
    return f"{counted(many, 'answer')} came"


def _dropped(assigned: Assigned, late: Sequence[Attempt]) -> str:
    return f"{_lines(len(late))} after the {counted(assigned.minutes, 'minute')} and didn't count."
