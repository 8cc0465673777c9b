"""Lines added to a file, whole and through to the disk, by several programs at once.

A file only grows. A program that is killed in the middle of a write leaves part of a line; the next
write ends that line first. A write that the system breaks off leaves the file as it was.
"""

import contextlib
import errno
import os
from collections.abc import Iterable, Iterator
from pathlib import Path

from filelock import FileLock, Timeout

from workbook.ui.in_browser import in_browser

from . import journal

__all__ = ["NotKept", "NotRead", "add_lines", "locked_if_possible"]

PATIENCE = 10  # seconds to wait for another page that is writing
WHY = {
    errno.ENOSPC: "The disk is full. Free up some space",
    errno.EDQUOT: "Your share of the disk is full. Free up some space",
    errno.EACCES: "This folder doesn't allow it. Allow writing there",
    errno.EPERM: "This folder doesn't allow it. Allow writing there",
    errno.EROFS: "This disk is read-only. Allow writing there",
}


class NotKept(OSError):
    """Something could not be written; the sentence says why, and what to do."""


class NotRead(OSError):
    """A file is there and could not be read; the sentence says why, and where it stands."""


def add_lines(path: Path, lines: Iterable[str]) -> None:
    """Add these lines; when this returns, the disk has them.

    Raises:
        NotKept: nothing was added.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with _lock(path):
            data = "".join(f"{line}\n" for line in lines).encode("utf-8", "replace")
            _append(path, data)
            journal.note(path, data)
    except Timeout:
        raise NotKept(
            "Another page is holding on to your log. Close the other pages, then try again."
        ) from None
    except OSError as error:
        what = WHY.get(
            error.errno, f"The computer says: {error.strerror or error}. Check that folder"
        )
        raise NotKept(
            f"This was not saved. {what}: {path.parent}. "
            "It is kept as long as this page is open, and saved with your next answer."
        ) from error


@contextlib.contextmanager
def locked_if_possible(path: Path) -> Iterator[None]:
    """Held while reading, or the last line could be one that is being written."""
    with contextlib.ExitStack() as held:
        with contextlib.suppress(OSError, Timeout):  # read only: nobody writes there either
            if path.exists():
                held.enter_context(_lock(path))
        yield


def _lock(path: Path) -> contextlib.AbstractContextManager:
    if in_browser():
        # A browser's files know no locks, and each page has its own.
        return contextlib.nullcontext()
    return FileLock(path.with_name(path.name + ".lock"), timeout=PATIENCE)


def _append(path: Path, lines: bytes) -> None:
    is_new = not path.exists()
    with open(path, "a+b", buffering=0) as file:
        end = file.seek(0, os.SEEK_END)
        if end and _last_byte(file, end) != b"\n":
            lines = b"\n" + lines
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
