"""Limits that readings are judged against, each once, with the rule and where it is from.

The chapters' judgement questions and the pump-day record judge by the same ones.
"""

from typing import NamedTuple

__all__ = [
    "CURRENT_UNBALANCE",
    "DERATED",
    "FLOW_SHARE",
    "LEAK_SHARE",
    "MOTOR_CYCLE",
    "NAMEPLATE_AMPS",
    "VOLTAGE_UNBALANCE",
    "Limits",
]


class Limits(NamedTuple):
    """Two limits for one quantity: numbers, or names of other quantities.

    `rule` says them in words; `source` where they are from, or that it is common practice.
    """

    quantity: str
    low: str | float
    high: str | float
    rule: str = ""
    source: str = ""


CURRENT_UNBALANCE = Limits(
    "current_unbalance",
    5,
    10,
    "up to 5% is good, up to 10% acceptable (common practice; compare Xylem IM103)",
    "common practice; compare Xylem IM103",
)
VOLTAGE_UNBALANCE = Limits(
    "voltage_unbalance",
    1,
    5,
    "NEMA MG 1: full load up to 1%, less load up to 5%, no running above 5%",
    "NEMA MG 1",
)
DERATED = Limits(
    "brake_power",
    "derated_power",
    "motor_size",
    "the load may not be over the derated power",
    "NEMA MG 1 Figure 14-1 (from memory, a graph)",
)
NAMEPLATE_AMPS = Limits(
    "amps_highest",
    "full_load_amps",
    "service_factor_amps",
    "the highest leg against full-load amps, then against service-factor amps",
    "NEMA MG 1 14.37; the nameplate",
)
MOTOR_CYCLE = Limits(
    "motor_cycle",
    "cycle_floor",
    "cycle_ceiling",
    "US Army Corps of Engineers EI 11C201 Table 7-1: least time between starts by motor size",
)
FLOW_SHARE = Limits(
    "flow_share",
    90,
    110,
    "within 10% of the rated flow is as it should be (common practice, no source)",
)
LEAK_SHARE = Limits(
    "leak_share",
    10,
    50,
    "under a tenth the check valves hold; over half it is mostly leakage "
    "(common practice, no source)",
)
