"""Megohms, timed insulation tests, winding ohms."""

from types import MappingProxyType
from typing import TYPE_CHECKING

from solver.station.condition import at_temperature
from solver.station.supply import unbalance_of

from .legs import deviation
from .read import Reads

if TYPE_CHECKING:
    from solver.station.station import Station

__all__ = ["INSULATION"]


def megohms(station: "Station") -> float:
    """After a minute, at the winding's temperature (megohm)."""
    return station.condition.insulation


def before(station: "Station") -> float:
    """The same a year ago (megohm)."""
    then = station.condition
    return at_temperature(then.before, then.temperature_before)


def leakage(station: "Station", over: float = 1.0) -> float:
    """Current through the insulation (µA), with so many times the megohms of a minute."""
    return station.condition.test_volts / (megohms(station) * over)


def average_ohms(station: "Station") -> float:
    """Average phase-to-phase resistance (ohm)."""
    return sum(station.condition.phase_to_phase) / 3


INSULATION: Reads = MappingProxyType(
    {
        "insulation": megohms,
        "winding_temperature": lambda s: s.condition.temperature,
        "insulation_at_40": lambda s: s.condition.megohms,
        "insulation_before": before,
        "winding_temperature_before": lambda s: s.condition.temperature_before,
        "insulation_at_40_before": lambda s: s.condition.before,
        "insulation_kept": lambda s: 100 * s.condition.megohms / s.condition.before,
        "test_volts": lambda s: s.condition.test_volts,
        "leakage_current": leakage,
        "least_insulation": lambda s: s.motor.rated_volts / 1000 + 1,
        "test_time": lambda s: s.condition.test_time,
        "ground_time": lambda s: 4 * s.condition.test_time,
        "time_grounded": lambda s: s.condition.grounded,
        "times_grounded": lambda s: s.condition.grounded / s.condition.test_time,
        "insulation_30s": lambda s: megohms(s) / s.condition.ratio,
        "insulation_1min": megohms,
        "insulation_10min": lambda s: megohms(s) * s.condition.index,
        "leakage_30s": lambda s: leakage(s, 1 / s.condition.ratio),
        "leakage_1min": leakage,
        "leakage_10min": lambda s: leakage(s, s.condition.index),
        "polarization_index": lambda s: s.condition.index,
        "absorption_ratio": lambda s: s.condition.ratio,
        "ohms_12": lambda s: s.condition.phase_to_phase[0],
        "ohms_23": lambda s: s.condition.phase_to_phase[1],
        "ohms_31": lambda s: s.condition.phase_to_phase[2],
        "ohms_average": average_ohms,
        "ohms_deviation": lambda s: deviation(s.condition.phase_to_phase),
        "ohms_healthy": lambda s: s.condition.ohms,
        "ohms_share": lambda s: 100 * average_ohms(s) / s.condition.ohms,
        "resistance_unbalance": lambda s: unbalance_of(s.condition.phase_to_phase),
    }
)
