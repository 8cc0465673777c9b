"""What a figure is: its sliders, what it says at one setting of them, and how it is drawn."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from solver.algebra.expression import Expr
from solver.algebra.formula import Formula
from solver.algebra.tree import compiled
from solver.engine.plan import find_plan
from solver.units.show import capital, figures, with_unit
from solver.vocabulary import quantity_named

from .chart import Chart

__all__ = ["Figure", "Scale", "Slide", "View", "shown", "told", "valued", "worked"]

Values = Mapping[str, float]


class Scale(NamedTuple):
    """The values a slider takes, and the one it starts at."""

    low: float
    high: float
    step: float
    start: float

    @property
    def decimals(self) -> int:
        """How many decimals its steps have."""
        return len(f"{self.step:g}".partition(".")[2])

    def nearest(self, value: float) -> float:
        """The step of the scale nearest to a value.

        >>> Scale(3, 130, 0.5, 39).nearest(38.9999), Scale(10, 250, 1, 74).nearest(300)
        (39.0, 250.0)
        """
        kept = min(max(value, self.low), self.high)
        return float(round(round(kept / self.step) * self.step, self.decimals))


@dataclass(frozen=True)
class Slide:
    """A slider for one quantity of the vocabulary; `label` where its own name says too little.

    "{unit}" in a label stands for the unit. `si` is left out for a quantity whose unit is the same
    in both systems.
    """

    name: str
    us: Scale
    si: Scale | None = None
    label: str = ""

    def scale(self, units: str) -> Scale:
        """Its values in the system "us" or "si"."""
        return self.us if units == "us" or self.si is None else self.si

    def described(self, units: str) -> str:
        """Its label with the unit: "Flow, gpm"."""
        quantity = quantity_named(self.name)
        name = capital(quantity.label(units))
        unit = with_unit("", quantity.unit(units)).strip()
        return (self.label or f"{name}, {{unit}}").replace("{unit}", unit)


@dataclass(frozen=True)
class View:
    """A figure at one setting of its sliders.

    `headline` is what the picture shows, in a sentence or two; `alt` says all of it in words.
    `rows` are the table under the heads `columns`. `known` is what the picture is drawn from, each
    quantity in its unit of the system `units` ("us", "si", or "" where nothing has a unit).
    """

    headline: str
    alt: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    known: Values
    units: str


@dataclass(frozen=True)
class Figure:
    """A figure: what is seen at given values, and the charts of that, from top to bottom.

    `systems` are those it can be shown in.
    """

    name: str
    title: str
    slides: tuple[Slide, ...]
    view: Callable[[Values, str], View]
    draw: Callable[[View], tuple[Chart, ...]]
    systems: tuple[str, ...] = ("us", "si")


def worked(
    given: Values, asked: str, formulas: tuple[Formula, ...], units: str
) -> dict[str, float]:
    """Every quantity on the solver's way from `given` to `asked`, each in its unit of the system.

    Raises:
        NotSolvable: no chain of these formulas leads there.
    """
    return find_plan(tuple(given), asked, formulas, units).run(given)


def valued(expr: Expr, known: Values, units: str) -> float:
    """What an expression comes to in the system "us" or "si"; the solver works it.

    Raises:
        KeyError: a quantity of it is not known.
    """
    return compiled(expr, units)(known)


def shown(known: Values, name: str, units: str) -> str:
    """A worked quantity with its unit, to four figures."""
    return told(known[name], name, units)


def told(value: float, name: str, units: str, write: Callable[[float, str], str] = figures) -> str:
    """A value with the unit of the quantity `name`; `write=exact` for one that was given.

    >>> told(18.6912, "motor_power", "us")
    '18.69 hp'
    """
    unit = quantity_named(name).unit(units)
    return with_unit(write(value, unit), unit)
