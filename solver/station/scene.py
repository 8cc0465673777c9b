"""Problems read off a station: the scene that a family of numbers or a judgment is given.

Readings()                                    any station
Readings(Need(drives=("belt", "gear")))       one that meets a need
Readings(need, worn)                          one that was then changed: `worn(station, draw)`
Readings(need, zone("throttled_valve", "head", (70, 80)))   put where a judgment wants it
OneOf((Readings(need), Readings(other)))      one of several, as likely as they stand there
"""

from collections import ChainMap
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from solver.engine.case import Case
from solver.engine.draw import Draw
from solver.engine.family import Drawn
from solver.engine.posing import drawn_again
from solver.errors import NotSolvable, Unfit
from solver.scenario import PUMPS, Place, kind_of

from .drawn import draw_station
from .kinds import KINDS
from .need import ANY, Need
from .readings import READINGS, NotRead
from .station import Station

__all__ = ["Change", "Noted", "OneOf", "Readings", "station_in", "station_of"]

Change = Callable[[Station, Draw], Station]


class Noted(Mapping[str, float]):
    """What the instruments of a station show, in its units; each is read when it is asked for.

    It iterates over what was asked for. A reading that this station doesn't have raises Unfit.
    """

    __slots__ = ("_seen", "station")

    def __init__(self, station: Station):
        self.station = station
        self._seen: dict[str, float] = {}

    def __getitem__(self, name: str) -> float:
        if name not in self._seen:
            if name not in READINGS:
                raise KeyError(name)
            try:
                self._seen[name] = self.station.noted(name)
            except NotRead as missing:
                raise Unfit(f"No {name} can be read: {missing}.") from None
        return self._seen[name]

    def note(self, values: Mapping[str, float]) -> None:
        """Take these values in place of what the instruments show."""
        self._seen.update(values)

    def __contains__(self, name: object) -> bool:
        return name in READINGS

    def __iter__(self) -> Iterator[str]:
        return iter(self._seen)

    def __len__(self) -> int:
        return len(self._seen)


@dataclass(frozen=True, slots=True)
class Readings:
    """The readings of a station that meets `need`, after `change`; a scene of the engine.

    `notes` brings several readings into agreement by a step of their instrument, where an average
    of them must come out round: it gives those values that are to be noted otherwise.
    """

    need: Need = ANY
    change: Change | None = None
    notes: Callable[[Mapping[str, float], Draw], Mapping[str, float]] | None = None

    @property
    def places(self) -> tuple[Place, ...]:
        """Where such stations are, in the invented town."""
        kinds = {kind.place for kind in KINDS.values() if self.need.of_kind(kind)}
        return tuple(place for place in PUMPS if kind_of(place) in kinds)

    def station(self, draw: Draw, units: str) -> Station:
        """The station that the chance gives.

        Raises:
            Unfit: one that cannot be changed so.
        """
        station = draw_station(draw, units, self.need)
        try:
            return self.change(station, draw) if self.change else station
        except NotSolvable as why:
            raise Unfit(f"The station can't be brought there: {why}.") from None

    def __call__(self, draw: Draw, units: str) -> Drawn:
        station = self.station(draw, units)
        noted = Noted(station)
        if self.notes:
            try:
                noted.note(self.notes(noted, draw))
            except NotSolvable as why:
                raise Unfit(f"The station has no such readings: {why}.") from None
        return Drawn(noted, station.place)


@dataclass(frozen=True, slots=True)
class OneOf:
    """One of several scenes, each as likely: zones that need different stations."""

    scenes: tuple[Readings, ...]

    @property
    def places(self) -> tuple[Place, ...]:
        """Those that any of them has."""
        return tuple(place for place in PUMPS if any(place in s.places for s in self.scenes))

    def __call__(self, draw: Draw, units: str) -> Drawn:
        return draw.pick(self.scenes)(draw, units)


def station_in(values: Mapping[str, float]) -> Station:
    """The station that the values of a judge were read off.

    Raises:
        Unfit: they were typed by a reader.
    """
    drawn = values.maps[-1] if isinstance(values, ChainMap) else values  # under what was worked out
    if isinstance(drawn, Noted):
        return drawn.station
    raise Unfit("This problem needs a whole station; it can't be made of your own numbers.")


def station_of(case: Case) -> Station | None:
    """The station that a problem was read off, for a picture; none behind a tank's or a reader's numbers."""
    drawn = drawn_again(case)
    return drawn.values.station if drawn and isinstance(drawn.values, Noted) else None
