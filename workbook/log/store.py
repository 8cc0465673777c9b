"""The log on disk: a file of lines that only grows, what has been read of it, and logs made one.

Logs of several machines are merged as the union of their attempts, in order of time. An attempt is
known by its id. Should two differ under one id, because somebody changed a line, the one that comes
first as text is taken, so that the order of merging never matters.
"""

import os
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from threading import RLock
from typing import NamedTuple

from platformdirs import user_data_path

from .attempt import Attempt, NotAnAttempt, line_of, now, read_line
from .journal import folder
from .lines import NotRead, add_lines, locked_if_possible

__all__ = ["KEPT", "Log", "Strange", "default_path", "merged", "parse"]

KEPT = "WIRE_TO_WATER_KEPT"  # names the folder to use where a home cannot be written to


class Strange(NamedTuple):
    """A line that could not be read: where it stands, why, and the line itself."""

    number: int
    why: str
    line: bytes


def default_path() -> Path:
    """Where a reader's own log stands."""
    if kept := os.environ.get(KEPT):
        return Path(kept) / "attempts.jsonl"
    return (folder() or user_data_path("Wire to Water", appauthor=False)) / "attempts.jsonl"


def parse(data: bytes, first: int = 1) -> tuple[list[Attempt], list[Strange]]:
    """The attempts among some lines, and the lines that are none; the first has this number."""
    attempts, strange = [], []
    for number, line in enumerate(data.split(b"\n"), first):
        if line.strip():
            try:
                attempts.append(read_line(line))
            except NotAnAttempt as reason:
                strange.append(Strange(number, str(reason), line))
    return attempts, strange


def none_ahead(attempts: Iterable[Attempt], now: str) -> list[Attempt]:
    """The attempts as they were written, with no time later than now.

    A clock was wrong where a time is ahead. It counts as that of the next attempt that was written
    with a time that can be, or as now.
    """
    found, by_then = [], now
    for attempt in reversed(list(attempts)):
        if attempt.when > now:
            found.append(attempt._replace(when=by_then))
        else:
            by_then = attempt.when
            found.append(attempt)
    return found[::-1]


def union(by_id: dict[str, Attempt], attempts: Iterable[Attempt]) -> list[Attempt]:
    """Put these among those by their ids; the ones that changed anything."""
    news = []
    for attempt in attempts:
        other = by_id.get(attempt.id)
        if other is None or (other != attempt and line_of(attempt) < line_of(other)):
            by_id[attempt.id] = attempt
            news.append(attempt)
    return news


def merged(*logs: Iterable[Attempt]) -> list[Attempt]:
    """All attempts of these logs, once each, in order of time."""
    by_id: dict[str, Attempt] = {}
    for attempts in logs:
        union(by_id, attempts)
    return in_order(by_id)


def in_order(by_id: Mapping[str, Attempt]) -> list[Attempt]:
    """The attempts in order of time; those of one moment by their ids."""
    return sorted(by_id.values(), key=lambda attempt: (attempt.when, attempt.id))


class Log:
    """A log file, what has been read of it, and what still waits to be written.

    `read()` takes in what has come since, from this page or another. `attempts` are in order of
    time, none of them ahead of now; `strange` are the lines set aside; `waiting` are attempts that
    could not yet be written. Nothing in the file is ever changed or taken out.
    """

    def __init__(self, path: Path):
        self.path = Path(path)
        self.waiting: list[Attempt] = []
        self.strange: list[Strange] = []
        self._by_id: dict[str, Attempt] = {}
        self._in_order: list[Attempt] | None = []
        self._read_to = self._lines = 0
        self._one_at_a_time = RLock()  # cards of one page may answer in two threads

    @property
    def attempts(self) -> Sequence[Attempt]:
        """Every attempt read or waiting, once each, in order of time."""
        with self._one_at_a_time:
            if self._in_order is None:
                self._in_order = in_order(self._by_id)
            return self._in_order

    def keep(self, *attempts: Attempt) -> None:
        """Write these through to the disk, and before them all that still waited.

        Raises:
            NotKept: what happened and what to do. The attempts wait for the next call.
        """
        with self._one_at_a_time:
            self._take(attempts)
            self.waiting.extend(attempts)
            add_lines(self.path, map(line_of, self.waiting))
            self.waiting = []

    def read(self) -> None:
        """Take in what has been written since the last time.

        Raises:
            NotRead: what happened. What was read before is still here.
        """
        with self._one_at_a_time:
            with locked_if_possible(self.path):
                data = self._fresh()
            attempts, strange = parse(data, self._lines + 1)
            self._lines += data.count(b"\n")
            self._take(attempts)
            self.strange += strange

    def merge(self, attempts: Iterable[Attempt]) -> int:
        """Add those that are not here yet; how many they were.

        Raises:
            NotKept: as for `keep`.
            NotRead: as for `read`.
        """
        with self._one_at_a_time:
            self.read()
            if new := union(dict(self._by_id), attempts):
                self.keep(*new)
            return len(new)

    def _take(self, attempts: Iterable[Attempt]) -> None:
        if union(self._by_id, none_ahead(attempts, now())):
            self._in_order = None

    def _fresh(self) -> bytes:
        try:
            with self.path.open("rb") as file:
                # No more than its size now: a device that stands there might never end.
                more = os.fstat(file.fileno()).st_size - self._read_to
                file.seek(self._read_to)
                data = file.read(max(more, 0))
        except FileNotFoundError:
            return b""
        except OSError as error:
            raise NotRead(
                f"Your log couldn't be read. The computer says: {error.strerror or error}. "
                f"Check the file: {self.path}"
            ) from error
        self._read_to += len(data)
        return data
