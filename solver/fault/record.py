"""Last year's record of a station: what a person finds on the clipboard before the first reading."""

from collections.abc import Iterator

from solver.station.readings import NotRead

from .case import FaultCase
from .finding import Shown
from .signals import SIGNALS

__all__ = ["last_year"]

RECORDED = (
    *(
        "amps_a",
        "amps_b",
        "amps_c",
        "volts_ab",
        "volts_bc",
        "volts_ca",
        "input_power",
        "power_factor",
    ),
    *("discharge_gauge", "suction_gauge", "drawdown_time", "rise_time", "on_level", "off_level"),
    *("overload_setting", "insulation_1min", "polarization_index", "ohms_12", "ohms_23", "ohms_31"),
    *("bearing_temperature", "vibration", "water_in_oil", "ring_clearance"),
)


def last_year(case: FaultCase) -> Iterator[Shown]:
    """Each recorded reading of the sound station, as its instrument showed it."""
    for name in RECORDED:
        signal = SIGNALS[name]
        try:
            value = signal.read(case.station)
        except NotRead:
            continue
        if isinstance(value, float | int):
            yield Shown(signal, float(signal.noted(value, case.units)))
