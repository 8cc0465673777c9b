"""Stations that the tests of the model share: some thousands, as many as W2W_SEEDS asks for."""

from functools import cache

from solver.engine.draw import Draw
from solver.station.drawn import draw_station
from solver.station.need import Need
from solver.station.readings import READINGS, NotRead
from solver.station.station import Station
from tests.solver.drawn import SEEDS

__all__ = ["BOTH", "all_readings", "readable", "stations", "various"]

BOTH = ("us", "si")


@cache
def stations(units: str, need: Need = Need(), each: int = 10) -> tuple[Station, ...]:  # noqa: B008
    """So many stations of a system for each of the seeds asked for, a dozen at least."""
    return tuple(
        draw_station(Draw(f"station {n}"), units, need) for n in range(max(each * SEEDS, 12))
    )


NEEDS = (
    *(Need(state=state) for state in ("then", "now")),
    *(Need(upgrade=upgrade) for upgrade in ("pump", "motor", "both")),
    *(Need(static=False, change=change) for change in ("speed", "trim")),
    *(Need(drives=(drive,)) for drive in ("belt", "gear", "variable")),
    Need(level_gauges=True),
    Need(nozzle=True, static=True),
    Need(stages=True),
    Need(well=True, drives=("direct",)),
    Need(old_plate=True),
    Need(drives=("variable",), turned_down=True),
    Need(pumps=1),
)


def various(units: str) -> list[Station]:
    """Stations of every need a test of the readings has, and many of none."""
    return [*stations(units), *(s for need in NEEDS for s in stations(units, need, 1))]


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
