"""What a reading is: a function of a station; and the refusal where a station has none."""

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, TypeVar

from solver.errors import NotSolvable

if TYPE_CHECKING:
    from solver.station.station import Station
    from solver.station.suction import Suction
    from solver.station.well import Well

__all__ = ["NotRead", "Read", "Reads", "at_the_pump", "earlier", "in_the_well", "later", "there"]

Read = Callable[["Station"], float]
Reads = Mapping[str, Read]
T = TypeVar("T")


class NotRead(NotSolvable):
    """A station without this reading: a booster has no float, a submersible no suction gauge."""


def there(part: T | None, what: str) -> T:
    """A part of a station that not every one has.

    Raises:
        NotRead: it isn't there.
    """
    if part is None:
        raise NotRead(f"this station has no {what}")
    return part


def in_the_well(station: "Station") -> "Well":
    """The wet well; NotRead where there is none."""
    return there(station.well, "wet well")


def at_the_pump(station: "Station") -> "Suction":
    """The suction pipe; NotRead where the pump is in its water."""
    return there(station.suction, "suction pipe")


def earlier(station: "Station") -> "Station":
    """The same station a year ago; NotRead where nobody read it then."""
    return there(station.then, "earlier readings")


def later(station: "Station") -> "Station":
    """The same station after a change; NotRead where nothing changed."""
    return there(station.now, "later readings")
