"""Three legs worked by hand in plain numbers; the tests hold answers to it.

Unbalance is the largest deviation from the average over the average (NEMA MG 1, for volts); spread
is highest minus lowest over the average (common practice). The heating rule is that of US DOE Tip
Sheet 7. Amps, volts and powers are in the units of the case, shares in percent.
"""

from collections.abc import Sequence
from statistics import mean

from solver.topics.by_hand import ByHand, Given

__all__ = [
    "BY_HAND",
    "average_amps",
    "current_unbalance",
    "derated_power",
    "deviation",
    "highest",
    "unbalance",
    "voltage_unbalance",
]

# NEMA MG 1 Figure 14-1 (from memory, a graph read to about 2 % of nameplate): percent of the
# rating at 0 to 5 % of voltage unbalance.
GRAPH = (100, 100, 95, 88, 82, 75)


def amps(given: Given) -> list[float]:
    return [given[f"amps_{leg}"] for leg in "abc"]


def average_amps(given: Given) -> float:
    """In A: of the three legs, or from the deviation and the percent it is of the average."""
    if "amps_a" in given:
        return mean(amps(given))
    return 100 * given["amps_deviation"] / given["current_unbalance"]


def deviation(readings: Sequence[float]) -> float:
    """The largest deviation from the average, in the unit of the readings."""
    return max(abs(reading - mean(readings)) for reading in readings)


def unbalance(readings: Sequence[float]) -> float:
    """In percent."""
    return 100 * deviation(readings) / mean(readings)


def amps_deviation(given: Given, units: str) -> float:
    """In A: of the three legs, or so many percent of the average."""
    if "amps_a" in given:
        return deviation(amps(given))
    return given["current_unbalance"] / 100 * given["amps_average"]


def current_unbalance(given: Given, units: str) -> float:
    """In percent, from the legs or from what a report says of them."""
    if "amps_a" in given:
        return unbalance(amps(given))
    return 100 * given["amps_deviation"] / given["amps_average"]


def current_spread(given: Given, units: str) -> float:
    """In percent, as the field has it."""
    readings = amps(given)
    return 100 * (max(readings) - min(readings)) / mean(readings)


def voltage_unbalance(given: Given, units: str) -> float:
    """In percent: as told, from the report, or from the three readings line to line."""
    if "voltage_unbalance" in given:
        return given["voltage_unbalance"]
    if "volts_deviation" in given:
        return 100 * given["volts_deviation"] / given["volts_average"]
    return unbalance([given[f"volts_{pair}"] for pair in ("ab", "bc", "ca")])


def derated_power(given: Given, units: str) -> float:
    """In hp or kW: the rating times the graph's percent, between two points by a line."""
    percent = voltage_unbalance(given, units)
    low = min(int(percent), 4)
    allowed = GRAPH[low] + (GRAPH[low + 1] - GRAPH[low]) * (percent - low)
    return given["motor_size"] * allowed / 100


def unbalanced_rise(given: Given, units: str) -> float:
    """In °C: the extra, in percent, is twice the unbalance squared."""
    return given["balanced_rise"] * (1 + 2 * voltage_unbalance(given, units) ** 2 / 100)


def highest(given: Given) -> float:
    """In A: the highest leg."""
    return given["amps_highest"] if "amps_highest" in given else max(amps(given))


def service_factor_amps(given: Given, units: str) -> float:
    """In A: full-load amps, as told or from the highest leg's percent of them, times the factor."""
    if "full_load_amps" in given:
        return given["full_load_amps"] * given["service_factor"]
    return 100 * given["amps_highest"] / given["load_amps"] * given["service_factor"]


BY_HAND: ByHand = {
    "amps_average": lambda g, u: average_amps(g),
    "amps_deviation": amps_deviation,
    "current_unbalance": current_unbalance,
    "current_spread": current_spread,
    "voltage_unbalance": voltage_unbalance,
    "derated_power": derated_power,
    "unbalanced_rise": unbalanced_rise,
    "load_amps": lambda g, u: 100 * highest(g) / g["full_load_amps"],
    "service_factor_amps": service_factor_amps,
}
