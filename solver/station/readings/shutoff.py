"""The pump with its discharge valve closed, beside the curve it came with; and its best point."""

from dataclasses import replace
from types import MappingProxyType
from typing import TYPE_CHECKING

from .read import NotRead, Reads, at_the_pump
from .water import WATER, lift

if TYPE_CHECKING:
    from solver.station.station import Station

__all__ = ["SHUTOFF"]


def tested(station: "Station") -> float:
    """Shutoff head of the pump as it is (ft | m)."""
    return station.pump.head_at(0.0, station.running.speed)


def on_curve(station: "Station") -> float:
    """Shutoff head of the pump as it was new (ft | m)."""
    new = replace(station.pump, leak=0.0, worn=0.0, clog=0.0, air=0.0, backward=False)
    return new.head_at(0.0, station.running.speed)


def suction_still(station: "Station") -> float:
    """The suction gauge with no flow (psi | kPa)."""
    at_the_pump(station)
    if -lift(station) <= station.gauges.suction_height:
        raise NotRead("its suction gauge is above the water")
    return (-lift(station) - station.gauges.suction_height) / station.system.head


def discharge_still(station: "Station") -> float:
    """The discharge gauge with no flow (psi | kPa)."""
    at_the_pump(station)
    still = tested(station) - lift(station) - station.gauges.discharge_height
    return still / station.system.head


def best_flow(station: "Station") -> float:
    """The flow at the best efficiency point, at the speed it runs (gpm | L/s)."""
    return station.pump.best_flow(station.running.speed)


SHUTOFF: Reads = MappingProxyType(
    {
        "shutoff_gauge": discharge_still,
        "closed_suction": suction_still,
        "tested_shutoff": tested,
        "curve_shutoff": on_curve,
        "shutoff_share": lambda s: 100 * tested(s) / on_curve(s),
        "best_flow": best_flow,
        "best_share": lambda s: 100 * WATER["flow"](s) / best_flow(s),
    }
)
