"""What cannot be true of readings, and what is unusual: limits broken, two ways that disagree."""

from collections.abc import Iterator, Mapping
from math import isclose

from solver.algebra.formula import Formula
from solver.algebra.solve import compiled
from solver.algebra.tree import names
from solver.engine.plan import Link
from solver.errors import SolverError
from solver.topics.formulas import FORMULAS
from solver.units.show import figures, with_unit
from solver.vocabulary import Quantity, quantity_named, spoken

__all__ = ["contradictions", "disagreement", "shown", "unusual"]

AGREE = 0.03  # readings a few percent apart are only rounded; more is a contradiction
HAIR = 1e-6


def shown(value: float, quantity: Quantity, units: str) -> str:
    """A value of a quantity as a sentence has it, with its unit."""
    unit = quantity.unit(units)
    return with_unit(figures(value, unit), unit)


IN_AND_OUT = (
    "No machine puts out more than it takes in: {motor_power:name} ≥ {brake_power:name} ≥ "
    "{water_power:name} (common practice, no source)."
)


def _possible(value: float, quantity: Quantity) -> bool:
    """Whether a value keeps its limits; the last digits of a float do not count."""
    return quantity.least - HAIR <= value <= quantity.most + HAIR


def _broken_limits(
    known: Mapping[str, float], links: Mapping[str, Link], units: str
) -> Iterator[str]:
    """A sentence for each limit that is broken first: what only follows from one is left out."""
    broken = {name for name in known if not _possible(known[name], quantity_named(name))}
    for name, value in known.items():
        follows = name in links and broken.intersection(names(links[name].expr))
        if name not in broken or follows:
            continue
        quantity = quantity_named(name)
        says = f"The {quantity.label(units)} {quantity.comes(units)} to {shown(value, quantity, units)}."
        if value > quantity.most and quantity.is_efficiency:
            yield f"{says} It can't be above 100%. {spoken(IN_AND_OUT, units)}"
        elif value > quantity.most:
            yield f"{says} It can't be above {shown(quantity.most, quantity, units)}."
        else:
            yield f"{says} It can't be below {shown(quantity.least, quantity, units)}."


def _disagreements(
    values: Mapping[str, float], known: Mapping[str, float], links: Mapping[str, Link], units: str
) -> Iterator[str]:
    """Formulas that no step used, and that the known values do not satisfy."""
    used = {id(link.formula) for link in links.values()}
    for formula in FORMULAS:
        if id(formula) not in used and _applies(formula, values, known, units):
            try:
                worked = compiled(formula.expr, units)(known)
            except (ArithmeticError, ValueError, SolverError):
                continue
            yield from disagreement(
                quantity_named(formula.result), known[formula.result], worked, units
            )


def _applies(formula: Formula, values: Mapping, known: Mapping, units: str) -> bool:
    return (
        units in formula.systems
        and not formula.set_aside({*values, formula.result})
        and all(name in known for name in formula.names)
    )


def disagreement(quantity: Quantity, one: float | None, other: float, units: str) -> Iterator[str]:
    """The sentence for two ways to one quantity, where they differ by more than rounding."""
    if one is not None and not isclose(one, other, rel_tol=AGREE):
        yield (
            f"Two ways to get the {quantity.label(units)} disagree: {shown(one, quantity, units)} and "
            f"{shown(other, quantity, units)}. Check the readings behind each."
        )


def contradictions(
    values: Mapping[str, float], known: Mapping[str, float], links: Mapping[str, Link], units: str
) -> list[str]:
    """What cannot be true of the readings `values` and of all that is `known` from them by `links`.

    A sentence for each limit of nature that is broken, and for each two ways to one quantity that
    disagree; each sentence once.
    """
    broken = list(_broken_limits(values, {}, units)) or _broken_limits(known, links, units)
    return list(dict.fromkeys((*broken, *_disagreements(values, known, links, units))))


def unusual(known: Mapping[str, float], units: str) -> Iterator[str]:
    """A sentence for each value outside its usual range that is still possible."""
    for name, value in known.items():
        quantity = quantity_named(name)
        low, high = quantity.usual(units)
        if not low <= value <= high and _possible(value, quantity):
            yield (
                f"{shown(value, quantity, units)} is unusual for the {quantity.label(units)}. Most are "
                f"{shown(low, quantity, units)} to {shown(high, quantity, units)} "
                "(common practice, no source)."
            )
