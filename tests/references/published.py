"""Rows of published worked examples, and how near the solver must come to each.

Facts only: inputs, a printed result and where it is printed. Status as in every check here: R
read in the source, R2 read in a copy of it, M from memory, C common practice of the
trade with no source.
"""

from decimal import Decimal
from typing import NamedTuple

import pytest

from solver.engine.plan import find_plan
from solver.topics.formulas import FORMULAS

__all__ = ["CONSTANT", "Row", "every", "half_a_unit", "worked"]

CONSTANT = 0.005  # two books with other roundings of a constant differ by this share at most


class Row(NamedTuple):
    """One published result: `published` as printed, so that its last figure says how near.

    `rounded_to` is for results printed to fives or tens; `other_constant` widens the check where
    the source uses another rounding of a constant than the solver's.
    """

    published: str
    asked: str
    units: str
    given: dict[str, float]
    source: str
    status: str
    other_constant: float = 0.0
    rounded_to: float | None = None

    @property
    def value(self) -> float:
        return float(self.published)

    @property
    def near(self) -> float:
        """How far the solver may be from the printed value."""
        half = self.rounded_to / 2 if self.rounded_to else half_a_unit(self.published)
        return half + self.other_constant * self.value


def half_a_unit(printed: str) -> float:
    """Half a unit of the last figure printed: 0.05 for "22.9", 5 for "1.26E+3"."""
    return float(Decimal(1).scaleb(Decimal(printed).as_tuple().exponent)) / 2


def worked(row: Row) -> float:
    """What the whole library of formulas gives for a row."""
    return find_plan(tuple(row.given), row.asked, FORMULAS, row.units).run(row.given)[row.asked]


def every(rows: list[Row]):
    """A parametrisation that names each row by what is asked and where it is printed."""
    assert {row.status for row in rows} <= {"R", "R2", "M", "C"}
    return pytest.mark.parametrize("row", rows, ids=lambda row: f"{row.asked}-{row.source}")
