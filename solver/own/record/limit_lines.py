"""The limits of a followed figure as numbers, to be drawn beside its readings."""

from typing import NamedTuple

from solver.topics.limits import CURRENT_UNBALANCE, NAMEPLATE_AMPS, Limits
from solver.vocabulary import quantity_named

from .examine import Examined
from .on_insulation import least
from .verdict import Seen

__all__ = ["Line", "limit_lines"]


class Line(NamedTuple):
    """One limit: its value in the unit of the figure, and what it is called."""

    value: float
    label: str


def limit_lines(name: str, examined: Examined) -> tuple[Line, ...]:
    """The limits by which the followed figure `name` is judged in a record; none where there are none.

    The nameplate's amps are a limit of the highest leg, so they stand beside the average as well.

    >>> from solver.own.record import examine, read_entries
    >>> legs = {"amps_a": "25.5", "amps_b": "23", "amps_c": "26.5"}
    >>> limit_lines("current_unbalance", examine(read_entries(legs)[0]))
    (Line(value=5, label='good'), Line(value=10, label='acceptable'))
    """
    seen = Seen(examined.record, _known(examined))
    if name == "insulation_at_40":
        return _insulation(seen, least(seen))
    if name == "amps_average":
        named = (NAMEPLATE_AMPS.low, NAMEPLATE_AMPS.high)
        return tuple(
            Line(seen.known[at], _short(at, seen.units)) for at in named if at in seen.known
        )
    if name == CURRENT_UNBALANCE.quantity:
        return Line(CURRENT_UNBALANCE.low, "good"), Line(CURRENT_UNBALANCE.high, "acceptable")
    return ()


def _known(examined: Examined) -> dict[str, float]:
    known = dict(examined.record.values)
    for found in examined.findings:
        known |= found.known
    return known


def _insulation(seen: Seen, limits: Limits) -> tuple[Line, ...]:
    low, high = seen.limit(limits.low), seen.limit(limits.high)
    lowest = Line(low, "least")
    return (lowest,) if low == high else (lowest, Line(high, "recommended"))


def _short(name: str, units: str) -> str:
    return quantity_named(name).label(units).removeprefix("nameplate ")
