"""When work came: the time its file says, the time it was received, and which of them counts.

What a file says is its sender's word, and the clock of their computer may be wrong. So both are kept
in the course, in `received/SET.csv`, and a time that cannot be is said and never counts by itself.
All times are in UTC without an offset, as nbgrader keeps them.
"""

from collections.abc import Iterable, Mapping, Sequence
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import NamedTuple

from workbook.trainer.course import Course
from workbook.ui.spreadsheet import csv_of, rows_in

__all__ = [
    "FORM", "RECEIVED", "SAID", "TRAINER", "Times", "in_words", "keep_times", "kept_times",
    "one_batch", "times_of",
]  # fmt: skip

FORM = "%Y-%m-%d %H:%M:%S.%f UTC"
SAID, RECEIVED, TRAINER = "said", "received", "trainer"
SLACK = timedelta(minutes=10)  # between the clocks of two computers that are set right
FAR = timedelta(days=1)
BATCH, FEWEST = timedelta(minutes=10), 3  # files saved so close together were saved by one person
HEADS = ("id", "said", "received", "counts", "which", "from", "note")


class Times(NamedTuple):
    """The times of one person's work: what its file says, when it came, and the one that counts.

    `which` is "said", "received" or "trainer"; `note` says what cannot be, and is empty where all fits.
    """

    said: datetime | None
    received: datetime | None
    counts: datetime
    which: str
    note: str = ""


def times_of(
    said: datetime | None,
    received: datetime | None,
    last_answer: datetime | None,
    now: datetime,
    prefer: str = RECEIVED,
) -> Times:
    """Which time counts: the one preferred if it can be, else the other, else now.

    `last_answer` is that of the newest answer in the sheet, by the clock of the same computer.
    """
    odd = [*_said_odd(said, last_answer, now), *_received_odd(received, now)]
    can_said = said if said and not odd_time(said, last_answer, now) else None
    can_received = received if received and received <= now + SLACK else None
    if said and received and not odd:
        odd += _apart(said, received)
    order = {SAID: can_said, RECEIVED: can_received}
    ranked = [prefer, SAID if prefer == RECEIVED else RECEIVED]
    which = next((each for each in ranked if order[each]), RECEIVED)
    return Times(said, received, order[which] or now, which, " ".join(odd))


def odd_time(said: datetime, last_answer: datetime | None, now: datetime) -> bool:
    """Whether work cannot have been packed then."""
    return said > now + SLACK or bool(last_answer and said < last_answer - SLACK)


def _said_odd(said: datetime | None, last: datetime | None, now: datetime) -> list[str]:
    if said and said > now + SLACK:
        return [f"Its file says {in_words(said)}, which hasn't come yet."]
    if said and last and said < last - SLACK:
        return [f"Its file says {in_words(said)}, before its own last answer at {in_words(last)}."]
    return []


def _received_odd(received: datetime | None, now: datetime) -> list[str]:
    if received and received > now + SLACK:
        return [f"The file was saved at {in_words(received)}, which hasn't come yet."]
    return []


def _apart(said: datetime, received: datetime) -> list[str]:
    if said > received + SLACK or received > said + FAR:
        return [f"Its file says {in_words(said)}, but it came at {in_words(received)}."]
    return []


def in_words(when: datetime) -> str:
    """A time as it is said here, by the clock of this computer."""
    try:
        here = when.replace(tzinfo=UTC).astimezone()
    except (OverflowError, OSError, ValueError):
        here = when
    return f"{here:%b} {here.day}, {here.year}, {here:%H:%M}"


def one_batch(saved: Sequence[datetime]) -> bool:
    """Whether files were saved so close together that their times tell nothing of who sent them."""
    return len(saved) >= FEWEST and max(saved) - min(saved) <= BATCH


def _path(course: Course, name: str) -> Path:
    return course.root / "received" / f"{name}.csv"


def kept_times(course: Course, name: str) -> dict[str, dict[str, str]]:
    """The rows of the file, by person; empty where there is none."""
    return {row["id"]: row for row in rows_in(_path(course, name), HEADS) if row["id"]}


def keep_times(course: Course, name: str, found: Mapping[str, tuple[Times, str]]) -> None:
    """Write the times of these people, with where each came from; those of others stay."""
    if not found:
        return
    rows = kept_times(course, name)
    for person, (times, source) in found.items():
        said = _written([times.said, times.received, times.counts])
        rows[person] = dict(
            zip(HEADS, (person, *said, times.which, source, times.note), strict=True)
        )
    path = _path(course, name)
    path.parent.mkdir(exist_ok=True)
    path.write_bytes(csv_of([HEADS, *([row[h] for h in HEADS] for _, row in sorted(rows.items()))]))


def _written(times: Iterable[datetime | None]) -> list[str]:
    return [when.strftime(FORM) if when else "" for when in times]
