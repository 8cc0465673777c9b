"""Circuits, wire, transformers and demand, worked by hand in plain numbers; the tests hold answers to it.

E = I R (DOE-HDBK-1011), copper has about 12.9 ohms for a circular mil and a foot, or 0.0225 for a mm2
and a meter (NEC Chapter 9 Table 8; IEC 60364-5-52; warm), and three phases take 1.732.
"""

from solver.topics.by_hand import ByHand, Given
from solver.topics.horsepower.by_hand import KILOWATTS

__all__ = ["BY_HAND"]

COPPER = {"us": 12.9, "si": 0.0225}


def amps_volts_ohms(given: Given, units: str) -> float:
    """Whichever of the three is not given."""
    if "load_volts" not in given:
        return given["circuit_amps"] * given["load_ohms"]
    return given["load_volts"] / (given.get("load_ohms") or given["circuit_amps"])


def watts(given: Given, units: str) -> float:
    """In watts, or in kWh where it was on for some hours."""
    if "rated_watts" in given:
        return given["rated_watts"] / given["rated_volts"] ** 2 * given["load_volts"] ** 2
    if "load_ohms" in given:
        return given["load_volts"] ** 2 / given["load_ohms"]
    found = given["load_volts"] * given["circuit_amps"]
    return found * given["run_time"] / 1000 if "run_time" in given else found


def series(given: Given, units: str) -> float:
    """In ohms; the volts they use; or the volts that are left."""
    ohms = sum(given[f"series_ohms_{n}"] for n in (1, 2, 3))
    if "loop_current" not in given:
        return ohms
    used = given["loop_current"] / 1000 * ohms
    return given["loop_supply"] - used if "loop_supply" in given else used


def parallel(given: Given, units: str) -> float:
    """In ohms, or in amps on some volts."""
    through = sum(1 / value for name, value in given.items() if name.startswith("parallel_ohms_"))
    return given["load_volts"] * through if "load_volts" in given else 1 / through


def single(given: Given, units: str) -> float:
    """In kW from amps; in amps from kW or from the shaft."""
    per_amp = given["single_volts"] * given["power_factor"] / 1000
    if "single_amps" in given:
        return given["single_amps"] * per_amp
    if "input_power" in given:
        return given["input_power"] / per_amp
    return given["brake_power"] * KILOWATTS[units] / (given["motor_efficiency"] / 100) / per_amp


def drop(given: Given, units: str) -> float:
    """In volts."""
    if "far_volts" in given:
        return given["supply_volts"] - given["far_volts"]
    each = given["wire_ohms"] / 1000 if "wire_ohms" in given else COPPER[units] / given["wire_area"]
    one = given["run_length"] * each
    return (
        2 * one * given["single_amps"]
        if "single_amps" in given
        else 1.732 * one * given["line_amps"]
    )


def ratio(given: Given, units: str) -> float:
    """Secondary volts from the turns, or primary amps from the secondary's."""
    if "secondary_amps" not in given:
        return given["primary_volts"] / given["turns_ratio"]
    if "turns_ratio" in given:
        return given["secondary_amps"] / given["turns_ratio"]
    return given["secondary_amps"] * given["secondary_volts"] / given["primary_volts"]


def carries(given: Given, units: str) -> float:
    """In amps, or in percent of the rating."""
    if "transformer_va" in given:
        return given["transformer_va"] / given["secondary_volts"]
    if "line_amps" in given:
        kva = 1.732 * given["line_volts"] * given["line_amps"] / 1000
        return 100 * kva / given["transformer_kva"]
    return given["transformer_kva"] * 1000 / 1.732 / given["line_volts"]


def kva(given: Given, units: str) -> float:
    """In kVA, in dollars at a price, or in kW as the utility adjusts them."""
    found = given["peak_demand"] / given["power_factor"]
    return found * given.get("kva_price", 1) * given.get("required_power_factor", 1)


def load_factor(given: Given, units: str) -> float:
    """In percent; or the peak in kW from it."""
    hours = given["period_hours"] if "period_hours" in given else 24 * given["days"]
    average = given["energy"] / hours
    if "load_factor" in given:
        return average / given["load_factor"] * 100
    return 100 * average / given["peak_demand"]


BY_HAND: ByHand = {
    "ohms_law": amps_volts_ohms,
    "heater_watts": watts,
    "loop_ohms": series,
    "parallel_ohms": parallel,
    "single_phase_kilowatts": single,
    "voltage_drop": drop,
    "drop_percent": lambda g, u: 100 * drop(g, u) / g["supply_volts"],
    "transformer_ratio": ratio,
    "transformer_amps": carries,
    "kva_billing": kva,
    "load_factor": load_factor,
}
