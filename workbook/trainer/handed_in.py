"""What one person handed in for a set, as it lies in the course: bytes, read and nothing more."""

import os
import stat
from datetime import UTC, datetime
from pathlib import Path
from typing import NamedTuple

from .answer_sheet import SHEET

__all__ = ["SECRET", "TIMESTAMP", "Handed", "read_handed", "read_when"]

TIMESTAMP, SECRET = "timestamp.txt", "submission_secret.txt"  # nbgrader's own names
# Links are not followed, and pipes not waited for; Windows has neither, and ends of lines to keep.
AS_IT_IS = sum(getattr(os, name, 0) for name in ("O_NOFOLLOW", "O_NONBLOCK", "O_BINARY"))
MOST = 20_000_001  # bytes; what is longer is told from what is just long enough


class Handed(NamedTuple):
    """The answer sheet and the notebook of a person, None where missing.

    `when` is the time of handing in, in UTC and without an offset, as nbgrader keeps it. `note`
    says what could not be read.
    """

    person: str
    sheet: bytes | None
    notebook: bytes | None
    when: datetime | None = None
    note: str = ""


def read_handed(folder: Path, name: str, person: str) -> Handed:
    """What stands in the folder where a person's work for the set `name` lies; it never raises."""
    where = str(folder)
    text = _read(os.path.join(where, TIMESTAMP))
    when, note = None, ""
    if text and text.strip():
        try:
            when = read_when(text.decode())
        except ValueError:
            note = f"{TIMESTAMP} has no time in it, so this doesn't count as late."
    sheet = _read(os.path.join(where, SHEET))
    return Handed(person, sheet, _read(os.path.join(where, f"{name}.ipynb")), when, note)


def _read(path: str) -> bytes | None:
    """The bytes of a plain file; a link or a pipe is none."""
    try:
        found = os.open(path, AS_IT_IS)
    except OSError:
        return None
    try:
        state = os.fstat(found)
        return _whole(found, min(state.st_size, MOST)) if stat.S_ISREG(state.st_mode) else None
    except OSError:
        return None
    finally:
        os.close(found)


def _whole(found: int, size: int) -> bytes:
    """That many bytes of an open file; a system may give them in pieces."""
    data = os.read(found, size)
    while len(data) < size and (more := os.read(found, size - len(data))):
        data += more
    return data


def read_when(text: str) -> datetime:
    """The time in a timestamp of nbgrader's, in UTC without an offset.

    >>> read_when("2026-12-01 18:04:31.250000 UTC")
    datetime.datetime(2026, 12, 1, 18, 4, 31, 250000)
    >>> read_when("2026-12-01T12:04:31-06:00")
    datetime.datetime(2026, 12, 1, 18, 4, 31)

    Raises:
        ValueError: it is no time.
    """
    text = text.strip()
    try:
        found = datetime.fromisoformat(text.removesuffix(" UTC"))
    except ValueError:
        return _as_nbgrader_reads(text)
    return found.astimezone(UTC).replace(tzinfo=None) if found.tzinfo else found


def _as_nbgrader_reads(text: str) -> datetime:
    """Any other form; slow, and seldom met."""
    from nbgrader.utils import parse_utc

    try:
        return parse_utc(text)
    except (OverflowError, TypeError, AttributeError) as fault:
        raise ValueError(str(fault)) from fault
