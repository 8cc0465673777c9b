"""What people build and what they don't: limits that a whole station keeps, none of them a law.

All common practice, no source, but the rim speed and the NPSHr, which a pump's maker would not go beyond.
"""

from math import pi

from .drive import Drive
from .kinds import Kind
from .main import Main
from .motor import Motor
from .pump import Pump
from .suction import Suction

__all__ = ["EFFICIENCY", "can_suck", "is_built", "is_main", "is_pump"]

EFFICIENCY = (46.0, 85.0)  # percent
TIP_SPEED, NPSH, HIGHEST = 131.0, 30.0, 25.0  # ft/s at the rim; ft; ft of suction lift
LEAST_FRICTION, MANY, SHORT = (
    0.4,
    1500.0,
    150.0,
)  # ft; gpm that no main shorter than so many ft takes
DRIVEN = (380.0, 2600.0)  # rpm of a pump behind a belt or a gear
WIDEST = 24.0  # in across an impeller
FASTEST_MOTOR, SUBMERSIBLE = 75.0, 15.0  # hp of a two-pole motor; of one under water
SLOWEST_MOTOR = 7.5  # hp of an eight-pole motor, at least
BELTS, GEARS = 60.0, 15.0  # hp at most; at least


def is_main(main: Main, flow: float) -> bool:
    """Whether a main for this flow (gpm | L/s) is long enough to be one."""
    system = main.system
    long = flow * system.gpm < MANY or main.length * system.feet >= SHORT
    return long and main.friction(flow) * system.feet >= LEAST_FRICTION


def is_pump(pump: Pump, flow: float) -> bool:
    """Whether somebody would sell this pump for this flow (gpm | L/s)."""
    least, most = EFFICIENCY
    water = flow * pump.head_at(flow, pump.speed) / pump.system.water_power
    here = 100 * water / pump.power_at(flow, pump.speed)
    needs = pump.npsh_at(flow, pump.speed) * pump.system.feet
    return least <= here and pump.efficiency <= most and needs <= NPSH


def is_built(kind: Kind, drive: Drive, motor: Motor, pump: Pump) -> bool:
    """Whether people put such machines together."""
    horsepower = motor.size * motor.system.horsepower
    inches = pump.diameter / (1 if pump.system.name == "us" else 25.4)
    fastest = SUBMERSIBLE if kind.submerged else FASTEST_MOTOR
    return (
        (motor.poles > 2 or horsepower <= fastest * 1.01)
        and (motor.poles < 8 or horsepower >= SLOWEST_MOTOR)
        and (drive.name != "belt" or horsepower <= BELTS * 1.01)
        and (drive.name != "gear" or horsepower >= GEARS)
        and (drive.name not in ("belt", "gear") or DRIVEN[0] <= pump.speed <= DRIVEN[1])
        and inches <= WIDEST
        and pi * inches * pump.speed / 720 <= TIP_SPEED
    )


def can_suck(pump: Pump, suction: Suction | None, main: Main, flow: float) -> bool:
    """Whether the pump has the NPSH it needs, and its lift is one that people build."""
    if suction is None:
        return True
    above = suction.air - suction.vapor - suction.lost(flow) - suction.margin
    greatest, system = above - pump.npsh_at(flow, pump.speed), suction.system
    if suction.lift <= 0:
        return suction.lift <= greatest
    to_the_end = main.static - suction.lift
    return suction.lift <= greatest <= HIGHEST / system.feet and to_the_end >= 2 / system.feet
