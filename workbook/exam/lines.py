"""The files of sittings: one for each, a line for each thing that happens in it.

    {"v": 2, "event": "begin", "at": 0.0, "code": "EXAM-33-2U-20-60-C-2-48213-TJK", "check": "…"}
    {"v": 2, "event": "answer", "at": 95.2, "question": 1, "typed": "2", "seconds": 41.0,
     "when": "2026-11-25T18:04:31.250000Z", "check": "…"}
    {"v": 2, "event": "flag", "at": 97.0, "question": 1, "on": true, "check": "…"}

In a case of find the fault "did" is what was done, as words (`solver.fault.way`), after so many before:

    {"v": 2, "event": "did", "at": 99.0, "question": 21, "after": 0, "words": "gauges",
     "when": "…", "check": "…"}

`check` is that of the log's lines. `at` is the time used when it happened, in seconds. "tick" only
keeps that, and "end" is the last; its "marks" are what each question was graded.
"""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from workbook.log import NotALine, checked_line, default_path, fields_of

__all__ = ["ANSWER", "BEGIN", "DID", "END", "FLAG", "TICK", "events", "folder", "line", "sittings"]

VERSION = 2
BEGIN, ANSWER, FLAG, TICK, END = "begin", "answer", "flag", "tick", "end"
DID = "did"


def folder() -> Path:
    """Where sittings are kept: beside the log."""
    return default_path().parent / "exams"


def sittings(where: Path) -> list[Path]:
    """The files of all sittings, the newest first."""
    return sorted(where.glob("EXAM-*.jsonl"), key=lambda path: path.stat().st_mtime, reverse=True)


def line(kind: str, at: float, **fields: object) -> str:
    """An event as a line, without its end."""
    return checked_line(VERSION, {"event": kind, "at": at, **fields})


def events(data: bytes, first: int = 1) -> Iterator[tuple[int, dict[str, Any] | None]]:
    """What each line tells, by its number, where the first has this one.

    It is None where a line is torn or something in it changed. A torn one was never acknowledged.
    """
    for number, each in enumerate(data.split(b"\n"), first):
        if each.strip():
            try:
                yield number, fields_of(each, VERSION)
            except NotALine:
                yield number, None
