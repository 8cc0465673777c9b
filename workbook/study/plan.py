"""A plan to the day of the exam, week by week: which kinds are begun, and how much comes back.

It is worked out anew each day from what is left, so nobody is ever behind it. It takes the kinds in
the order of the chapters, as the study itself does, and says how many minutes a day are enough where
those given are not.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from datetime import date, datetime, timedelta
from itertools import groupby
from typing import NamedTuple

from solver import Family

from .goal import MINUTES, Goal
from .skills import coming_back, usual_intervals
from .study import NEW_AFTER, Study

__all__ = ["Plan", "Week", "plan_of", "seconds_a_problem"]

USUAL = 120.0  # seconds a problem takes, until the log says how long
FEWEST, MOST = 30.0, 480.0  # seconds; whoever leaves a page open does not take that long
KNOWN = 10  # kinds with a usual time, from which on the log is asked
MISSED = 1.2  # what comes back goes wrong now and then, and then comes back once more
HORIZON = 26 * 7  # days planned where no date is set
LAST = 7  # days before the exam on which nothing new is begun, where there are enough
LONG = 28  # days from which on there are


class Week(NamedTuple):
    """A week, from Monday: the kinds begun in it by their chapters, the problems that come back."""

    first: date
    last: date
    new: tuple[tuple[str, int], ...]
    back: int


class Plan(NamedTuple):
    """The weeks to come; how many kinds do not fit in, and the day on which the last is begun.

    `enough` are the minutes a day with which all would fit; None where all do, or none would be.
    """

    weeks: tuple[Week, ...]
    left: int
    covered: date | None
    enough: int | None


def seconds_a_problem(study: Study) -> float:
    """How long a problem takes this person: the middle one of the usual times of the kinds."""
    times = sorted(skill.seconds for skill in study.skills.values() if skill.seconds)
    return min(max(times[len(times) // 2], FEWEST), MOST) if len(times) >= KNOWN else USUAL


def plan_of(families: Sequence[Family], study: Study, goal: Goal, now: datetime) -> Plan:
    """What to do until the exam, at the minutes a day of a goal; half a year of it without one ahead.

    `now` is a time with its zone, and days are told in that zone.
    """
    today = now.date()
    days = goal.ahead(today).days_left(today)
    days = HORIZON if days is None else min(days, HORIZON)
    back = _known_back(families, study, now, days)
    new = [family for family in families if family.name not in study.cards]
    seconds = seconds_a_problem(study)

    def laid(minutes: int) -> list[tuple[int, int]]:
        return _days(days, len(new), list(back), minutes * 60 / seconds)

    load = laid(goal.minutes)
    begun = sum(count for count, _ in load)
    left = len(new) - begun
    more = (m for m in MINUTES if m > goal.minutes and sum(n for n, _ in laid(m)) == len(new))
    at = max((day for day, (count, _) in enumerate(load) if count), default=None)
    covered = today + timedelta(days=at) if at is not None and not left else None
    return Plan(_weeks(today, load, new), left, covered, next(more, None) if left else None)


def _known_back(families: Iterable[Family], study: Study, now: datetime, days: int) -> list[float]:
    """How many problems of known kinds come back on each day; what is late comes today."""
    back = [0.0] * days
    for family in families:
        if card := study.cards.get(family.name):
            for when in coming_back(card, now, days):
                back[when] += MISSED
    return back


def _days(days: int, new: int, back: list[float], room: float) -> list[tuple[int, int]]:
    """For each day how many kinds are begun and how many problems come back.

    What comes back goes first, and leaves to new kinds at least every third problem, as in the study.
    What does not fit on a day waits until the next.
    """
    stop = days - LAST if days >= LONG else days
    found, saved = [], 0.0
    for day in range(days):
        share = room / (NEW_AFTER + 1)
        saved += max(room - back[day], share) if day < stop else 0.0
        begun = min(new, int(saved))
        saved, new = (saved - begun if new > begun else 0.0), new - begun
        done = min(back[day], max(room - begun, 0.0))
        if day + 1 < days:
            back[day + 1] += back[day] - done
        for later in usual_intervals():
            if day + later < days:
                back[day + later] += begun * MISSED
        found.append((begun, round(done)))
    return found


def _weeks(today: date, load: Sequence[tuple[int, int]], new: Sequence[Family]) -> tuple[Week, ...]:
    coming = iter(new)
    dated = [(today + timedelta(days=n), *one) for n, one in enumerate(load)]
    weeks = []
    for _, group in groupby(dated, key=lambda one: one[0] - timedelta(days=one[0].weekday())):
        days = list(group)
        begun = [next(coming).chapter for _, count, _ in days for _ in range(count)]
        back = sum(back for _, _, back in days)
        weeks.append(Week(days[0][0], days[-1][0], tuple(Counter(begun).items()), back))
    return tuple(weeks)
