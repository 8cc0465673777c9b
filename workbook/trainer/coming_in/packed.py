"""What is in a zip file or a folder that somebody sent, as plain files with safe names."""

import os
import stat
import zlib
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path, PurePosixPath
from zipfile import BadZipFile, ZipFile

from solver import SolverError

__all__ = ["CannotOpen", "came_at", "files_in"]

MOST_FILES, MOST_BYTES = 200, 50_000_000
SKIPPED = {"__MACOSX", ".ipynb_checkpoints", "__pycache__"}
SPOILT = (BadZipFile, zlib.error, EOFError, OSError, RuntimeError, NotImplementedError)


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
