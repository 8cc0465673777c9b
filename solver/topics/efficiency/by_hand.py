"""Efficiencies and motor sizes, worked by hand in plain numbers; the tests hold answers to it."""

from solver.topics.by_hand import ByHand, Given
from solver.topics.horsepower.by_hand import KILOWATTS, brake, motor, share, water
from solver.topics.tables import motor_sizes

__all__ = ["BY_HAND"]


def pump_efficiency(given: Given, units: str) -> float:
    """In percent: from the whole chain less the motor's part, or from the powers."""
    if "overall_efficiency" in given:
        return given["overall_efficiency"] / share(given, "motor")
    return 100 * water(given, units) / brake(given, units)


def standard_size(given: Given, units: str) -> float:
    """In hp or kW: the smallest motor that carries the load behind the drive."""
    load = brake(given, units) / share(given, "drive")
    return min(size for size in motor_sizes(units) if size >= load)


BY_HAND: ByHand = {
    "pump_efficiency": pump_efficiency,
    "motor_efficiency": lambda g, u: 100 * brake(g, u) / motor(g, u),
    "wire_to_water": lambda g, u: 100 * water(g, u) / motor(g, u),
    "efficiencies_in_a_row": lambda g, u: (
        100 * share(g, "pump") * share(g, "drive") * share(g, "motor")
    ),
    "pump_from_overall": pump_efficiency,
    "one_efficiency": motor,
    "through_the_drive": lambda g, u: motor(g, u) * KILOWATTS[u],
    "motor_size": standard_size,
}
