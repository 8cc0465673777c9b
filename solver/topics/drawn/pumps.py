"""Pumps that could exist, drawn whole: every reading of one pump, its drive and its motor.

Each scene returns every quantity it knows, read as a practitioner would note it. Ranges of
pumps, prices and hours are common practice, no source; motors come from the published tables.
"""

from solver.engine.draw import Draw
from solver.topics.constants import (
    GPM_PER_MGD,
    HEAD_PER_PRESSURE,
    M3_DAY_PER_LITRE_SECOND,
    WATER_POWER,
)
from solver.topics.tables import Motor, motors

from .readings import in_kilowatts, noted, round_flow

__all__ = ["larger_pump", "pump"]

HEADS = {"us": (18, 210), "si": (6, 64)}
SMALLEST = {"us": 3, "si": 2.2}  # the motor of the smallest pump drawn
LARGER = {"us": 15, "si": 11}


def standard_motors(units: str) -> list[Motor]:
    """The motors of the table from the smallest pump drawn up."""
    return [motor for motor in motors(units) if motor.size >= SMALLEST[units]]


def pump(draw: Draw, units: str) -> dict[str, float]:
    """One pump, its motor and its drive, from the water back to the meter."""
    return pump_on(draw.pick(standard_motors(units)), draw, units, (0.66, 0.97))


def larger_pump(draw: Draw, units: str) -> dict[str, float]:
    """A pump large enough that a better one, or a better hour, is worth a thought."""
    large = [motor for motor in standard_motors(units) if motor.size >= LARGER[units]]
    return pump_on(draw.pick(large), draw, units, (0.66, 0.97))


def pump_on(motor: Motor, draw: Draw, units: str, loads: tuple[float, float]) -> dict[str, float]:
    """A pump whose shaft takes a share of its motor's size, from the lowest to the highest load."""
    share = min(1.0, (motor.size / 60) ** 0.4)
    pump_efficiency = round(draw.between(47 + 14 * share, 68 + 16 * share))
    motor_efficiency = round(motor.efficiency - draw.between(0, 6), 0)
    drive_efficiency = draw.step(90, 98, 1)
    load = motor.size * draw.between(*loads)
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
        "input_power": noted(in_kilowatts(wire, units)),
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
