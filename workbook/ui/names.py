"""What a quantity is called where a reader is asked for it: name, abbreviation and unit."""

from solver.units.quantity import Quantity
from solver.units.show import unit_in_words

__all__ = ["asked_for"]


def asked_for(quantity: Quantity, units: str, between: str = ", in ") -> str:
    """Its name with abbreviation and unit: "brake horsepower (BHP), in hp".

    The unit is said once: "slip in rpm", and "input power, in kW" without "(kW)".
    """
    unit = quantity.unit(units)
    name = quantity.label(units) if quantity.short(units) == unit else quantity.spoken(units)
    return name if quantity.says_unit(units) else f"{name}{between}{unit_in_words(unit)}"
