"""The stations that the cost chapter reads its problems off."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.station.instruments import figures
from solver.station.need import Need
from solver.station.scene import Readings, station_in
from solver.topics.chapter import Chapter
from solver.topics.drawn.readings import by
from solver.topics.formulas import COST, POWER

__all__ = [
    "BETTER_MOTOR",
    "BETTER_PUMP",
    "BILLED",
    "CHAPTER",
    "DAY",
    "MOTOR_BY_LOAD",
    "MOTOR_BY_SHAFT",
    "OFFERED",
    "SHIFTED",
    "TO_A_TANK",
    "YEAR",
    "worked",
]

CHAPTER = Chapter("cost", (*POWER, *COST))
LARGE = (15.0, 500.0)  # hp | kW: from here up, utilities charge for demand and by the hour
NEAR = range(-3, 4)
worked = by(CHAPTER.formulas)


def shaft_noted(seen: Mapping[str, float], draw: Draw) -> Mapping[str, float]:
    """Shaft power some steps up or down, to where rounding the steps moves the saving least.

    A better motor saves a small part of two powers, and both are often rounded to three figures.
    """
    shaft = seen["brake_power"]
    step = 0.01 if shaft < 10 else 0.1 if shaft < 100 else 1.0
    near = (round(shaft + n * step, 2) for n in NEAR)
    return {"brake_power": min(near, key=lambda power: _moved(power, seen))}


def load_noted(seen: Mapping[str, float], draw: Draw) -> Mapping[str, float]:
    """The motor's load likewise."""
    size, load = seen["motor_size"] / 100, seen["motor_load"]
    near = (round(load + n / 10, 1) for n in NEAR)
    return {"motor_load": min(near, key=lambda share: _moved(size * share, seen))}


def _moved(shaft: float, seen: Mapping[str, float]) -> float:
    """How far rounding to three figures moves a shaft power and what follows from it, as a share."""
    units = station_in(seen).system.name
    powers = [shaft]
    for name in ("motor_efficiency", "new_motor_efficiency"):
        given = {"brake_power": shaft, "motor_efficiency": seen[name]}
        powers += (worked(given, asked, units) for asked in ("motor_power", "input_power"))
    return sum(abs(figures(power, 3) / power - 1) for power in powers)


DAY = Readings(Need(days=1))
YEAR = Readings(Need(drives=("direct",), days=365))
BILLED = Readings(Need(sizes=LARGE))
SHIFTED = Readings(Need(drives=("direct",), sizes=LARGE))
TO_A_TANK = Readings(Need(kinds=("lift", "flooded", "booster", "above")))
BETTER_PUMP = Readings(Need(drives=("direct",), upgrade="pump"))
OFFERED = Readings(Need(upgrade="pump", sizes=LARGE))
BETTER_MOTOR = Readings(Need(drives=("direct",), upgrade="motor"))
MOTOR_BY_SHAFT = Readings(BETTER_MOTOR.need, notes=shaft_noted)
MOTOR_BY_LOAD = Readings(BETTER_MOTOR.need, notes=load_noted)
