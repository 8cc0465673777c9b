"""What one reading of an act is: a number off an instrument, or words for what is seen, heard or felt.

A number has an instrument of `solver.station.instruments`; the words are in `seen.py`.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import floor, log10
from types import MappingProxyType

from solver.station.instruments import error_of, noted, step_of
from solver.station.readings import SIGNS, NotRead
from solver.station.station import Station
from solver.units.show import exact, with_unit
from solver.vocabulary import quantity_named

from .seen import (
    along_the_main,
    arm,
    arm_at_rest,
    check_inside,
    rotation,
    seat,
    shaft,
    sound,
    strainer,
    valve_turns,
)

__all__ = ["SIGNALS", "TOO_LONG", "Signal", "Value", "worked"]

Value = float | str
Read = Callable[[Station], Value]
# Water levels, inflow and volts differ from day to day (common practice, no source).
DAILY = {
    **dict.fromkeys(("amps_a", "amps_b", "amps_c", "input_power", "discharge_gauge"), 0.025),
    **dict.fromkeys(("volts_ab", "volts_bc", "volts_ca", "power_factor"), 0.01),
    **dict.fromkeys(("drawdown_time", "rise_time"), 0.06),
    **dict.fromkeys(("vibration", "bearing_temperature"), 0.08),
    **dict.fromkeys(("insulation_1min", "polarization_index"), 0.1),
}
TOO_LONG = 3600.0  # seconds: nobody waits longer for the water to go down


@dataclass(frozen=True, slots=True)
class Signal:
    """One reading: its name, what a person calls it, its unit in each system, and how a station shows it.

    `instrument`: the one that may read off ("clamp meter", "pressure gauge", "voltmeter"), or "".
    `of`: the readings it is worked out from, whose common error cancels; none for one that is read.
    `like`: the reading whose instrument it is read with, where it has none of its own name.
    """

    name: str
    label: str
    us: str
    si: str
    read: Read
    instrument: str = ""
    of: tuple[str, ...] = ()
    like: str = ""

    @property
    def daily(self) -> float:
        """How far it goes up and down from day to day with nothing wrong, as a share of itself."""
        return DAILY.get(self.name, 0.0)

    @property
    def read_as(self) -> str:
        """The reading by whose instrument it is read."""
        return self.like or self.name

    def unit(self, units: str) -> str:
        """Its unit in the system "us" or "si"."""
        return self.us if units == "us" else self.si

    def error(self, value: float, units: str) -> float:
        """How far a value may be off: its instrument, the figures it is noted to, and the day."""
        off = error_of(self.read_as, value, units) + self.daily * abs(value)
        if value and not step_of(self.read_as, value, units):
            off += 10 ** (floor(log10(abs(value))) - 2) / 2
        return off

    def noted(self, value: float, units: str) -> float:
        """A value as the instrument shows it."""
        return noted(self.read_as, value, units)

    def text(self, value: Value, units: str) -> str:
        """A value with its unit; words as they are."""
        if isinstance(value, str):
            return value
        if self.name == "drawdown_time" and value >= TOO_LONG:
            return "the water hardly goes down"
        unit = self.unit(units)
        told = (
            float(f"{value:.3g}") if self.of else value
        )  # what is worked out shows no more figures
        return with_unit(exact(told, unit), unit)


def spread(readings: tuple[float, ...], step: float) -> tuple[float, float]:
    """The largest deviation from the average, in percent, and what rounding to a step may do to it."""
    average = sum(readings) / len(readings)
    deviation = max(abs(reading - average) for reading in readings)
    return 100 * deviation / average, 100 * step * 4 / 3 / average


def drawdown(station: Station) -> float:
    """Seconds that the water takes to go down by the test's reading; hardly ever longer than an hour."""
    try:
        return min(station.reading("drawdown_time"), TOO_LONG)
    except NotRead:
        return TOO_LONG


def stop_level(station: Station) -> float:
    """Where the pump stops: at its off float, or below it when that is stuck (ft | m)."""
    well = station.well
    assert well is not None
    return well.depth if well.fall else well.off


def lug_rise(station: Station) -> float:
    """How much warmer the hottest lug in the panel is than the others (°C)."""
    return 1.0 + 280 * station.supply.joint


def _read(name: str, instrument: str = "", of: tuple[str, ...] = ()) -> Signal:
    if name in SIGNS:
        sign = SIGNS[name]
        return Signal(name, sign.label, sign.us, sign.si, lambda s: s.reading(name), instrument, of)
    quantity = quantity_named(name)
    label = quantity.label("us")
    us, si = quantity.unit("us"), quantity.unit("si")
    return Signal(name, label, us, si, lambda s: s.reading(name), instrument, of)


def _words(name: str, label: str, read: Callable[[Station], str]) -> Signal:
    return Signal(name, label, "", "", read)


CLAMP, VOLTS, GAUGE = "clamp meter", "voltmeter", "pressure gauge"
AMPS = ("amps_a", "amps_b", "amps_c")
PAIRS = ("volts_ab", "volts_bc", "volts_ca")
OHMS = ("ohms_12", "ohms_23", "ohms_31")
SIGNALS: Mapping[str, Signal] = MappingProxyType(
    {
        signal.name: signal
        for signal in (
            *(_read(name, CLAMP) for name in AMPS),
            _read("current_unbalance", "", AMPS),
            *(_read(name, VOLTS) for name in PAIRS),
            _read("voltage_unbalance", "", PAIRS),
            _read("input_power"),
            _read("power_factor"),
            _read("discharge_gauge", GAUGE),
            _read("suction_gauge"),
            Signal("drawdown_time", "drawdown time", "s", "s", drawdown),
            _read("rise_time"),
            _read("on_level"),
            Signal("off_level", "level where the pump stops", "ft", "m", stop_level),
            _words("arm", "check-valve arm, running", arm),
            _words("arm_at_rest", "check-valve arm, after the stop", arm_at_rest),
            _words("sound", "what you hear and feel as it runs", sound),
            Signal(
                "lug_rise",
                "hottest lug over the others",
                "°C",
                "°C",
                lug_rise,
                like="winding_temperature",
            ),
            _read("bearing_temperature"),
            _read("vibration"),
            _words("rotation", "phase rotation", rotation),
            _read("overload_setting"),
            _words("seat", "discharge elbow", seat),
            _words("valve_turns", "discharge valve", valve_turns),
            _words("along_the_main", "along the force main", along_the_main),
            _read("insulation_1min"),
            _read("polarization_index"),
            *(_read(name) for name in OHMS),
            _read("resistance_unbalance", "", OHMS),
            _words("shaft", "shaft by hand", shaft),
            _read("rags"),
            _read("vane_wear"),
            _read("ring_clearance"),
            _read("water_in_oil"),
            _words("check_inside", "check valve inside", check_inside),
            _words("strainer", "suction strainer", strainer),
        )
    }
)


def worked(signal: Signal, shown: Mapping[str, float], units: str) -> tuple[float, float]:
    """A worked signal from the readings shown: its value, and what their rounding may do to it."""
    readings = tuple(shown[name] for name in signal.of)
    step = max(step_of(name, max(readings), units) for name in signal.of)
    value, off = spread(readings, step)
    return round(value, 2), off + 0.02
