"""A file of lines that only grows: a check on each line; lines added whole, by several programs at once.

A line is one JSON object:

    {"v": 2, …, "check": "5d0c3a91"}

The check is the CRC-32 of all that comes before it, so a line in which anything changed is noticed
and set aside by its number. Lines of version 1 were written without one, and are still read.

A program that is killed in the middle of a write leaves part of a line; the next write ends that
line first. A write that the system breaks off leaves the file as it was.
"""

import contextlib
import errno
import json
import os
from collections.abc import Iterable, Iterator, Mapping
from io import FileIO
from pathlib import Path
from typing import Any
from zlib import crc32

from filelock import FileLock, Timeout

from workbook.ui.static_site import in_browser

from . import journal

__all__ = [
    "NotALine",
    "NotKept",
    "NotRead",
    "add_lines",
    "checked_line",
    "fields_of",
    "locked_if_possible",
]

UNCHECKED = 1  # the last version of lines without a check
MARK = ', "check": "'
LENGTH = len('5d0c3a91"}')
BOM = b"\xef\xbb\xbf"
PATIENCE = 10  # seconds to wait for another page that is writing
WHY = {
    errno.ENOSPC: "The disk is full. Free up some space",
    errno.EDQUOT: "Your share of the disk is full. Free up some space",
    errno.EACCES: "This folder doesn't allow it. Allow writing there",
    errno.EPERM: "This folder doesn't allow it. Allow writing there",
    errno.EROFS: "This disk is read-only. Allow writing there",
}


class NotALine(ValueError):
    """What cannot be read as a line; the sentence goes on from "line 7: "."""


def checked_line(version: int, fields: Mapping[str, object]) -> str:
    """These fields as a line of a version, without its end."""
    # Half of a letter, which no file can hold, becomes a question mark.
    said = json.dumps({"v": version, **fields}, ensure_ascii=False).encode("utf-8", "replace")[:-1]
    return f'{said.decode()}{MARK}{_check(said)}"}}'


def _check(said: bytes) -> str:
    return f"{crc32(said):08x}"


def fields_of(line: str | bytes, version: int) -> dict[str, Any]:
    """The fields of a line of this version or an earlier one; "v" among them.

    Raises:
        NotALine: it is torn, changed, none at all, or of a later version.

    >>> fields_of(checked_line(2, {"typed": "9"}), 2)
    {'v': 2, 'typed': '9'}
    >>> fields_of(checked_line(2, {"typed": "9"}).replace("9", "8", 1), 2)
    Traceback (most recent call last):
    workbook.log.lines.NotALine: something in it changed after it was written
    """
    raw = line.encode("utf-8", "replace") if isinstance(line, str) else line
    raw = raw.removeprefix(BOM).strip()  # an editor may have put either there
    said, mark, check = raw.rpartition(MARK.encode())
    if mark and len(check) < LENGTH:
        raise NotALine("part of it is missing")
    if mark and check != f'{_check(said)}"}}'.encode():
        raise NotALine("something in it changed after it was written")
    try:
        found = json.loads(said + b"}" if mark else raw)
    except (ValueError, RecursionError):
        raise NotALine("part of it is missing") from None
    if not isinstance(found, dict) or type(found.get("v")) is not int:
        raise NotALine("it isn't a line of a log")
    if found["v"] > version:
        raise NotALine("a newer version of the workbook wrote it")
    if found["v"] > UNCHECKED and not mark:
        raise NotALine("its check is missing, so something in it changed")
    return found


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
        told = f"The computer says: {error.strerror or error}. Check that folder"
        what = WHY.get(error.errno or 0, told)
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


def _lock(path: Path) -> contextlib.AbstractContextManager[object]:
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


def _last_byte(file: FileIO, end: int) -> bytes:
    file.seek(end - 1)
    return file.read(1)


def _write_through(file: FileIO, data: bytes) -> None:
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
