"""Pump curves and kinds of pumps, worked by hand in plain numbers; the tests hold answers to it.

A psi holds up 2.31 ft of water and a kilopascal 0.102 m. The rim of an impeller runs at the square root
of 2gH: 1,840 in inches, rpm and ft, 84,600 in mm, rpm and m (Abulencia & Theodore, Ex 22.4). A gallon
is 231 cubic inches, and 0.785 of a square is the circle in it.
"""

from math import sqrt

from solver.topics.by_hand import ByHand, Given
from solver.topics.horsepower.by_hand import PER_PRESSURE

__all__ = ["BY_HAND"]

RIM = {"us": 1840, "si": 84_600}
CUBIC = {"us": 231, "si": 1_000_000}
PER = {"us": 1, "si": 60}  # gallons a minute; liters a second


def tested(g: Given, u: str) -> float:
    """The shutoff head, as measured."""
    if "tested_shutoff" in g:
        return g["tested_shutoff"]
    return (g["shutoff_gauge"] - g["closed_suction"]) * PER_PRESSURE[u]


def theoretical(g: Given, u: str) -> float:
    """What strokes or turns move without slip."""
    if "theoretical_output" in g:
        return g["theoretical_output"]
    if "rotor_speed" in g:
        return g["turn_volume"] * g["rotor_speed"] / PER[u]
    if "plunger_diameter" in g:
        each = 0.785 * g["plunger_diameter"] ** 2 * g["plunger_stroke"] / CUBIC[u]
    else:
        each = g["stroke_volume"]
    return each * g["stroke_rate"] * g.get("plungers", 1) / PER[u]


def output(g: Given, u: str) -> float:
    """What comes out."""
    return theoretical(g, u) * g.get("volumetric_efficiency", 100) / 100


def moved_by(g: Given, u: str) -> float:
    """The output of strokes or turns, or the turns a minute that an output takes."""
    if "pd_output" in g:
        return g["pd_output"] / g["volumetric_efficiency"] * 100 / g["turn_volume"] * PER[u]
    return output(g, u)


def shutoff(g: Given, u: str) -> float:
    """The measured shutoff head, or what it is of the curve's."""
    if "curve_shutoff" in g:
        return 100 * tested(g, u) / g["curve_shutoff"]
    return tested(g, u)


def rim(g: Given, u: str) -> float:
    """The impeller of a shutoff head, or the shutoff head of an impeller."""
    if "impeller_diameter" in g:
        return (g["impeller_diameter"] * g["pump_speed"] / RIM[u]) ** 2
    return RIM[u] * sqrt(tested(g, u)) / g["pump_speed"]


def together(g: Given, u: str) -> float:
    """Two pumps: flows side by side, heads in series, or the gauge after both."""
    if "second_flow" in g:
        return g["flow"] + g["second_flow"]
    both = g["head"] + g["second_head"]
    return both / PER_PRESSURE[u] + g["suction_gauge"] if "suction_gauge" in g else both


def slip(g: Given, u: str) -> float:
    """The slip, in percent."""
    return 100 * (theoretical(g, u) - g["pd_output"]) / theoretical(g, u)


BY_HAND: ByHand = {
    "shutoff_test": shutoff,
    "impeller_from_shutoff": rim,
    "pumps_together": together,
    "plunger_output": output,
    "stroke_output": moved_by,
    "slip_of_a_pump": slip,
}
