"""Motors worked by hand in plain numbers; the tests hold answers to it.

Root three is 1.732 as taught; kW, kvar and kVA are the sides of a right triangle. A pair of poles
takes a whole cycle to pass. Load by amps and by slip are those of US DOE fact sheet GO-10097-517,
the percents of the overload those of NEC 430.32, and one horsepower is 0.746 kW.
"""

from math import sqrt

from solver.topics.balance.by_hand import average_amps
from solver.topics.by_hand import ByHand, Given
from solver.topics.horsepower.by_hand import KILOWATTS

__all__ = ["BY_HAND", "field", "first_percent", "load_by_amps", "load_by_slip", "shaft"]

ROOT_THREE = 1.732
HORSEPOWER = {"us": 1, "si": 1 / 0.746}  # by which the code letters count


def amps(given: Given) -> float:
    """In A: as told, or the average of the three legs."""
    return given["line_amps"] if "line_amps" in given else average_amps(given)


def kilowatts(given: Given, units: str) -> float:
    """At the meter, in kW: as told, from the shaft, or from the kVA."""
    if "input_power" in given:
        return given["input_power"]
    if "brake_power" in given:
        return given["brake_power"] * KILOWATTS[units] / (given["motor_efficiency"] / 100)
    return kva(given, units) * given["power_factor"]


def kva(given: Given, units: str) -> float:
    """As told, from volts and amps, or from the kilowatts."""
    if "apparent_power" in given:
        return given["apparent_power"]
    if "line_volts" in given and {"line_amps", "amps_a"} & set(given):
        return ROOT_THREE * given["line_volts"] * amps(given) / 1000
    return kilowatts(given, units) / given["power_factor"]


def kvar(given: Given, units: str) -> float:
    """The third side of the triangle."""
    return sqrt(kva(given, units) ** 2 - kilowatts(given, units) ** 2)


def capacitor(given: Given, units: str) -> float:
    """In kvar: what the motor takes less what the line still carries."""
    after = given.get("corrected_apparent_power")
    if after is None:
        after = kilowatts(given, units) / given["corrected_power_factor"]
    return kvar(given, units) - sqrt(after**2 - kilowatts(given, units) ** 2)


def shaft(given: Given, units: str) -> float:
    """What the motor gives, in hp or kW."""
    return kilowatts(given, units) / KILOWATTS[units] * given["motor_efficiency"] / 100


def load_by_amps(given: Given, units: str) -> float:
    """In percent, corrected for the volts."""
    rated = given["full_load_amps"] * given["rated_volts"]
    return 100 * amps(given) * given["line_volts"] / rated


def field(given: Given) -> float:
    """Synchronous speed in rpm: 60 seconds a minute, a cycle a pair of poles."""
    return given.get("synchronous_speed") or 60 * given["frequency"] / (given["poles"] / 2)


def running_speed(given: Given, units: str) -> float:
    """In rpm: the field's speed less the slip, which is told in rpm or in percent."""
    slip = given["slip_speed"] if "slip_speed" in given else field(given) * given["slip"] / 100
    return field(given) - slip


def load_by_slip(given: Given, units: str) -> float:
    """In percent: slip now over slip at full load."""
    now, full = (field(given) - given[name] for name in ("running_speed", "rated_speed"))
    return 100 * now / full


def first_percent(given: Given) -> float:
    """Of the nameplate's amps: 125 with a margin in service factor or temperature rise, or 115."""
    if "overload_percent" in given:
        return given["overload_percent"]
    margin = given.get("service_factor", 1) >= 1.15 or given.get("rated_rise", 99) <= 40
    return 125 if margin else 115


def starting_kva(given: Given, units: str) -> float:
    """As told, from locked-rotor amps, or from kVA for each horsepower."""
    if "locked_rotor_amps" in given:
        return ROOT_THREE * given["rated_volts"] * given["locked_rotor_amps"] / 1000
    if "starting_kva" in given:
        return given["starting_kva"]
    return given["starting_kva_per_hp"] * given["motor_size"] * HORSEPOWER[units]


BY_HAND: ByHand = {
    "apparent_power": kva,
    "three_phase_kilowatts": kilowatts,
    "amps_from_power": lambda g, u: 1000 * kva(g, u) / ROOT_THREE / g["line_volts"],
    "power_factor": lambda g, u: kilowatts(g, u) / kva(g, u),
    "reactive_power": kvar,
    "capacitor_kvar": capacitor,
    "motor_load": lambda g, u: 100 * shaft(g, u) / g["motor_size"],
    "load_by_amps": load_by_amps,
    "synchronous_speed": lambda g, u: field(g),
    "slip": lambda g, u: 100 * (1 - g["running_speed"] / field(g)),
    "running_speed": running_speed,
    "load_by_slip": load_by_slip,
    "nameplate_share": lambda g, u: 100 * g["full_load_amps"] / g["table_amps"],
    "overload_limit": lambda g, u: g["full_load_amps"] * first_percent(g) / 100,
    "raised_limit": lambda g, u: g["full_load_amps"] * (first_percent(g) + 15) / 100,
    "starting_kva": starting_kva,
    "locked_rotor_amps": lambda g, u: 1000 * starting_kva(g, u) / ROOT_THREE / g["rated_volts"],
}
