"""Machines that could exist, drawn whole: every reading of one pump, or of one motor's legs.

Each scene returns every quantity it knows, read as a practitioner would note it. Ranges of
pumps, prices and hours are common practice, no source; motors come from the published tables.
"""

from ..draw import Draw
from ..formulas.constants import (
    GPM_PER_MGD,
    HEAD_PER_PRESSURE,
    HP_TO_KW,
    M3_DAY_PER_LITRE_SECOND,
    WATER_POWER,
)
from ..tables import motors

__all__ = ["noted", "pump"]

HEADS = {"us": (18, 210), "si": (6, 64)}
SMALLEST = {"us": 3, "si": 2.2}  # the motor of the smallest pump drawn


def noted(value: float, digits: int = 3) -> float:
    """A reading as it is written down: three figures unless told.

    >>> noted(41.268), noted(1268.4)
    (41.3, 1270.0)
    """
    return float(f"{value:.{digits}g}")


def round_flow(value: float) -> float:
    """A flow to the steps people read: fifties, tens, fives, ones or halves."""
    for above, step in ((2000, 50), (500, 10), (100, 5), (20, 1)):
        if value >= above:
            return float(round(value / step) * step)
    return round(value * 2) / 2


def pump(draw: Draw, units: str) -> dict[str, float]:
    """One pump, its motor and its drive, from the water back to the meter."""
    motor = draw.pick([m for m in motors(units) if m.size >= SMALLEST[units]])
    share = min(1.0, (motor.size / 60) ** 0.4)
    pump_efficiency = round(draw.between(47 + 14 * share, 68 + 16 * share))
    motor_efficiency = round(motor.efficiency - draw.between(0, 6), 0)
    drive_efficiency = draw.step(90, 98, 1)
    load = motor.size * draw.between(0.66, 0.97)
    constant = WATER_POWER.figure(units).value
    head = round(draw.between(*HEADS[units]), 0 if units == "us" else 1)
    flow = round_flow(load * pump_efficiency / 100 * constant / head)
    water = flow * head / constant
    brake = water / pump_efficiency * 100
    wire = brake / motor_efficiency * 100
    return {
        "flow": flow,
        "daily_flow": noted(_daily(flow, units)),
        "head": head,
        "pressure": _gauge(head / HEAD_PER_PRESSURE.figure(units).value),
        "water_power": noted(water),
        "brake_power": noted(brake),
        "motor_output": noted(brake / drive_efficiency * 100),
        "motor_power": noted(wire),
        "input_power": noted(wire * HP_TO_KW.figure(units).value),
        "motor_size": motor.size,
        "pump_efficiency": float(pump_efficiency),
        "motor_efficiency": float(motor_efficiency),
        "drive_efficiency": drive_efficiency,
        "overall_efficiency": noted(pump_efficiency * motor_efficiency / 100),
    }


def _daily(flow: float, units: str) -> float:
    if units == "us":
        return flow / GPM_PER_MGD.us.value
    return flow * M3_DAY_PER_LITRE_SECOND.si.value


def _gauge(pressure: float) -> float:
    """A gauge is read to a half below fifty, to a whole above."""
    return round(pressure * 2) / 2 if pressure < 50 else float(round(pressure))
