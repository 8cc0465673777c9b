"""A constant of the trade: its value and its roundings in each system, and its source."""

from dataclasses import dataclass
from typing import NamedTuple

from solver.errors import BadDefinition

from .expression import Expr

__all__ = ["Constant", "Figure"]


class Figure(NamedTuple):
    """A constant in one system: the trade's value, its unit, other roundings in use, the exact."""

    value: float
    unit: str
    also: tuple[float, ...] = ()
    exact: float | None = None


@dataclass(frozen=True)
class Constant(Expr):
    """A constant of the trade. One without a source cannot exist."""

    name: str
    label: str
    us: Figure
    si: Figure
    source: str

    def __post_init__(self):
        if not self.source.strip():
            raise BadDefinition(
                f"constant {self.name!r} has no source: name one, or write "
                "'common practice, no source'"
            )

    def figure(self, units: str) -> Figure:
        """The constant as the system `units` ("us" or "si") has it."""
        return self.us if units == "us" else self.si
