"""The head of the atmosphere by altitude, read from the published table."""

from collections.abc import Callable

from solver.algebra.expression import Known, Lookup
from solver.errors import NotSolvable
from solver.topics.tables import between_rows, table_rows, table_source

__all__ = ["ATMOSPHERE", "at_altitude", "sea_level"]

ATMOSPHERE = table_source("atmosphere_us")


def thinner(altitude: float, units: str) -> float:
    """Head of the atmosphere (ft | m) at an altitude (ft | m), between rows by a line.

    Raises:
        NotSolvable: the altitude is outside the table.

    >>> round(thinner(1500, "us"), 2)
    32.1
    """
    name = f"atmosphere_{units}"
    head = between_rows(name, "altitude", "head", altitude)
    if head is None:
        raise NotSolvable(
            f"the altitude table goes from 0 to {table_rows(name)[-1]['altitude']:,.0f}, and "
            f"{altitude:,.0f} is outside it: give the barometric pressure instead"
        )
    return head


def sea_level(altitude: float, units: str) -> float:
    """Head of the atmosphere (ft | m) at sea level, whatever the altitude: a usual mistake."""
    return thinner(0, units)


def at_altitude(read: Callable[[float, str], float] = thinner) -> Lookup:
    """The head of the atmosphere at the altitude, read by `read`."""
    return Lookup(Known("altitude"), read, "the standard atmosphere at", ("ft", "m"), ("ft", "m"))
