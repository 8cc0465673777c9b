"""What a quantity is. The quantities themselves stand in quantities.py of their topic.

A quantity has the trade's name for it in each system: `label("us")` is "water horsepower",
`label("si")` is "water power". `short` is its abbreviation, such as WHP, and `spoken` has both, for
the first time it is named on a card or a page. `aliases` is every other text that people type for
it, in lower case: both labels, both abbreviations, its name in code, and what else the trade says.
No two quantities share one, so an alias finds one quantity (vocabulary.quantity_called).
"""

import re
from dataclasses import dataclass
from math import sqrt
from typing import NamedTuple, TypedDict, Unpack

from solver.errors import BadDefinition

__all__ = ["Both", "More", "Quantity", "Range", "Text", "in_system", "percent", "same"]


class Both(NamedTuple):
    """A text that differs between the systems."""

    us: str
    si: str


Range = tuple[float, float]
Text = str | Both
_AFTER_NOUN = re.compile(r" (?:of|on|in|per|at|a|between|that|from|with|after|[A-C] to) |,")
# A label that says its own unit: "slip in rpm", "locked-rotor kVA", "percent full".
_SAYS_UNIT = re.compile(
    r"^percent |percent$|percentage$| (?:feet|meters) of water$"
    r"|^(?:days|hours|starts|gallons per foot)\b|\b(?:amps|volts)\b"
)


@dataclass(frozen=True, slots=True)
class Quantity:
    """One named quantity. `us` and `si` are unit names of units.py; ranges are in those units.

    `labels`, `symbols` and `shorts` are one text, or two where the systems differ; `symbols` are
    LaTeX. `also` has more names that people type, parted by commas. `same` and `percent` make one
    that has one unit in both systems.

    Raises:
        BadDefinition: a range does not go up.
    """

    name: str
    labels: Text
    symbols: Text
    us: str
    si: str
    us_range: Range
    si_range: Range
    least: float = 0.0
    most: float = float("inf")
    shorts: Text = ""
    also: str = ""

    def __post_init__(self) -> None:
        for low, high in (self.us_range, self.si_range):
            if not low < high:
                raise BadDefinition(
                    f"quantity {self.name!r}: its range is {low:g} to {high:g}; write the lower "
                    "end first"
                )

    def label(self, units: str) -> str:
        """What the trade calls it in the system "us" or "si", in full."""
        return in_system(self.labels, units)

    def symbol(self, units: str) -> str:
        """How a formula sheet writes it, in LaTeX."""
        return in_system(self.symbols, units)

    def short(self, units: str) -> str:
        """Its abbreviation, such as "WHP"; empty where the trade has none."""
        return in_system(self.shorts, units)

    def spoken(self, units: str) -> str:
        """Its name with its abbreviation, for its first use: "water horsepower (WHP)"."""
        short = self.short(units)
        return f"{self.label(units)} ({short})" if short else self.label(units)

    @property
    def aliases(self) -> tuple[str, ...]:
        """Every text that people type for it in either system, in lower case."""
        both = [
            in_system(text, units) for text in (self.labels, self.shorts) for units in ("us", "si")
        ]
        texts = (*both, *self.also.split(","), self.name.replace("_", " "))
        return tuple(dict.fromkeys(text.strip().lower() for text in texts if text.strip()))

    def says_unit(self, units: str) -> bool:
        """Whether its label or its abbreviation says its unit already, as "slip in rpm" does."""
        unit, label = self.unit(units), self.label(units)
        return not unit or label.endswith(f" {unit}") or bool(_SAYS_UNIT.search(label))

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
    def takes_decimal(self) -> bool:
        """Whether a bare decimal such as .82 can only mean 82 %."""
        return self.us == "%" and self.us_range[0] > 1

    @property
    def is_efficiency(self) -> bool:
        """Whether a machine passes on this percent of what it gets, and wastes the rest."""
        return self.takes_decimal and self.name.endswith("efficiency")

    def be(self, units: str) -> str:
        """The verb after its label: "are" after "average amps", "is" after "friction loss"."""
        noun = _AFTER_NOUN.split(self.label(units))[0]
        many = noun.endswith("s") and not noun.endswith("ss") and self.us != "%"
        return "are" if many else "is"

    def comes(self, units: str) -> str:
        """The verb after its label in "comes to"."""
        return "come" if self.be(units) == "are" else "comes"


def in_system(text: Text, units: str) -> str:
    """A text as the system "us" or "si" says it."""
    if isinstance(text, str):
        return text
    return text.us if units == "us" else text.si


class More(TypedDict, total=False):
    """What else a quantity may have: its hard limits, abbreviation and other names."""

    least: float
    most: float
    shorts: Text
    also: str


def same(
    name: str, label: Text, symbol: Text, unit: str, usual: Range, **more: Unpack[More]
) -> Quantity:
    """A quantity with one unit in both systems."""
    return Quantity(name, label, symbol, unit, unit, usual, usual, **more)


def percent(name: str, label: Text, symbol: Text, usual: Range, **more: Unpack[More]) -> Quantity:
    """A quantity in percent; 100 is the most it can be where `more` does not say."""
    more.setdefault("most", 100.0)
    return same(name, label, symbol, "%", usual, **more)
