"""A person's work as one file: packed for a trainer who collects work without a hub, and opened by them.

What somebody sent is a zip file or a folder; it becomes plain files with safe names.
"""

import os
import stat
import zlib
from collections.abc import Iterator, Sequence
from datetime import UTC, datetime
from io import BytesIO
from pathlib import Path, PurePosixPath
from zipfile import ZIP_DEFLATED, BadZipFile, ZipFile

from solver import SolverError
from workbook.log import NotRead
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.learner.who import PERSON
from workbook.trainer.sets.set_file import SET_FILE

from .handed_in import TIMESTAMP

__all__ = ["CannotOpen", "came_at", "files_in", "work_as_zip"]
MOST_FILES, MOST_BYTES = 200, 50_000_000
SKIPPED = {"__MACOSX", ".ipynb_checkpoints", "__pycache__"}
SPOILT = (BadZipFile, zlib.error, EOFError, OSError, RuntimeError, NotImplementedError)


def work_as_zip(folder: Path, person: str) -> tuple[bytes, Sequence[str]]:
    """The zip file, and what of the work it lacks: the page or the sheet.

    In it the files stand as a course has them, under the person and the set, so that unpacking it
    into the course's folder of what is handed in puts each where it belongs. The time is told as
    nbgrader tells it, by the clock of this computer.

    Raises:
        NotRead: a file is there and cannot be read; the sentence says why.
    """
    page = f"{folder.name}.ipynb"
    held, lacks = BytesIO(), []
    with ZipFile(held, "w", ZIP_DEFLATED) as packed:
        for name in (page, SHEET, SET_FILE, PERSON):
            try:
                data = (folder / name).read_bytes()
            except FileNotFoundError:
                lacks.append(name)
                continue
            except OSError as error:
                why = error.strerror or error
                raise NotRead(f"{folder / name} couldn't be read: {why}.") from error
            packed.writestr(f"{person}/{folder.name}/{name}", data)
        now = f"{datetime.now(UTC):%Y-%m-%d %H:%M:%S} UTC\n"
        packed.writestr(f"{person}/{folder.name}/{TIMESTAMP}", now)
    return held.getvalue(), [name for name in lacks if name in (page, SHEET)]


class CannotOpen(SolverError):
    """Something that was sent cannot be opened; the sentence says what to ask for."""


def files_in(item: Path) -> dict[PurePosixPath, bytes]:
    """The files of a zip file or a folder. Links, and names that lead out of it, are left out.

    Raises:
        CannotOpen: it is neither, it is spoilt, or it holds far more than work for a set.
    """
    try:
        if item.is_dir():
            return dict(_limited(item.name, _of_folder(item)))
        with ZipFile(item) as packed:
            return dict(_limited(item.name, _of_zip(packed)))
    except SPOILT as fault:
        raise CannotOpen(
            f"{item.name} couldn't be opened ({fault}). Ask for it again, as a zip file."
        ) from fault


def _limited(called: str, files: Iterator) -> Iterator[tuple[PurePosixPath, bytes]]:
    left = MOST_BYTES
    for count, (path, size, read) in enumerate(files, 1):
        left -= size
        if count > MOST_FILES or left < 0:
            raise CannotOpen(
                f"{called} has more than {MOST_FILES} files or {MOST_BYTES // 1_000_000} MB. "
                "Ask for just the folder of the set."
            )
        yield path, read()


def _of_folder(folder: Path) -> Iterator:
    for where, inside, names in os.walk(folder):
        inside[:] = sorted(name for name in inside if name not in SKIPPED)
        for name in sorted(names):
            path = Path(where, name)
            found = path.lstat()
            if stat.S_ISREG(found.st_mode):
                inner = PurePosixPath(path.relative_to(folder).as_posix())
                yield inner, found.st_size, path.read_bytes


def _of_zip(packed: ZipFile) -> Iterator:
    for info in packed.infolist():
        path = PurePosixPath(info.filename.replace("\\", "/"))
        plain = stat.S_IFMT(info.external_attr >> 16) in (0, stat.S_IFREG)
        if plain and not info.is_dir() and _is_safe(path):
            yield path, info.file_size, lambda info=info: packed.read(info)


def _is_safe(path: PurePosixPath) -> bool:
    odd = any(part == ".." or ":" in part or not part.isprintable() for part in path.parts)
    return bool(path.name) and not (odd or path.is_absolute() or SKIPPED & set(path.parts))


def came_at(item: Path) -> datetime:
    """When a file was saved, or the newest file of a folder; in UTC without an offset."""
    files = [item, *item.rglob("*")] if item.is_dir() else [item]
    newest = max(each.lstat().st_mtime for each in files if each == item or each.is_file())
    return datetime.fromtimestamp(newest, UTC).replace(tzinfo=None)
