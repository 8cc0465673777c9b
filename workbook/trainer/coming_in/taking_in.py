"""Work that came by mail or from a website, put where nbgrader looks for it.

The folder holds a zip file or a folder for each person. Those that the notebook of a set makes have
`ana.r/week-3/` inside. Any other is named after the person, with the files somewhere in it.
"""

import secrets
import shutil
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path, PurePosixPath
from typing import NamedTuple

from solver import SolverError
from solver.sets.work_set import person_id
from workbook.trainer.course import Course, CourseFault, people_in
from workbook.trainer.learner.answer_sheet import SHEET

from .handed_in import SECRET, TIMESTAMP, read_handed, read_when
from .packed import CannotOpen, came_at, files_in

__all__ = ["Taken", "take_in"]

EARLIER = "earlier"  # where work goes that newer work takes the place of
OURS = (TIMESTAMP, SECRET)  # written anew
FORM = "%Y-%m-%d %H:%M:%S.%f UTC"


class Taken(NamedTuple):
    """Whose work was taken in, and sentences about what was not."""

    people: tuple[str, ...]
    notes: tuple[str, ...]


class _Work(NamedTuple):
    """One person's files, by their place in the folder of the set, and when they were packed."""

    person: str
    files: dict[PurePosixPath, bytes]
    packed: datetime | None


def take_in(course: Course, name: str, source: Path, when: datetime | None = None) -> Taken:
    """Put what is in the folder `source`, or the one zip file, among what was handed in.

    `when` is the time of handing in, in UTC without an offset. Where left out it is the time that
    each zip file tells, by its maker's own clock, or else that of the file. Newer work takes the
    place of older work, which is moved to the folder `earlier`.

    Raises:
        CourseFault: there is no such folder, or the course cannot be written to.
    """
    taken, notes, known = [], [], people_in(course)
    for item in sorted(_items(source), key=came_at):
        try:
            for work in _works(item, name):
                if known and work.person not in known:
                    raise CannotOpen(
                        f"{item.name}: “{work.person}” isn't on the list of this class. "
                        "Add them to people.csv, or rename the file."
                    )
                if note := _put(course, name, work, when or work.packed or came_at(item)):
                    notes.append(f"{item.name}: {note}")
                else:
                    taken.append(work.person)
        except CannotOpen as fault:
            notes.append(str(fault))
        except OSError as error:
            raise CourseFault(f"{error.filename} can't be written: {error.strerror}.") from error
    return Taken(tuple(dict.fromkeys(taken)), tuple(notes))


def _items(source: Path) -> list[Path]:
    source = Path(source).expanduser()
    if source.is_file():
        return [source]
    try:
        return [item for item in source.iterdir() if not item.name.startswith(".")]
    except OSError as error:
        raise CourseFault(f"The folder {source} can't be read: {error.strerror}.") from error


def _works(item: Path, name: str) -> Iterator[_Work]:
    """The work of each person in a zip file or a folder.

    Raises:
        CannotOpen: it cannot be opened, or it cannot be told whose work it is.
    """
    files = files_in(item)
    called = item.name if item.is_dir() else item.stem
    claimed = called.removeprefix(f"{name}-")
    inside = _by_person(files, name)
    if not inside:
        person = _person(item, claimed)
        inside = {person: _without_folder(files)}
    elif claimed != called and list(inside) != [_possible(claimed)]:
        raise CannotOpen(f"{item.name} has the work of {', '.join(inside)} in it. Ask who sent it.")
    for person, sent in inside.items():
        found = _named_right(sent, f"{name}.ipynb", SHEET)
        if not {PurePosixPath(f"{name}.ipynb"), PurePosixPath(SHEET)} & set(found):
            raise CannotOpen(f"{item.name} has no answer sheet and no notebook of “{name}”.")
        yield _Work(person, found, _packed(sent))


def _packed(files: dict[PurePosixPath, bytes]) -> datetime | None:
    """The time that was put in when the files were packed, where it can be one."""
    try:
        return read_when(files[PurePosixPath(TIMESTAMP)].decode())
    except (KeyError, ValueError):
        return None


def _by_person(files: dict[PurePosixPath, bytes], name: str) -> dict[str, dict]:
    """The files that stand under PERSON/SET, wherever that is."""
    found: dict[str, dict] = {}
    for path, data in files.items():
        at = next((i for i, part in enumerate(path.parts[:-1]) if i and part == name), 0)
        if at and (person := _possible(path.parts[at - 1])):
            found.setdefault(person, {})[PurePosixPath(*path.parts[at + 1 :])] = data
    return found


def _possible(text: str) -> str:
    """The id a text is, or "" where nobody can have it."""
    try:
        return person_id(text)
    except SolverError:
        return ""


def _person(item: Path, text: str) -> str:
    try:
        return person_id(text)
    except SolverError as fault:
        raise CannotOpen(
            f"{item.name}: the file name doesn't say whose work this is. {fault}"
        ) from None


def _without_folder(files: dict[PurePosixPath, bytes]) -> dict[PurePosixPath, bytes]:
    """The files without a folder that all of them are in."""
    while files and all(len(path.parts) > 1 for path in files):
        if len({path.parts[0] for path in files}) > 1:
            break
        files = {PurePosixPath(*path.parts[1:]): data for path, data in files.items()}
    return files


def _named_right(files: dict[PurePosixPath, bytes], *names: str) -> dict[PurePosixPath, bytes]:
    """A copy saved under another name gets its own, where it is the only one of its kind."""
    files = {path: data for path, data in files.items() if str(path) not in OURS}
    for name in names:
        alike = [path for path in files if path.suffix == PurePosixPath(name).suffix]
        if len(alike) == 1:
            files[PurePosixPath(name)] = files.pop(alike[0])
    return files


def _put(course: Course, name: str, work: _Work, when: datetime) -> str:
    """Put one person's work into its place; a sentence where what is there stays."""
    place = course.folder("submitted", name, work.person)
    if place.exists():
        before = read_handed(place, name, work.person).when
        if before and before >= when:
            return f"{work.person} has already turned in this work or newer work."
        _move_away(course, name, work.person, place)
    half = place.with_name(f".{name}.part")
    shutil.rmtree(half, ignore_errors=True)
    for path, data in work.files.items():
        (half / path).parent.mkdir(parents=True, exist_ok=True)
        (half / path).write_bytes(data)
    (half / TIMESTAMP).write_text(when.strftime(FORM), encoding="ascii")
    (half / SECRET).write_text(secrets.token_hex(64), encoding="ascii")
    half.rename(place)
    return ""


def _move_away(course: Course, name: str, person: str, place: Path) -> None:
    folder = course.root / EARLIER / person
    folder.mkdir(parents=True, exist_ok=True)
    number = sum(1 for each in folder.glob(f"{name}-*")) + 1
    place.rename(folder / f"{name}-{number}")
