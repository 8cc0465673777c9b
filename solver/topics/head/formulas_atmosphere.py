"""The head of the atmosphere by altitude, read from the published table."""

from itertools import pairwise

from solver.algebra.expression import Known, Lookup
from solver.errors import NotSolvable
from solver.topics.tables import table_rows, table_source

__all__ = ["ATMOSPHERE", "at_altitude", "sea_level"]

ATMOSPHERE = table_source("atmosphere_us")


def thinner(altitude: float, units: str) -> float:
    """Head of the atmosphere (ft | m) at an altitude (ft | m), between rows by a line.

    >>> round(thinner(1500, "us"), 2)
    32.1
    """
    rows = [(row["altitude"], row["head"]) for row in table_rows(f"atmosphere_{units}")]
    for (low, above), (high, below) in pairwise(rows):
        if low <= altitude <= high:
            return above + (below - above) * (altitude - low) / (high - low)
    raise NotSolvable(
        f"the altitude table goes from 0 to {rows[-1][0]:,.0f}, and {altitude:,.0f} is outside it: "
        "give the barometric pressure instead"
    )


def sea_level(altitude: float, units: str) -> float:
    """Head of the atmosphere (ft | m) at sea level, whatever the altitude: a usual mistake."""
    return thinner(0, units)


def at_altitude(read=thinner) -> Lookup:
    """The head of the atmosphere at the altitude, read by `read`."""
    return Lookup(Known("altitude"), read, "the standard atmosphere at", ("ft", "m"), ("ft", "m"))
