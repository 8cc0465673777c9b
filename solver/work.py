"""A reader's own numbers: any known quantities in, any other quantity out, with the full work.

Where the answer cannot be worked, what is missing is named. Where the readings contradict each
other, or break a limit, that is said too.
"""

from collections.abc import Iterator, Mapping
from difflib import get_close_matches
from itertools import islice
from math import isclose, isfinite
from typing import NamedTuple

from .algebra import compiled
from .case import Step, worked_steps
from .errors import SolverError, Unreadable
from .expression import names
from .formula import Formula
from .formulas import FORMULAS
from .plan import Link, find_plan, reachable
from .reading import Reading, read
from .show import figures, with_unit
from .vocabulary import QUANTITIES, Quantity, quantity_named

__all__ = ["Work", "contradictions", "read_quantity", "unusual", "work"]

AGREE = 0.03  # readings a few percent apart are only rounded; more is a contradiction
HAIR = 1e-6
MOST_HINTS = 4


class Work(NamedTuple):
    """What came of a reader's numbers.

    `answer` is None where it could not be worked; then `missing` holds sets of names, each of
    which would unlock it. `known` is everything that follows. `says` is the outcome in words.
    """

    find: str
    unit: str
    units: str
    given: dict[str, float]
    known: dict[str, float]
    answer: float | None
    steps: tuple[Step, ...]
    missing: tuple[tuple[str, ...], ...]
    contradictions: tuple[str, ...]
    notices: tuple[str, ...]
    says: str


def work(given: Mapping[str, str | float], find: str, units: str = "us") -> Work:
    """Work `find` from the quantities in `given`, as text with units or as plain numbers.

    Plain numbers are in the system's own units; the answer is too. Raises Unreadable for a value
    that cannot be read, SolverError for a name that is not known.

    >>> found = work({"flow": "450 gpm", "head": "62 ft"}, "water_power")
    >>> round(found.answer, 2), found.unit
    (7.05, 'hp')
    """
    if units not in ("us", "si"):
        raise SolverError(f"Units are “us” or “si”; you gave “{units}”.")
    asked = _named(find)
    values = {name: _value(_named(name), value, units) for name, value in given.items()}
    claimed = values.pop(find, None)
    known, links, faults = _all_that_follows(values, units)
    problems = contradictions(values, known, links, units)
    if find in known:
        plan = find_plan(tuple(values), find, FORMULAS, units)
        steps = worked_steps(plan, known)
        problems += _disagreement(asked, claimed, known[find], units)
        says = f"The {asked.label} {asked.be} {_shown(known[find], asked, units)}."
        answer, missing = known[find], ()
    elif fault := _fault_on_the_way(tuple(values), find, faults, units):
        answer, steps, missing = None, (), ()
        says = f"The {asked.label} cannot be worked: {fault}."
    else:
        answer, steps = None, ()
        missing = _what_would_unlock(values, find, units)
        says = _missing_says(asked, missing)
    shown = {name: known[name] for name in (*values, *(step.name for step in steps))}
    notices = tuple(unusual(shown, units))
    return Work(
        find, asked.unit(units), units, values, known, answer, steps, missing,
        tuple(problems), notices, says,
    )  # fmt: skip


def _named(name: str) -> Quantity:
    if name in QUANTITIES:
        return QUANTITIES[name]
    near = get_close_matches(name.lower().replace(" ", "_"), QUANTITIES, n=3)
    hint = f"Did you mean {' or '.join(near)}?" if near else "See the list of quantities."
    raise SolverError(f"No quantity is called “{name[:40]}”. {hint}")


def _value(quantity: Quantity, value: str | float, units: str) -> float:
    if not isinstance(value, str):
        return float(value)
    try:
        return read_quantity(value, quantity, units).value
    except Unreadable as refusal:
        raise Unreadable(f"{quantity.label}: {refusal}") from None


def read_quantity(text: str, quantity: Quantity, units: str) -> Reading:
    """The value of one quantity as a reader typed it, in the system's own unit, or Unreadable."""
    return read(text, quantity.unit(units), bare_fraction=quantity.is_efficiency)


class _Followed(NamedTuple):
    """What follows from a reader's numbers, by which links, and what cannot be worked and why."""

    known: dict[str, float]
    links: dict[str, Link]
    faults: dict[str, str]


def _all_that_follows(values: Mapping[str, float], units: str) -> _Followed:
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
    return _Followed(known, links, faults)


def _fault_on_the_way(
    given: tuple[str, ...], find: str, faults: Mapping[str, str], units: str
) -> str | None:
    """Why the arithmetic towards `find` fails, where there is a chain that leads to it."""
    if not faults or find not in reachable(given, FORMULAS, units):
        return None
    chain = find_plan(given, find, FORMULAS, units).links
    return next((faults[link.target] for link in chain if link.target in faults), None)


def _shown(value: float, quantity: Quantity, units: str) -> str:
    unit = quantity.unit(units)
    return with_unit(figures(value, unit), unit)


def _possible(value: float, quantity: Quantity) -> bool:
    """Whether a value keeps its limits; the last digits of a float do not count."""
    return quantity.least - HAIR <= value <= quantity.most + HAIR


def _broken_limits(known: Mapping[str, float], units: str) -> Iterator[str]:
    for name, value in known.items():
        quantity = quantity_named(name)
        if _possible(value, quantity):
            continue
        says = f"The {quantity.label} {quantity.comes} to {_shown(value, quantity, units)}."
        if value > quantity.most and quantity.is_efficiency:
            rule = "No machine gives more than it takes: motor power ≥ brake power ≥ water power"
            yield f"{says} It cannot be above 100%. {rule} (common practice, no source)."
        elif value > quantity.most:
            yield f"{says} It cannot be above {_shown(quantity.most, quantity, units)}."
        else:
            yield f"{says} It cannot be below {_shown(quantity.least, quantity, units)}."


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
            yield from _disagreement(
                quantity_named(formula.result), known[formula.result], worked, units
            )


def _applies(formula: Formula, values: Mapping, known: Mapping, units: str) -> bool:
    return (
        units in formula.systems
        and not formula.set_aside({*values, formula.result})
        and all(name in known for name in formula.names)
    )


def _disagreement(quantity: Quantity, one: float | None, other: float, units: str) -> Iterator[str]:
    if one is not None and not isclose(one, other, rel_tol=AGREE):
        yield (
            f"Two ways to the {quantity.label} disagree: {_shown(one, quantity, units)} and "
            f"{_shown(other, quantity, units)}. Check the readings behind both."
        )


def contradictions(
    values: Mapping[str, float], known: Mapping[str, float], links: Mapping[str, Link], units: str
) -> list[str]:
    """What cannot be true of the readings `values` and of all that is `known` from them by `links`.

    A sentence for each limit of nature that is broken, and for each two ways to one quantity that
    disagree.
    """
    return [
        *(list(_broken_limits(values, units)) or _broken_limits(known, units)),
        *_disagreements(values, known, links, units),
    ]


def unusual(known: Mapping[str, float], units: str) -> Iterator[str]:
    """A sentence for each value outside its usual range that is still possible."""
    for name, value in known.items():
        quantity = quantity_named(name)
        low, high = quantity.usual(units)
        if not low <= value <= high and _possible(value, quantity):
            yield (
                f"{_shown(value, quantity, units)} is unusual for the {quantity.label}. Most are "
                f"{_shown(low, quantity, units)} to {_shown(high, quantity, units)} "
                "(common practice, no source)."
            )


def _what_would_unlock(
    values: Mapping[str, float], find: str, units: str
) -> tuple[tuple[str, ...], ...]:
    """Sets of quantities, the smallest first, any of which would make `find` workable."""
    given = tuple(values)
    found = reachable(given, FORMULAS, units)
    direct = []
    for formula in FORMULAS:
        if find in formula.solvable and units in formula.systems:
            lacking = tuple(n for n in formula.names if n != find and n not in found)
            if lacking and lacking not in direct:
                direct.append(lacking)
    single = [(name,) for name in QUANTITIES if name not in found and name != find]
    ways = dict.fromkeys(sorted((*direct, *single), key=len))
    fitting = (way for way in ways if _unlocks(way, values, find, units))
    return tuple(islice(fitting, MOST_HINTS))


def _unlocks(way: tuple[str, ...], values: Mapping[str, float], find: str, units: str) -> bool:
    """Whether usual values of these quantities, added to those given, give `find`."""
    if find not in reachable((*values, *way), FORMULAS, units):
        return False
    typical = {name: quantity_named(name).typical(units) for name in way}
    return find in _all_that_follows({**values, **typical}, units).known


def _missing_says(asked: Quantity, missing: tuple[tuple[str, ...], ...]) -> str:
    if not missing:
        return f"The {asked.label} cannot be worked by any formula here. Measure it."
    ways = " or ".join(
        " and ".join(f"the {quantity_named(name).label} ({name})" for name in names)
        for names in missing
    )
    return f"The {asked.label} cannot be worked yet. Add {ways}."
