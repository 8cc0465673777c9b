"""Dates as people write them, where that is clear: to put a pump's records in order of time."""

import re
from typing import NamedTuple

from solver.errors import Unreadable
from solver.units.typed import quoted

__all__ = ["Day", "day_of"]

MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
LENGTHS = (31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
LONGEST = 40  # characters of a date with the time of day behind it
CLOCK = re.compile(
    r"[T ]\d{1,2}:\d{2}(:\d{2}(\.\d+)?)?( ?[ap]\.?m\.?)?( ?Z|[+-]\d{2}:?\d{2})?$", re.I
)
YEAR_FIRST = re.compile(r"(\d{4})(?:([-/.])(\d{1,2})(?:\2(\d{1,2}))?)?")
YEAR_LAST = re.compile(r"(\d{1,2})([-/.])(\d{1,2})\2(\d{4})")
NAMED = (
    re.compile(
        r"(?P<day>\d{1,2})(?:st|nd|rd|th)?[ -](?P<month>[a-z]{3,9})\.?,?[ -](?P<year>\d{4})"
    ),
    re.compile(r"(?P<month>[a-z]{3,9})\.? (?P<day>\d{1,2})(?:st|nd|rd|th)?,? (?P<year>\d{4})"),
    re.compile(r"(?P<day>)(?P<month>[a-z]{3,9})\.?,? (?P<year>\d{4})"),
)


class Day(NamedTuple):
    """A day; where the day or the month is not said, it is the first."""

    year: int
    month: int = 1
    day: int = 1

    def __str__(self) -> str:
        return f"{self.year:04d}-{self.month:02d}-{self.day:02d}"

    @property
    def years(self) -> float:
        """Years since year 0, near enough for a trend: every month counts a twelfth."""
        return self.year + (self.month - 1 + (self.day - 1) / LENGTHS[self.month - 1]) / 12


def day_of(text: str) -> Day:
    """The day that is meant.

    Raises:
        Unreadable: it is no date, or 5/1/2024 may be in May or in January.

    >>> str(day_of("2024-05-01")), str(day_of("May 1, 2024")), str(day_of("5/13/2024"))
    ('2024-05-01', '2024-05-01', '2024-05-13')
    """
    if len(text) > LONGEST or not text.isascii():
        raise _refused(text)
    plain = CLOCK.sub("", " ".join(text.split())).strip()
    if match := YEAR_FIRST.fullmatch(plain):
        year, _, month, day = match.groups()
        return _checked(text, int(year), int(month or 1), int(day or 1))
    if match := YEAR_LAST.fullmatch(plain):
        return _year_last(text, int(match[1]), int(match[3]), int(match[4]))
    for pattern in NAMED:
        if (match := pattern.fullmatch(plain.lower())) and match["month"][:3] in MONTHS:
            month = MONTHS.index(match["month"][:3]) + 1
            return _checked(text, int(match["year"]), month, int(match["day"] or 1))
    raise _refused(text)


def _year_last(text: str, one: int, two: int, year: int) -> Day:
    """Day first or month first: told apart only where one of the two cannot be a month."""
    if one <= 12 and two <= 12 and one != two:
        raise Unreadable(
            f"{quoted(text)} could be {Day(year, one, two)} or {Day(year, two, one)}. "
            "Type the year first, such as 2024-05-01."
        )
    return _checked(text, year, *((one, two) if one <= 12 else (two, one)))


def _checked(text: str, year: int, month: int, day: int) -> Day:
    if not (1 <= month <= 12 and 1 <= day <= LENGTHS[month - 1]):
        raise _refused(text)
    leap = year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)
    if (month, day) == (2, 29) and not leap:
        raise _refused(text)
    return Day(year, month, day)


def _refused(text: str) -> Unreadable:
    return Unreadable(f"{quoted(text)} isn't a date. Type the year first, such as 2024-05-01.")
