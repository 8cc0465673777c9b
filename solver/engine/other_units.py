"""The units that a quantity is mixed up with: right number, other unit; or a reading misread.

Any unit of the same kind in the table of units; feet with psi and meters with kilopascals, for a
head is both; minutes a day with hours a day.
"""

import re
from collections.abc import Callable, Iterator
from typing import NamedTuple

from solver.units.quantity import Quantity
from solver.units.show import unit_spoken
from solver.units.unit import convert, unit, units

__all__ = ["OtherUnit", "other_units", "taken_for"]

FEET_PER_PSI, METERS_PER_KPA = 2.31, 0.102
NEVER = ("mW", "µA", "mV", "J", "kJ", "pu", "m3/s", "N/s", "ft-lb/s", "ft-lb/min", "hp-h", "in2")
# What is no unit of the same kind, and is mixed up with it all the same: (from, to) and the factor.
ALSO = {
    ("ft", "psi"): 1 / FEET_PER_PSI,
    ("psi", "ft"): FEET_PER_PSI,
    ("m", "kPa"): 1 / METERS_PER_KPA,
    ("kPa", "m"): METERS_PER_KPA,
    ("h/day", "min"): 60,
    ("h/day", "s"): 3600,
    ("starts/h", "starts a day"): 24,
    ("starts/h", "starts a minute"): 1 / 60,
}
# What a given reading is taken for: the units that stand beside its own on gauges and nameplates.
BESIDE = {
    "hp": ("kW",), "kW": ("hp", "W"), "W": ("kW", "hp"), "kVA": ("VA",),
    "ft": ("psi", "in", "m"), "in": ("ft", "cm", "mm"), "m": ("kPa", "ft", "cm", "mm"),
    "mm": ("cm", "in"), "cm": ("mm", "in", "m"),
    "psi": ("ft", "kPa", "bar"), "kPa": ("m", "psi", "bar"), "bar": ("psi", "kPa"), "inHg": ("psi",),
    "gpm": ("L/s", "gph", "m3/h", "cfs"), "L/s": ("gpm", "m3/h", "L/min"), "MGD": ("gpm", "ML/day"),
    "gph": ("gpm",), "gpd": ("gpm",), "cfs": ("gpm",), "m3/h": ("L/s", "m3/day"),
    "m3/day": ("m3/h", "L/s"), "m3/s": ("L/s",),
    "s": ("min",), "min": ("s", "h"), "h": ("min", "day"), "day": ("h", "week"),
    "h/day": ("h/week", "h/month", "h/year"), "h/year": ("h/day", "h/month"),
    "°C": ("°F",), "°F": ("°C",), "°C rise": ("°F rise",), "°F rise": ("°C rise",),
    "V": ("kV",), "kV": ("V",), "A": ("mA",), "µA": ("mA", "A"),
    "ohm": ("milliohm",), "megohm": ("kilohm", "gigohm"),
    "kWh": ("MWh", "hp-h"), "kWh/year": ("kWh/month", "kWh/day"),
    "$/kWh": ("cents/kWh",), "$": ("cents",), "gal": ("ft3", "L"), "ft3": ("gal",),
    "m3": ("L", "gal"), "L": ("gal", "m3"), "lb": ("kg",), "kg": ("lb",),
    "kWh/MG": ("kWh/1000 gal",), "kWh/1000 m3": ("kWh/m3",), "ft/s": ("m/s",), "m/s": ("ft/s",),
}  # fmt: skip


class OtherUnit(NamedTuple):
    """A unit in an id, by name, and after "right"; how the quantity's own unit is said.

    `convert` makes the wrong number of the right one; `back` is the other way.
    """

    key: str
    name: str
    said: str
    asked: str
    convert: Callable[[float], float]
    back: Callable[[float], float] = float


def other_units(quantity: Quantity, system: str) -> Iterator[OtherUnit]:
    """The units that an answer may be right in, where another is asked."""
    own = quantity.unit(system)
    if own == "%":
        yield OtherUnit(
            "decimal", "a decimal", "as a decimal", "percent", lambda value: value / 100
        )
        return
    if not own:
        if quantity.usual(system)[1] <= 2:
            yield OtherUnit(
                "percent", "percent", "in percent", "a decimal", lambda value: value * 100
            )
        return
    for name, to in _others(own):
        said = unit_spoken(name)
        yield OtherUnit(_key(name), said, f"in {said}", unit_spoken(own), to)


def _others(own: str) -> Iterator[tuple[str, Callable[[float], float]]]:
    kind = unit(own).kind
    for name, other in units().items():
        if other.kind == kind and name not in (own, *NEVER):
            yield name, _to(own, name)
    for start, end in ALSO:
        if start == own:
            yield end, _to(own, end)


def taken_for(quantity: Quantity, system: str) -> Iterator[OtherUnit]:
    """The units that a given reading may be taken for; what it then is in its own unit."""
    own = quantity.unit(system)
    for name in BESIDE.get(own, ()):
        said = unit_spoken(name)
        yield OtherUnit(
            _key(name), said, f"in {said}", unit_spoken(own), _to(name, own), _to(own, name)
        )


def _to(start: str, end: str) -> Callable[[float], float]:
    if factor := ALSO.get((start, end)):
        return lambda value: value * factor
    return lambda value: convert(value, start, end)


def _key(name: str) -> str:
    """A unit in an id: letters, figures and underscores."""
    return re.sub(r"\W+", "_", name.replace("$", "dollars").replace("°", "degrees_")).strip("_")
