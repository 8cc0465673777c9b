"""A quantity against its two limits: up to the low one, up to the high one, or over it.

`against` makes a question of that; `limits.py` has the limits.
"""

from collections.abc import Mapping
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.engine.judgement import Judge, Judgement, Option
from solver.units.show import figures, with_unit
from solver.vocabulary import quantity_named

__all__ = ["Limits", "Zone", "against", "too_near"]

TOO_NEAR = 0.015  # as a share of the limit
Zone = tuple[str, str, str]  # an id, the text of the choice, and what to do then


class Limits(NamedTuple):
    """Two limits for one quantity: numbers, or names of other quantities.

    `rule` says them in words; `source` where they are from, or that it is common practice.
    """

    quantity: str
    low: str | float
    high: str | float
    rule: str = ""
    source: str = ""

    def at(self, values: Mapping[str, float]) -> tuple[float, float]:
        """Both limits as numbers, in the unit of their quantity.

        Raises:
            KeyError: a limit is a quantity that isn't in `values`.
        """
        low, high = (values[at] if isinstance(at, str) else at for at in (self.low, self.high))
        return low, high


def too_near(size: float, limit: float) -> bool:
    """Whether rounding could carry a reading over its limit; then the case is drawn again.

    Both are in one unit, whichever it is.
    """
    return abs(size - limit) < TOO_NEAR * limit


def against(limits: Limits, rule: str, *zones: Zone) -> Judge:
    """A judge with three choices: up to the low limit, up to the high one, and over it."""

    def judge(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
        size = values[limits.quantity]
        low, high = limits.at(values)
        if too_near(size, low) or too_near(size, high):
            return None
        quantity = quantity_named(limits.quantity)
        unit = quantity.unit(units)
        subject = f"{quantity.label(units)} {quantity.be(units)} {with_unit(figures(size), unit)}"
        said = [_said(limits.low, low, units, unit), _said(limits.high, high, units, unit)]
        here = (size > low) + (size > high)
        options = []
        for at, (name, text, then) in enumerate(zones):
            if at < here:
                then = f"The {subject}. That is over {said[here - 1]}."
            elif at > here:
                then = f"The {subject}. That is not over {said[here]}."
            options.append(Option(name, text, then))
        right = options.pop(here)
        limits_said = f"the limits are {said[0]} and {said[1]}"
        return Judgement(rule, f"{subject}; {limits_said}", right, tuple(options))

    return judge


def _said(limit: str | float, value: float, units: str, unit: str) -> str:
    number = with_unit(figures(value), unit)
    if isinstance(limit, str):
        return f"the {quantity_named(limit).label(units)} ({number})"
    return number
