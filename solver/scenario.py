"""The pumps, stations and people of every example, in one invented town.

None of them exists. The pumps are ordinary ones.
"""

from functools import cache, lru_cache
from typing import NamedTuple

__all__ = [
    "PEOPLE",
    "PUMPS",
    "Place",
    "kind_of",
    "kinds_of",
    "places_of",
]


class Place(NamedTuple):
    """Where a pump stands, as it is said in a sentence."""

    name: str
    station: str


def kind_of(place: Place) -> str:
    """Where a pump stands, by the words of its station: "booster", "lift", or else "plant"."""
    words = place.station.casefold()
    return next((kind for kind in ("booster", "lift") if kind in words), "plant")


@lru_cache(maxsize=16)
def kinds_of(places: tuple[Place, ...]) -> tuple[str, ...]:
    """The kinds that stand among some places."""
    return tuple(sorted({kind_of(place) for place in places}))


PUMPS = (
    Place("Pump 1", "the Tannery Lane lift station"),
    Place("Pump 2", "the Tannery Lane lift station"),
    Place("Pump 1", "the Heron Slough lift station"),
    Place("Pump 3", "the Heron Slough lift station"),
    Place("Pump 2", "the Quarry Road lift station"),
    Place("Pump 1", "the Fairground booster station"),
    Place("Pump 4", "the plant's influent building"),
    Place("Pump 2", "the plant's effluent building"),
)

PEOPLE = ("Inez", "Tobias", "Ruth", "Amadou", "Lena", "Callum")


@cache
def places_of(kind: str) -> tuple[Place, ...]:
    """Where pumps of a kind stand in the invented town."""
    return tuple(place for place in PUMPS if kind_of(place) == kind)
