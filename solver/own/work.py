"""A reader's own numbers: any known quantities in, any other quantity out, with the full work.

Where the answer cannot be worked, what is missing is named. Where the readings contradict each
other, or break a limit, that is said too.
"""

from collections.abc import Mapping
from difflib import get_close_matches
from typing import NamedTuple

from solver.engine.plan import find_plan
from solver.engine.steps import Step, worked_steps
from solver.errors import SolverError, Unreadable
from solver.topics.formulas import FORMULAS
from solver.units.reading import Reading, read
from solver.vocabulary import QUANTITIES, Quantity, quantity_called

from .doubts import contradictions, disagreement, shown, unusual
from .follows import all_that_follows, fault_on_the_way, missing_says, what_would_unlock

__all__ = ["Work", "read_quantity", "work"]


class Work(NamedTuple):
    """What came of a reader's numbers.

    `answer` is None where it could not be worked; then `missing` holds sets of names, each of
    which would unlock it. `known` is everything that follows. `says` is the outcome in words.
    Values are in the own units of the system `units`; `unit` is the answer's.
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

    A quantity goes by its name or by any alias, such as "TDH" or "water hp". Plain numbers are in
    the own units of the system `units`, "us" or "si"; the answer is too.

    >>> found = work({"flow": "450 gpm", "head": "62 ft"}, "water_power")
    >>> round(found.answer, 2), found.unit
    (7.05, 'hp')

    Raises:
        Unreadable: a value cannot be read.
        SolverError: a name or a system of units is not known, or a quantity is given twice.
    """
    if units not in ("us", "si"):
        raise SolverError(f"Units are “us” or “si”; you gave “{units}”.")
    asked = _named(find)
    find = asked.name
    values = _values(given, units)
    claimed = values.pop(find, None)
    known, links, faults = all_that_follows(values, units)
    problems = contradictions(values, known, links, units)
    answer = known.get(find)
    steps: tuple[Step, ...] = ()
    missing: tuple[tuple[str, ...], ...] = ()
    if answer is not None:
        steps = worked_steps(find_plan(tuple(values), find, FORMULAS, units), known)
        problems += disagreement(asked, claimed, answer, units)
        says = f"The {asked.label(units)} {asked.be(units)} {shown(answer, asked, units)}."
    elif fault := fault_on_the_way(tuple(values), find, faults, units):
        says = f"The {asked.label(units)} can't be calculated: {fault}."
    else:
        missing = what_would_unlock(values, find, units)
        says = missing_says(asked, missing, units)
    seen = {name: known[name] for name in (*values, *(step.name for step in steps))}
    notices = tuple(unusual(seen, units))
    return Work(
        find, asked.unit(units), units, values, known, answer, steps, missing,
        tuple(problems), notices, says,
    )  # fmt: skip


def _named(name: str) -> Quantity:
    if quantity := quantity_called(name):
        return quantity
    near = get_close_matches(name.lower().replace(" ", "_"), QUANTITIES, n=3)
    hint = (
        f"Did you mean {' or '.join(near)}?"
        if near
        else "Type a name such as flow, head or water_power."
    )
    raise SolverError(f"No quantity is called “{name[:40]}”. {hint}")


def _values(given: Mapping[str, str | float], units: str) -> dict[str, float]:
    values = {}
    for said, value in given.items():
        quantity = _named(said)
        if quantity.name in values:
            raise SolverError(f"The {quantity.label(units)} is given twice. Give it once.")
        values[quantity.name] = _value(quantity, value, units)
    return values


def _value(quantity: Quantity, value: str | float, units: str) -> float:
    if not isinstance(value, str):
        return float(value)
    try:
        return read_quantity(value, quantity, units).value
    except Unreadable as refusal:
        raise Unreadable(f"{quantity.label(units)}: {refusal}") from None


def read_quantity(text: str, quantity: Quantity, units: str) -> Reading:
    """The value of one quantity as a reader typed it, in the own unit of the system `units`.

    Raises:
        Unreadable: the sentence says what was got and what to type instead.
    """
    bare = quantity.takes_decimal
    return read(text, quantity.unit(units), bare_fraction=bare, quantity=quantity)
