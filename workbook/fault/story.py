"""One person's case, kept: a file for each, a line for each thing done in it.

    {"v": 1, "event": "begin", "code": "FF-2U1-7-KMZ", "when": "2026-11-25T18:04:31.250000Z", "check": "…"}
    {"v": 1, "event": "did", "word": "gauges", "when": "…", "check": "…"}

A word is one of `solver.fault.way`. What it came to is never kept: it follows from the code and the words, so
nobody's file can say more than was done. A line that is torn or that means nothing here is left out.
"""

import contextlib
import uuid
from pathlib import Path
from typing import Protocol

from solver import BadCode, SolverError
from solver.fault.case import FAMILY
from solver.fault.way import Way, way_of
from workbook.log import (
    SHOWN,
    Attempt,
    NotALine,
    add_lines,
    checked_line,
    default_path,
    fields_of,
    made,
    now,
)

__all__ = [
    "Story",
    "Worked",
    "attempt_of_way",
    "begin",
    "folder",
    "story_of",
    "unfinished",
    "way_in",
]

VERSION = 1
BEGIN, DID = "begin", "did"


def folder() -> Path:
    """Where cases are kept: beside the log."""
    return default_path().parent / "faults"


class Worked(Protocol):
    """A case being worked, wherever it is kept: all that was done, and one thing more."""

    @property
    def way(self) -> Way: ...

    def do(self, *words: str) -> None: ...


class Story:
    """A case as its file has it; `way` is all that was done.

    Raises:
        BadCode: the file holds no case that this version knows.
        OSError: it can't be read.
    """

    def __init__(self, path: Path):
        self.path = path
        way: Way | None = None
        for fields in _events(path.read_bytes()):
            if way is None and fields.get("event") == BEGIN:
                way = way_of(str(fields.get("code")))
            elif way and fields.get("event") == DID:
                with contextlib.suppress(SolverError):
                    way = way.then(str(fields.get("word")))
        if way is None:
            raise BadCode(f"The file {path.name} isn't a case.")
        self.way = way

    def do(self, *words: str) -> None:
        """Do one thing more, or several at once: on the disk first, then here.

        Raises:
            NotKept: nothing was done.
            BadDefinition: it can't be done here; the sentence says what can.
        """
        way, when = self.way.then(*words), now()
        did = [{"event": DID, "word": word, "when": when} for word in words]
        add_lines(self.path, [checked_line(VERSION, each) for each in did])
        self.way = way


def _events(data: bytes) -> list[dict[str, object]]:
    found = []
    for line in data.split(b"\n"):
        with contextlib.suppress(NotALine):
            if line.strip():
                found.append(fields_of(line, VERSION))
    return found


def begin(code: str, where: Path) -> Story:
    """A new story of the case of a code.

    Raises:
        BadCode: no such case.
        NotKept: it can't be kept there, so it doesn't begin.
    """
    written = str(way_of(code).case.code)
    path = where / f"{written}-{uuid.uuid4().hex[:12]}.jsonl"
    add_lines(path, [checked_line(VERSION, {"event": BEGIN, "code": written, "when": now()})])
    return Story(path)


def unfinished(where: Path) -> Story | None:
    """The case worked on last, where it isn't over."""
    paths = sorted(where.glob("FF-*.jsonl"), key=lambda path: path.stat().st_mtime, reverse=True)
    for path in paths[:1]:
        with contextlib.suppress(OSError, SolverError):
            story = Story(path)
            return None if story.way.ended else story
    return None


def story_of(code: str, where: Path) -> Story | None:
    """The story of the case of a code that was worked on last there, ended or not; None where there is none."""
    paths = sorted(where.glob(f"{code}-*.jsonl"), key=lambda path: path.stat().st_mtime)
    for path in reversed(paths):
        with contextlib.suppress(OSError, SolverError):
            return Story(path)
    return None


def attempt_of_way(way: Way, of: str = "", who: str = "") -> Attempt:
    """A way as it stands as a line of the log: all its words are what was typed; ended unnamed it is shown."""
    unnamed = way.ended and not way.named
    return made(
        code=str(way.case.code),
        family=FAMILY.name,
        level=way.case.level,
        typed=" ".join(way.words),
        status=SHOWN if unnamed else "right" if way.named else "wrong",
        tries=len(way.names),
        solution=unnamed,
        of=of,
        who=who,
    )


def way_in(attempt: Attempt) -> Way:
    """The way in a line of the log, gone through again; nothing else in the line is believed.

    Raises:
        SolverError: this version has no such case, or a word means nothing in it.
    """
    return way_of(attempt.code, attempt.typed.split())
