"""What a trainer filled in, as typed, and the set that it makes, or everything that keeps it from one.

There are no widgets here; form.py fills a draft, and fills the form from one.
"""

import re
from collections.abc import Callable, Mapping
from datetime import UTC, datetime
from types import MappingProxyType
from typing import NamedTuple
from unicodedata import normalize

from solver import SolverError
from solver.credit import Credit
from solver.own_plant import Plant
from solver.reading import read
from solver.show import exact
from solver.work_set import MOST, set_of

from ...exam.start import whole_number
from ..assigned import Assigned
from ..set_text import chosen_names

__all__ = ["Draft", "assigned_from", "draft_of", "folder_name"]

MOST_POINTS = 1000
LEAST_POINTS = 0.01
MOST_TRIES = 99
LONGEST_TITLE = 100
LONGEST_NAME = 60
LATE_FOR_WHAT = "Something is taken off for being late, but no due time is set. Set one."
NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]*")


class Draft(NamedTuple):
    """A form as it stands. Numbers are as typed; shares are percentages, and empty tries no limit.

    `name` may be empty, which takes it from the title. `right` and `by_mistake` have no box; they
    stay as the file of the set had them.
    """

    title: str = ""
    name: str = ""
    chapters: tuple[str, ...] = ()
    families: tuple[str, ...] = ()
    level: int = 0
    units: str = "us"
    count: str = "10"
    each: bool = True
    points: str = "1"
    tries: str = ""
    counts: str = "best"
    due: datetime | None = None
    late: str = ""
    close: str = "80"
    mistake: str = "50"
    each_try: str = "0"
    seed: int = 0
    plant: Plant | None = None
    right: float = 1.0
    by_mistake: Mapping[str, float] = MappingProxyType({})


def folder_name(title: str) -> str:
    """A name for a folder, made of a title.

    >>> folder_name("Week 3: power & head"), folder_name("Pâques 2026"), folder_name("№")
    ('week-3-power-head', 'paques-2026', 'no')
    """
    plain = normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:LONGEST_NAME].strip("-")


def assigned_from(draft: Draft) -> tuple[Assigned | None, list[str]]:
    """The set that a draft makes, or None with a sentence for each thing that is in the way."""
    tried = _Tried()
    title = tried(_title, draft.title)
    name = tried(_name, draft) if title else None
    work = tried(_work, draft)
    points = tried(_points, draft.points)
    tries = tried(whole_number, draft.tries, "tries", MOST_TRIES) if draft.tries.strip() else 0
    late, credit = (
        tried(_share, "Taken off for being late", draft.late or "0"),
        _credit(draft, tried),
    )
    due = draft.due and draft.due.astimezone(UTC)
    if late and not due:
        tried.faults.append(LATE_FOR_WHAT)
    if tried.faults:
        return None, tried.faults
    return Assigned(name, title, work, points, tries, draft.counts, due, late, credit), []


class _Tried:
    """Reads one thing after another, and keeps the sentence of each that cannot be read."""

    def __init__(self):
        self.faults: list[str] = []

    def __call__(self, reading: Callable, *words):
        try:
            return reading(*words)
        except SolverError as fault:
            self.faults.append(str(fault))
            return None


def _credit(draft: Draft, tried: _Tried) -> Credit:
    return Credit(
        right=draft.right,
        close=tried(_share, "A close answer earns", draft.close),
        mistake=tried(_share, "A known slip earns", draft.mistake),
        by_mistake=dict(draft.by_mistake),
        each_try=tried(_share, "Taken off for each earlier try", draft.each_try),
    )


def _title(text: str) -> str:
    title = " ".join(text.split())
    if not title:
        raise SolverError("The title is empty. Type one, such as Week 3: power.")
    if len(title) > LONGEST_TITLE or not title.isprintable():
        raise SolverError(
            f"The title has {len(title)} letters. Type up to {LONGEST_TITLE} plain ones."
        )
    return title


def _name(draft: Draft) -> str:
    name = draft.name.strip() or folder_name(draft.title)
    if not name:
        raise SolverError("The title makes no name for a folder. Type one, such as week-3.")
    if len(name) > LONGEST_NAME or not NAME.fullmatch(name):
        raise SolverError(
            f"“{name[:40]}” cannot name a folder. Use letters, digits and hyphens, such as week-3."
        )
    return name


def _work(draft: Draft):
    if not (draft.chapters or draft.families):
        raise SolverError("Nothing is chosen to ask. Tick a chapter or a kind of problem.")
    return set_of(
        chapters=draft.chapters,
        families=draft.families,
        level=draft.level,
        units=draft.units,
        count=whole_number(draft.count, "questions", MOST),
        each=draft.each,
        seed=draft.seed,
        plant=draft.plant,
    )


def _points(text: str) -> float:
    points = _number("Points of each question", text, "")
    if not LEAST_POINTS <= points <= MOST_POINTS:
        raise SolverError(
            f"You typed “{text.strip()[:20]}” for the points of each question. "
            f"Type a number from {LEAST_POINTS} to {MOST_POINTS:,}."
        )
    return points


def _share(what: str, text: str) -> float:
    percent = _number(what, text, "%")
    if not 0 <= percent <= 100:
        raise SolverError(f"{what}: you typed “{text.strip()[:20]}”. Type a number from 0 to 100.")
    return round(percent / 100, 6)


def _number(what: str, text: str, unit: str) -> float:
    try:
        return read(text, unit).value
    except SolverError as fault:
        raise SolverError(f"{what}: {fault}") from None


def draft_of(assigned: Assigned) -> Draft:
    """The form that makes this set again."""
    work, credit = assigned.work, assigned.credit
    names = chosen_names(work.families)
    return Draft(
        assigned.title,
        assigned.name,
        tuple(names.get("chapters", ())),
        tuple(names.get("families", ())),
        work.level,
        work.units,
        str(work.count),
        work.each,
        exact(assigned.points).replace(",", ""),
        str(assigned.tries or ""),
        assigned.counts,
        assigned.due,
        _percent(assigned.late),
        _percent(credit.close),
        _percent(credit.mistake),
        _percent(credit.each_try),
        work.seed,
        work.plant,
        credit.right,
        credit.by_mistake,
    )


def _percent(share: float) -> str:
    return f"{round(100 * share, 4):g}"
