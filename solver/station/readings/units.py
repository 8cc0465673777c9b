"""The same flow, pressure, volume and power in other units."""

from types import MappingProxyType
from typing import TYPE_CHECKING

from solver.units.unit import convert
from solver.vocabulary import quantity_named

from .read import Read, Reads
from .water import WATER

if TYPE_CHECKING:
    from solver.station.station import Station

__all__ = ["UNITS"]

flow, gauge = WATER["flow"], WATER["discharge_gauge"]


def _converted(read: Read, of: str, name: str) -> Read:
    """A reading of the quantity `of`, in the unit that the quantity `name` has."""
    here, there = quantity_named(of), quantity_named(name)
    return lambda s: convert(read(s), here.unit(s.system.name), there.unit(s.system.name))


def _weight(s: "Station") -> float:
    """What is moved, in lb/min at 8.341667 lb/gal, or in N/s at 9.802258 N/L."""
    return flow(s) * s.system.rounded(8.341667, 9.802258)


UNITS: Reads = MappingProxyType(
    {
        **{
            name: _converted(flow, "flow", name)
            for name in ("daily_flow", "flow_per_second", "flow_per_hour", "flow_per_day")
        },
        "gauge_pressure": gauge,
        "second_scale": _converted(gauge, "discharge_gauge", "second_scale"),
        "water_height": lambda s: gauge(s) * s.system.head,
        "shaft_work": lambda s: s.motor.size * s.system.rounded(33_000, 1000),
        "weight_flow": _weight,
        "lifting_work": lambda s: _weight(s) * s.running.head,
    }
)
