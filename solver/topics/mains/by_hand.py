"""Force mains and measuring flow, worked by hand in plain numbers; the tests hold answers to it.

A cubic foot holds 7.48 gal, and a round pipe has 0.785 of the square around it. Velocity is 0.4085 gpm over
inches squared, or 1,273 L/s over mm squared. Surge is wave speed times velocity over g (Joukowsky). A weir
takes Francis' 3.33 in cfs and ft, 1,495 in gpm; a Parshall flume its own power, and from 1 ft up
4 W h^(1.522 W^0.026) in cfs and ft (Bureau of Reclamation).
"""

from math import sqrt

from solver.topics.by_hand import ByHand, Given
from solver.topics.horsepower.by_hand import PER_PRESSURE

__all__ = ["BY_HAND"]

GRAVITY = {"us": 32.2, "si": 9.81}
VELOCITY = {"us": 0.4085, "si": 1273}
FRANCIS = {"us": 1495, "si": 1838}
# In cfs with the head in feet: V-notches by their angle, and Parshall flumes by their throat, with the exponent.
NOTCHES = {22.5: 0.497, 30: 0.676, 45: 1.035, 60: 1.443, 90: 2.5, 120: 4.33}
INCHES = {3: (0.992, 1.547), 6: (2.06, 1.58), 9: (3.07, 1.53)}
METRIC = {76: 3, 152: 6, 229: 9, 305: 12, 457: 18, 610: 24, 914: 36}


def in_system(cfs: float, exponent: float, u: str) -> float:
    """A constant for gpm and feet, or for L/s and meters, to four figures as tables have it."""
    return float(f"{cfs * (448.83 if u == 'us' else 28.317 / 0.3048**exponent):.4g}")


def volume(g: Given, u: str) -> float:
    """What the main holds."""
    if u == "us":
        return 0.785 * (g["pipe_diameter"] / 12) ** 2 * g["pipe_length"] * 7.48
    return 0.785 * (g["pipe_diameter"] / 1000) ** 2 * g["pipe_length"]


def held(g: Given, u: str) -> float:
    """What the main holds, or the minutes, or the cycles, that it takes to push it out."""
    if "cycle_volume" in g:
        return volume(g, u) / g["cycle_volume"]
    if "flow" in g:
        return volume(g, u) / g["flow"] * (1 if u == "us" else 1000 / 60)
    return volume(g, u)


def flushing(g: Given, u: str) -> float:
    """The flow at a velocity, or the diameter that has it."""
    if "flow" in g:
        return sqrt(VELOCITY[u] * g["flow"] / g["velocity"])
    return g["velocity"] * g["pipe_diameter"] ** 2 / VELOCITY[u]


def surge(g: Given, u: str) -> float:
    """The wave's time, the full surge, or that of a slow closing."""
    if "velocity" not in g:
        return 2 * g["pipe_length"] / g["wave_speed"]
    full = g["wave_speed"] * g["velocity"] / GRAVITY[u] / PER_PRESSURE[u]
    if "closing_time" in g:
        return full * 2 * g["pipe_length"] / g["wave_speed"] / g["closing_time"]
    return full


def notch(g: Given, u: str) -> float:
    """The flow over a V-notch, or the head that it takes."""
    at = g.get("notch_constant") or in_system(NOTCHES[g["notch_angle"]], 2.5, u)
    if "weir_flow" in g:
        return float((g["weir_flow"] / at) ** 0.4)
    return float(at * g["weir_head"] ** 2.5)


def crest(g: Given, u: str) -> float:
    """The flow over a level crest."""
    head = g["weir_head"] if "weir_head" in g else g["upstream_depth"] - g["crest_height"]
    long = g["crest_length"] if "crest_length" in g else g["contracted_crest"] - 0.2 * head
    return float(FRANCIS[u] * long * head**1.5)


def flume(g: Given, u: str) -> float:
    """The flow through a flume, or the head in it, by a constant worked from that for cfs and feet."""
    if "flume_constant" in g:
        return float(g["flume_constant"] * g["flume_head"] ** g["flume_exponent"])
    inches = g["flume_throat"] if u == "us" else METRIC[round(g["flume_throat"])]
    wide = inches / 12
    cfs, exponent = INCHES.get(round(inches), (4 * wide, round(1.522 * wide**0.026, 3)))
    constant = in_system(cfs, exponent, u)
    if "flume_flow" in g:
        return float((g["flume_flow"] / constant) ** (1 / exponent))
    return float(constant * g["flume_head"] ** exponent)


def throat(g: Given, u: str) -> float:
    """The flow through a Venturi tube or an orifice."""
    if "full_flow" in g:
        return g["full_flow"] * sqrt(g["differential_share"] / 100)
    narrow = (g["throat_diameter"] / g["pipe_diameter"]) ** 4
    ideal = sqrt(2 * GRAVITY[u] * g["differential_head"] / (1 - narrow))
    return g["discharge_coefficient"] * ideal * g["throat_diameter"] ** 2 / VELOCITY[u]


def error(g: Given, u: str) -> float:
    """How far a meter is off a tested flow, in percent."""
    if "flow" in g:
        tested = g["flow"]
    elif u == "us":
        tested = (
            g["drawdown_read"] / 12 * g["volume_per_depth"] * 60 / g["drawdown_time"] + g["inflow"]
        )
    else:
        tested = g["drawdown_read"] * 10 * g["volume_per_depth"] / g["drawdown_time"] + g["inflow"]
    return 100 * (g["metered_flow"] - tested) / tested


BY_HAND: ByHand = {
    "what_a_main_holds": held,
    "flushing_flow": flushing,
    "surge": surge,
    "v_notch": notch,
    "rectangular_weir": crest,
    "parshall_flume": flume,
    "throat_meter": throat,
    "meter_against_test": error,
}
