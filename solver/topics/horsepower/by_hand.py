"""The power from water to wire, worked by hand in plain numbers; the tests hold answers to it.

Water horsepower is gpm x ft / 3,960 (Alabama Extension ANR-0548); in kilowatts it is L/s x m / 102
(Merkley & Allen, Utah State University, p. 123). One horsepower is 0.746 kW, 1 psi holds up 2.31 ft
of water and 1 kPa holds up 0.102 m, 1 MGD is 694.4 gpm and 86.4 m3 a day is 1 L/s (common practice).
"""

from solver.topics.by_hand import ByHand, Given

__all__ = [
    "BY_HAND",
    "CONSTANT",
    "KILOWATTS",
    "PER_PRESSURE",
    "brake",
    "motor",
    "share",
    "water",
]

CONSTANT = {"us": 3960, "si": 102}
PER_PRESSURE = {"us": 2.31, "si": 0.102}
KILOWATTS = {"us": 0.746, "si": 1}


def share(given: Given, machine: str) -> float:
    """What a machine passes on of 1; all of it where it has no efficiency."""
    return given.get(f"{machine}_efficiency", 100) / 100


def flow(given: Given, units: str) -> float:
    """In gpm or L/s."""
    if "daily_flow" in given:
        return given["daily_flow"] * 694.4 if units == "us" else given["daily_flow"] / 86.4
    return given["flow"]


def head(given: Given, units: str) -> float:
    """In ft or m."""
    return given["pressure"] * PER_PRESSURE[units] if "pressure" in given else given["head"]


def water(given: Given, units: str) -> float:
    """What the water gets, in hp or kW: as told, from flow and head, or from the shaft."""
    if "water_power" in given:
        return given["water_power"]
    if {"flow", "daily_flow"} & set(given) and {"head", "pressure"} & set(given):
        return flow(given, units) * head(given, units) / CONSTANT[units]
    return brake(given, units) * share(given, "pump")


def brake(given: Given, units: str) -> float:
    """What the pump's shaft carries, in hp or kW: as told, from the wire, or from the water."""
    if "brake_power" in given:
        return given["brake_power"]
    if {"motor_power", "input_power"} & set(given) and "motor_efficiency" in given:
        return motor(given, units) * share(given, "motor") * share(given, "drive")
    return water(given, units) / share(given, "pump")


def motor(given: Given, units: str) -> float:
    """What the motor takes in, in hp or kW: as told, from the meter, or from the shaft or water."""
    if "motor_power" in given:
        return given["motor_power"]
    if "input_power" in given:
        return given["input_power"] / KILOWATTS[units]
    if "overall_efficiency" in given:
        return water(given, units) / share(given, "overall")
    return brake(given, units) / share(given, "drive") / share(given, "motor")


BY_HAND: ByHand = {
    "water_power": water,
    "brake_power": brake,
    "motor_power": motor,
    "flow_from_power": lambda g, u: water(g, u) * CONSTANT[u] / head(g, u),
    "head_from_power": lambda g, u: water(g, u) * CONSTANT[u] / flow(g, u),
}
