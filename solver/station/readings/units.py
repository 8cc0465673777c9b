"""The same flow, pressure, volume and power in other units."""

from types import MappingProxyType

from .read import Reads
from .water import WATER

__all__ = ["UNITS"]

flow, gauge = WATER["flow"], WATER["discharge_gauge"]

UNITS: Reads = MappingProxyType(
    {
        "daily_flow": lambda s: flow(s) * s.system.rounded(1440 / 1e6, 86.4),
        "flow_per_second": lambda s: flow(s) / s.system.rounded(448.83117, 1000),
        "flow_per_hour": lambda s: flow(s) * s.system.rounded(60, 3.6),
        "flow_per_day": lambda s: flow(s) * s.system.rounded(1440, 0.0864),
        "gauge_pressure": gauge,
        "second_scale": lambda s: gauge(s) * s.system.rounded(6.894757, 0.01),
        "water_height": lambda s: gauge(s) * s.system.head,
        "shaft_work": lambda s: s.motor.size * s.system.rounded(33_000, 1000),
        "weight_flow": lambda s: flow(s) * s.system.rounded(8.341667, 9.802258),
        "lifting_work": lambda s: flow(s) * s.system.rounded(8.341667, 9.802258) * s.running.head,
    }
)
