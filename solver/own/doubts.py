"""What cannot be true of readings, and what is unusual: limits broken, two ways that disagree."""

from collections.abc import Iterator, Mapping
from math import isclose

from solver.algebra.expression import Expr
from solver.algebra.formula import Formula
from solver.algebra.tree import compiled, names
from solver.engine.plan import Link
from solver.errors import SolverError
from solver.station.instruments import error_of
from solver.topics.formulas import FORMULAS
from solver.units.show import figures, with_unit
from solver.vocabulary import Quantity, quantity_named, spoken

__all__ = ["beyond_nature", "contradictions", "disagreement", "shown", "unusual"]

AGREE = 0.03  # readings a few percent apart are only rounded
HAIR = 1e-6
SLOPE = 1e-4  # by which a reading is moved to see how much it counts


IN_AND_OUT = (
    "No machine puts out more than it takes in: {motor_power:name} ≥ {brake_power:name} ≥ "
    "{water_power:name} (common practice, no source)."
)


def shown(value: float, quantity: Quantity, units: str) -> str:
    """A value of a quantity, in its unit of the system `units`, as a sentence has it."""
    unit = quantity.unit(units)
    return with_unit(figures(value, unit), unit)


def beyond_nature(value: float, quantity: Quantity, units: str) -> str:
    """That a value breaks a hard limit of its quantity; "" where it keeps them."""
    if _possible(value, quantity):
        return ""
    above = value > quantity.most
    side, limit = ("above", quantity.most) if above else ("below", quantity.least)
    return (
        f"The {quantity.label(units)} {quantity.comes(units)} to {shown(value, quantity, units)}. "
        f"It can't be {side} {shown(limit, quantity, units)}."
    )


def _possible(value: float, quantity: Quantity) -> bool:
    """Whether a value keeps its limits; the last digits of a float do not count."""
    return quantity.least - HAIR <= value <= quantity.most + HAIR


def _broken_limits(
    known: Mapping[str, float], links: Mapping[str, Link], units: str
) -> Iterator[str]:
    """A sentence for each limit that is broken first: what only follows from one is left out."""
    broken = {name for name, value in known.items() if not _possible(value, quantity_named(name))}
    for name, value in known.items():
        follows = name in links and broken.intersection(names(links[name].expr))
        if name not in broken or follows:
            continue
        quantity = quantity_named(name)
        says = beyond_nature(value, quantity, units)
        more = value > quantity.most and quantity.is_efficiency
        yield f"{says} {spoken(IN_AND_OUT, units)}" if more else says


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
            one = known[formula.result]
            allowed = _error(formula.result, known, links, units)
            allowed += _moved(formula.expr, worked, known, links, units)
            if abs(one - worked) > allowed:
                yield from disagreement(quantity_named(formula.result), one, worked, units)


def _error(name: str, known: Mapping[str, float], links: Mapping[str, Link], units: str) -> float:
    """How far a reading may be off by its instrument, or what is worked by those behind it."""
    if link := links.get(name):
        behind = {other: value for other, value in links.items() if other != name}
        return _moved(link.expr, known[name], known, behind, units)
    return error_of(name, known[name], units)


def _moved(
    expr: Expr, value: float, known: Mapping[str, float], links: Mapping[str, Link], units: str
) -> float:
    """How far the value of an expression is off when all it is made of are off as far as they may be."""
    work, total = compiled(expr, units), 0.0
    for name in names(expr):
        step = SLOPE * abs(known[name]) or SLOPE
        try:
            slope = (work({**known, name: known[name] + step}) - value) / step
        except (ArithmeticError, ValueError, SolverError):
            continue
        total += abs(slope) * _error(name, known, links, units)
    return total


def _applies(
    formula: Formula, values: Mapping[str, float], known: Mapping[str, float], units: str
) -> bool:
    return (
        formula.quantities <= known.keys()
        and units in formula.systems
        and not formula.set_aside({*values, formula.result})
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
    """A sentence for each value outside its usual range that is still possible.

    Values are in the own units of the system `units`; the ranges are common practice, without a
    source.
    """
    for name, value in known.items():
        quantity = quantity_named(name)
        low, high = quantity.usual(units)
        if not low <= value <= high and _possible(value, quantity):
            yield (
                f"{shown(value, quantity, units)} is unusual for the {quantity.label(units)}. Most are "
                f"{shown(low, quantity, units)} to {shown(high, quantity, units)} "
                "(common practice, no source)."
            )
