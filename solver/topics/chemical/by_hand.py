"""Chemical feed worked by hand in plain numbers; the tests hold answers to it.

lb/day = MGD x mg/L x 8.34, or kg/day = m3/day x mg/L / 1,000; a solution by its strength and its weight;
3,785 mL to the gallon; C1 V1 = C2 V2 (any operators' course).
"""

from solver.topics.by_hand import ByHand, Given

__all__ = ["BY_HAND"]

POUNDS = {"us": 8.34, "si": 0.001}
WATER = {"us": 8.34, "si": 1.0}
MILLILITERS = {"us": 3785, "si": 1000}


def feed(g: Given, u: str) -> float:
    """In lb/day or kg/day."""
    if "chemical_feed" in g:
        return g["chemical_feed"]
    dose = g["dose"] if "dose" in g else g["chlorine_demand"] + g["chlorine_residual"]
    if "flow" in g:
        return (g["flow"] / 694.4 if u == "us" else g["flow"] * 86.4) * dose * POUNDS[u]
    return g["daily_flow"] * dose * POUNDS[u]


def weight(g: Given, u: str) -> float:
    """Of a gallon or a liter of solution, in pounds or kilograms."""
    if "solution_weight" in g:
        return g["solution_weight"] / (1 if u == "us" else 1000)
    return g["specific_gravity"] * WATER[u]


def minute(g: Given) -> float:
    """In mL/min, from the drawdown cylinder."""
    return g["cylinder_volume"] / g["cylinder_time"] * 60


def hour(g: Given, u: str) -> float:
    """Solution in gph or L/h."""
    if "solution_hour" in g:
        return g["solution_hour"]
    if "cylinder_volume" in g:
        return minute(g) * 60 / MILLILITERS[u]
    if "solution_minute" in g:
        return g["solution_minute"] * 60 / MILLILITERS[u]
    return solution(g, u) / 24


def solution(g: Given, u: str) -> float:
    """In gallons or liters a day."""
    if "solution_flow" in g:
        return g["solution_flow"]
    if "cylinder_volume" in g or "solution_minute" in g:
        return hour(g, u) * 24
    return feed(g, u) / (g["solution_strength"] / 100) / weight(g, u)


def dose(g: Given, u: str) -> float:
    """In mg/L, from the chemical or the solution that was fed."""
    if "chemical_feed" in g:
        return g["chemical_feed"] / g["daily_flow"] / POUNDS[u]
    fed = solution(g, u) * weight(g, u) * g["solution_strength"] / 100
    return fed / g["daily_flow"] / POUNDS[u]


def settings(g: Given, u: str) -> float:
    """An output, or the speed in percent for one."""
    if "wanted_minute" in g:
        return g["speed_setting"] * g["wanted_minute"] / minute(g)
    if "speed_setting" in g:
        return g["feeder_capacity"] * g["stroke_setting"] * g["speed_setting"] / 10_000
    return g["solution_hour"] / (g["feeder_capacity"] * g["stroke_setting"] / 100) * 100


def cylinder(g: Given, u: str) -> float:
    """In mL/min, as a percent of the capacity, or as a dose."""
    if "feeder_capacity" in g:
        return hour(g, u) / g["feeder_capacity"] * 100
    return dose(g, u) if "daily_flow" in g else minute(g)


def dilution(g: Given, u: str) -> float:
    """The strong solution in a batch, or the water that goes with it."""
    if "mixed_volume" in g:
        return g["mixed_volume"] * g["mixed_strength"] / g["strong_strength"]
    return g["strong_volume"] * (g["strong_strength"] / g["mixed_strength"] - 1)


BY_HAND: ByHand = {
    "chemical_feed": feed,
    "dose_from_feed": dose,
    "solution_flow": solution,
    "feed_pump_rate": lambda g, u: hour(g, u) * MILLILITERS[u] / 60,
    "days_of_supply": lambda g, u: g["solution_on_hand"] / solution(g, u),
    "drawdown_cylinder": cylinder,
    "stroke_and_speed": settings,
    "dilution": dilution,
}
