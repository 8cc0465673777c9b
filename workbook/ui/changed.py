"""What tells whether a file has changed since it was read."""

from pathlib import Path
from typing import NamedTuple

__all__ = ["Stamp", "stamp_of"]


class Stamp(NamedTuple):
    """A file as it was at a time: another stamp, another content."""

    path: Path
    changed: int  # ns
    size: int  # bytes


def stamp_of(path: Path) -> Stamp:
    """The stamp of a file now; of one that is gone, zeros."""
    try:
        told = path.stat()
    except OSError:
        return Stamp(path, 0, 0)
    return Stamp(path, told.st_mtime_ns, told.st_size)
