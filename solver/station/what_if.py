"""What would be: another speed, a trimmed impeller, a second pump, better machines, a capacitor.

Told from the pump as it runs now. As in the lesson, friction goes with the square of the flow from here, and
motor and drive keep their efficiency; the pump moves along its own curve. So without static head the
affinity laws hold exactly, and with it they do not. No pump is sped up, and no trim goes below 85 percent.
"""

from dataclasses import dataclass
from math import ceil

from solver.engine.draw import Draw

from .motor import Motor, efficiency_of
from .pump import Pump, best_efficiency, quality_of
from .running import Running, crossing

__all__ = [
    "MOVES",
    "SLOWEST",
    "Changed",
    "Plans",
    "changed",
    "draw_plans",
    "least_ratio",
    "two_pumps",
]

SLOWEST, SMALLEST, LARGEST = 0.6, 0.85, 0.98
STALLS = (0.82, 0.95)  # of the speed that only just lifts water
MOVES = 1.15  # times that speed, from which a pump moves water as a pump should
CORRECTED = (0.92, 0.98, 0.01)


@dataclass(frozen=True, slots=True)
class Plans:
    """What is thought of: the `change` ("speed" or "trim") to `new_speed` (rpm) or `new_diameter` (in | mm).

    `upgrade` is "pump", "motor" or "both", with what they would bring (percent) and cost ($);
    `power_factor` after a capacitor; `known`: share of the flow at which friction is known.
    """

    change: str
    new_speed: float
    new_diameter: float
    upgrade: str
    pump_efficiency: float
    motor_efficiency: float
    cost: float
    power_factor: float
    known: float


@dataclass(frozen=True, slots=True)
class Changed:
    """A pump after a change: flow, head, shaft power and shutoff head (gpm, ft, hp, ft | L/s, m, kW, m)."""

    flow: float
    head: float
    shaft: float
    shutoff: float


def changed(pump: Pump, now: Running, static: float, ratio: float, pumps: int = 1) -> Changed:
    """The pump at `ratio` times its speed or diameter, or so many such pumps on the main."""
    speed = now.speed * ratio
    bend = (now.head - static) / now.flow**2

    def spare(flow: float) -> float:
        return pump.head_at(flow / pumps, speed) - static - bend * flow**2

    flow = crossing(spare, now.flow * ratio, now.head)
    return Changed(
        flow,
        pump.head_at(flow / pumps, speed),
        pumps * pump.power_at(flow / pumps, speed),
        pump.head_at(0, speed),
    )


def two_pumps(pump: Pump, now: Running, static: float) -> Changed:
    """Two such pumps on the same main."""
    return changed(pump, now, static, 1.0, pumps=2)


def least_ratio(pump: Pump, speed: float, static: float) -> float:
    """The speed that only just lifts water, over this one (rpm)."""
    root: float = (static / pump.head_at(0, speed)) ** 0.5
    return root


def slowed_to(draw: Draw, change: str, least: float) -> float:
    """New speed over the speed: one that still moves water, unless it is to stall."""
    if change == "stall":
        return least * draw.between(*STALLS)
    slowest = max(SLOWEST, min(MOVES * least, LARGEST))
    return draw.between(slowest, max(slowest, 0.95))


def draw_plans(
    draw: Draw,
    pump: Pump,
    motor: Motor,
    now: Running,
    static: float,
    share: float,
    change: str = "",
) -> Plans:
    """Plans for a pump at work; `share` is what its motor's efficiency keeps of the nameplate's.

    A slower pump or a smaller impeller still moves water against the static head, unless the `change` wanted
    is "stall".
    """
    system = pump.system
    least = least_ratio(pump, now.speed, static)
    speed = slowed_to(draw, change, least)
    trim = draw.between(max(SMALLEST, min(MOVES * least, LARGEST)), LARGEST)
    usual = draw.pick(("speed", "speed", "trim"))
    step = system.rounded(0.125, 1)
    specific = system.specific_speed(pump.speed, pump.flow, pump.head / pump.stages)
    good, _ = quality_of(pump.speed, pump.stages)
    quality = good + draw.between(-2, 0)  # a new one is as good as the better half of a market
    best = best_efficiency(pump.flow * system.gpm, specific * system.us_specific, quality)
    premium = efficiency_of(motor.size, motor.poles, "premium", system.name)
    horsepower = motor.size * system.horsepower
    return Plans(
        "speed" if change == "stall" else change or usual,
        5.0 * int(now.speed * speed / 5),
        step * min(ceil(pump.diameter * trim / step), ceil(pump.diameter / step) - 1),
        draw.pick(("pump", "motor", "both")),
        min(best, 85.0),
        premium * share,
        float(round(900 + horsepower * draw.between(90, 260), -2)),
        draw.step(*CORRECTED),
        draw.step(0.6, 1.3, 0.05),
    )
