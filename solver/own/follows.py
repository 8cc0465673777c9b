"""All that follows from a reader's numbers, and why some of it cannot be worked."""

from collections.abc import Mapping
from math import isfinite
from typing import NamedTuple

from solver.algebra.solve import compiled
from solver.algebra.tree import names
from solver.engine.plan import Link, find_plan, reachable
from solver.errors import SolverError
from solver.topics.formulas import FORMULAS

__all__ = ["Followed", "all_that_follows", "fault_on_the_way"]


class Followed(NamedTuple):
    """What follows from a reader's numbers, by which links, and what cannot be worked and why."""

    known: dict[str, float]
    links: dict[str, Link]
    faults: dict[str, str]


def all_that_follows(values: Mapping[str, float], units: str) -> Followed:
    """Every quantity that can be worked; one whose arithmetic fails is left out."""
    known, links, faults = dict(values), {}, {}
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
    return Followed(known, links, faults)


def fault_on_the_way(
    given: tuple[str, ...], find: str, faults: Mapping[str, str], units: str
) -> str | None:
    """Why the arithmetic towards `find` fails, where there is a chain that leads to it."""
    if not faults or find not in reachable(given, FORMULAS, units):
        return None
    chain = find_plan(given, find, FORMULAS, units).links
    return next((faults[link.target] for link in chain if link.target in faults), None)
