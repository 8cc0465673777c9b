"""A reader's own readings: which boxes to offer, what was typed, and what comes of it.

There are no widgets here; own_numbers.py shows what this says.
"""

from collections.abc import Collection, Iterable, Mapping
from itertools import combinations
from typing import NamedTuple

from solver import Unreadable
from solver.algebra.formula import Formula
from solver.engine.plan import reachable
from solver.own.work import Work, read_quantity, work
from solver.topics.formulas import FORMULAS
from solver.units.show import capital
from solver.vocabulary import QUANTITIES, Quantity, quantity_named
from workbook.ui.pieces import asked_for

__all__ = ["Result", "label_with_unit", "nearest", "ways_to", "work_readings"]

AT_FIRST = 10  # boxes shown before any is asked for, where the nearest are not more

MOST_WAYS = 4  # to the answer, told where readings are missing


class Result(NamedTuple):
    """What came of the readings: a state for controls.say, sentences, what was read, the work."""

    state: str
    sentences: tuple[str, ...]
    read: tuple[tuple[str, str], ...] = ()
    found: Work | None = None


def label_with_unit(quantity: Quantity, units: str) -> str:
    """What a box asks for, such as "Flow, in gpm"."""
    return capital(asked_for(quantity, units))


def nearest(find: str, among: Collection[str], formulas: Iterable[Formula] = FORMULAS) -> list[str]:
    """The quantities the fewest formulas away from `find`, in the order of `among`.

    Those of one distance come together, for half the legs of a motor are no help.
    """
    near, kept = {find}, []
    while True:
        near |= {n for f in formulas if near & set(f.names) for n in f.names}
        wider = [name for name in among if name in near and name != find]
        if len(wider) == len(kept) or (kept and len(wider) > AT_FIRST):
            return kept
        kept = wider


def work_readings(texts: Mapping[str, str], find: str, units: str) -> Result:
    """Work `find` from what was typed, by the names of quantities; empty boxes are left out."""
    values, shown, refused = {}, [], []
    for name, text in texts.items():
        quantity = quantity_named(name)
        if not text.strip():
            continue
        try:
            got = read_quantity(text, quantity, units)
        except Unreadable as refusal:
            refused.append(f"{capital(quantity.label(units))}: {refusal}")
            continue
        values[name] = got.value
        shown.append((quantity.label(units), got.echo))
    if refused:
        return Result("unreadable", tuple(refused), tuple(shown))
    if not values:
        return Result("missing", ("Type at least one reading, then work it out.",))
    empty = [name for name, text in texts.items() if not text.strip() and name != find]
    return _worked(_by_boxes(work(values, find, units), empty), tuple(shown))


def _by_boxes(found: Work, empty: list[str]) -> Work:
    """The same; but what is missing is told by the empty boxes, where one or two would do."""
    for size in (1, 2) if found.missing else ():
        ways = [
            way
            for way in combinations(empty, size)
            if found.find in reachable((*found.given, *way), FORMULAS, found.units)
        ]
        if ways:
            return found._replace(missing=tuple(ways[:MOST_WAYS]))
    return found


def _worked(found: Work, shown: tuple) -> Result:
    says = found.says if found.answer is not None else missing_said(found)
    # Several formulas may find the same two readings at odds.
    sentences = tuple(dict.fromkeys((says, *found.contradictions, *found.notices)))
    if found.contradictions:
        return Result("contradiction", sentences, shown, found)
    if found.answer is None:
        return Result("missing", sentences, shown, found)
    return Result("notice" if found.notices else "worked", sentences, shown, found)


def missing_said(found: Work) -> str:
    """That the answer cannot be worked yet, and how it could be, or why it never can."""
    ways = ways_to(found)
    if not ways:
        return found.says
    asked = quantity_named(found.find).label(found.units)
    add = f"Add the {ways[0]}." if len(ways) == 1 else "Add what one of these lines asks for:"
    return f"The {asked} can't be calculated yet. {add}"


def ways_to(found: Work) -> list[str]:
    """The readings that would unlock the answer, one way a line, in the reader's words."""
    sets = dict.fromkeys(frozenset(names) for names in found.missing)
    ordered = [[n for n in QUANTITIES if n in names] for names in sets]
    return [
        " and the ".join(quantity_named(n).label(found.units) for n in names) for names in ordered
    ]
