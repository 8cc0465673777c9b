"""A set written into its course, and never over another one unless that was asked for."""

import shutil
from datetime import datetime
from pathlib import Path
from typing import NamedTuple

from solver import SolverError
from solver.units.show import counted
from workbook.start.folder import CannotWrite
from workbook.trainer.sets.notebook import write_source
from workbook.trainer.sets.set_file import SET_FILE, Assigned, SetFault, read_set_file
from workbook.ui.pages import MARK, read_page

__all__ = ["AlreadyThere", "CannotPut", "already_there", "put", "sets_in"]

INSTEAD = "Give the new set another name, or add --replace to replace the old one."
ASIDE = "replaced"  # folder of a course where sets that were replaced go


IN_USE = (
    "People have already turned in work for “{}”: {}. It counts for the questions they got, so the set "
    "stays as it is, and nothing was changed. Use another name for the new set."
)


class CannotPut(SolverError):
    """A set that was not written; the sentence says why, and what to do."""


class AlreadyThere(NamedTuple):
    """What stands where a set would be written: `same` as it, or another; `says` tells about it."""

    same: bool
    says: tuple[str, ...]


def sets_in(course: Path) -> list[str]:
    """The names of the sets of a course, in order."""
    return sorted(path.parent.name for path in course.glob(f"source/*/{SET_FILE}"))


def already_there(course: Path, assigned: Assigned) -> AlreadyThere | None:
    """What stands in the place of this set; None where it is free."""
    place = _place(course, assigned.name)
    if place is None:
        return None
    try:
        made = (place / f"{place.name}.ipynb").exists()  # else a trainer wrote the file just now
        there = read_set_file(place / SET_FILE, None if made else assigned.work.catalogue)
    except SetFault:
        there = None
    if there and there._replace(name=assigned.name) == assigned and place.name == assigned.name:
        return AlreadyThere(
            True, (f"“{place.name}” is already in this course, exactly like this.",)
        )
    return AlreadyThere(
        False,
        (
            f"This course already has another set called “{place.name}”.",
            *_changes(there, assigned),
            *_hands_in(course, place.name),
        ),
    )


def _place(course: Path, name: str) -> Path | None:
    """The folder of a set with this name; some systems hold capital and small letters alike."""
    found = (path for path in course.glob("source/*") if path.name.casefold() == name.casefold())
    return next(found, None)


def _changes(there: Assigned | None, assigned: Assigned) -> list[str]:
    if there is None:
        return ["Its file can't be read."]
    if there.work.code != assigned.work.code:
        return [
            f"Its questions are different: its code is {there.work.code}, and the new one is {assigned.work.code}.",
            "Answers to the old questions would no longer count.",
        ]
    return [
        "The questions are the same. The points, tries, credit, title or due time are different."
    ]


def _hands_in(course: Path, name: str) -> list[str]:
    many = _handed_in(course, name)
    were = "was" if many == 1 else "were"
    return [f"{counted(many, 'sheet')} {were} turned in for it so far."] * bool(many)


def _handed_in(course: Path, name: str) -> int:
    return sum(path.is_dir() for path in course.glob(f"submitted/*/{name}"))


def _is_asked(place: Path, assigned: Assigned) -> bool:
    """Whether the set in its place asks these very questions; its points or its due time may differ.

    Where its file is damaged, its notebook tells.
    """
    try:
        asked = read_set_file(place / SET_FILE).work.code
    except SetFault:
        asked = _asked_by_page(place / f"{place.name}.ipynb")
    return asked == assigned.work.code


def _asked_by_page(path: Path) -> str:
    try:
        return str(read_page(path)["metadata"][MARK]["set"])
    except (OSError, ValueError, LookupError, TypeError):
        return ""


def put(course: Path, assigned: Assigned, now: datetime, *, replace: bool = False) -> list[str]:
    """Write the set and its notebook; sentences say what was written and what was put aside.

    Raises:
        CannotPut: another set stands there and `replace` was not said, or work on its questions is
            in, or its notebook was changed by hand, or the folder cannot be written to.
    """
    there, place = already_there(course, assigned), _place(course, assigned.name)
    other = place if there and not there.same else None
    if there and other and not replace:
        raise CannotPut(" ".join([*there.says, INSTEAD]))
    if other and (many := _handed_in(course, assigned.name)) and not _is_asked(other, assigned):
        raise CannotPut(IN_USE.format(assigned.name, counted(many, "answer sheet")))
    said: list[str] = []
    try:
        said += _aside(course, other, now) if other else []
        page = write_source(assigned, course)
    except (SolverError, CannotWrite) as fault:
        raise CannotPut(" ".join([str(fault), *said])) from fault
    return [*said, f"The set is saved in {page.with_name(SET_FILE)}, with its notebook next to it."]


def _aside(course: Path, place: Path, now: datetime) -> list[str]:
    """Copy what stands there out of the way, say where, and make its place free."""
    where = course / ASIDE / f"{place.name} {now:%Y-%m-%d %H.%M.%S}"
    try:
        shutil.copytree(place, where)
        shutil.rmtree(place)
    except OSError as error:
        raise CannotWrite(
            f"{place} couldn't be moved out of the way: {error.strerror or error}."
        ) from error
    return [f"The set that was there is kept in {where}."]
