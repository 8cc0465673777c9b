"""Readings of a drawn machine: worked out by formulas, and noted as a person would."""

from collections.abc import Callable, Mapping
from functools import cache

from solver.algebra.formula import Formula
from solver.engine.plan import Plan, find_plan
from solver.units.show import exact, with_unit
from solver.vocabulary import quantity_named

__all__ = [
    "AMPS",
    "Range",
    "Worked",
    "by",
    "noted",
    "only",
    "shown",
]

Range = tuple[float, float]
Worked = Callable[[Mapping[str, float], str, str], float]

AMPS = ("amps_a", "amps_b", "amps_c")


def by(formulas: tuple[Formula, ...]) -> Worked:
    """A function from some readings, what is asked and the system of units to its value.

    Readings and value are in the units of the system. A scene draws by it, and a judge judges by
    it: `worked(values, "velocity", units)`. The chains are kept, as the same few are asked for
    again at every draw.

    Raises:
        NotSolvable: the function does, where no chain leads to what is asked.
    """

    @cache
    def plan(given: tuple[str, ...], asked: str, units: str) -> Plan:
        return find_plan(given, asked, formulas, units)

    def worked(given: Mapping[str, float], asked: str, units: str) -> float:
        return plan(tuple(given), asked, units).run(given)[asked]

    return worked


def only(values: Mapping[str, float], *wanted: str) -> dict[str, float]:
    """Some of these values, in their own units.

    Raises:
        KeyError: one isn't there.
    """
    return {name: values[name] for name in wanted}


def shown(name: str, value: float, units: str, write: Callable[[float, str], str] = exact) -> str:
    """A value of the quantity `name` with its unit in the system, all of it unless told.

    >>> shown("flow", 450, "us"), shown("head", 20.5, "si")
    ('450 gpm', '20.5 m')
    """
    unit = quantity_named(name).unit(units)
    return with_unit(write(value, unit), unit)


def noted(value: float, digits: int = 3) -> float:
    """A reading as it is written down: three figures unless told.

    >>> noted(41.268), noted(1268.4)
    (41.3, 1270.0)
    """
    return float(f"{value:.{digits}g}")
