"""Drives worked by hand in plain numbers; the tests hold answers to it.

D1 N1 = D2 N2 and belt speed pi D N (Sarkar, Theory of Machines; Wentzell, Machine Design); torque is
5,252 hp over rpm, or 9,549 kW over rpm (Hubert, Electric Machines); grease by 0.114 D B ounces or
0.005 D B grams (bearing handbooks, from memory).
"""

from solver.topics.by_hand import ByHand, Given

__all__ = ["BY_HAND"]

TORQUE = {"us": 5252, "si": 9549}
GREASE = {"us": 0.114, "si": 0.005}
RIM = {"us": 12, "si": 60_000}


def sheave(g: Given, u: str) -> float:
    """The pump's sheave for a speed, or the motor's new one."""
    if "new_speed" in g:
        return g["motor_sheave"] * g["new_speed"] / g["pump_speed"]
    return g["motor_sheave"] * g["running_speed"] / g["pump_speed"]


def belt_speed(g: Given, u: str) -> float:
    """From the sheave whose speed is known; pi is 3.14 here."""
    if "running_speed" in g:
        return 3.14 * g["motor_sheave"] * g["running_speed"] / RIM[u]
    return 3.14 * g["pump_sheave"] * g["pump_speed"] / RIM[u]


def torque(g: Given, u: str) -> float:
    """Of the motor's nameplate, or of the pump's shaft."""
    if "motor_size" in g:
        return TORQUE[u] * g["motor_size"] / g["rated_speed"]
    power = g.get("brake_power") or g["motor_output"] * g["drive_efficiency"] / 100
    return TORQUE[u] * power / g["pump_speed"]


def alignment(g: Given, u: str) -> float:
    """Half an indicator reading, or the shim by the ratio of foot spacing to coupling."""
    if "rim_reading" in g:
        return g["rim_reading"] / 2
    return (g["wide_gap"] - g["narrow_gap"]) * g["foot_spacing"] / g["coupling_diameter"]


def grease(g: Given, u: str) -> float:
    """By weight, or in strokes."""
    amount = GREASE[u] * g["bearing_diameter"] * g["bearing_width"]
    return amount / g.get("grease_per_stroke", 1)


def days(g: Given, u: str) -> float:
    """What is left of the interval, in days."""
    since = g.get("hour_meter", 0) - g.get("hour_meter_greased", 0)
    return (g["grease_interval"] - since) / g["hours_per_day"]


def rings(g: Given, u: str) -> float:
    """The clearance, or what percent of the new one it is."""
    gap = g["case_ring_bore"] - g["impeller_ring_diameter"]
    return gap / g["new_ring_gap"] * 100 if "new_ring_gap" in g else gap


BY_HAND: ByHand = {
    "driven_speed": lambda g, u: g["running_speed"] * g["motor_sheave"] / g["pump_sheave"]
    * (1 - g.get("belt_slip", 0) / 100),
    "sheave_needed": sheave,
    "belt_speed": belt_speed,
    "shaft_torque": torque,
    "power_from_torque": lambda g, u: g["shaft_torque"] * g["pump_speed"] / TORQUE[u]
    / g.get("drive_efficiency", 100) * 100,
    "alignment_shims": alignment,
    "grease_amount": grease,
    "days_to_grease": days,
    "ring_wear": rings,
}  # fmt: skip
