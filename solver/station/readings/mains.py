"""What the force main holds, what a cycle moves through it, and a flowmeter that reads high."""

from types import MappingProxyType
from typing import TYPE_CHECKING

from solver.engine.draw import Draw

from .read import NotRead, Reads
from .water import WATER
from .wet_well import WET_WELL

if TYPE_CHECKING:
    from solver.station.station import Station

__all__ = ["MAINS"]

LEAST_CYCLES = 0.7
OFF = (0.03, 0.16)  # of the flow: how far a meter reads high


def stays(station: "Station") -> float:
    """Minutes that water is in the main while the pump runs."""
    return station.main.run / station.main.velocity(WATER["flow"](station)) / 60


def holds(station: "Station") -> float:
    """Volume of the main (gal | m3)."""
    return WATER["flow"](station) * station.system.per_minute * stays(station)


def cycle(station: "Station") -> float:
    """Volume that the pump moves in a cycle (gal | m3)."""
    run = WET_WELL["pump_down_time"](station)
    return WATER["flow"](station) * station.system.per_minute * run


def clearing(station: "Station") -> float:
    """Cycles that it takes to push out what is in the main; NotRead where a part of one does."""
    cycles = holds(station) / cycle(station)
    if cycles < LEAST_CYCLES:
        raise NotRead("less than a cycle clears its main")
    return cycles


def metered(station: "Station") -> float:
    """What a meter that reads high shows (gpm | L/s)."""
    return WATER["flow"](station) * (1 + Draw(f"meter {station.chance}").between(*OFF))


MAINS: Reads = MappingProxyType(
    {
        "main_volume": holds,
        "main_time": stays,
        "cycle_volume": cycle,
        "clearing_cycles": clearing,
        "metered_flow": metered,
        "meter_error": lambda s: 100 * (metered(s) / WATER["flow"](s) - 1),
    }
)
