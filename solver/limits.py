"""Limits that readings are judged against, each once, with the rule and where it is from.

The chapters' judgement questions and the pump-day record judge by the same ones.
"""

from typing import NamedTuple

__all__ = [
    "CURRENT_UNBALANCE",
    "DERATED",
    "NAMEPLATE_AMPS",
    "VOLTAGE_UNBALANCE",
    "Limits",
]


class Limits(NamedTuple):
    """Two limits for one quantity: numbers, or names of other quantities; and the rule in words."""

    quantity: str
    low: str | float
    high: str | float
    rule: str = ""


CURRENT_UNBALANCE = Limits(
    "current_unbalance",
    5,
    10,
    "up to 5% is good, up to 10% acceptable (common practice; compare Xylem IM103)",
)
VOLTAGE_UNBALANCE = Limits(
    "voltage_unbalance",
    1,
    5,
    "NEMA MG 1: full load up to 1%, less load up to 5%, no running above 5%",
)
DERATED = Limits(
    "brake_power", "derated_power", "motor_size", "the load may not be over the derated power"
)
NAMEPLATE_AMPS = Limits(
    "amps_highest",
    "full_load_amps",
    "service_factor_amps",
    "the highest leg against full-load amps, then against service-factor amps",
)
