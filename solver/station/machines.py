"""The machines that do what a site asks, each from what the ones before allow."""

from dataclasses import replace
from math import pow
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.topics.tables import motor_sizes

from .built import can_suck, is_built, is_pump
from .drive import Drive, draw_drive
from .kinds import Kind
from .motor import Motor, draw_motor
from .need import Need
from .pump import Pump, draw_pump
from .site import Site
from .supply import Supply, draw_supply, feeds
from .system import System

__all__ = ["Machines", "draw_machines"]


class Machines(NamedTuple):
    """What does it."""

    supply: Supply
    drive: Drive
    motor: Motor
    pump: Pump


def draw_machines(draw: Draw, site: Site, need: Need) -> Machines | None:
    """Pump, motor, drive and supply for a duty; none when nobody would build such, or the need is not met."""
    system, kind, duty = site.system, site.kind, site.duty
    drive, supply = draw_drive(draw, kind, need.drives), draw_supply(draw, system, need.volts)
    turns = 120 * system.hertz * 0.98 * drive.ratio
    one = system.specific_speed(turns, *duty) * system.us_specific  # at one pole
    least, most = kind.specific
    if need.specific:
        least, most = max(least, need.specific[0]), min(most, need.specific[1])
    fitting = [p for p in kind.poles if (kind.stages or least <= one / p) and one / p <= most]
    if not fitting:
        return None
    poles = draw.pick(fitting)
    stages = _stages(draw, kind, one / poles, need)
    if not least <= one / poles * pow(stages, 0.75) <= most:
        return None
    pump = draw_pump(draw, system, turns / poles, stages, duty, draw.between(*kind.coarse))
    shaft = pump.power_at(duty[0], pump.speed) / (1 if drive.is_variable else drive.efficiency)
    size = _size(draw, shaft, need, system, supply)
    if size is None or not is_pump(pump, duty[0]):
        return None
    motor = draw_motor(draw, system, supply, size, poles, need)
    turning = motor.synchronous_speed * (1 - motor.at(shaft, supply).slip) * drive.ratio
    step = system.rounded(0.125, 1)
    diameter = step * round(pump.diameter * pump.speed / turning / step)
    pump = replace(pump, speed=turning, diameter=diameter)
    if not (
        is_built(kind, drive, motor, pump) and can_suck(pump, site.suction, site.main, duty[0])
    ):
        return None
    return Machines(supply, drive, motor, pump)


def _stages(draw: Draw, kind: Kind, one: float, need: Need) -> int:
    """One stage, or as many as bring the specific speed of one up to what impellers like."""
    if not kind.stages or need.stages is False:
        return 1
    wanted = draw.between(1300, 2400)
    least = 2 if need.stages else 1
    return max(least, min(12, round(pow(wanted / one, 4 / 3)))) if one < 1300 else least


def _size(draw: Draw, shaft: float, need: Need, system: System, supply: Supply) -> float | None:
    """The next standard motor, now and then a size more; none outside what is needed."""
    low, high = need.loaded
    least = max(system.rounded(3, 2.2), shaft * 100 / high)
    fitting = [size for size in motor_sizes(system.name) if size >= least]
    step = draw.pick((0, 0, 0, 1))
    for size in fitting[step : step + 2] + fitting[:step]:
        loaded = low <= 100 * shaft / size <= high
        wanted = need.sizes is None or need.sizes[0] <= size <= need.sizes[1]
        if loaded and wanted and feeds(supply, size * system.horsepower):
            return size
    return None
