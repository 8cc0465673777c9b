"""Kilowatt-hours, bills and savings, worked by hand in plain numbers; the tests hold answers to it.

1 MG an hour is 16,667 gpm, and 1,000 m3 an hour is 277.8 L/s. All else is a rate times what it is for.
"""

from solver.topics.by_hand import ByHand, Given
from solver.topics.horsepower.by_hand import KILOWATTS, motor, share

__all__ = ["BY_HAND"]

VOLUME_IN_AN_HOUR = {"us": 16_667, "si": 277.8}  # gpm, L/s


def kilowatts(given: Given, units: str) -> float:
    """At the meter: as told, or from the chain before it."""
    if "input_power" in given:
        return given["input_power"]
    if "motor_size" in given:
        given = {**given, "brake_power": given["motor_size"] * given["motor_load"] / 100}
    return motor(given, units) * KILOWATTS[units]


def energy(given: Given, units: str) -> float:
    """In kWh."""
    if "energy" in given:
        return given["energy"]
    hours = given["run_time"] if "run_time" in given else given["hours_per_day"] * given["days"]
    return kilowatts(given, units) * hours


def energy_cost(given: Given, units: str) -> float:
    """In dollars."""
    if "energy_cost" in given:
        return given["energy_cost"]
    return energy(given, units) * given["energy_price"]


def cost_per_volume(given: Given, units: str) -> float:
    """In dollars for each MG, or each 1,000 m3."""
    if "volume_pumped" in given:
        return energy_cost(given, units) / given["volume_pumped"]
    hours = VOLUME_IN_AN_HOUR[units] / given["flow"]
    return kilowatts(given, units) * hours * given["energy_price"]


def new_kilowatts(given: Given, units: str) -> float:
    """What a more efficient pump or motor draws for the same work."""
    if "new_input_power" in given:
        return given["new_input_power"]
    ratio = 1.0
    for machine in ("pump", "motor"):
        if f"new_{machine}_efficiency" in given:
            ratio *= share(given, machine) / share(given, f"new_{machine}")
    return kilowatts(given, units) * ratio


def yearly_saving(given: Given, units: str) -> float:
    """In dollars a year."""
    if "saved_energy" in given:
        return given["saved_energy"] * given["energy_price"]
    saved = kilowatts(given, units) - new_kilowatts(given, units)
    return saved * given["yearly_hours"] * given["energy_price"]


def bill(given: Given, units: str) -> float:
    """In dollars: energy, demand and the fixed charge."""
    if "bill" in given:
        return given["bill"]
    if "demand_charge" in given:
        demand = given["demand_charge"]
    else:
        demand = given["peak_demand"] * given["demand_price"]
    return energy_cost(given, units) + demand + given["fixed_charge"]


def time_of_use_bill(given: Given, units: str) -> float:
    """In dollars: each kilowatt-hour at the price of its hour."""
    if "on_peak_energy" in given:
        used = {when: given[f"{when}_energy"] for when in ("on_peak", "off_peak")}
    else:
        power = kilowatts(given, units)
        used = {when: power * given[f"{when}_hours"] for when in ("on_peak", "off_peak")}
    return sum(used[when] * given[f"{when}_price"] for when in used)


def shift_saving(given: Given, units: str) -> float:
    """In dollars a month: what the moved energy costs less."""
    if "energy_moved" in given:
        moved = given["energy_moved"]
    else:
        moved = kilowatts(given, units) * given["hours_moved"]
    return moved * given["on_peak_price"] - moved * given["off_peak_price"]


BY_HAND: ByHand = {
    "input_power": kilowatts,
    "energy_used": energy,
    "energy_cost": energy_cost,
    "cost_per_volume": cost_per_volume,
    "pump_saving": yearly_saving,
    "motor_saving": yearly_saving,
    "simple_payback": lambda g, u: g["installed_cost"] / yearly_saving(g, u),
    "bill": bill,
    "average_price": lambda g, u: bill(g, u) / energy(g, u),
    "time_of_use_bill": time_of_use_bill,
    "shift_saving": shift_saving,
}
