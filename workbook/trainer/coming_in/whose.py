"""Whose work something is that was sent: by the folder in it and by its name, or by the trainer's word.

Nobody's work is taken for somebody else's but where the trainer says so. The trainer's word is
`--as maria=op01`, for a name that was typed wrong, or `--as FILE=op01`, for one file.
"""

import re
from collections.abc import Iterator, Mapping
from datetime import datetime
from pathlib import Path, PurePosixPath
from typing import NamedTuple

from solver import SolverError
from solver.sets.work_set import person_id
from workbook.trainer.learner.answer_sheet import SHEET, read_sheet
from workbook.trainer.marking.odd import quoted

from .inside import by_person, left_out, packed_at, unused, without_folder, work_files
from .known import Class, possible
from .opened import SHEETS, CannotOpen, called, opened

__all__ = ["Work", "names", "works_in"]

BARE = (
    " ()._-@"  # besides letters and digits, what a name in quotation marks may have in any terminal
)


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
    inside, twice = by_person(files, name)
    if not inside:
        inside = {_claimed(item, name, files, known): without_folder(files)}
    if len(inside) > 1 and not alone:
        raise CannotOpen(
            f"{called(item)} has the work of {len(inside)} people in it: "
            f"{', '.join(map(quoted, sorted(inside)[:5]))}. Nothing of it was taken. If you put it "
            "together yourself, take it in by itself: --hand-in and the name of this file."
        )
    for claimed, sent in inside.items():
        work = _whose(item, name, claimed, sent, known, single=len(inside) == 1)
        left = left_out(item, [*others, *twice, *unused(sent, work.files)])
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
    by_name = known.said.get(possible(claimed), "")
    person = by_file or by_name or _id_of(item, claimed)
    stem_id = known.said.get(possible(stem)) or possible(stem)
    of_other = stem_id != person and (prefixed or known.has(stem_id))
    if single and of_other and not (by_file or by_name):
        raise CannotOpen(
            f"{called(item)} has the work of {person} in it. Nothing of it was taken. Ask who sent "
            f"it. If it is the work of {person}, {_to_say(item, person)}"
        )
    if not known.find(person):
        raise CannotOpen(_not_on_list(item, person, known))
    files = work_files(item, sent, name)
    typed, notes = _under(item, files, person, known, bool(by_file or by_name))
    named = stem_id == person
    sure = bool(by_file or by_name or typed)
    return Work(person, files, packed_at(sent), typed, sure, named, notes)


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
    typed = possible(min(under)) if len(under) == 1 else ""
    if not typed or known.has(typed):
        return "", ()  # grading says whose answers these are, and counts none of them
    if sure or known.said.get(typed) == person:
        return typed, (f"{called(item)} was typed as “{typed}” and is graded as {person}.",)
    said = (
        f"{called(item)}: its answers were typed as “{typed}”, so they don't count for {person}. "
        f"If that is the same person, type: --as {typed}={person}"
    )
    return "", (said,)


def _to_say(item: Path, person: str) -> str:
    """What a trainer does to say whose a file is. A name that a terminal could run is not repeated."""
    name = item.name
    if not all(mark.isalnum() or mark in BARE for mark in name):
        ending = item.suffix if item.suffix.lower() in SHEETS else ".zip"
        return f"rename the file to {person}{ending}"
    shown = name if set(name).isdisjoint(" ()") else f'"{name}"'
    return f"type: --as {shown}={person}"


def _claimed(item: Path, name: str, files: Mapping[PurePosixPath, bytes], known: Class) -> str:
    """Whom the name of a file names; of a plain answer sheet that names nobody, who wrote its lines."""
    stem, prefixed = _stem(item, name)
    if item.suffix.lower() not in SHEETS or (prefixed and possible(stem)) or known.has(stem):
        return stem
    under = {line.who for line in read_sheet(files.get(PurePosixPath(SHEET))).lines}
    return under.pop() if len(under) == 1 else stem


def _stem(item: Path, name: str) -> tuple[str, bool]:
    """Whom the name of a file names, and whether it begins as our own files do.

    A browser puts a number behind the name of a file that it saved before.
    """
    stem = item.name if item.is_dir() else item.stem
    claimed = stem.removeprefix(f"{name}-")
    if claimed == stem:
        return stem, False
    return re.sub(r" ?\(\d{1,3}\)$", "", claimed), True


def names(file: str, name: str) -> str:
    """Whom the name of a zip file for a set names; "" where nobody can have that id.

    >>> names("week-3-ana.r.zip", "week-3"), names("download (4).zip", "week-3")
    ('ana.r', '')
    """
    return possible(_stem(Path(file), name)[0])


def _id_of(item: Path, text: str) -> str:
    try:
        return person_id(text)
    except SolverError as fault:
        raise CannotOpen(
            f"{called(item)}: the file name doesn't say whose work this is. {fault} If you know, "
            f"{_to_say(item, 'ID')}"
        ) from None
