"""Whose work something is that was sent: by the folder in it and by its name, or by the trainer's word.

Nobody's work is taken for somebody else's but where the trainer says so. The trainer's word is
`--as maria=op01`, for a name that was typed wrong, or `--as FILE=op01`, for one file.
"""

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime
from difflib import get_close_matches
from pathlib import Path, PurePosixPath
from typing import NamedTuple

from solver import SolverError
from solver.sets.work_set import person_id
from workbook.trainer.course import Person
from workbook.trainer.learner.answer_sheet import SHEET, read_sheet
from workbook.trainer.learner.who import PERSON
from workbook.trainer.marking.odd import quoted
from workbook.trainer.sets.set_file import SET_FILE

from .handed_in import TIMESTAMP, read_when
from .opened import CannotOpen, called, opened

__all__ = ["Class", "Work", "names", "works_in"]

SAID = 3  # names of files that a sentence repeats


class Class(NamedTuple):
    """The people of a list, and what the trainer said of names and files, by name."""

    people: Sequence[Person] = ()
    said: Mapping[str, str] = {}

    def find(self, person: str) -> bool:
        """Whether this id is on the list; anybody's is where there is no list."""
        return not self.people or any(one.id == person for one in self.people)

    def has(self, person: str) -> bool:
        """Whether this id is on a list that there is."""
        return any(one.id == person for one in self.people)

    def near(self, typed: str) -> Person | None:
        """Who on the list may be meant: by a name of theirs, or by an id that is much alike."""
        by_name = [
            one
            for one in self.people
            if typed in (one.first_name.casefold(), one.last_name.casefold(), one.email.casefold())
        ]
        if len(by_name) == 1:
            return by_name[0]
        near = get_close_matches(typed, [one.id for one in self.people], 1, 0.75)
        return next((one for one in self.people if near and one.id == near[0]), None)


class Work(NamedTuple):
    """One person's work as it came: its two or four files by name, the time they were packed.

    `typed` is the name the person worked under, where it was another. `sure` tells that the trainer
    said whose it is; `named` that the name of the file says so. `notes` are sentences.
    """

    person: str
    files: dict[str, bytes]
    packed: datetime | None
    typed: str = ""
    sure: bool = False
    named: bool = False
    notes: tuple[str, ...] = ()


def works_in(item: Path, name: str, known: Class, *, alone: bool) -> Iterator[Work]:
    """The work in a zip file or a folder. `alone`: the trainer named this very file.

    Raises:
        CannotOpen: it cannot be opened, or it is not certain whose work it is; the sentence says
            what to type.
    """
    files, others = opened(item)
    inside = _by_person(files, name)
    if not inside:
        inside = {_stem(item, name)[0]: _without_folder(files)}
    if len(inside) > 1 and not alone:
        raise CannotOpen(
            f"{called(item)} has the work of {len(inside)} people in it: "
            f"{', '.join(map(quoted, sorted(inside)[:5]))}. Nothing of it was taken. If you put it "
            "together yourself, take it in by itself: --hand-in and the name of this file."
        )
    for claimed, sent in inside.items():
        work = _whose(item, name, claimed, sent, known, single=len(inside) == 1)
        left = _left_out(item, [*others, *_unused(sent, work.files)])
        yield work._replace(notes=(*left, *work.notes))


def _whose(
    item: Path,
    name: str,
    claimed: str,
    sent: dict[PurePosixPath, bytes],
    known: Class,
    single: bool,
) -> Work:
    stem, prefixed = _stem(item, name)
    by_file = known.said.get(item.name, "") if single else ""
    by_name = known.said.get(_possible(claimed), "")
    person = by_file or by_name or _id_of(item, claimed)
    stem_id = known.said.get(_possible(stem)) or _possible(stem)
    of_other = stem_id != person and (prefixed or known.has(stem_id))
    if single and of_other and not (by_file or by_name):
        raise CannotOpen(
            f"{called(item)} has the work of {person} in it. Nothing of it was taken. Ask who sent "
            f"it. If it is the work of {person}, type: --as {_typed(item.name)}={person}"
        )
    if not known.find(person):
        raise CannotOpen(_not_on_list(item, person, known))
    files = _files(item, sent, name)
    typed, notes = _under(item, files, person, known, bool(by_file or by_name))
    named = stem_id == person
    sure = bool(by_file or by_name or typed)
    return Work(person, files, _packed(sent), typed, sure, named, notes)


def _not_on_list(item: Path, person: str, known: Class) -> str:
    near = known.near(person)
    said = f"{called(item)}: “{person}” isn't on the list of this class."
    if near:
        who = f"{near.id} ({near.name})" if near.name else near.id
        return f"{said} If that is {who}, type: --as {person}={near.id}"
    return f"{said} Add them to people.csv, or say who it is: --as {person}=ID"


def _under(
    item: Path, files: dict[str, bytes], person: str, known: Class, sure: bool
) -> tuple[str, tuple[str, ...]]:
    """The name in the lines of the sheet where it is another, and what to say of it."""
    under = {line.who for line in read_sheet(files.get(SHEET)).lines}
    if not under or person in under:
        return "", ()
    typed = _possible(min(under)) if len(under) == 1 else ""
    if not typed or known.has(typed):
        return "", ()  # grading says whose answers these are, and counts none of them
    if sure or known.said.get(typed) == person:
        return typed, (f"{called(item)} was typed as “{typed}” and is graded as {person}.",)
    said = (
        f"{called(item)}: its answers were typed as “{typed}”, so they don't count for {person}. "
        f"If that is the same person, type: --as {typed}={person}"
    )
    return "", (said,)


def _typed(name: str) -> str:
    return f'"{name}"' if " " in name else name


def _stem(item: Path, name: str) -> tuple[str, bool]:
    """Whom the name of a file names, and whether it begins as our own files do."""
    stem = item.name if item.is_dir() else item.stem
    claimed = stem.removeprefix(f"{name}-")
    return claimed, claimed != stem


def names(file: str, name: str) -> str:
    """Whom the name of a zip file for a set names; "" where nobody can have that id.

    >>> names("week-3-ana.r.zip", "week-3"), names("download (4).zip", "week-3")
    ('ana.r', '')
    """
    return _possible(PurePosixPath(file).stem.removeprefix(f"{name}-"))


def _id_of(item: Path, text: str) -> str:
    try:
        return person_id(text)
    except SolverError as fault:
        raise CannotOpen(
            f"{called(item)}: the file name doesn't say whose work this is. {fault} If you know, "
            f"type: --as {_typed(item.name)}=ID"
        ) from None


def _possible(text: str) -> str:
    """The id a text is, or "" where nobody can have it."""
    try:
        return person_id(text)
    except SolverError:
        return ""


def _by_person(files: dict[PurePosixPath, bytes], name: str) -> dict[str, dict]:
    """The files that stand under PERSON/SET, wherever that is."""
    found: dict[str, dict] = {}
    for path, data in files.items():
        at = next((i for i, part in enumerate(path.parts[:-1]) if i and part == name), 0)
        if at and (person := _possible(path.parts[at - 1])):
            found.setdefault(person, {})[PurePosixPath(*path.parts[at + 1 :])] = data
    return found


def _without_folder(files: dict[PurePosixPath, bytes]) -> dict[PurePosixPath, bytes]:
    """The files without a folder that all of them are in."""
    while files and all(len(path.parts) > 1 for path in files):
        if len({path.parts[0] for path in files}) > 1:
            break
        files = {PurePosixPath(*path.parts[1:]): data for path, data in files.items()}
    return files


def _files(item: Path, sent: dict[PurePosixPath, bytes], name: str) -> dict[str, bytes]:
    """The page, the sheet and what tells of them, each under its own name.

    A copy saved under another name is taken where it is the only one of its kind.
    """
    page, found = f"{name}.ipynb", {}
    for wanted in (page, SHEET):
        if data := sent.get(PurePosixPath(wanted)):
            found[wanted] = data
            continue
        alike = [path for path in sent if path.suffix.lower() == PurePosixPath(wanted).suffix]
        if len(alike) > 1:
            shown = ", ".join(quoted(str(path)) for path in alike[:SAID])
            raise CannotOpen(
                f"{called(item)} has {len(alike)} files that may be “{wanted}”: {shown}. "
                "Ask which one counts, or delete the others."
            )
        if alike:
            found[wanted] = sent[alike[0]]
    if not found:
        raise CannotOpen(f"{called(item)} has no answer sheet and no notebook of “{name}”.")
    for more in (SET_FILE, PERSON):
        if data := sent.get(PurePosixPath(more)):
            found[more] = data
    return found


def _unused(sent: dict[PurePosixPath, bytes], files: dict[str, bytes]) -> list[str]:
    kept = list(files.values())
    return [str(path) for path, data in sent.items() if path.name != TIMESTAMP and data not in kept]


def _left_out(item: Path, names: Sequence[str]) -> tuple[str, ...]:
    if not names:
        return ()
    shown = ", ".join(quoted(name) for name in names[:SAID])
    more = f" and {len(names) - SAID} more" if len(names) > SAID else ""
    return (f"{called(item)}: not part of the work, so not taken: {shown}{more}.",)


def _packed(files: dict[PurePosixPath, bytes]) -> datetime | None:
    """The time that was put in when the files were packed, where it can be one."""
    try:
        return read_when(files[PurePosixPath(TIMESTAMP)].decode())
    except (KeyError, ValueError, OverflowError):
        return None
