"""How a reading is read: the instrument's step, its accuracy, and what it cannot show.

Steps and accuracies are those of ordinary field instruments (common practice, no source): a clamp
meter 0.1 A and 2 percent, a Bourdon gauge half a psi and 1 percent of its span (ASME B40.100 grade A,
from memory), a tape an inch or a centimeter, a stopwatch a second.
"""

from collections.abc import Mapping, Sequence
from math import floor, log10
from types import MappingProxyType
from typing import NamedTuple

from solver.vocabulary import QUANTITIES

__all__ = [
    "BY_NAME",
    "Instrument",
    "error_of",
    "evened",
    "figures",
    "instrument_of",
    "noted",
    "step_of",
]


class Instrument(NamedTuple):
    """Its name, its step by the size of the reading, its accuracy, and how far it reads.

    `us` and `si`: (below this, step), in each system's unit; no steps for three figures. `percent` of the
    reading, and `least`, in its unit, that a reading may be off by. `reach`: the most it shows, us and si.
    """

    name: str
    us: tuple[tuple[float, float], ...] = ()
    si: tuple[tuple[float, float], ...] = ()
    percent: float = 0.0
    least: float = 0.0
    reach: tuple[float, float] = (float("inf"), float("inf"))

    def steps(self, units: str) -> tuple[tuple[float, float], ...]:
        """Its steps in the system "us" or "si"."""
        return self.us if units == "us" else self.si


ANY = float("inf")
CLAMP = (10, 0.01), (100, 0.1), (ANY, 1)
PLATE = Instrument("nameplate or drawing")
CLAMP_METER = Instrument("clamp meter", CLAMP, CLAMP, 2.0, 0.0, (1000, 1000))
VOLTMETER = Instrument("voltmeter", ((ANY, 1),), ((ANY, 1),), 0.5, 0.0, (1000, 1000))
GAUGE = Instrument(
    "pressure gauge", ((50, 0.5), (ANY, 1)), ((350, 2), (ANY, 5)), 1.0, 0.5, (300, 2000)
)
VACUUM = Instrument("vacuum gauge", ((ANY, 0.5),), ((ANY, 1),), 1.0, 0.3, (30, 100))
CALIPER = Instrument("nameplate or drawing", ((ANY, 0.125),), ((ANY, 1),))
TAPE = Instrument("tape", ((ANY, 1),), ((ANY, 1),), 0.0, 0.5)
LEVEL = Instrument("tape", ((ANY, 0.1),), ((ANY, 0.01),), 0.0, 0.05)
HEAD = Instrument("worked out", ((ANY, 0.1),), ((ANY, 0.01),), 3.0)
STOPWATCH = Instrument("stopwatch", ((ANY, 1),), ((ANY, 1),), 0.0, 1.0, (36_000, 36_000))
TACHOMETER = Instrument("tachometer", ((ANY, 1),), ((ANY, 1),), 0.05, 1.0, (6000, 6000))
METER = Instrument("flowmeter", percent=2.0)
POWER_METER = Instrument("power meter", percent=1.0)
FACTOR = Instrument("power meter", ((ANY, 0.01),), ((ANY, 0.01),), 1.0)
MEGOHMMETER = Instrument("insulation tester", percent=10.0, reach=(20_000, 20_000))
OHMS = (0.1, 0.00001), (1, 0.0001), (10, 0.001), (ANY, 0.01)
MINUTES = ((5, 0.5), (ANY, 1))
OHMMETER = Instrument("low-resistance ohmmeter", OHMS, OHMS, 0.3, 0.0, (200, 200))
THERMOMETER = Instrument("thermometer", ((ANY, 1),), ((ANY, 1),), 0.0, 2.0, (200, 200))
HOUR_METER = Instrument("hour meter", ((100, 0.1), (ANY, 1)), ((100, 0.1), (ANY, 1)), 0.0, 0.1)
ENERGY_METER = Instrument("energy meter", ((ANY, 1),), ((ANY, 1),), 0.5)
BILLED = Instrument("electric bill", ((ANY, 0.01),), ((ANY, 0.01),))
VIBROMETER = Instrument("vibration meter", ((ANY, 0.01),), ((ANY, 0.1),), 5.0, 0.0, (2, 50))
PERCENT = Instrument("worked out", ((ANY, 0.1),), ((ANY, 0.1),), 3.0, 0.3)
WHOLE, HALF = ((ANY, 1),), ((ANY, 0.5),)
CURVE = Instrument("pump curve", WHOLE, WHOLE, 0.0, 2.0)
SHEET = Instrument("pump curve", ((ANY, 1),), ((ANY, 0.1),), 0.0, 0.5)
MOTOR_DATA = Instrument("motor data sheet", HALF, HALF, 0.0, 1.0)
EYE = Instrument("a look", ((ANY, 1),), ((ANY, 1),))
LABORATORY = Instrument("a look at the oil", ((ANY, 0.1),), ((ANY, 0.1),), 0.0, 0.5)
WORKED_OUT = Instrument("worked out", percent=3.0)
RATIO = Instrument("worked out", ((ANY, 0.01),), ((ANY, 0.01),), 3.0)

_ROLLED = ("", "_2", "_3")
BY_NAME: Mapping[str, Instrument] = MappingProxyType(
    {f"amps_{part}{turn}": CLAMP_METER for part in ("a", "b", "c") for turn in _ROLLED}
    | {f"current_unbalance{turn}": PERCENT for turn in _ROLLED}
    | dict.fromkeys(("amps_average", "amps_highest", "line_amps"), CLAMP_METER)
    | dict.fromkeys(("volts_ab", "volts_bc", "volts_ca", "volts_average", "line_volts"), VOLTMETER)
    | {"voltage_unbalance": Instrument("worked out", ((ANY, 0.1),), ((ANY, 0.1),), 0.0, 0.2)}
    | dict.fromkeys(("discharge_gauge", "discharge_gauge_now", "suction_gauge"), GAUGE)
    | dict.fromkeys(("gauge_pressure", "shutoff_gauge", "closed_suction"), GAUGE)
    | {"suction_gauge_now": GAUGE, "suction_vacuum": VACUUM}
    | dict.fromkeys(("drawdown_read", "rise_read", "closed_rise_read"), TAPE)
    | dict.fromkeys(("water_depth", "on_level", "off_level", "working_depth"), LEVEL)
    | dict.fromkeys(("depth_to_water", "depth_to_floor", "depth_to_overflow"), LEVEL)
    | dict.fromkeys(("discharge_elevation", "suction_elevation"), LEVEL)
    | dict.fromkeys(("suction_loss", "dynamic_suction_lift"), HEAD)
    | dict.fromkeys(("npsh_available", "npsh_required", "tested_shutoff"), HEAD)
    | {"curve_shutoff": SHEET}
    | {"storage_depth": LEVEL, "pump_hours": HOUR_METER}
    | dict.fromkeys(("drawdown_time", "rise_time", "closed_rise_time"), STOPWATCH)
    | {"rise_time_1": STOPWATCH, "rise_time_2": STOPWATCH}
    | dict.fromkeys(("running_speed", "slip_speed", "pump_speed"), TACHOMETER)
    | {"pump_efficiency": CURVE, "motor_efficiency": MOTOR_DATA}
    | {"flow": METER, "input_power": POWER_METER, "power_factor": FACTOR}
    | dict.fromkeys(("insulation", "insulation_30s", "insulation_1min"), MEGOHMMETER)
    | {"insulation_10min": MEGOHMMETER}
    | dict.fromkeys(("ohms_12", "ohms_23", "ohms_31"), OHMMETER)
    | dict.fromkeys(("impeller_diameter", "new_diameter"), CALIPER)
    | {"slip": PERCENT, "speed_cut": Instrument("worked out", ((ANY, 1),), ((ANY, 1),))}
    | {"resistance_unbalance": Instrument("worked out", ((ANY, 0.1),), ((ANY, 0.1),), 0.0, 0.6)}
    | dict.fromkeys(("winding_temperature", "winding_temperature_before"), THERMOMETER)
    | dict.fromkeys(("bearing_temperature", "balanced_rise"), THERMOMETER)
    | dict.fromkeys(("polarization_index", "absorption_ratio"), RATIO)
    | {"time_grounded": Instrument("watch", MINUTES, MINUTES, 0.0, 0.5)}
    | dict.fromkeys(("run_time", "hours_per_day", "on_peak_hours", "off_peak_hours"), HOUR_METER)
    | {
        "hours_moved": HOUR_METER,
        "yearly_hours": Instrument("hour meter", ((ANY, 10),), ((ANY, 10),)),
    }
    | dict.fromkeys(("energy", "on_peak_energy", "off_peak_energy"), ENERGY_METER)
    | dict.fromkeys(("energy_cost", "demand_charge", "bill"), BILLED)
    | {"vibration": VIBROMETER, "water_in_oil": LABORATORY, "overload_setting": PLATE}
    | dict.fromkeys(("phase_rotation", "shaft_rotation"), EYE)
    | dict.fromkeys(("rags", "vane_wear"), Instrument("a look", ((ANY, 1),), ((ANY, 1),), 0.0, 3.0))
    | {"ring_clearance": Instrument("feeler gauge", ((ANY, 0.001),), ((ANY, 0.05),), 0.0, 0.001)}
)
_NAMEPLATE = frozenset(
    (
        *("motor_size", "full_load_amps", "service_factor", "rated_speed", "rated_volts", "poles"),
        *("locked_rotor_amps", "impeller_diameter", "rated_flow", "pipe_diameter", "pipe_length"),
        *("c_factor", "elbows", "stages", "alternating_pumps", "days", "energy_price"),
    )
)


def instrument_of(name: str) -> Instrument:
    """What a quantity is read with; "worked out" for what is calculated from readings."""
    return BY_NAME.get(name) or (PLATE if name in _NAMEPLATE else WORKED_OUT)


def noted(name: str, value: float, units: str) -> float:
    """A reading as its instrument shows it, or to three figures (four where it begins with a 1).

    >>> noted("amps_a", 41.268, "us"), noted("discharge_gauge", 33.4, "us"), noted("head", 66.37, "us")
    (41.3, 33.5, 66.4)
    """
    if step := step_of(name, value, units):
        return round(round(value / step) * step, 6)
    return figures(value, 4 if name in QUANTITIES and QUANTITIES[name].us == "rpm" else 3)


def step_of(name: str, value: float, units: str) -> float:
    """The step in which a value is read; 0 where it is read to so many figures."""
    for below, step in instrument_of(name).steps(units):
        if abs(value) < below:
            return step
    return 0.0


def evened(readings: Sequence[float], step: float) -> list[float]:
    """Three readings, each noted to a step, whose average comes to whole steps as well.

    Where it would not, the one that is nearest to its next step is noted as that.

    >>> evened((40.12, 41.36, 43.04), 0.1)
    [40.1, 41.4, 43.0]
    >>> evened((40.12, 41.34, 43.04), 0.1)
    [40.1, 41.4, 43.0]
    """
    steps = [round(reading / step) for reading in readings]
    left = [reading / step - at for reading, at in zip(readings, steps, strict=True)]
    if over := sum(steps) % 3:
        up = over == 2
        place = left.index(max(left) if up else min(left))
        steps[place] += 1 if up else -1
    return [round(at * step, 6) for at in steps]


def figures(value: float, count: int) -> float:
    """A value to so many figures."""
    if not value:
        return 0.0
    return round(value, count - 1 - floor(log10(abs(value))))


def error_of(name: str, value: float, units: str) -> float:
    """How far a reading of its instrument may be off, its step and its accuracy together."""
    instrument, step = instrument_of(name), step_of(name, value, units)
    return step / 2 + abs(value) * instrument.percent / 100 + instrument.least
