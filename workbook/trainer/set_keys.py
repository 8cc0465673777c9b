"""The keys of a set's file: what each may be, what it is where left out, and what to write.

A key's check returns the value to use, or None where the value cannot be used; a list of names
says which of them is none.
"""

import math
from collections.abc import Callable, Mapping
from datetime import UTC, date, datetime, time
from difflib import get_close_matches
from typing import Any, NamedTuple

from solver import FAMILIES, SolverError
from solver.paper import CHAPTERS

__all__ = ["CREDIT", "EACH", "PLAN", "SAME", "SET_FILE", "SetFault", "read_table"]

SET_FILE = "set.toml"
EACH, SAME = "own for each person", "the same for all"
MOST_QUESTIONS = 60
MOST_DRAW = 999_999_999
SHOWN = 40  # characters of what was got that a sentence repeats
NAMES = tuple(family.name for family in FAMILIES)


class SetFault(SolverError, ValueError):
    """A set's file that cannot be used; it names the key, what was got and what to write."""


class Key(NamedTuple):
    """What may stand at a key, what is taken where it is left out, and what to write."""

    check: Callable[[Any, str], Any]
    instead: str
    default: Any = None
    needed: bool = False


def _whole(low: int, high: int) -> Callable:
    return lambda value, key: value if type(value) is int and low <= value <= high else None


def _number(low: float, high: float) -> Callable:
    def check(value: Any, key: str) -> float | None:
        fits = type(value) in (int, float) and math.isfinite(value) and low <= value <= high
        return float(value) if fits else None

    return check


def _one_of(*words: str) -> Callable:
    return lambda value, key: value if isinstance(value, str) and value in words else None


def _text(value: Any, key: str) -> str | None:
    fits = isinstance(value, str) and value.isprintable() and 1 <= len(value.strip()) <= 100
    return value.strip() if fits else None


def _table(value: Any, key: str) -> dict | None:
    return value if isinstance(value, dict) else None


def _names(known: tuple[str, ...], where: str) -> Callable:
    def check(value: Any, key: str) -> tuple[str, ...] | None:
        if not isinstance(value, list) or not all(isinstance(name, str) for name in value):
            return None
        for name in value:
            if name not in known:
                meant = _meant(name, known) or where
                raise SetFault(f"{SET_FILE}: {key} has {_got(name)}, which is none. {meant}")
        return tuple(dict.fromkeys(value))

    return check


def _shares(value: Any, key: str) -> dict[str, float] | None:
    if not isinstance(value, dict):
        return None
    share = Key(SHARE, "a share from 0 to 1, such as 0.25")
    return {name: _checked(each, share, f"{key}.{name}") for name, each in value.items()}


def _due(value: Any, key: str) -> datetime | None:
    """In UTC. A time without an offset is local; a day alone lasts until its end."""
    try:
        if isinstance(value, str):
            value = datetime.fromisoformat(value)
        if type(value) is date:
            value = datetime.combine(value, time(23, 59, 59))
        fits = isinstance(value, datetime) and 2000 <= value.year < 9000
        return value.astimezone(UTC) if fits else None
    except (ValueError, OverflowError, OSError):
        return None


SHARE = _number(0, 1)
UP_TO_ONE = "a share from 0 to 1, such as"
PLAN: Mapping[str, Key] = {
    "title": Key(_text, 'up to 100 characters, such as title = "Week 3: power"', ""),
    "units": Key(_one_of("us", "si"), 'units = "us" or units = "si"', "us"),
    "level": Key(_whole(0, 9), "level = 0 for any level, or a whole number such as level = 2", 0),
    "count": Key(
        _whole(1, MOST_QUESTIONS), f"a whole number from 1 to {MOST_QUESTIONS}, such as 10", 10
    ),
    "chapters": Key(
        _names(CHAPTERS, f"There are: {', '.join(CHAPTERS)}."),
        'names in brackets, such as chapters = ["horsepower", "head"]',
        (),
    ),
    "families": Key(
        _names(NAMES, "To list them, type: python -m solver families"),
        'names in brackets, such as families = ["brake_power"]',
        (),
    ),
    "numbers": Key(_one_of(EACH, SAME), f'numbers = "{EACH}" or numbers = "{SAME}"', EACH),
    "draw": Key(
        _whole(0, MOST_DRAW),
        f"a whole number up to {MOST_DRAW:,}, such as draw = 48213",
        None,
        True,
    ),
    "points": Key(_number(0.01, 1000), "a number from 0.01 to 1000, such as points = 5", 1.0),
    "tries": Key(_whole(0, 99), "tries = 0 for no limit, or a whole number up to 99", 0),
    "counts": Key(_one_of("best", "last", "first"), 'counts = "best", "last" or "first"', "best"),
    "due": Key(_due, "a day and time, such as due = 2026-12-01T18:00:00-06:00"),
    "late": Key(SHARE, f"{UP_TO_ONE} late = 0.1", 0.0),
    "credit": Key(_table, "[credit] on a line of its own, and its keys below it", {}),
    "plant": Key(_table, "[plant] on a line of its own, and its keys below it"),
}
CREDIT: Mapping[str, Key] = {
    "right": Key(SHARE, f"{UP_TO_ONE} right = 1", 1.0),
    "close": Key(SHARE, f"{UP_TO_ONE} close = 0.8", 0.8),
    "mistake": Key(SHARE, f"{UP_TO_ONE} mistake = 0.5", 0.5),
    "by_mistake": Key(_shares, "[credit.by_mistake] on a line of its own", {}),
    "each_try": Key(SHARE, f"{UP_TO_ONE} each_try = 0.1", 0.0),
}


def read_table(found: Mapping[str, Any], keys: Mapping[str, Key], of: str = "") -> dict[str, Any]:
    """Every key with its value, checked, or with what is taken where it is left out.

    Raises:
        SetFault: a key that is none, a value that cannot be used, or a key that is missing.
    """
    for name in found:
        if name not in keys:
            meant = _meant(name, tuple(keys)) or f"There are: {', '.join(keys)}."
            where = f" in [{of}]" if of else ""
            raise SetFault(f"{SET_FILE}: there is no key {_got(name)}{where}. {meant}")
    for name, key in keys.items():
        if key.needed and name not in found:
            raise SetFault(f"{SET_FILE}: {name} is missing. Write {key.instead}.")
    before = f"{of}." if of else ""
    return {
        name: _checked(found[name], key, before + name) if name in found else key.default
        for name, key in keys.items()
    }


def _checked(value: Any, key: Key, name: str) -> Any:
    if (fitting := key.check(value, name)) is None:
        raise SetFault(f"{SET_FILE}: {name} is {_got(value)}. Write {key.instead}.")
    return fitting


def _meant(name: str, known: tuple[str, ...]) -> str:
    near = get_close_matches(name[:SHOWN], known, 1)
    return f"Did you mean “{near[0]}”?" if near else ""


def _got(value: Any) -> str:
    """A short, printable piece of what stands there."""
    if isinstance(value, dict):
        return "a table"
    text = f"“{value}”" if isinstance(value, str) else str(value)
    piece = text if len(text) <= SHOWN else text[: SHOWN - 1] + "…"
    return "".join(mark if mark.isprintable() else "?" for mark in piece)
