"""What a quantity is. The quantities themselves stand in quantities/, one file a topic."""

import re
from dataclasses import dataclass
from math import sqrt

__all__ = ["Quantity", "percent", "same"]

Range = tuple[float, float]
_AFTER_NOUN = re.compile(r" (?:of|on|in|per|at|a|between|that) ")


@dataclass(frozen=True, slots=True)
class Quantity:
    """One named quantity. `us` and `si` are unit names of units.py; ranges are in those units."""

    name: str
    label: str
    symbol: str
    us: str
    si: str
    us_range: Range
    si_range: Range
    least: float = 0.0
    most: float = float("inf")

    def unit(self, units: str) -> str:
        """Its unit in the system "us" or "si"."""
        return self.us if units == "us" else self.si

    def usual(self, units: str) -> Range:
        """Its plausible range in the system "us" or "si"."""
        return self.us_range if units == "us" else self.si_range

    def typical(self, units: str) -> float:
        """A value in the middle of its plausible range, most of whose values are small."""
        low, high = self.usual(units)
        return sqrt(low * high) if low > 0 else (low + high) / 2

    @property
    def is_efficiency(self) -> bool:
        """Whether a bare decimal such as .82 can only mean 82 %."""
        return self.us == "%" and self.us_range[0] > 1

    @property
    def be(self) -> str:
        """The verb after its label: "are" after "average amps", "is" after "head loss"."""
        noun = _AFTER_NOUN.split(self.label)[0]
        many = noun.endswith("s") and not noun.endswith("ss") and self.us != "%"
        return "are" if many else "is"

    @property
    def comes(self) -> str:
        """The verb after its label in "comes to"."""
        return "come" if self.be == "are" else "comes"


def same(name: str, label: str, symbol: str, unit: str, usual: Range, **limits) -> Quantity:
    """A quantity with one unit in both systems."""
    return Quantity(name, label, symbol, unit, unit, usual, usual, **limits)


def percent(name: str, label: str, symbol: str, usual: Range, most: float = 100.0) -> Quantity:
    """A quantity in percent."""
    return same(name, label, symbol, "%", usual, most=most)
