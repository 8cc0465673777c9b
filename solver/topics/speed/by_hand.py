"""Speed and impeller worked by hand in plain numbers; the tests hold answers to it.

Flow, head and power go with the ratio of speeds or of diameters, its square and its cube (Solberg,
Ex 9.10); the last holds only with no static head (US DOE Tip Sheet 11). Curves are parabolas, and
where they cross is found by halving an interval. All is in the units of the case.
"""

from math import cbrt, pow, sqrt

from solver.topics.by_hand import ByHand, Given
from solver.topics.horsepower.by_hand import PER_PRESSURE

__all__ = ["BY_HAND", "added", "crossing", "ratio", "specific_speed", "static"]

PER_SECOND = {"us": 1, "si": 1000}  # the metric specific speed takes m3 a second


def ratio(g: Given) -> float:
    """What the speed, the diameter or the flow is now, over what it was."""
    if "speed_cut" in g:
        return 1 - g["speed_cut"] / 100
    for now, before, root in (
        ("new_speed", "pump_speed", 1),
        ("new_diameter", "impeller_diameter", 1),
        ("new_flow", "flow", 1),
        ("new_head", "head", 2),
    ):
        if now in g and before in g:
            return pow(g[now] / g[before], 1 / root)
    return cbrt(g["new_shaft_power"] / g["brake_power"])


def static(g: Given) -> float:
    """The static head: as told, or from level to level."""
    if "static_head" in g:
        return g["static_head"]
    return g["discharge_elevation"] - g["suction_elevation"]


def slowed_head(g: Given) -> float:
    """The head at the new flow: the static part stays, the rest goes with the square."""
    lift = static(g)
    return lift + (g["head"] - lift) * (g["new_flow"] / g["flow"]) ** 2


def slowed_power(g: Given, u: str) -> float:
    """In kW: by flow times head where water is lifted, or by the cube."""
    if "static_head" in g:
        return g["input_power"] * g["new_flow"] / g["flow"] * slowed_head(g) / g["head"]
    return g["input_power"] * ratio(g) ** 3


def slowed_energy(g: Given, u: str) -> float:
    """Energy per volume: by the head where water is lifted, or by the square."""
    if "static_head" in g:
        return g["energy_per_volume"] * slowed_head(g) / g["head"]
    return g["energy_per_volume"] * ratio(g) ** 2


def friction(g: Given, flow: float) -> float:
    """Friction loss at a flow, from where it is known."""
    known = "known" if "known_friction" in g else "rated"
    return g[f"{known}_friction"] * (flow / g[f"{known}_flow"]) ** 2


def crossing(g: Given, pumps: int = 1) -> float:
    """The flow at which so many pumps give what the system asks."""

    def spare(flow: float) -> float:
        fall = g["shutoff_head"] - g["rated_head"]
        gives = g["shutoff_head"] - fall * (flow / pumps / g["rated_flow"]) ** 2
        return gives - static(g) - friction(g, flow)

    low, high = 0.0, 20 * g["rated_flow"]
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if spare(middle) > 0 else (low, middle)
    return low


def system_head(g: Given, u: str) -> float:
    """What the system asks at the flow told, or at that where the curves cross."""
    return static(g) + friction(g, g["flow"] if "flow" in g else crossing(g))


def added(g: Given) -> float:
    """The flow that a second pump adds."""
    if "parallel_flow" in g:
        return g["parallel_flow"] - g["flow"]
    return crossing(g, 2) - crossing(g)


def specific_speed(g: Given, u: str) -> float:
    """From rpm, gpm and ft of one stage, or from rpm, m3/s and m."""
    head = g["head"] if "head" in g else g["pressure"] * PER_PRESSURE[u]
    return g["pump_speed"] * sqrt(g["flow"] / PER_SECOND[u]) / pow(head / g.get("stages", 1), 0.75)


BY_HAND: ByHand = {
    "new_flow": lambda g, u: g["flow"] * ratio(g),
    "new_head": lambda g, u: g["head"] * ratio(g) ** 2,
    "new_shaft_power": lambda g, u: g["brake_power"] * ratio(g) ** 3,
    "new_speed": lambda g, u: g["pump_speed"] * ratio(g),
    "new_diameter": lambda g, u: g["impeller_diameter"] * ratio(g),
    "power_cut": lambda g, u: 100 * (1 - ratio(g) ** 3),
    "slowed_power": slowed_power,
    "slowing_saves": lambda g, u: (g["input_power"] - slowed_power(g, u)) * g["yearly_hours"],
    "slowed_energy_per_volume": slowed_energy,
    "least_speed": lambda g, u: g["pump_speed"] * sqrt(static(g) / g["shutoff_head"]),
    "operating_flow": lambda g, u: crossing(g),
    "operating_head": system_head,
    "parallel_flow": lambda g, u: crossing(g, 2),
    "second_pump": lambda g, u: added(g),
    "specific_speed": specific_speed,
}
