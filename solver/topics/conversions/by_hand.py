"""Units for pump work, worked by hand in plain numbers; the tests hold answers to it.

A cubic foot is 7.48 gallons, so 1 cfs is 448.8 gpm; 1 MGD is 694.4 gpm. Water is 8.34 lb a gallon
or 1,000 kg a cubic meter; a psi holds up 2.31 ft of it and a kilopascal 0.102 m (common practice).
The rest is what the units are.
"""

from collections.abc import Callable, Mapping

from solver.topics.by_hand import ByHand, Given
from solver.topics.horsepower.by_hand import PER_PRESSURE

__all__ = ["BY_HAND"]

# How many of the flow's own unit (gpm | L/s) one of each other is.
FLOWS = {
    "us": {
        "flow": 1,
        "flow_per_hour": 1 / 60,
        "flow_per_second": 448.8,
        "daily_flow": 694.4,
        "flow_per_day": 1 / 1440,
    },
    "si": {
        "flow": 1,
        "flow_per_hour": 1000 / 3600,
        "flow_per_second": 1000,
        "daily_flow": 1000 / 86_400,
        "flow_per_day": 1e6 / 86_400,
    },
}
# How many kilowatts one of each is.
POWERS = {
    "us": {"horsepower_rating": 0.746, "kilowatt_rating": 1, "shaft_work": 0.746 / 33_000},
    "si": {"horsepower_rating": 0.746, "kilowatt_rating": 1, "shaft_work": 0.001},
}
PER_UNIT_OF_WATER = {"us": 8.34, "si": 1000}  # lb a gallon | kg a cubic meter
PER_VOLUME = {"us": 7.48, "si": 0.001}  # gallons in a cubic foot | cubic meters in a liter


def changed(
    factors: Mapping[str, Mapping[str, float]], asked: str
) -> Callable[[Given, str], float]:
    """The one reading given, in the unit of what is asked."""

    def by_hand(given: Given, units: str) -> float:
        ((name, value),) = given.items()
        return value * factors[units][name] / factors[units][asked]

    return by_hand


def flow_drop(given: Given, units: str) -> float:
    """In percent of the flow before."""
    lost = given["flow_drop"] if "flow_drop" in given else given["earlier_flow"] - given["flow"]
    return 100 * lost / given["earlier_flow"]


def water_height(given: Given, units: str) -> float:
    """In ft or m above the gauge."""
    if "tank_depth" in given:
        return given["tank_depth"] - given["tap_height"]
    if "water_height" in given:
        return given["water_height"]
    return gauge_pressure(given, units) * PER_PRESSURE[units]


def gauge_pressure(given: Given, units: str) -> float:
    """In psi or kPa."""
    if "gauge_pressure" in given:
        return given["gauge_pressure"]
    if "second_scale" in given:
        return given["second_scale"] / 6.895 if units == "us" else given["second_scale"] * 100
    return water_height(given, units) / PER_PRESSURE[units]


def second_scale(given: Given, units: str) -> float:
    """In kPa or bar."""
    pressure = gauge_pressure(given, units)
    return pressure * 6.895 if units == "us" else pressure / 100


def water_volume(given: Given, units: str) -> float:
    """In gallons or cubic meters."""
    if "water_volume" in given:
        return given["water_volume"]
    if "water_weight" in given:
        return given["water_weight"] / PER_UNIT_OF_WATER[units]
    if "percent_full" in given:
        return given["tank_volume"] * given["percent_full"] / 100
    if "empty_volume" in given:
        return given["tank_volume"] - given["empty_volume"]
    return given["volume_converted"] * PER_VOLUME[units]


def lifting_work(given: Given, units: str) -> float:
    """In ft-lb a minute or watts: weight times height."""
    head = given["head"] if "head" in given else given["pressure"] * PER_PRESSURE[units]
    if "weight_flow" in given:
        return given["weight_flow"] * head
    return given["flow"] * (8.34 if units == "us" else 9.81) * head


BY_HAND: ByHand = {
    "flow_converted": changed(FLOWS, "flow"),
    "channel_flow": changed(FLOWS, "flow_per_second"),
    "daily_flow": changed(FLOWS, "daily_flow"),
    "flow_of_a_day": changed(FLOWS, "flow_per_day"),
    "flow_drop": flow_drop,
    "water_height": water_height,
    "gauge_pressure": gauge_pressure,
    "second_scale": second_scale,
    "water_volume": water_volume,
    "water_weight": lambda g, u: water_volume(g, u) * PER_UNIT_OF_WATER[u],
    "percent_full": lambda g, u: 100 * water_volume(g, u) / g["tank_volume"],
    "kilowatt_rating": changed(POWERS, "kilowatt_rating"),
    "horsepower_rating": changed(POWERS, "horsepower_rating"),
    "lifting_work": lifting_work,
}
