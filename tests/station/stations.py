"""Stations that the tests of the model share: some thousands, as many as W2W_SEEDS asks for."""

from functools import cache

from solver.engine.draw import Draw
from solver.station.drawn import draw_station
from solver.station.need import Need
from solver.station.readings import READINGS, NotRead
from solver.station.station import Station
from tests.solver.drawn import SEEDS

__all__ = ["BOTH", "all_readings", "readable", "stations"]

BOTH = ("us", "si")


@cache
def stations(units: str, need: Need = Need(), each: int = 10) -> tuple[Station, ...]:  # noqa: B008
    """So many stations of a system for each of the seeds asked for."""
    return tuple(draw_station(Draw(f"station {n}"), units, need) for n in range(each * SEEDS))


def readable(station: Station, name: str) -> bool:
    """Whether a station has a reading."""
    try:
        station.reading(name)
    except NotRead:
        return False
    return True


def all_readings(station: Station) -> dict[str, float]:
    """Every reading that a station has, unrounded."""
    found = {}
    for name in READINGS:
        try:
            found[name] = station.reading(name)
        except NotRead:
            continue
    return found
