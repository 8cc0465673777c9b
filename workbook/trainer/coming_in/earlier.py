"""Work that other work of the same person took the place of: kept in `earlier/ana.r/week-3-1`, and so on."""

from collections.abc import Iterator
from pathlib import Path

from workbook.trainer.course import Course

from .handed_in import Handed, read_handed

__all__ = ["earlier_work", "move_to_earlier", "next_earlier"]


def _folders(course: Course, name: str, person: str) -> list[Path]:
    return sorted((course.root / "earlier" / person).glob(f"{name}-*"))


def earlier_work(course: Course, name: str, person: str) -> Iterator[Handed]:
    """All that this person handed in for the set before what stands in its place now."""
    return (read_handed(one, name, person) for one in _folders(course, name, person))


def next_earlier(course: Course, name: str, person: str) -> Path:
    """The folder for what goes there next; the one that it lies in is made."""
    folder = course.root / "earlier" / person
    folder.mkdir(parents=True, exist_ok=True)
    return folder / f"{name}-{len(_folders(course, name, person)) + 1}"


def move_to_earlier(course: Course, name: str, person: str) -> Path:
    """Move what this person handed in for the set there; where it is now.

    Raises:
        OSError: it cannot be moved.
    """
    return course.folder("submitted", name, person).rename(next_earlier(course, name, person))
