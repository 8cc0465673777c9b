"""A zip file, a folder or an answer sheet that somebody sent, opened with hard limits: only names we know are read.

What a zip file says of its own sizes is not believed; reading stops at the limit. So no file that is
sent takes more memory than the work of a set may, whatever it holds.
"""

import os
import stat
import struct
import zlib
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from functools import partial
from pathlib import Path, PurePosixPath
from typing import NamedTuple
from zipfile import ZIP_DEFLATED, ZIP_STORED, BadZipFile, ZipFile, ZipInfo

from solver import SolverError
from workbook.trainer.learner.answer_sheet import MOST as MOST_SHEET
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.learner.who import PERSON
from workbook.trainer.marking.odd import plain
from workbook.trainer.sets.set_file import SET_FILE

from .handed_in import MOST_NOTEBOOK, TIMESTAMP

__all__ = ["SHEETS", "CannotOpen", "Opened", "called", "came_at", "opened"]

MOST_FILES, MOST_BYTES = 200, 50_000_000
MOST_SENT, MOST_INDEX = 100_000_000, 1_000_000  # bytes of a zip file, and of its list of names
LONGEST_NAME = 200  # characters of a path
BY_ENDING = {".ipynb": MOST_NOTEBOOK, ".jsonl": MOST_SHEET}
SHEETS = {".jsonl", ".txt"}
BY_NAME = {SET_FILE: 200_000, PERSON: 1_000, TIMESTAMP: 1_000}
SKIPPED = {"__MACOSX", ".ipynb_checkpoints", "__pycache__"}
SPOILT = (
    BadZipFile, zlib.error, EOFError, OSError, RuntimeError, NotImplementedError, ValueError,
    struct.error, MemoryError,
)  # fmt: skip
END, FAR_END = b"PK\x05\x06", b"PK\x06\x07"  # of a zip file, and of one with more than 4 GB
LONGEST_END = 22 + 65_535


class CannotOpen(SolverError):
    """Something that was sent cannot be taken; the sentence says what to ask for."""


class _Unusual(NotImplementedError):
    """A zip file packed in a way that is not read here; its text ends the sentence that says so."""


class Opened(NamedTuple):
    """The files that can count, by their path, and the names of the others, which were not read."""

    files: dict[PurePosixPath, bytes]
    others: tuple[str, ...]


class _Found(NamedTuple):
    """A file of what was sent: where it is there, and what reads it, to a number of bytes.

    Nothing reads a link, or a name that leads out of what was sent.
    """

    path: PurePosixPath
    read: Callable[[int], bytes] | None


def called(item: Path) -> str:
    """The name that something came with, as it can be printed."""
    return plain(item.name, 80)


def opened(item: Path) -> Opened:
    """What a zip file, a folder or an answer sheet holds. Links, and names that lead out of it, are left out.

    Raises:
        CannotOpen: it is neither, it is spoilt, or it holds far more than work for a set.
    """
    name = called(item)
    try:
        if item.is_symlink() or not (item.is_dir() or item.is_file()):
            raise CannotOpen(f"{name} is a link or a device, not a file. Ask for the file itself.")
        if item.is_dir():
            return _limited(name, _of_folder(item))
        if item.suffix.lower() in SHEETS:  # a telephone shares it as plain text
            return _limited(name, iter([_Found(PurePosixPath(SHEET), partial(_begin_of, item))]))
        _check_index(name, item)
        with ZipFile(item) as packed:
            return _limited(name, _of_zip(packed))
    except SPOILT as fault:
        raise CannotOpen(
            f"{name} couldn't be opened, because {_why(fault)}. Ask for it again, as a zip file."
        ) from fault


def _why(fault: Exception) -> str:
    said = str(fault)
    if "not a zip file" in said:
        return "it isn't a whole zip file"
    if "CRC" in said:
        return "what is in it isn't what it says"
    if isinstance(fault, OSError) and fault.strerror:
        return f"the system says “{fault.strerror}”"
    return said if isinstance(fault, _Unusual) else f"it is damaged ({plain(said, 60)})"


def _limited(name: str, found: Iterator[_Found]) -> Opened:
    files: dict[PurePosixPath, bytes] = {}
    others: list[str] = []
    left = MOST_BYTES
    for count, (path, read) in enumerate(found, 1):
        if count > MOST_FILES:
            raise _too_much(name)
        most = BY_NAME.get(path.name) or BY_ENDING.get(path.suffix.lower())
        if most is None or path in files or read is None:
            others.append(str(path))
            continue
        data = read(min(most, left) + 1)
        if len(data) > left:
            raise _too_much(name)
        if len(data) > most:
            raise CannotOpen(
                f"{name}: {plain(path.name, 60)} is bigger than {most:,} bytes. "
                "Work for a set is far smaller, so ask what it is."
            )
        left -= len(data)
        files[path] = data
    return Opened(files, tuple(others))


def _too_much(name: str) -> CannotOpen:
    return CannotOpen(
        f"{name} has more than {MOST_FILES} files or {MOST_BYTES // 1_000_000} MB. "
        "Ask for just the folder of the set."
    )


def _check_index(name: str, item: Path) -> None:
    """A zip file's list of names is read whole, so one far too long is refused before that."""
    size = item.stat().st_size
    with item.open("rb") as file:
        file.seek(max(0, size - LONGEST_END))
        tail = file.read()
    at = tail.rfind(END)
    if at < 0:
        return
    index = struct.unpack("<L", tail[at + 12 : at + 16].ljust(4, b"\0"))[0]
    if size > MOST_SENT or index > MOST_INDEX or FAR_END in tail[max(0, at - 20) : at]:
        raise _too_much(name)


def _of_folder(folder: Path) -> Iterator[_Found]:
    for where, inside, names in os.walk(folder):
        inside[:] = sorted(name for name in inside if name not in SKIPPED)
        for name in sorted(names):
            path = Path(where, name)
            inner = PurePosixPath(path.relative_to(folder).as_posix())
            plain_file = stat.S_ISREG(path.lstat().st_mode)
            yield _Found(inner, partial(_begin_of, path) if plain_file else None)


def _begin_of(path: Path, most: int) -> bytes:
    with path.open("rb") as file:
        return file.read(most)


def _of_zip(packed: ZipFile) -> Iterator[_Found]:
    for info in packed.infolist():
        path = PurePosixPath(info.filename.replace("\\", "/"))
        plain_file = stat.S_IFMT(info.external_attr >> 16) in (0, stat.S_IFREG)
        if not info.is_dir() and not SKIPPED & set(path.parts):
            taken = plain_file and _is_safe(path)
            yield _Found(path, partial(_unpacked, packed, info) if taken else None)


def _unpacked(packed: ZipFile, info: ZipInfo, most: int) -> bytes:
    if info.flag_bits & 1:
        raise _Unusual("it has a password")
    if info.compress_type not in (ZIP_STORED, ZIP_DEFLATED):
        raise _Unusual("it is packed in an unusual way")
    with packed.open(info) as file:
        return file.read(most)


def _is_safe(path: PurePosixPath) -> bool:
    odd = any(part == ".." or ":" in part or not part.isprintable() for part in path.parts)
    short = len(str(path)) <= LONGEST_NAME
    return bool(path.name) and short and not (odd or path.is_absolute())


def came_at(item: Path) -> datetime:
    """When a file was saved, or the newest file of a folder; in UTC without an offset."""
    newest = item.lstat().st_mtime
    if item.is_dir() and not item.is_symlink():
        times = [path.lstat().st_mtime for path in _some_of(item)]
        newest = max(times, default=newest)
    try:
        return datetime.fromtimestamp(newest, UTC).replace(tzinfo=None)
    except (ValueError, OverflowError, OSError):
        return datetime.now(UTC).replace(tzinfo=None)


def _some_of(folder: Path) -> Iterator[Path]:
    count = 0
    for where, _, names in os.walk(folder):
        for name in names:
            if (count := count + 1) > MOST_FILES:
                return
            yield Path(where, name)
