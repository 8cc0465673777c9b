"""What is typed into each box of the form, read, or refused with a sentence that says what to type."""

import re
from unicodedata import normalize

from solver import SolverError
from solver.sets.fault_part import MOST_FAULTS
from solver.units.reading import read
from workbook.ui.entry import whole_number

__all__ = ["cases_in", "folder_name", "name_in", "points_in", "share_in", "title_in"]

MOST_POINTS = 1000
LEAST_POINTS = 0.01
LONGEST_TITLE = 100
LONGEST_NAME = 60
NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]*")


def folder_name(title: str) -> str:
    """A name for a folder, made of a title.

    >>> folder_name("Week 3: power & head"), folder_name("Pâques 2026"), folder_name("№")
    ('week-3-power-head', 'paques-2026', 'no')
    """
    plain = normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:LONGEST_NAME].strip("-")


def title_in(text: str) -> str:
    """A title, its spaces single.

    Raises:
        SolverError: the sentence says what was typed, and what to type.
    """
    title = " ".join(text.split())
    if not title:
        raise SolverError("The title is empty. Type one, such as Week 3: power.")
    if len(title) > LONGEST_TITLE or not title.isprintable():
        raise SolverError(
            f"The title has {len(title)} letters. Type up to {LONGEST_TITLE} plain ones."
        )
    return title


def name_in(text: str, title: str) -> str:
    """A name for the folder, of the title where none is typed.

    Raises:
        SolverError: the sentence says what was typed, and what to type.
    """
    name = text.strip() or folder_name(title)
    if not name:
        raise SolverError("The title doesn't give a folder name. Type one, such as week-3.")
    if len(name) > LONGEST_NAME or not NAME.fullmatch(name):
        raise SolverError(
            f"“{name[:40]}” can't be a folder name. Use letters, digits and hyphens, such as week-3."
        )
    return name


def cases_in(text: str) -> int:
    """How many cases of find the fault; an empty box is none.

    Raises:
        SolverError: the sentence says what was typed, and what to type.
    """
    if text.strip() in ("", "0"):
        return 0
    return whole_number(text, "cases", MOST_FAULTS)


def points_in(of: str, text: str) -> float:
    """The points of each question, or of each case.

    Raises:
        SolverError: the sentence says what was typed, and what to type.
    """
    points = _number(f"Points of {of}", text, "")
    if not LEAST_POINTS <= points <= MOST_POINTS:
        raise SolverError(
            f"You typed “{text.strip()[:20]}” for the points of {of}. "
            f"Type a number from {LEAST_POINTS} to {MOST_POINTS:,}."
        )
    return points


def share_in(what: str, text: str) -> float:
    """A share, 0 to 1, typed as a percentage.

    Raises:
        SolverError: the sentence says what was typed, and what to type.
    """
    percent = _number(what, text, "%")
    if not 0 <= percent <= 100:
        raise SolverError(f"{what}: you typed “{text.strip()[:20]}”. Type a number from 0 to 100.")
    return round(percent / 100, 6)


def _number(what: str, text: str, unit: str) -> float:
    try:
        return read(text, unit).value
    except SolverError as fault:
        raise SolverError(f"{what}: {fault}") from None
