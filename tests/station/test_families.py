"""The numbers of every kind of problem can be read off a station, in half of the draws of some need or more.

So a family can be moved onto the model by saying its need. Tanks keep their own small draws (`NOT_READ`).
"""

from collections.abc import Mapping
from functools import cache

import pytest

from solver import FAMILIES
from solver.engine.family import Family
from solver.station.faults import with_fault
from solver.station.need import Need
from solver.station.readings import READINGS
from solver.vocabulary import QUANTITIES
from tests.in_one import in_one

from .stations import BOTH, all_readings, stations

NEEDS = {
    "none": Need(),
    "a year ago": Need(state="then"),
    "pumping higher later": Need(state="now"),
    "a better pump": Need(upgrade="pump"),
    "a better motor": Need(upgrade="motor"),
    "both better": Need(upgrade="both"),
    "another speed, no static head": Need(static=False, change="speed"),
    "a trim, no static head": Need(static=False, change="trim"),
    "another speed": Need(static=True, change="speed"),
    "belts or gears": Need(drives=("belt", "gear")),
    "direct": Need(drives=("direct",)),
    "a drive": Need(drives=("variable",)),
    "level gauges": Need(level_gauges=True),
    "a nozzle": Need(nozzle=True, static=True),
    "stages": Need(stages=True),
    "a suction lift": Need(lift=True),
    "a lift station": Need(kinds=("lift",)),
    "a booster": Need(kinds=("booster",)),
    "a round well": Need(round_well=True),
    "a well with corners": Need(round_well=False),
}
LEAKING = Need(kinds=("lift",))


@cache
def readable_in(units: str) -> Mapping[str, list[frozenset[str]]]:
    """What stations of each need show within its plausible range."""
    drawn = {name: list(stations(units, need, 1)[:40]) for name, need in NEEDS.items()}
    drawn["a leaking check valve"] = [
        with_fault(station, "passing_check", 0.5) for station in stations(units, LEAKING, 1)[:40]
    ]
    return {
        name: [frozenset(_plausible(all_readings(station), units)) for station in some]
        for name, some in drawn.items()
    }


def _plausible(readings: Mapping[str, float], units: str):
    for name, value in readings.items():
        if name in QUANTITIES:
            low, high = QUANTITIES[name].usual(units)
            if low <= value <= high:
                yield name


def wanted(family: Family, level: int) -> frozenset[str]:
    """The numbers of a problem: what is given, and what is asked if it is a quantity."""
    asked = {family.asks(family.levels[level])} & QUANTITIES.keys()
    return frozenset((*family.levels[level].given, *asked))


@pytest.mark.parametrize("units", BOTH)
@in_one("family", FAMILIES, lambda family: family.name)
def test_a_need_gives_a_family_its_numbers_in_half_of_the_draws_or_more(family, units):
    for level in range(len(family.levels)):
        names = wanted(family, level)
        if names <= READINGS.keys():
            shares = {
                need: sum(names <= shown for shown in some) / len(some)
                for need, some in readable_in(units).items()
            }
            best = max(shares, key=shares.__getitem__)
            assert shares[best] >= 0.5, (level + 1, best, names)
