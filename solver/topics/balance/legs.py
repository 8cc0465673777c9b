"""What the problems share: how uneven the three legs are that they read, and how a question puts them.

The motors are straight on the line, as a drive's own legs tell nothing of its motor. Three readings are noted
so that their average is as round as they are: then rounding the average moves nothing.
"""

from collections.abc import Mapping
from dataclasses import replace

from solver.engine.draw import Draw
from solver.station.instruments import evened, step_of
from solver.station.need import Need
from solver.station.scene import Change, Readings, station_in
from solver.station.station import Station
from solver.station.supply import Legs, uneven
from solver.topics.chapter import Chapter
from solver.topics.formulas import BALANCE
from solver.topics.readings import AMPS, Range
from solver.topics.tables import table_rows

__all__ = [
    "AMPS",
    "BOTH_CAUSES",
    "CHAPTER",
    "GRAPH",
    "LEGS_READ",
    "LINE",
    "METHOD",
    "ONE_CAUSE",
    "POINTS",
    "TURNS",
    "VOLTS",
    "VOLTS_READ",
    "amps",
    "three_noted",
    "uneven_amps",
    "volts",
]

CHAPTER = Chapter("balance", BALANCE)
METHOD = "the largest deviation from the average, divided by the average"
VOLTS = ("volts_ab", "volts_bc", "volts_ca")
TURNS = ("", "_2", "_3")  # as found, rolled once, rolled twice
LEGS_READ = "A qualified person reads {amps_a}, {amps_b} and {amps_c} on the three legs of {place}."

VOLTS_READ = (
    "A qualified person reads {volts_ab}, {volts_bc} and {volts_ca} line to line at {place}."
)

GRAPH = "The points of NEMA MG 1 Figure 14-1 are in the table. Between points, use a straight line."

POINTS = tuple(
    (f"Allowed load at {row['unbalance']:g}% voltage unbalance", f"{row['derating']:g}% of rating")
    for row in table_rows("derating")
    if row["unbalance"]
)

LINE = Need(drives=("direct", "belt", "gear"), load=(55, 100))


def uneven_amps(*ranges: Range, middle: Range = (0.2, 0.5)) -> Change:
    """A supply that, with the motor's own part, makes the amps as uneven as one of these (percent)."""

    def change(station: Station, draw: Draw) -> Station:
        legs = uneven(draw, draw.between(*draw.pick(ranges)), middle)
        a, b, c = (leg - own for leg, own in zip(legs, station.motor.own, strict=True))
        return replace(station, supply=station.supply.pulling((a, b, c)))

    return change


def uneven_volts(*ranges: Range) -> Change:
    """A supply as uneven as one of these (percent)."""

    def change(station: Station, draw: Draw) -> Station:
        skew = uneven(draw, draw.between(*draw.pick(ranges)))
        return replace(station, supply=replace(station.supply, skew=skew))

    return change


def three_noted(seen: Mapping[str, float], names: tuple[str, str, str]) -> dict[str, float]:
    """Three readings of one meter, their average and the largest deviation from it."""
    station = station_in(seen)
    real = [station.reading(name) for name in names]
    step = step_of(names[0], max(real), station.system.name)
    legs = evened(real, step)
    average = round(sum(legs) / 3, 6)
    away = round(max(abs(leg - average) for leg in legs), 6)
    return dict(zip((*names, "average", "deviation"), (*legs, average, away), strict=True))


def amps_noted(seen: Mapping[str, float], draw: Draw, turn: str = "") -> dict[str, float]:
    """The amps of the legs in one connection, and what a report says of them."""
    a, b, c = AMPS
    found = three_noted(seen, (f"{a}{turn}", f"{b}{turn}", f"{c}{turn}"))
    average, away = found.pop("average"), found.pop("deviation")
    return found | {
        f"amps_average{turn}": average,
        f"amps_deviation{turn}": away,
        f"current_unbalance{turn}": round(100 * away / average, 1),
        f"amps_highest{turn}": max(found.values()),
    }


def volts_noted(seen: Mapping[str, float], draw: Draw) -> dict[str, float]:
    """The volts line to line, and what a report says of them."""
    found = three_noted(seen, VOLTS)
    return found | {
        "volts_average": found.pop("average"),
        "volts_deviation": found.pop("deviation"),
    }


def amps(*ranges: Range, need: Need = LINE, middle: Range = (0.2, 0.5)) -> Readings:
    """Amps as uneven as one of these ranges (percent)."""
    return Readings(need, uneven_amps(*ranges, middle=middle), amps_noted)


def volts(*ranges: Range, need: Need = LINE) -> Readings:
    """Volts as uneven as one of these ranges (percent)."""
    return Readings(need, uneven_volts(*ranges), volts_noted)


def one_cause(station: Station, draw: Draw) -> Station:
    """One leg high, and clear of the others, by the supply alone or by the motor alone."""
    percent, near = draw.between(9, 13), draw.between(0.4, 0.5)
    a, b, c = draw.shuffled((percent, -near * percent, (near - 1) * percent))
    legs: Legs = (a, b, c)
    if draw.pick((True, False)):
        return replace(station, supply=station.supply.pulling(legs))
    return replace(station, motor=replace(station.motor, own=legs))


def both_causes(station: Station, draw: Draw) -> Station:
    """A supply and a motor that are each a little uneven."""
    pull, own = (uneven(draw, draw.between(2, 6)) for _ in ("supply", "motor"))
    motor = replace(station.motor, own=own)
    return replace(station, supply=station.supply.pulling(pull), motor=motor)


def all_turns(seen: Mapping[str, float], draw: Draw) -> dict[str, float]:
    """The amps in each of the three connections."""
    return {n: value for turn in TURNS for n, value in amps_noted(seen, draw, turn).items()}


ONE_CAUSE = Readings(LINE, one_cause, all_turns)
BOTH_CAUSES = Readings(LINE, both_causes, all_turns)
