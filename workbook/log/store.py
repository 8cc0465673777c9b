"""The log on disk: a file of lines that only grows.

Several pages may write at once, each in a program of its own, so each write holds a lock. A line
is kept when `keep` returns: by then the disk has it. A program that is killed in the middle of a
write leaves part of a line; the next write ends that line first, and reading sets it aside.
Nothing in the file is ever changed or taken out.
"""

import contextlib
import errno
import os
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import NamedTuple

from filelock import FileLock, Timeout
from platformdirs import user_data_path

from .attempt import Attempt, NotAnAttempt, line_of, read_line
from .merging import merged, union

__all__ = ["Log", "NotKept", "Strange", "default_path", "parse"]

PATIENCE = 10  # seconds to wait for another page that is writing
WHY = {
    errno.ENOSPC: "The disk is full. Free some space",
    errno.EDQUOT: "Your share of the disk is full. Free some space",
    errno.EACCES: "The folder does not allow it. Allow writing there",
    errno.EPERM: "The folder does not allow it. Allow writing there",
    errno.EROFS: "The disk allows reading only. Allow writing there",
}


class NotKept(OSError):
    """An attempt could not be written; it is held in memory and written with the next one."""


class Strange(NamedTuple):
    """A line that could not be read: where it stands, why, and the line itself."""

    number: int
    why: str
    line: bytes


def default_path() -> Path:
    """Where a reader's own log stands."""
    return user_data_path("Wire to Water", appauthor=False) / "attempts.jsonl"


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


class Log:
    """A log file, what has been read of it, and what still waits to be written.

    `read()` takes in what has come since, from this page or another. `attempts` are in order of
    time; `strange` are the lines set aside; `waiting` are attempts that could not yet be written.
    """

    def __init__(self, path: Path):
        self.path = Path(path)
        self.waiting: list[Attempt] = []
        self.strange: list[Strange] = []
        self._by_id: dict[str, Attempt] = {}
        self._read_to = self._lines = 0

    @property
    def attempts(self) -> list[Attempt]:
        """Every attempt read or waiting, once each, in order of time."""
        return merged(self._by_id.values(), self.waiting)

    def keep(self, *attempts: Attempt) -> None:
        """Write these through to the disk, and before them all that still waited.

        Raises:
            NotKept: what happened and what to do. The attempts wait for the next call.
        """
        self.waiting.extend(attempts)
        try:
            with self._locked():
                _append(self.path, self.waiting)
        except Timeout:
            raise NotKept(
                "Another page has held your log too long. Close other pages, then try again."
            ) from None
        except OSError as error:
            raise NotKept(self._why(error)) from error
        union(self._by_id, self.waiting)
        self.waiting = []

    def read(self) -> None:
        """Take in what has been written since the last time."""
        with self._locked_if_possible():
            data = self._fresh()
        attempts, strange = parse(data, self._lines + 1)
        self._lines += data.count(b"\n")
        union(self._by_id, attempts)
        self.strange += strange

    def merge(self, attempts: Iterable[Attempt]) -> int:
        """Add those that are not here yet; how many they were."""
        self.read()
        new = [attempt for attempt in attempts if self._by_id.get(attempt.id) != attempt]
        if new:
            self.keep(*new)
        return len(new)

    def _fresh(self) -> bytes:
        try:
            with self.path.open("rb") as file:
                file.seek(self._read_to)
                data = file.read()
        except FileNotFoundError:
            return b""
        self._read_to += len(data)
        return data

    def _lock(self) -> FileLock:
        return FileLock(self.path.with_name(self.path.name + ".lock"), timeout=PATIENCE)

    @contextlib.contextmanager
    def _locked(self) -> Iterator[None]:
        self.path.parent.mkdir(parents=True, exist_ok=True)
        with self._lock():
            yield

    @contextlib.contextmanager
    def _locked_if_possible(self) -> Iterator[None]:
        """Held for reading, or the last line could be one that is being written."""
        with contextlib.ExitStack() as held:
            with contextlib.suppress(OSError, Timeout):  # read only: nobody writes there either
                if self.path.exists():
                    held.enter_context(self._lock())
            yield

    def _why(self, error: OSError) -> str:
        what = WHY.get(error.errno, f"The system says: {error.strerror or error}. Look there")
        return f"{what}: {self.path.parent}. Your answers are held until this page is closed."


def _append(path: Path, attempts: Iterable[Attempt]) -> None:
    """Add lines and wait for the disk; where that fails, leave the file as it was."""
    lines = "".join(line_of(attempt) + "\n" for attempt in attempts).encode("utf-8", "replace")
    is_new = not path.exists()
    with open(path, "a+b", buffering=0) as file:
        end = file.seek(0, os.SEEK_END)
        if end and _last_byte(file, end) != b"\n":
            lines = b"\n" + lines  # a program was killed here: end its line first
        try:
            _write_through(file, lines)
        except OSError:
            with contextlib.suppress(OSError):
                file.truncate(end)
            raise
    if is_new:
        _sync_folder(path.parent)


def _last_byte(file, end: int) -> bytes:
    file.seek(end - 1)
    return file.read(1)


def _write_through(file, data: bytes) -> None:
    while data:
        data = data[file.write(data) :]
    os.fsync(file.fileno())


def _sync_folder(folder: Path) -> None:
    """That the file is there is itself written in its folder; Windows sees to it by itself."""
    with contextlib.suppress(OSError, AttributeError):
        here = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            os.fsync(here)
        finally:
            os.close(here)
