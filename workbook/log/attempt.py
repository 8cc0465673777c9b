"""One attempt as a line of the log: what was asked, what was typed, what became of it.

A line is one JSON object, whole in itself, so that a log can be cut, joined and sorted by line:

    {"v": 2, "id": "9f…", "when": "2026-11-25T18:04:31.250000Z", "code": "BP-2U1-7-KMZ",
     "family": "brake_power", "level": 2, "typed": "12.5 hp", "status": "right", "mistake": "",
     "seconds": 41.5, "tries": 1, "hints": 0, "solution": false, "of": "", "who": "",
     "check": "5d0c3a91"}

`v` is the version of this form. A line of a later version is set aside, never guessed at; one of
an earlier version is brought up by `EARLIER`. By `check` a line that changed is noticed; see
`lines.py`. `of` is the code of an exam or of a set of work, and `who` the name or number of a
person in a class or group; a candidate's own lines have neither.
"""

import uuid
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Any, NamedTuple, NoReturn

from .lines import NotALine, checked_line, fields_of

__all__ = ["SHOWN", "Attempt", "NotAnAttempt", "line_of", "made", "now", "read_line"]

VERSION = 2
SHOWN = "shown"  # the worked solution was opened before the right answer was given
STATUSES = ("right", "mistake", "close", "wrong", SHOWN)
LONGEST = 20_000  # characters of a line; an answer is cut long before
YEARS = range(1970, 2200)  # a clock may be wrong; beyond these no schedule can be worked
LONGEST_SECONDS = 1e15  # beyond any life; a whole number may have more digits than a float holds


class NotAnAttempt(ValueError):
    """A line that is no attempt, or one of a version this workbook does not know."""


class Attempt(NamedTuple):
    """One graded answer, or one worked solution that was opened.

    `when` is in UTC, to the microsecond, in the form of ISO 8601 that sorts as text. `seconds` is
    the time since the problem was shown; `tries` counts this one; `hints` are the steps whose rule
    had been shown; `solution` says whether the worked solution had.
    """

    id: str
    when: str
    code: str
    family: str
    level: int
    typed: str
    status: str
    mistake: str = ""
    seconds: float = 0.0
    tries: int = 1
    hints: int = 0
    solution: bool = False
    of: str = ""
    who: str = ""

    @property
    def unaided(self) -> bool:
        """Right at the first try, with no hint and no solution seen."""
        return self.status == "right" and self.tries == 1 and not (self.hints or self.solution)

    @property
    def went_wrong(self) -> bool:
        """A wrong answer. One that is close only wants more figures."""
        return self.status in ("mistake", "wrong")


TYPES = tuple(Attempt.__annotations__.values())
ALWAYS = tuple(name for name in Attempt._fields if name not in Attempt._field_defaults)
NO_OFFSET = timedelta(0)
# version -> a function from its fields to those of the next
EARLIER: dict[int, Callable[[dict[str, Any]], dict[str, Any]]] = {
    1: lambda fields: fields
}  # the second only has the check more


def now() -> str:
    """The time now, as a log writes it."""
    return datetime.now(UTC).isoformat(timespec="microseconds").replace("+00:00", "Z")


def made(**fields: Any) -> Attempt:
    """A new attempt, with an id that no other has, made now.

    >>> made(code="BP-2U1-7-KMZ", family="brake_power", level=2, typed="9", status="wrong").tries
    1
    """
    return Attempt(id=uuid.uuid4().hex, when=now(), **fields)


def line_of(attempt: Attempt) -> str:
    """The attempt as a line, without its end."""
    return checked_line(VERSION, attempt._asdict())


def read_line(line: str | bytes) -> Attempt:
    """The attempt of a line.

    Raises:
        NotAnAttempt: the sentence says what the line is.

    >>> read_line('{"v": 1, "id": "9f"}')
    Traceback (most recent call last):
    workbook.log.attempt.NotAnAttempt: it has no when, code, family, level, typed, status
    """
    if len(line) > LONGEST:
        raise NotAnAttempt("it is longer than any attempt")
    try:
        found = fields_of(line, VERSION)
    except NotALine as reason:
        raise NotAnAttempt(str(reason)) from None
    return _checked(_brought_up(found))


def _brought_up(found: dict[str, Any]) -> dict[str, Any]:
    version = found.pop("v")
    while version < VERSION:
        if version not in EARLIER:
            raise NotAnAttempt(f"no version of the workbook wrote format {str(version)[:10]}")
        found, version = EARLIER[version](found), version + 1
    return found


def _checked(found: dict[str, Any]) -> Attempt:
    if tuple(found) == Attempt._fields:
        attempt = Attempt._make(found.values())  # as `line_of` wrote it: half the time
    elif set(ALWAYS) <= set(found) <= set(Attempt._fields):
        attempt = Attempt(**found)
    else:
        _say_what_is_off(found)
    if tuple(map(type, attempt)) != TYPES:
        attempt = attempt._replace(**_whole_seconds(found))
        for name, value, kind in zip(Attempt._fields, attempt, TYPES, strict=True):
            if type(value) is not kind:
                raise NotAnAttempt(f"its {name} isn't what it should be")
    if attempt.status not in STATUSES:
        raise NotAnAttempt(f"its status isn't one of {', '.join(STATUSES)}")
    if not _could_be(attempt):
        raise NotAnAttempt("its time isn't in UTC, or a number in it is too small")
    if int(attempt.when[:4]) not in YEARS:
        raise NotAnAttempt(f"its year is {attempt.when[:4]}, and no computer's clock says that")
    if not attempt.code[-1:].isdecimal():
        return attempt
    # Imported here: the launcher asks where the log is before it starts the server, and loads no solver.
    from solver.engine.code import as_written_now

    code = as_written_now(attempt.code)  # one problem has one code, whichever version wrote it
    return attempt if code == attempt.code else attempt._replace(code=code)


def _could_be(attempt: Attempt) -> bool:
    """Whether its time is one and its numbers can be; NaN is below everything here."""
    try:
        zone = datetime.fromisoformat(attempt.when).utcoffset()
    except ValueError:
        return False
    counts = attempt.level >= 1 and attempt.tries >= 0 and attempt.hints >= 0
    return zone == NO_OFFSET and counts and 0 <= attempt.seconds < float("inf")


def _whole_seconds(found: dict[str, Any]) -> dict[str, Any]:
    """Another program may have written 41.0 as 41."""
    seconds = found.get("seconds")
    if type(seconds) is int and abs(seconds) < LONGEST_SECONDS:
        return {"seconds": float(seconds)}
    return {}


def _say_what_is_off(found: dict[str, Any]) -> NoReturn:
    lacking = [name for name in ALWAYS if name not in found]
    unknown = [str(name)[:40] for name in found if name not in Attempt._fields]
    what = f"it has no {', '.join(lacking)}" if lacking else f"it has an extra {', '.join(unknown)}"
    raise NotAnAttempt(what)
