"""What one person handed in for a set, as it lies in the course: bytes, read and nothing more.

The plain answers of a notebook stand after "Answer:" in the cells that ask for one, for a person
whose cards do not run. A cell is known by its metadata, `wire_to_water` with `answer` and the
question's number; its text is data and nothing else.

>>> cell = {"cell_type": "markdown", "metadata": {"wire_to_water": {"answer": 3}}}
>>> page = {"cells": [{**cell, "source": "**Question 3.** Answer: 12.5 hp"}]}
>>> plain_answers(json.dumps(page).encode())
{3: '12.5 hp'}
"""

import json
import os
import re
import stat
from datetime import UTC, datetime
from pathlib import Path
from typing import NamedTuple

from workbook.trainer.learner.answer_sheet import SHEET

__all__ = [
    "ANSWER",
    "METADATA",
    "MOST_NOTEBOOK",
    "ON_PAPER",
    "SECRET",
    "TIMESTAMP",
    "Handed",
    "plain_answers",
    "read_handed",
    "read_when",
]

ON_PAPER = "on-paper.json"  # answers that a trainer typed from paper
MOST_PAPER = 200_000  # bytes
TIMESTAMP, SECRET = "timestamp.txt", "submission_secret.txt"  # nbgrader's own names
# Links are not followed, and pipes not waited for; Windows has neither, and ends of lines to keep.
AS_IT_IS = sum(getattr(os, name, 0) for name in ("O_NOFOLLOW", "O_NONBLOCK", "O_BINARY"))
MOST_FILE = 20_000_001  # bytes; what is longer is told from what is just long enough
MOST_TIME = 1_000  # bytes of a timestamp
METADATA, ANSWER = "wire_to_water", "Answer:"
MOST_NOTEBOOK = 20_000_000  # bytes; a notebook of text is a hundredth of it
LONGEST = 4_000  # characters of a cell
REMARK = re.compile(r"<!--.*?-->", re.DOTALL)
AROUND = " \t\r\n*_`>"  # marks that Markdown puts around words


class Handed(NamedTuple):
    """The answer sheet and the notebook of a person, None where missing.

    `when` is the time of handing in, in UTC and without an offset, as nbgrader keeps it. `note`
    says what could not be read. `typed` is the name the person worked under, where it was another; `paper` has answers that were typed from paper.
    """

    person: str
    sheet: bytes | None
    notebook: bytes | None
    when: datetime | None = None
    note: str = ""
    typed: str = ""
    paper: bytes | None = None


def read_handed(folder: Path, name: str, person: str) -> Handed:
    """What stands in the folder where a person's work for the set `name` lies; it never raises."""
    where = str(folder)
    text = _read(os.path.join(where, TIMESTAMP), MOST_TIME)
    when, note = None, ""
    if text and text.strip():
        try:
            when = read_when(text.decode())
        except ValueError:
            note = f"{TIMESTAMP} has no time in it, so this doesn't count as late."
    sheet = _read(os.path.join(where, SHEET))
    notebook = _read(os.path.join(where, f"{name}.ipynb"))
    paper = _read(os.path.join(where, ON_PAPER), MOST_PAPER)
    return Handed(person, sheet, notebook, when, note, paper=paper)


def _read(path: str, most: int = MOST_FILE) -> bytes | None:
    """The bytes of a plain file; a link or a pipe is none."""
    try:
        found = os.open(path, AS_IT_IS)
    except OSError:
        return None
    try:
        state = os.fstat(found)
        return _whole(found, min(state.st_size, most)) if stat.S_ISREG(state.st_mode) else None
    except OSError:
        return None
    finally:
        os.close(found)


def _whole(found: int, size: int) -> bytes:
    """That many bytes of an open file; a system may give them in pieces."""
    data = os.read(found, size)
    while len(data) < size and (more := os.read(found, size - len(data))):
        data += more
    return data


def read_when(text: str) -> datetime:
    """The time in a timestamp of nbgrader's, in UTC without an offset.

    >>> read_when("2026-12-01 18:04:31.250000 UTC")
    datetime.datetime(2026, 12, 1, 18, 4, 31, 250000)
    >>> read_when("2026-12-01T12:04:31-06:00")
    datetime.datetime(2026, 12, 1, 18, 4, 31)

    Raises:
        ValueError: it is no time.
    """
    text = text.strip()
    try:
        found = datetime.fromisoformat(text.removesuffix(" UTC"))
    except ValueError:
        return _as_nbgrader_reads(text)
    try:
        return found.astimezone(UTC).replace(tzinfo=None) if found.tzinfo else found
    except OverflowError as fault:  # in the first year or the last, by another zone
        raise ValueError(str(fault)) from fault


def _as_nbgrader_reads(text: str) -> datetime:
    """Any other form; slow, and seldom met."""
    from nbgrader.utils import parse_utc

    try:
        return parse_utc(text)
    except (ArithmeticError, LookupError, TypeError, AttributeError, RecursionError) as fault:
        raise ValueError(str(fault)) from fault


def plain_answers(notebook: bytes | None) -> dict[int, str]:
    """The answers by question, without those left empty; it never raises.

    Where two cells answer one question in different words, both are returned joined, which
    cannot be read as one answer.
    """
    found: dict[int, list[str]] = {}
    for cell in _cells(notebook):
        number = _number(cell)
        if number and (text := _answer(cell)) and text not in found.setdefault(number, []):
            found[number].append(text)
    return {number: " and ".join(texts) for number, texts in found.items()}


def _cells(notebook: bytes | None) -> list:
    try:
        page = json.loads(notebook) if notebook and len(notebook) <= MOST_NOTEBOOK else {}
    except (ValueError, RecursionError):
        return []
    cells = page.get("cells") if isinstance(page, dict) else None
    return cells if isinstance(cells, list) else []


def _number(cell: object) -> int:
    """The question a cell is for; 0 where it is for none."""
    for name in ("metadata", METADATA, "answer"):
        cell = cell.get(name) if isinstance(cell, dict) else None
    return cell if type(cell) is int and 1 <= cell <= 999 else 0


def _answer(cell: dict) -> str:
    """The first line with words after "Answer:"; other programs write a cell as lines."""
    source = cell.get("source")
    if isinstance(source, list):
        source = "".join(line for line in source if isinstance(line, str))
    if not isinstance(source, str) or cell.get("cell_type") != "markdown":
        return ""
    after = source[:LONGEST].partition(ANSWER)[2].strip()
    lines = (line.strip(AROUND) for line in REMARK.sub("", after).splitlines())
    return next(filter(None, lines), "") if after else ""
