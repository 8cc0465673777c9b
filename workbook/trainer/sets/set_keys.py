"""The keys of a set's file: what each may be, what it is where left out, and what to write."""

from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

from solver.engine.code import MOST_SEED
from solver.fault.case import LEVELS
from solver.sets.credit import Credit
from solver.sets.fault_part import MOST_FAULTS
from solver.sets.work_set import MOST, TOP
from solver.topics.catalogue import BITS, CATALOGUE, CHAPTERS, GONE
from solver.topics.problems import FAMILIES

from .set_checks import (
    SET_FILE,
    SetFault,
    chapter_shares,
    due,
    got,
    meant,
    names,
    number,
    one_of,
    share,
    shares,
    table,
    text,
    whole,
)

__all__ = [
    "COUNTS",
    "COUNTS_NOT",
    "CREDIT",
    "EACH",
    "FAIR",
    "FAIR_CREDIT",
    "FAULTS",
    "MOST_MINUTES",
    "PLAN",
    "SAME",
    "read_table",
]

COUNTS, COUNTS_NOT = "counts", "doesn't count"  # what is answered after the time
MOST_MINUTES = 600
EACH, SAME = "own for each person", "the same for all"
NAMES = (*(family.name for family in FAMILIES), *(gone.name for gone in GONE))
SHARE = "a share from 0 to 1, such as"
USUAL = Credit()
# What a new set has where its file says nothing: three tries with a cost, and one where a choice could
# be found by trying each.
FAIR = {"tries": 3, "choice_tries": 1}
FAIR_CREDIT = {"each_try": 0.25, "wrong_choice": 0.0}


class Key(NamedTuple):
    """What may stand at a key, what is taken where it is left out, and what to write."""

    check: Callable[[Any, str], Any]
    instead: str
    default: Any = None
    needed: bool = False


PLAN: Mapping[str, Key] = {
    "title": Key(text, 'up to 100 characters, such as title = "Week 3: power"', ""),
    "units": Key(one_of("us", "si"), 'units = "us" or units = "si"', "us"),
    "level": Key(whole(0, TOP), f"level = 0 for any level, or one from 1 to {TOP}", 0),
    "count": Key(whole(1, MOST), f"a whole number from 1 to {MOST}, such as count = 10", 10),
    "chapters": Key(
        names(BITS, f"There are: {', '.join(CHAPTERS)}."),
        'names in brackets, such as chapters = ["horsepower", "head"]',
        (),
    ),
    "shares": Key(chapter_shares, 'a line such as shares = "head 30, wet well 20"', {}),
    "families": Key(
        names(NAMES, "To list them, type: python -m solver families"),
        'names in brackets, such as families = ["brake_power"]',
        (),
    ),
    "numbers": Key(one_of(EACH, SAME), f'numbers = "{EACH}" or numbers = "{SAME}"', EACH),
    "draw": Key(
        whole(0, MOST_SEED),
        f"a whole number up to {MOST_SEED:,}, such as draw = 48213",
        needed=True,
    ),
    "catalogue": Key(
        whole(1, CATALOGUE),
        f"the number that was there, up to {CATALOGUE}; a higher one is of a newer version of the "
        "workbook, so update this one",
    ),
    "points": Key(number(0.01, 1000), "a number from 0.01 to 1000, such as points = 5", 1.0),
    "tries": Key(whole(0, 99), "tries = 0 for no limit, or a whole number up to 99", 0),
    "choice_tries": Key(
        whole(0, 99),
        "choice_tries = 1 for questions with choices, or 0 for as many as the others",
        0,
    ),
    "counts": Key(one_of("best", "last", "first"), 'counts = "best", "last" or "first"', "best"),
    "due": Key(due, "a day and time, such as due = 2026-12-01T18:00:00-06:00"),
    "group": Key(text, 'the group of people.csv that it is for, such as group = "night"', ""),
    "minutes": Key(
        whole(0, MOST_MINUTES), "minutes = 0 for no time limit, or a whole number up to 600", 0
    ),
    "after_time": Key(
        one_of(COUNTS, COUNTS_NOT),
        f'after_time = "{COUNTS}" or after_time = "{COUNTS_NOT}"',
        COUNTS_NOT,
    ),
    "late": Key(share, f"{SHARE} late = 0.1", 0.0),
    "credit": Key(table, "[credit] on a line of its own, and its keys below it", {}),
    "faults": Key(table, "[faults] on a line of its own, and its keys below it", {}),
    "plant": Key(table, "[plant] on a line of its own, and its keys below it"),
}
CREDIT: Mapping[str, Key] = {
    "right": Key(share, f"{SHARE} right = 1", USUAL.right),
    "close": Key(share, f"{SHARE} close = 0.8", USUAL.close),
    "mistake": Key(share, f"{SHARE} mistake = 0.5", USUAL.mistake),
    "each_try": Key(share, f"{SHARE} each_try = 0.1", USUAL.each_try),
    "wrong_choice": Key(share, f"{SHARE} wrong_choice = 0", None),
    "by_mistake": Key(
        shares, "[credit.by_mistake] on a line of its own, and shares below it", USUAL.by_mistake
    ),
}
FAULTS: Mapping[str, Key] = {
    "count": Key(
        whole(0, MOST_FAULTS), f"a whole number up to {MOST_FAULTS}, such as count = 2", 0
    ),
    "level": Key(whole(1, len(LEVELS)), f"level = 1, or another up to {len(LEVELS)}", 1),
    "points": Key(number(0.01, 1000), "a number from 0.01 to 1000, such as points = 10", 10.0),
    "unsafe": Key(share, f"{SHARE} unsafe = 0.2", 0.2),
}
HOMES = {
    "": PLAN,
    "credit": CREDIT,
    "faults": FAULTS,
}  # what each table may have; "" is before the first heading


def read_table(found: Mapping[str, Any], of: str = "") -> dict[str, Any]:
    """Every key of a table with its value, checked, or with what is taken where it is left out.

    Raises:
        SetFault: a key that is none, a value that cannot be used, or a key that is missing.
    """
    keys = HOMES[of]
    for name in found:
        if name not in keys:
            raise SetFault(f"{SET_FILE}: there is no key {got(name)}{_in(of)}. {_where(name, of)}")
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
        raise SetFault(f"{SET_FILE}: {name} is {got(value)}. Write {key.instead}.")
    return fitting


def _in(of: str) -> str:
    return f" in [{of}]" if of else ""


def _where(name: str, of: str) -> str:
    """What to do about a key that is none here: another table may have it."""
    if of == "" and name in {**FAULTS, **CREDIT}:
        return f"Write it below [{'credit' if name in CREDIT else 'faults'}]."
    if of and name in PLAN:
        return f"Write it above [{of}]."
    return meant(name, tuple(HOMES[of])) or f"There are: {', '.join(HOMES[of])}."
