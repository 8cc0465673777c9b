"""A course as one file to keep, and a set as one file to send."""

import argparse
import os
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import closing
from datetime import datetime
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZipFile

from solver import SolverError
from workbook.ui.saving import whole_file

from .course import SEND, Course, course_at

__all__ = ["backup", "packed_release"]

GRADEBOOK = "gradebook.db"


def backup(options: argparse.Namespace) -> Iterator[str]:
    """Write all of a course into one zip file. To go back to it, unpack it.

    Raises:
        SolverError: it would lie in the course itself.
        OSError: a file cannot be read or written.
    """
    course = course_at(options.course)
    name = f"{course.root.name}-backup-{datetime.now():%Y-%m-%d-%H%M}.zip"
    out = Path(options.out).expanduser() if options.out else course.root.with_name(name)
    if out.absolute().is_relative_to(course.root):
        raise SolverError("A backup can't lie in the course itself. Give --out another folder.")
    many = 0
    with (
        whole_file(out) as file,
        ZipFile(file, "w", ZIP_DEFLATED, strict_timestamps=False) as packed,
    ):
        for where, inside, names in os.walk(course.root):
            inside[:] = [
                each for each in inside if each not in (".ipynb_checkpoints", "__pycache__")
            ]
            for each in sorted(names):
                path = Path(where, each)
                inner = path.relative_to(course.root.parent)
                if path == course.root / GRADEBOOK:
                    packed.writestr(inner.as_posix(), _gradebook(path))
                elif path.is_file() and not path.is_symlink():
                    packed.write(path, inner)
                many += 1
    yield f"{out} has all {many:,} files of the course. To go back to it, unpack it somewhere."
    if not course.gradebook.startswith("sqlite"):
        yield "The gradebook is in a database of its own. Back that up too."


def _gradebook(path: Path) -> bytes:
    """The gradebook as it is at one moment, though a program may be writing to it."""
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder, GRADEBOOK)
        with closing(sqlite3.connect(path)) as here, closing(sqlite3.connect(copy)) as there:
            here.backup(there)
        return copy.read_bytes()


def packed_release(course: Course, name: str) -> Path:
    """What people get for a set, as one zip file; where it is."""
    folder, out = course.folder("release", name), course.root / SEND / f"{name}.zip"
    out.parent.mkdir(exist_ok=True)
    with whole_file(out) as file, ZipFile(file, "w", ZIP_DEFLATED) as packed:
        for path in sorted(folder.rglob("*")):
            if path.is_file():
                packed.write(path, f"{name}/{path.relative_to(folder).as_posix()}")
    return out
