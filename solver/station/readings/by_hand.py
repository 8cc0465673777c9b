"""What hand, eye and a simple instrument find on a pump: no quantity of a lesson, but signs of a fault.

A wear ring's clearance when new is 0.012 in | 0.3 mm, and its leakage grows with it (API 610 gives near
these, from memory).
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from .read import Read, Reads

__all__ = ["BY_HAND", "SIGNS", "Sign"]

CLEARANCE = {"us": 0.012, "si": 0.3}
WIDER = 6.0  # times the clearance that goes with a leak of the whole best flow


class Sign(NamedTuple):
    """What it is called, its unit in each system, and how a station shows it."""

    label: str
    us: str
    si: str
    read: Read

    def unit(self, units: str) -> str:
        """Its unit in the system "us" or "si"."""
        return self.us if units == "us" else self.si


SIGNS: Mapping[str, Sign] = MappingProxyType(
    {
        "bearing_temperature": Sign(
            "bearing temperature", "°C", "°C", lambda s: s.condition.bearing
        ),
        "vibration": Sign("vibration", "in/s", "mm/s", lambda s: s.condition.vibration),
        "water_in_oil": Sign("water in the seal oil", "%", "%", lambda s: s.condition.water_in_oil),
        "ring_clearance": Sign(
            "wear-ring clearance",
            "in",
            "mm",
            lambda s: CLEARANCE[s.system.name] * (1 + WIDER * s.pump.leak),
        ),
        "vane_wear": Sign("impeller diameter lost", "%", "%", lambda s: 100 * s.pump.worn),
        "rags": Sign("impeller passages clogged", "%", "%", lambda s: 100 * s.pump.clog),
        "phase_rotation": Sign(
            "phase rotation at the panel, 1 is right", "", "", lambda s: float(s.supply.rotation)
        ),
        "shaft_rotation": Sign(
            "shaft rotation, 1 is right", "", "", lambda s: -1.0 if s.pump.backward else 1.0
        ),
    }
)
BY_HAND: Reads = MappingProxyType({name: sign.read for name, sign in SIGNS.items()})
