"""The stations that the cost chapter reads its problems off."""

from collections.abc import Callable, Mapping

from solver.engine.draw import Draw
from solver.station.instruments import figures
from solver.station.need import Need
from solver.station.scene import Readings, station_in
from solver.topics.chapter import Chapter
from solver.topics.formulas import COST, POWER
from solver.topics.readings import by

__all__ = [
    "BETTER_PUMP",
    "BILLED",
    "CHAPTER",
    "DAY",
    "MOTOR_BY_INPUT",
    "MOTOR_BY_LOAD",
    "MOTOR_BY_SHAFT",
    "OFFERED",
    "PUMP_BY_INPUT",
    "SHIFTED",
    "TO_A_TANK",
    "YEAR",
    "worked",
]

CHAPTER = Chapter("cost", (*POWER, *COST))
LARGE = (15.0, 500.0)  # hp | kW: from here up, utilities charge for demand and by the hour
NEAR = range(-5, 6)  # steps
Notes = Callable[[Mapping[str, float], Draw], Mapping[str, float]]
worked = by(CHAPTER.formulas)


def noted_at(name: str, powers: Callable[[float, Mapping[str, float]], list[float]]) -> Notes:
    """The reading `name` some steps up or down, to where rounding the steps moves the saving least.

    A better machine saves a small part of two powers, and people round powers to three figures.
    `powers` are those on the way, from a value of the reading and the other readings.
    """

    def notes(seen: Mapping[str, float], draw: Draw) -> Mapping[str, float]:
        value = seen[name]
        step = 0.01 if value < 10 else 0.1 if value < 100 or name == "motor_load" else 1.0
        near = (round(value + n * step, 2) for n in NEAR)
        return {name: min(near, key=lambda close: _moved(powers(close, seen)))}

    return notes


def _moved(powers: list[float]) -> float:
    """How far rounding each power to three figures moves it, as shares, all together."""
    return sum(abs(figures(power, 3) / power - 1) for power in powers)


def from_shaft(shaft: float, seen: Mapping[str, float]) -> list[float]:
    """Power into the old motor and into the new one, each also in kilowatts."""
    units, powers = station_in(seen).system.name, [shaft]
    for name in ("motor_efficiency", "new_motor_efficiency"):
        given = {"brake_power": shaft, "motor_efficiency": seen[name]}
        powers += (worked(given, asked, units) for asked in ("motor_power", "input_power"))
    return powers


def from_input(machine: str) -> Callable[[float, Mapping[str, float]], list[float]]:
    """What an old machine passes on of its input, and what a new one takes in for that."""

    def powers(taken: float, seen: Mapping[str, float]) -> list[float]:
        useful = taken * seen[f"{machine}_efficiency"]
        return [useful, useful / seen[f"new_{machine}_efficiency"]]

    return powers


DAY = Readings(Need(days=1))
YEAR = Readings(Need(drives=("direct",), days=365))
BILLED = Readings(Need(sizes=LARGE))
SHIFTED = Readings(Need(drives=("direct",), sizes=LARGE))
TO_A_TANK = Readings(Need(kinds=("lift", "flooded", "booster", "above")))
OFFERED = Readings(Need(upgrade="pump", sizes=LARGE))
BETTER_PUMP = Readings(Need(drives=("direct",), upgrade="pump"))
PUMP_BY_INPUT = Readings(BETTER_PUMP.need, notes=noted_at("input_power", from_input("pump")))
OLD_MOTOR = Need(drives=("direct",), upgrade="motor")
MOTOR_BY_INPUT = Readings(OLD_MOTOR, notes=noted_at("input_power", from_input("motor")))
MOTOR_BY_SHAFT = Readings(OLD_MOTOR, notes=noted_at("brake_power", from_shaft))
MOTOR_BY_LOAD = Readings(
    OLD_MOTOR,
    notes=noted_at("motor_load", lambda load, s: from_shaft(s["motor_size"] * load / 100, s)),
)
