"""Files dropped on the page, kept in the course: `incoming/week-3/`, so that a command can name them."""

import os
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from solver import SolverError
from workbook.trainer.marking.odd import plain

__all__ = ["INCOMING", "kept_files"]

INCOMING = "incoming"


def kept_files(course: Path, of: str, files: Iterable[Mapping[str, Any]]) -> Path:
    """Keep what an upload box holds in the folder for `of`, each with the time it was saved; the folder.

    A file of the same name with other content gets a number; nothing is written over.

    Raises:
        SolverError: a file cannot be kept; the sentence says why.
    """
    folder = course / INCOMING / of
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for file in files:
            _keep(folder, file)
    except OSError as error:
        raise SolverError(f"{error.filename} can't be written: {error.strerror}.") from error
    return folder


def _keep(folder: Path, file: Mapping[str, Any]) -> None:
    name = Path(plain(str(file["name"]), 120).replace("\\", "/")).name.lstrip(".") or "file"
    data = bytes(file["content"])
    path, number = folder / name, 1
    while path.exists() and path.read_bytes() != data:
        number += 1
        path = folder / f"{Path(name).stem} ({number}){Path(name).suffix}"
    if not path.exists():
        path.write_bytes(data)
        if saved := file.get("last_modified"):
            os.utime(path, (saved.timestamp(), saved.timestamp()))
