"""Which of the files that were sent are a person's work, each under its own name."""

from collections.abc import Sequence
from datetime import datetime
from pathlib import Path, PurePosixPath

from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.learner.who import PERSON
from workbook.trainer.marking.odd import quoted
from workbook.trainer.sets.set_file import SET_FILE

from .handed_in import TIMESTAMP, read_when
from .known import possible
from .opened import CannotOpen, called

__all__ = ["by_person", "left_out", "packed_at", "unused", "without_folder", "work_files"]

SAID = 3  # names of files that a sentence repeats


def by_person(
    files: dict[PurePosixPath, bytes], name: str
) -> tuple[dict[str, dict[PurePosixPath, bytes]], list[str]]:
    """The files that stand under PERSON/SET, wherever that is; and those that are there once more."""
    found: dict[str, dict[PurePosixPath, bytes]] = {}
    twice = []
    for path, data in files.items():
        at = next((i for i, part in enumerate(path.parts[:-1]) if i and part == name), 0)
        if at and (person := possible(path.parts[at - 1])):
            theirs, within = found.setdefault(person, {}), PurePosixPath(*path.parts[at + 1 :])
            if within in theirs:
                twice.append(str(path))
            else:
                theirs[within] = data
    return found, twice


def without_folder(files: dict[PurePosixPath, bytes]) -> dict[PurePosixPath, bytes]:
    """The files without a folder that all of them are in."""
    while files and all(len(path.parts) > 1 for path in files):
        if len({path.parts[0] for path in files}) > 1:
            break
        files = {PurePosixPath(*path.parts[1:]): data for path, data in files.items()}
    return files


def work_files(item: Path, sent: dict[PurePosixPath, bytes], name: str) -> dict[str, bytes]:
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


def unused(sent: dict[PurePosixPath, bytes], files: dict[str, bytes]) -> list[str]:
    """The names of files that were sent and are not part of the work."""
    kept = list(files.values())
    return [str(path) for path, data in sent.items() if path.name != TIMESTAMP and data not in kept]


def left_out(item: Path, names: Sequence[str]) -> tuple[str, ...]:
    """A sentence about files that were not taken, where there are any."""
    if not names:
        return ()
    shown = ", ".join(quoted(name) for name in names[:SAID])
    more = f" and {len(names) - SAID} more" if len(names) > SAID else ""
    return (f"{called(item)}: not part of the work, so not taken: {shown}{more}.",)


def packed_at(files: dict[PurePosixPath, bytes]) -> datetime | None:
    """The time that was put in when the files were packed, where it can be one."""
    try:
        return read_when(files[PurePosixPath(TIMESTAMP)].decode())
    except (KeyError, ValueError, OverflowError):
        return None
