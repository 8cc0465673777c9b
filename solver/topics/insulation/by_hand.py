"""Insulation and windings worked by hand in plain numbers; the tests hold answers to it.

A one-minute reading halves for every 10 °C warmer (IEEE 43), volts over amps are ohms, and a
winding made before about 1970 must read kV + 1 megohms. Readings are in megohms, ohms, µA and °C,
in both systems.
"""

from solver.topics.balance.by_hand import unbalance
from solver.topics.by_hand import ByHand, Given

__all__ = ["BY_HAND", "at_40", "index", "kept", "over", "ratio", "reading", "uneven"]


def reading(given: Given, turn: str = "") -> float:
    """In megohms: as told, by Ohm's law, or from the record at 40 °C; `turn` is "_before" or none."""
    if f"insulation{turn}" in given:
        return given[f"insulation{turn}"]
    if "leakage_current" in given:
        return given["test_volts"] / (given["leakage_current"] * 1e-6) / 1e6
    return given["insulation_at_40"] * 2 ** ((40 - given["winding_temperature"]) / 10)


def at_40(given: Given, turn: str = "") -> float:
    """In megohms at 40 °C: half as much for each ten degrees more."""
    if f"insulation_at_40{turn}" in given:
        return given[f"insulation_at_40{turn}"]
    return reading(given, turn) / 2 ** ((40 - given[f"winding_temperature{turn}"]) / 10)


def least(given: Given, units: str) -> float:
    """In megohms: one for each kilovolt, and one more."""
    return 1 + (
        given["rated_kilovolts"] if "rated_kilovolts" in given else given["rated_volts"] / 1000
    )


def over(given: Given, first: str, last: str) -> float:
    """A later reading over an earlier one: of megohms, or of leakage upside down."""
    if f"insulation_{last}" in given:
        return given[f"insulation_{last}"] / given[f"insulation_{first}"]
    return given[f"leakage_{first}"] / given[f"leakage_{last}"]


def index(given: Given) -> float:
    """The polarization index: ten minutes over one."""
    return given.get("polarization_index") or over(given, "1min", "10min")


def ratio(given: Given) -> float:
    """The absorption ratio: 60 seconds over 30."""
    return given.get("absorption_ratio") or over(given, "30s", "1min")


def kept(given: Given) -> float:
    """Percent of the earlier reading, both at 40 °C."""
    return 100 * at_40(given) / at_40(given, "_before")


def uneven(given: Given) -> float:
    """Percent: the largest deviation of the three ohms from their average, over the average."""
    if "ohms_average" in given:
        return 100 * given["ohms_deviation"] / given["ohms_average"]
    return unbalance([given[f"ohms_{leads}"] for leads in ("12", "23", "31")])


BY_HAND: ByHand = {
    "insulation_at_40": lambda g, u: at_40(g),
    "insulation_reading": lambda g, u: reading(g),
    "least_insulation": least,
    "absorption_ratio": lambda g, u: ratio(g),
    "polarization_index": lambda g, u: index(g),
    "insulation_kept": lambda g, u: kept(g),
    "resistance_unbalance": lambda g, u: uneven(g),
}
