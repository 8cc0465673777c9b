"""Standby power worked by hand in plain numbers; the tests hold answers to it.

Three-phase kVA is 1.732 V A / 1,000, frequency is rpm times poles over 120 (Hubert, Electric Machines);
the rest is arithmetic.
"""

from solver.topics.by_hand import ByHand, Given

__all__ = ["BY_HAND"]


def load(g: Given, u: str) -> float:
    """What runs, in kW."""
    if "running_load" in g:
        return g["running_load"]
    return g["running_pumps"] * g["input_power"] + g["other_load"]


def peak(g: Given, u: str) -> float:
    """What runs already plus a start, in kVA."""
    if "starting_kva" in g:
        return g["running_kva"] + g["starting_kva"]
    if "locked_rotor_amps" in g:
        amps = g["locked_rotor_amps"]
    else:
        amps = g["full_load_amps"] * g["starting_percent"] / 100
    return g["running_kva"] + 1.732 * g["rated_volts"] * amps / 1000


def share(g: Given, u: str) -> float:
    """Percent of a rating, or the rating for a percent."""
    if "generator_rating" in g:
        return load(g, u) / g["generator_rating"] * 100
    return load(g, u) / g["generator_load"] * 100


def amps(g: Given, u: str) -> float:
    """A set's kVA, or its amps where the volts are known."""
    kva = g["generator_rating"] / g["generator_power_factor"]
    return kva * 1000 / 1.732 / g["generator_volts"] if "generator_volts" in g else kva


def frequency(g: Given, u: str) -> float:
    """In Hz from rpm, or back."""
    if "engine_speed" in g:
        return g["engine_speed"] * g["generator_poles"] / 120
    return g["generator_frequency"] * 120 / g["generator_poles"]


def fuel(g: Given, u: str) -> float:
    """Hours, or the fuel for so many."""
    rate = g["fuel_rate"] if "fuel_rate" in g else g["running_load"] * g["fuel_per_energy"]
    if "fuel_hours" in g:
        return g["fuel_hours"] * rate
    if "fuel_tank" in g:
        return g["fuel_tank"] * (g["fuel_level"] - g["fuel_reserve"]) / 100 / rate
    return g["usable_fuel"] / rate


def bypass(g: Given, u: str) -> float:
    """The peak, or pumps for it."""
    return g["inflow"] * g["peaking_factor"] / g.get("bypass_pump", 1)


def trucks(g: Given, u: str) -> float:
    """What one hauls, in gpm or L/s, or how many it takes."""
    one = g["truck_volume"] / g["round_trip"] * (1 if u == "us" else 1000 / 60)
    return g["inflow"] / one if "inflow" in g else one


BY_HAND: ByHand = {
    "running_load": lambda g, u: load(g, u) / g.get("load_power_factor", 1),
    "largest_start": peak,
    "generator_share": share,
    "generator_amps": amps,
    "generator_frequency": frequency,
    "fuel_hours": fuel,
    "bypass_flow": bypass,
    "trucks_needed": trucks,
}
