"""What one box of the form holds: read, or refused with a sentence that says what to type."""

import re
from unicodedata import normalize

from solver import SolverError
from solver.units.reading import read

__all__ = ["folder_name", "name_in", "points_in", "share_in", "title_in"]

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
    """A title, its spaces single; raises SolverError."""
    title = " ".join(text.split())
    if not title:
        raise SolverError("The title is empty. Type one, such as Week 3: power.")
    if len(title) > LONGEST_TITLE or not title.isprintable():
        raise SolverError(
            f"The title has {len(title)} letters. Type up to {LONGEST_TITLE} plain ones."
        )
    return title


def name_in(text: str, title: str) -> str:
    """A name for the folder, of the title where none is typed; raises SolverError."""
    name = text.strip() or folder_name(title)
    if not name:
        raise SolverError("The title doesn't give a folder name. Type one, such as week-3.")
    if len(name) > LONGEST_NAME or not NAME.fullmatch(name):
        raise SolverError(
            f"“{name[:40]}” can't be a folder name. Use letters, digits and hyphens, such as week-3."
        )
    return name


def points_in(text: str) -> float:
    """The points of each question; raises SolverError."""
    points = _number("Points of each question", text, "")
    if not LEAST_POINTS <= points <= MOST_POINTS:
        raise SolverError(
            f"You typed “{text.strip()[:20]}” for the points of each question. "
            f"Type a number from {LEAST_POINTS} to {MOST_POINTS:,}."
        )
    return points


def share_in(what: str, text: str) -> float:
    """A share, 0 to 1, typed as a percentage; raises SolverError."""
    percent = _number(what, text, "%")
    if not 0 <= percent <= 100:
        raise SolverError(f"{what}: you typed “{text.strip()[:20]}”. Type a number from 0 to 100.")
    return round(percent / 100, 6)


def _number(what: str, text: str, unit: str) -> float:
    try:
        return read(text, unit).value
    except SolverError as fault:
        raise SolverError(f"{what}: {fault}") from None
