"""Working a reading out from others while a machine is drawn, by the formulas of its chapter."""

from collections.abc import Callable, Mapping
from functools import cache

from solver.algebra.formula import Formula
from solver.engine.plan import Plan, find_plan

__all__ = ["Worked", "by"]

Worked = Callable[[Mapping[str, float], str, str], float]


def by(formulas: tuple[Formula, ...]) -> Worked:
    """A function from some readings, what is asked and the system of units to its value.

    The chains are kept, for a scene asks for the same few again at every draw.
    """

    @cache
    def plan(given: tuple[str, ...], asked: str, units: str) -> Plan:
        return find_plan(given, asked, formulas, units)

    def worked(given: Mapping[str, float], asked: str, units: str) -> float:
        return plan(tuple(given), asked, units).run(given)[asked]

    return worked
