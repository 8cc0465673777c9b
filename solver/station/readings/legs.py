"""Amps and volts of three legs, and the amps again with the motor leads rolled once and twice.

The supply's share of the unevenness stays with the legs, the motor's own goes with its leads.
"""

from collections.abc import Callable, Iterator
from types import MappingProxyType
from typing import TYPE_CHECKING

from solver.station.supply import Legs, unbalance_of

from .power import amps
from .read import NotRead, Read, Reads

if TYPE_CHECKING:
    from solver.station.station import Station

__all__ = ["LEGS", "leg_amps"]


def leg_amps(station: "Station", rolled: int = 0) -> Legs:
    """Amps on legs A, B and C (A) after so many rolls: lead 1 is on A, then on B, then on C."""
    average = amps(station)
    if station.supply.open_leg:
        return (0.0, 1.5 * average, 1.5 * average)
    line, own = station.supply.pull, station.motor.own
    a, b, c = (average * (1 + (line[leg] + own[leg - rolled]) / 100) for leg in range(3))
    return (a, b, c)


def volts(station: "Station") -> Legs:
    """Volts A to B, B to C and C to A (V)."""
    return station.supply.line_to_line


def deviation(readings: Legs) -> float:
    """The largest deviation from the average."""
    average = sum(readings) / 3
    return max(abs(reading - average) for reading in readings)


def _turn(rolled: int) -> Callable[["Station"], Legs]:
    def read(station: "Station") -> Legs:
        if rolled and station.drive.is_variable:
            raise NotRead("a drive feeds the motor: its legs tell nothing of the supply")
        return leg_amps(station, rolled)

    return read


def _one(legs: Callable[["Station"], Legs], place: int) -> Read:
    return lambda station: legs(station)[place]


def _rolled(rolled: int, ending: str) -> Iterator[tuple[str, Read]]:
    legs = _turn(rolled)
    for place, leg in enumerate("abc"):
        yield f"amps_{leg}{ending}", _one(legs, place)
    yield f"amps_average{ending}", lambda s: sum(legs(s)) / 3
    yield f"amps_deviation{ending}", lambda s: deviation(legs(s))
    yield f"current_unbalance{ending}", lambda s: unbalance_of(legs(s))


LEGS: Reads = MappingProxyType(
    {
        **dict(_rolled(0, "")),
        **dict(_rolled(1, "_2")),
        **dict(_rolled(2, "_3")),
        "amps_range": lambda s: max(leg_amps(s)) - min(leg_amps(s)),
        "amps_highest": lambda s: max(leg_amps(s)),
        "current_spread": lambda s: 100 * (max(leg_amps(s)) - min(leg_amps(s))) / amps(s),
        "load_amps": lambda s: 100 * max(leg_amps(s)) / s.motor.full_load_amps,
        "volts_ab": _one(volts, 0),
        "volts_bc": _one(volts, 1),
        "volts_ca": _one(volts, 2),
        "volts_average": lambda s: s.supply.volts,
        "volts_deviation": lambda s: deviation(volts(s)),
        "voltage_unbalance": lambda s: unbalance_of(volts(s)),
    }
)
