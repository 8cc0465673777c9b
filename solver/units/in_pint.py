"""The units of the trade in pint, which proves formulas and compiles scales; slow to import.

Run as a program, it prints the scales of units.txt as the text of unit_scales.txt:

    python -m solver.units.in_pint > scales.txt
    mv scales.txt solver/units/unit_scales.txt

It prints, since the solver writes no files; through another file, since it must not empty its own.
"""

from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING

from .unit import DIMENSIONS, Unit, definitions, unit

if TYPE_CHECKING:
    import pint

__all__ = ["compiled", "quantity", "registry"]

# What pint does not know, or knows by a name that could be taken for something else.
_TRADE = (
    "dollar = [money]",
    "dollar_cent = 0.01 * dollar",
    "kilogallon = 1000 * gallon",
    "million_gallon = 1e6 * gallon",
    "kilovolt_ampere_reactive = 1000 * volt * ampere",
    "billing_year = 365 * day",
    "billing_month = billing_year / 12",
)
_HEAD = """\
# Compiled from units.txt by solver/units/in_pint.py, not written by hand.
# name | scale | offset | powers of length, mass, time, current, temperature, money
# A value times its scale, plus its offset, is the value in m, kg, s, A, K and dollars.
"""


def _new_registry(number: type = float) -> "pint.UnitRegistry[float]":
    """A pint registry with the units of the trade, whose numbers are of the given type."""
    import pint  # here, for it is slow to import and only this needs it

    made: pint.UnitRegistry[float] = pint.UnitRegistry(non_int_type=number)
    for line in _TRADE:
        made.define(line)
    return made


@cache
def registry() -> "pint.UnitRegistry[float]":
    """The one pint registry of the project, made at the first call."""
    return _new_registry()


def quantity(value: float, name: Unit | str) -> "pint.Quantity[float]":
    """The value as a pint quantity, for readers who work with pint.

    Raises:
        BadDefinition: no unit has this name.

    >>> quantity(1.0, "MGD").to("gallon/minute").magnitude.__round__(2)
    694.44
    """
    return registry().Quantity(value, (name if isinstance(name, Unit) else unit(name)).pint)


def compiled() -> str:
    """The whole table, worked out in exact fractions and rounded once."""
    exact = _new_registry(Fraction)
    lines = []
    for one in definitions():
        zero, first = (exact.Quantity(Fraction(n), one.pint).to_base_units() for n in (0, 1))
        powers = (str(first.dimensionality.get(f"[{name}]", 0)) for name in DIMENSIONS)
        offset = Fraction(zero.magnitude)
        scale = Fraction(first.magnitude) - offset
        row = (one.name, repr(float(scale)), repr(float(offset)), " ".join(powers))
        lines.append(" | ".join(row))
    return _HEAD + "\n".join(lines) + "\n"


if __name__ == "__main__":
    print(compiled(), end="")
