"""What the problems share: the stations they read, and how their questions begin.

A motor's own amps are read where it is straight on the line, and a power before and after it where nothing
else is between them.
"""

from collections.abc import Mapping
from dataclasses import replace

from solver.engine.draw import Draw
from solver.errors import NotSolvable
from solver.station.changes import ALL_AIR, VOLTS_LEFT
from solver.station.faults import with_fault
from solver.station.need import Need
from solver.station.scene import Change, OneOf, Readings, station_in
from solver.station.station import Station
from solver.topics.balance.legs import amps_noted
from solver.topics.chapter import Chapter
from solver.topics.formulas import COST, NAMEPLATE, POWER
from solver.topics.readings import by
from solver.topics.scenes import DIRECT

__all__ = [
    "CHAPTER",
    "DIRECT",
    "LEGS",
    "LEGS_READ",
    "LIVE",
    "LOADED",
    "OFF_VOLTS",
    "OFF_VOLTS_LEGS",
    "OLD_PLATE",
    "ON_THE_LINE",
    "OVERLOADS",
    "PLATE",
    "READ",
    "SERVICE_PLATE",
    "SLIPPING",
    "SLIPPING_TURNED_DOWN",
    "SLIPS",
    "TURNED_DOWN",
    "WITH_MARGIN",
    "by_amps",
    "by_slip",
    "worked",
]

CHAPTER = Chapter("nameplate", (*POWER, *COST, *NAMEPLATE))
worked = by(CHAPTER.formulas)
LIVE = "Only a qualified person takes readings on live parts."
READ = "A qualified person reads {line_volts} line to line at {place} and {line_amps} on each leg."
LEGS_READ = (
    "A qualified person reads {line_volts} line to line at {place}. The three legs read "
    "{amps_a}, {amps_b} and {amps_c}."
)

LINE = ("direct", "belt", "gear")
ON_THE_LINE = Readings(Need(drives=LINE))
LEGS = Readings(DIRECT.need, notes=amps_noted)
LOADED = Readings(Need(drives=("direct",), load=(70, 100)))

# A small old motor near full load slips enough to tell its speed from the field's.
SMALL = ("lift", "above", "booster")
SLIPPING = Readings(
    Need(kinds=SMALL, drives=LINE, old_plate=True, sizes=(2.2, 7.5), load=(90, 112))
)
TURNED_DOWN = Readings(Need(drives=("variable",), turned_down=True))
SLIPPING_TURNED_DOWN = Readings(
    Need(drives=("variable",), turned_down=True, old_plate=True, sizes=(2.2, 20), load=(75, 106))
)

# Nameplates: of a motor with a service factor of 1.15 or none, with a margin, and an old one.
PLATE = Readings(Need(drives=LINE, service=(1.0, 1.15)))
WITH_MARGIN = Readings(Need(drives=LINE, service=(1.15, 1.25)))
OLD_PLATE = Readings(Need(drives=LINE, old_plate=True))

OFF = (
    (0.92, 0.955),
    (1.045, 1.08),
)  # volts over those of the nameplate; NEMA MG 1 allows 10 percent


def off_volts(station: Station, draw: Draw) -> Station:
    """On volts that are not those of the motor's nameplate."""
    volts = station.motor.rated_volts * draw.between(*draw.pick(OFF))
    return replace(station, supply=replace(station.supply, volts=float(round(volts))))


OFF_VOLTS = Readings(DIRECT.need, off_volts)
OFF_VOLTS_LEGS = Readings(DIRECT.need, off_volts, amps_noted)


def near_idle(station: Station, draw: Draw) -> Station:
    """So much air in the pump that its motor does hardly anything."""
    left = 100 * draw.between(0.14, 0.26) / station.reading("motor_load")
    return with_fault(station, "air_bound", min(1.0, (1 - left) / ALL_AIR))


def by_amps(notes: bool) -> OneOf:
    """A motor whose load by amps is too low to tell, fair, or over: a pump with air in it, or too small a motor."""
    noted = amps_noted if notes else None
    return OneOf(
        (
            Readings(Need(drives=("direct",), load=(42, 80)), near_idle, noted),
            Readings(Need(drives=("direct",), load=(55, 92)), off_volts, noted),
            Readings(Need(drives=("direct",), load=(106, 120)), None, noted),
        )
    )


def set_between(low: float, high: float) -> Change:
    """An overload that somebody set within a range, in points from the first percent that the code allows."""

    def change(station: Station, draw: Draw) -> Station:
        first = station.reading("overload_percent")
        amps = station.motor.full_load_amps * (first + draw.between(low, high)) / 100
        altered = replace(station.condition, setting=float(f"{amps:.3g}"))
        return replace(station, altered=altered)

    return change


# The overload within the first limit, between the two limits, and over both.
OVERLOADS = OneOf(
    tuple(Readings(PLATE.need, set_between(*span)) for span in ((-20, -3), (3, 12), (19, 45)))
)


def with_margin(low: float, high: float) -> Readings:
    """A motor with a service factor, loaded so (percent of its size)."""
    return Readings(Need(drives=("direct",), service=(1.15,), load=(low, high)))


# A load within the nameplate, in the service factor, and over it.
SERVICE_PLATE = OneOf((with_margin(60, 97), with_margin(103, 112), with_margin(118, 128)))

SLIPS = {
    "light": (0.3, 0.78), "full": (0.97, 1.03), "heavy": (1.22, 1.5), "above": (-0.5, -0.2),
}  # fmt: skip


def on_low_volts(station: Station, draw: Draw) -> Station:
    """Slipping well over its nameplate, as its volts are low."""
    share = station.reading("motor_load") / 100
    ratio = (
        share / draw.between(*SLIPS["heavy"])
    ) ** 0.5  # slip goes against the square of the volts
    least, most = VOLTS_LEFT
    if not least <= ratio <= most:
        raise NotSolvable("its volts would be out of reach")
    return with_fault(station, "low_volts", (most - ratio) / (most - least))


def misread(seen: Mapping[str, float], draw: Draw) -> Mapping[str, float]:
    """A speed that no motor has by itself: faster than its field."""
    motor = station_in(seen).motor
    slip = draw.between(*SLIPS["above"]) * (motor.synchronous_speed - motor.rated_speed)
    return {"running_speed": float(round(motor.synchronous_speed - slip))}


BY_SLIP = {
    "light": Readings(Need(drives=LINE, load=(42, 74))),
    "full": Readings(Need(drives=LINE, load=(97, 103))),
    "heavy": Readings(Need(drives=LINE, load=(97, 110)), on_low_volts),
    "above": Readings(Need(drives=LINE), notes=misread),
}


def by_slip(*kinds: str) -> OneOf:
    """The speeds of a motor whose slip is of one of these kinds."""
    return OneOf(tuple(BY_SLIP[kind] for kind in kinds))
