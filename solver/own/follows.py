"""All that follows from a reader's numbers; why some of it cannot be worked, or what would have to be added."""

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from functools import cache
from heapq import heappop, heappush
from itertools import chain, count, islice
from math import isfinite
from typing import NamedTuple

from solver.algebra.formula import Formula
from solver.algebra.tree import compiled, names
from solver.engine.plan import Link, find_plan, reachable
from solver.errors import NotSolvable, SolverError
from solver.topics.formulas import FORMULAS
from solver.vocabulary import Quantity, quantity_named

__all__ = ["all_that_follows", "fault_on_the_way", "missing_says", "what_would_unlock"]

MOST_HINTS = 4
MOST_WAYS = 80  # enough to go several formulas back

Way = tuple[str, ...]


class Reached(NamedTuple):
    """What follows from a reader's numbers, by which links, and what cannot be worked and why."""

    known: dict[str, float]
    links: dict[str, Link]
    faults: dict[str, str]


def all_that_follows(values: Mapping[str, float], units: str) -> Reached:
    """Every quantity that can be worked from these `values`; one whose arithmetic fails is a fault.

    All are in the own units of the system `units`, "us" or "si".
    """
    known = dict(values)
    links: dict[str, Link] = {}
    faults: dict[str, str] = {}
    for name, link in reachable(values, FORMULAS, units).items():
        if link is None or not all(n in known for n in names(link.expr)):
            continue
        try:
            value = compiled(link.expr, units)(known)
        except SolverError as refusal:
            faults[name] = str(refusal)
        except (ArithmeticError, ValueError):
            faults[name] = "its formula would divide by zero, or take the root of less than zero"
        else:
            if isfinite(value):
                known[name], links[name] = value, link
            else:
                faults[name] = "the readings are far too large"
    return Reached(known, links, faults)


def fault_on_the_way(
    given: tuple[str, ...], find: str, faults: Mapping[str, str], units: str
) -> str | None:
    """Why the arithmetic towards `find` fails, where there is a chain that leads to it."""
    if not faults or find not in reachable(given, FORMULAS, units):
        return None
    links = find_plan(given, find, FORMULAS, units).links
    return next((faults[link.target] for link in links if link.target in faults), None)


def what_would_unlock(values: Mapping[str, float], find: str, units: str) -> tuple[Way, ...]:
    """Sets of quantities, any of which would make `find` workable from these `values`.

    Values are in the own units of the system `units`. The smallest sets come first, and of those
    the ones that make most of what is given.
    """
    given = tuple(values)
    ranked = []
    for way in _ways_back(find, reachable(given, FORMULAS, units), units):
        used = _used(given, way, find, units)
        if used.issuperset(way):
            ranked.append((len(way), -len(used), way))
    ranked.sort(key=lambda each: each[:2])
    fitting = (way for *_, way in ranked if _gives_a_number(way, values, find, units))
    return tuple(islice(_none_in_another(fitting), MOST_HINTS))


def _ways_back(find: str, found: Collection[str], units: str) -> list[Way]:
    """Sets of names that lead to `find`, the smallest first, and of those the nearest."""
    seen, serial = {frozenset((find,))}, count()
    ways: list[Way] = []
    queue: list[tuple[int, int, Way]] = [(1, next(serial), (find,))]
    while queue and len(ways) <= MOST_WAYS:
        *_, way = heappop(queue)
        ways.append(way)
        for wider in chain.from_iterable(_one_back(way, name, found, units) for name in way):
            if find not in wider and frozenset(wider) not in seen:
                seen.add(frozenset(wider))
                heappush(queue, (len(wider), next(serial), wider))
    return ways[1:]


def _one_back(way: Way, name: str, found: Collection[str], units: str) -> Iterator[Way]:
    """The way with `name` replaced by what each formula that gives it lacks."""
    others = tuple(n for n in way if n != name)
    for formula in _giving(units).get(name, ()):
        lacking = (n for n in formula.names if n not in found and n not in way)
        if wider := (*others, *lacking):
            yield wider


@cache
def _giving(units: str) -> Mapping[str, Sequence[Formula]]:
    """The formulas that can give each quantity."""
    giving = defaultdict(list)
    for formula in FORMULAS:
        for name in formula.solvable if units in formula.systems else ():
            giving[name].append(formula)
    return giving


def _used(given: Way, way: Way, find: str, units: str) -> set[str]:
    """Which of the names given and added the chain to `find` uses; none where there is no chain."""
    try:
        plan = find_plan((*given, *way), find, FORMULAS, units)
    except NotSolvable:
        return set()
    return {name for link in plan.links for name in names(link.expr)} & {*given, *way}


def _gives_a_number(way: Way, values: Mapping[str, float], find: str, units: str) -> bool:
    """Whether typical values of these quantities, added to those given, give `find`."""
    typical = {name: quantity_named(name).typical(units) for name in way}
    return find in all_that_follows({**values, **typical}, units).known


def _none_in_another(ways: Iterable[Way]) -> Iterator[Way]:
    """The ways that hold no earlier one whole."""
    kept: list[Way] = []
    for way in ways:
        if not any(set(way) >= set(earlier) for earlier in kept):
            kept.append(way)
            yield way


def missing_says(asked: Quantity, missing: tuple[Way, ...], units: str) -> str:
    """What to add, in words; or that no formula leads to the quantity."""
    if not missing:
        return (
            f"The {asked.label(units)} isn't in any formula that fits here. You have to measure it."
        )
    ways = " or ".join(
        " and ".join(f"the {quantity_named(name).label(units)} ({name})" for name in way)
        for way in missing
    )
    return f"The {asked.label(units)} can't be calculated yet. Add {ways}."
