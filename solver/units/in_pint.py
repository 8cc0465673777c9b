"""The units of the trade in pint, which proves formulas and compiles scales; slow to import."""

from functools import cache
from typing import TYPE_CHECKING

from .unit import Unit, unit

if TYPE_CHECKING:
    import pint

__all__ = ["new_registry", "quantity", "registry"]

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


def new_registry(number: type = float) -> "pint.UnitRegistry":
    """A pint registry with the units of the trade, whose numbers are of the given type."""
    import pint  # here, for it is slow to import and only this needs it

    made = pint.UnitRegistry(non_int_type=number)
    for line in _TRADE:
        made.define(line)
    return made


@cache
def registry() -> "pint.UnitRegistry":
    """The one pint registry of the project, made at the first call."""
    return new_registry()


def quantity(value: float, name: Unit | str) -> "pint.Quantity":
    """The value as a pint quantity, for readers who work with pint.

    >>> quantity(1.0, "MGD").to("gallon/minute").magnitude.__round__(2)
    694.44
    """
    return registry().Quantity(value, (name if isinstance(name, Unit) else unit(name)).pint)
