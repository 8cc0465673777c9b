"""The pumps of the invented town (solver/scenario.py) as stations of the model: those of a building are alike."""

from dataclasses import replace
from functools import cache
from itertools import count

from solver.engine.draw import Draw
from solver.scenario import Place, kind_of

from .drawn import draw_station
from .need import Need
from .station import Station

__all__ = ["town_station"]

PLAIN = Need(drives=("direct",), load=(60, 88), volts=(480,), service=(1.15,), sizes=(10, 40))
NEEDS = {
    "lift": replace(PLAIN, kinds=("lift",), round_well=True, pumps=2),
    "booster": replace(PLAIN, kinds=("booster",), level_gauges=True, stages=False),
    "plant": replace(PLAIN, kinds=("flooded",), level_gauges=True, round_well=True, pumps=2),
}
POLES = (4, 6)
QUICK, SLOW = 45.0, 200.0  # s that a timed test may take
LEAST_PRESSURE = 2.0  # psi on the suction gauge


@cache
def town_station(place: Place) -> Station:
    """The pump of a place, sound, in US units; pumps of a building differ in their condition alone."""
    need = NEEDS[kind_of(place)]
    drawn = (draw_station(Draw(f"{place.station} {n}"), "us", need) for n in count())
    station = next(each for each in drawn if _is_ordinary(each))
    return replace(station, place=place, chance=f"{place.name} {place.station}")


def _is_ordinary(station: Station) -> bool:
    """Whether its speed is a usual one, its suction gauge well over nothing, and its tests are short."""
    tests = ("drawdown_time", "rise_time") if station.well else ()
    return (
        station.motor.poles in POLES
        and (station.suction is None or station.reading("suction_gauge") >= LEAST_PRESSURE)
        and all(QUICK <= station.reading(test) <= SLOW for test in tests)
    )
