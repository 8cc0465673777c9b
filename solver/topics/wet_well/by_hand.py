"""Wet wells worked by hand in plain numbers; the tests hold answers to it.

A round well has 0.785 of the square around it and a cubic foot holds 7.48 gal, both as taught. Pump
rate = drawdown rate + inflow (common practice, no source). V = T q / 4 is that of EI 11C201 (1997)
chapter 7. Volumes are in gal or m3, flows in gpm or L/s, times in minutes, as the case has them.
"""

from solver.topics.by_hand import ByHand, Given

__all__ = ["BY_HAND", "comes_in", "cycle", "fill", "minutes", "pumps", "rises", "working"]

FLOOR = {"us": 7.48, "si": 1}  # volume over a square foot, one foot deep, or over a square metre
DEPTH_IN = {"us": 12, "si": 100}  # inches in a foot, centimetres in a metre
A_MINUTE = {"us": 1, "si": 0.06}  # the volume that a unit of flow moves in a minute


def per_depth(g: Given, u: str) -> float:
    """Gallons a foot, or cubic metres a metre."""
    if "volume_per_depth" in g:
        return g["volume_per_depth"]
    if "working_volume" in g:
        return g["working_volume"] / between(g)
    if "well_diameter" in g:
        return 0.785 * g["well_diameter"] ** 2 * FLOOR[u]
    return g["well_length"] * g["well_width"] * FLOOR[u]


def between(g: Given) -> float:
    """Depth between floats, in ft or m."""
    return g["working_depth"] if "working_depth" in g else g["on_level"] - g["off_level"]


def working(g: Given, u: str) -> float:
    """Volume between floats."""
    return g.get("working_volume") or per_depth(g, u) * between(g)


def minutes(volume: float, rate: float, u: str) -> float:
    """How long a flow takes for a volume."""
    return volume / (rate * A_MINUTE[u])


def moved(name: str, g: Given, u: str) -> float:
    """The rate of a change of level."""
    volume = g.get(f"{name}_volume")
    if volume is None:
        volume = per_depth(g, u) * g[f"{name}_read"] / DEPTH_IN[u]
    return volume / (g[f"{name}_time"] / 60) / A_MINUTE[u]


def comes_in(g: Given, u: str) -> float:
    """Inflow: as told, or by how fast the level rises."""
    if "inflow" in g:
        return g["inflow"]
    return moved("closed_rise" if "closed_rise_time" in g else "rise", g, u)


def rises(g: Given, u: str) -> float:
    """What fills the well with the pumps off."""
    return g.get("rise_rate") or moved("rise", g, u)


def pumps(g: Given, u: str) -> float:
    """A pump's flow: as told, or what the well loses and what comes in."""
    if "flow" in g:
        return g["flow"]
    return (g.get("drawdown_rate") or moved("drawdown", g, u)) + comes_in(g, u)


def fill(g: Given, u: str) -> float:
    """Minutes to fill between floats."""
    return g.get("fill_time") or minutes(working(g, u), comes_in(g, u), u)


def empty(g: Given, u: str) -> float:
    """Minutes to pump down between floats."""
    return g.get("pump_down_time") or minutes(working(g, u), g["flow"] - g["inflow"], u)


def cycle(g: Given, u: str) -> float:
    """Minutes from start to start."""
    return g.get("cycle_time") or fill(g, u) + empty(g, u)


def starts(g: Given, u: str) -> float:
    """Starts of the station in an hour."""
    return g.get("starts_per_hour") or 60 / cycle(g, u)


def least_volume(g: Given, u: str) -> float:
    """A quarter of what the pump moves in the least cycle."""
    shortest = g.get("least_cycle") or 60 / (g["most_starts"] * g.get("alternating_pumps", 1))
    return shortest * A_MINUTE[u] * pumps(g, u) / 4


def least_depth(g: Given, u: str) -> float:
    """How far apart the floats must be, in ft or m."""
    return (g.get("least_volume") or least_volume(g, u)) / per_depth(g, u)


def stored(g: Given, u: str) -> float:
    """What well and sewer still hold up to the overflow."""
    if "storage_volume" in g:
        return g["storage_volume"]
    depth = g.get("storage_depth") or g["depth_to_water"] - g["depth_to_overflow"]
    return per_depth(g, u) * depth + g.get("sewer_storage", 0)


def hours(g: Given, u: str) -> float:
    """Hours that all the pumps run in a day."""
    if "pump_hours" in g:
        return g["pump_hours"] * g["alternating_pumps"]
    return g.get("hours_per_day") or minutes(g["daily_inflow"], pumps(g, u), u) / 60


def well_volume(g: Given, u: str) -> float:
    """What is in the well now."""
    depth = g.get("water_depth") or g["depth_to_floor"] - g["depth_to_water"]
    return per_depth(g, u) * depth


BY_HAND: ByHand = {
    "well_volume": well_volume,
    "volume_per_depth": per_depth,
    "drawdown_flow": pumps,
    "inflow": comes_in,
    "leakage": lambda g, u: rises(g, u) - comes_in(g, u),
    "fill_time": fill,
    "pump_down_time": empty,
    "cycle_time": cycle,
    "starts_per_hour": starts,
    "pump_starts": lambda g, u: starts(g, u) / g["alternating_pumps"],
    "least_volume": least_volume,
    "least_depth": least_depth,
    "shortest_cycle": lambda g, u: 4 * minutes(working(g, u), g["flow"], u),
    "run_hours": hours,
    "pump_hours": lambda g, u: hours(g, u) / g["alternating_pumps"],
    "daily_inflow": lambda g, u: hours(g, u) * 60 * A_MINUTE[u] * pumps(g, u),
    "storage_time": lambda g, u: minutes(stored(g, u), g["inflow"], u),
}
