"""What a value in a set's file may be: each check gives the value to use, or None for one it is not.

A list of names, and a table of shares, raise SetFault themselves, to say which part is at fault.
The mistakes that have a share of their own must be among those that the set's problems can name.
"""

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import UTC, date, datetime, time
from difflib import get_close_matches
from typing import Any

from solver import Family, SolverError, draw
from solver.engine.common_slips import common_slips
from solver.engine.plan import find_plan
from solver.sets.mixtures import mixture_of
from solver.sets.work_set import WorkSet
from solver.topics.catalogue import kinds_at

__all__ = [
    "SET_FILE",
    "SetFault",
    "chapter_shares",
    "check_mistakes",
    "due",
    "got",
    "meant",
    "names",
    "number",
    "one_of",
    "share",
    "shares",
    "table",
    "text",
    "whole",
]

SET_FILE = "set.toml"
SHOWN = 40  # characters of what was got that a sentence repeats
DEEPEST = 5  # points in a key
END_OF_DAY = time(23, 59, 59)
DRAWS = 100  # of a judgement; twenty have had every choice but in two kinds, forty in all
INSTEAD = "Copy one from the class's report."


class SetFault(SolverError, ValueError):
    """A set's file that cannot be used; it names the key, what was got and what to write."""


def got(value: Any) -> str:
    """A short, printable piece of what stands there.

    >>> got("one\\ntwo"), got(0.5), got({})
    ('“one?two”', '0.5', 'a table')
    """
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, list):
        return f"[{', '.join(map(got, value[:2]))}{', …' if len(value) > 2 else ''}]"[:SHOWN]
    shown = str(value)[: SHOWN + 1]
    piece = shown if len(shown) <= SHOWN else f"{shown[:-2]}…"
    piece = "".join(mark if mark.isprintable() else "?" for mark in piece)
    return f"“{piece}”" if isinstance(value, str) else piece


def meant(name: str, known: Sequence[str]) -> str:
    """A question that names the nearest name there is; empty where none is near."""
    near = get_close_matches(name[:SHOWN], known, 1)
    return f"Did you mean “{near[0]}”?" if near else ""


def whole(low: int, high: int) -> Callable:
    """A whole number."""
    return lambda value, key: value if type(value) is int and low <= value <= high else None


def number(low: float, high: float) -> Callable:
    """A number; with or without a point."""

    def check(value: Any, key: str) -> float | None:
        fits = type(value) in (int, float) and math.isfinite(value) and low <= value <= high
        return float(value) if fits else None

    return check


share = number(0, 1)


def chapter_shares(value: Any, key: str) -> dict[str, int] | None:
    """The share of each chapter, from a line such as "head 30, wet well 20", with a name in front or without.

    Raises:
        SetFault: a piece of the line that is no chapter with its share.
    """
    if not isinstance(value, str):
        return None
    try:
        return mixture_of(value)
    except SolverError as fault:
        raise SetFault(f"{SET_FILE}: {key}: {fault}") from None


def shares(value: Any, key: str) -> dict[str, float] | None:
    """Shares by name, 0 to 1. A name with points in it, unless it is quoted, comes as tables in tables.

    Raises:
        SetFault: one of them is no share.
    """
    if not isinstance(value, dict) or key.count(".") > DEEPEST:
        return None
    found: dict[str, float] = {}
    for name, each in value.items():
        if isinstance(each, dict):
            inner = shares(each, f"{key}.{name}")
            if inner is None:
                return None
            found |= {f"{name}.{rest}": one for rest, one in inner.items()}
        elif (one := share(each, name)) is None:
            what = f"{SET_FILE}: {key}.{name} is {got(each)}"
            raise SetFault(f"{what}. Type a share from 0 to 1, such as 0.25.")
        else:
            found[name] = one
    return found


def one_of(*words: str) -> Callable:
    """One of these words."""
    return lambda value, key: value if isinstance(value, str) and value in words else None


def text(value: Any, key: str) -> str | None:
    """A line of words."""
    fits = isinstance(value, str) and value.isprintable() and 1 <= len(value.strip()) <= 100
    return value.strip() if fits else None


def table(value: Any, key: str) -> dict | None:
    """A table, whose keys are checked by what reads it."""
    return value if isinstance(value, dict) else None


def names(known: Sequence[str], where: str) -> Callable:
    """A list of names, each one of those known; `where` says where to find them.

    Raises:
        SetFault: what the check raises for a name that is none.
    """

    def check(value: Any, key: str) -> tuple[str, ...] | None:
        if not isinstance(value, list) or not all(isinstance(name, str) for name in value):
            return None
        for name in value:
            if name not in known:
                instead = meant(name, known) or where
                raise SetFault(f"{SET_FILE}: {key} has {got(name)}, which isn't one. {instead}")
        return tuple(dict.fromkeys(value))

    return check


def due(value: Any, key: str) -> datetime | None:
    """A time, in UTC. Without an offset it is local; a day alone lasts until its end."""
    try:
        if isinstance(value, str):
            value = _time_in(value.strip())
        if type(value) is date:
            value = datetime.combine(value, END_OF_DAY)
        moment = value.astimezone(UTC) if isinstance(value, datetime) else None
        return moment if moment and 2000 <= moment.year < 9000 else None
    except (ValueError, OverflowError, OSError):
        return None


def _time_in(said: str) -> date | datetime:
    try:
        return date.fromisoformat(said)
    except ValueError:
        return datetime.fromisoformat(said)


def check_mistakes(work: WorkSet, wanted: Iterable[str]) -> None:
    """Whether each of these mistakes is one that some problem of the set's kinds can name.

    Nobody can tell once one of the kinds has changed since the set was made.

    Raises:
        SetFault: it names the one that is none, and the nearest there is.
    """
    missing = set(wanted)
    known: set[str] = set()
    kinds = [kind for kind in kinds_at(work.catalogue) if kind.name in work.families]
    families = [kind.family for kind in kinds if kind.family]
    if len(families) < len(kinds):
        return
    for ids in _ids(families, work.units) if missing else ():
        known |= ids
        missing -= ids
        if not missing:
            return
    for name in sorted(missing):
        instead = meant(name, sorted(known)) or INSTEAD
        raise SetFault(
            f"{SET_FILE}: no problem of this set has the mistake {got(name)} of "
            f"credit.by_mistake. {instead}"
        )


def _ids(families: Iterable[Family], units: str) -> Iterator[set[str]]:
    """The mistakes of chains of formulas come first; those of judgements have to be drawn."""
    judged = []
    for family in families:
        if family.judge is None:
            for level in family.levels:
                plan = find_plan(level.given, family.asks(level), family.formulas, units)
                yield set(common_slips(plan))
        else:
            judged.append(family)
    for family in judged:
        yield from _drawn(family, units)


def _drawn(family: Family, units: str) -> Iterator[set[str]]:
    for level in range(1, len(family.levels) + 1):
        for seed in range(DRAWS):
            yield {mistake.id for mistake in draw(family, seed, units, level).mistakes}
