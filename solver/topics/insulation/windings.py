"""What the problems share: the windings under test, and the words on who tests and how safely.

Megohms, ohms and °C are the same in both systems.
"""

from collections.abc import Mapping
from dataclasses import replace
from math import inf, isinf

from solver.engine.draw import Draw
from solver.station.condition import Condition
from solver.station.faults import put
from solver.station.instruments import figures
from solver.station.need import ANY, Need
from solver.station.scene import Change, OneOf, Readings
from solver.station.station import Station
from solver.station.supply import uneven
from solver.topics.balance.legs import three_noted
from solver.topics.chapter import Chapter
from solver.topics.formulas import INSULATION, NAMEPLATE
from solver.topics.readings import Range, by

__all__ = [
    "CAUTION",
    "CHAPTER",
    "LIKELY",
    "MEDIUM",
    "OHMS",
    "OLDER",
    "RATED",
    "SOUND",
    "TESTED",
    "altered",
    "damp_to",
    "faulty",
    "kept",
    "ohms_within",
    "worked",
]

CHAPTER = Chapter("insulation", (*INSULATION, *NAMEPLATE))
worked = by(CHAPTER.formulas)

TESTED = (
    "A qualified person has isolated {place}, verified that it is dead, and disconnected any "
    "drive and surge protection. "
)
CAUTION = "Before anyone touches the winding, ground it for four times as long as the test."
OHMS = ("ohms_12", "ohms_23", "ohms_31")
SOUND: Range = (0, 0)  # of a dry winding, whatever it reads: it isn't put anywhere
LIKELY: tuple[Range, ...] = ((8, 40), (40, 150), SOUND)
PLANT = ("flooded", "above", "booster", "recirculation")  # kinds whose motors stand in the dry

# Large motors on medium volts, or on 690 V, and small ones; those of systems of before 1970.
LARGE = Need(kinds=("flooded", "booster"), drives=("direct",), load=(60, 100), sizes=(75, 500))
MEDIUM = replace(LARGE, volts=(2400, 4160, 3000, 3300))
RATED = OneOf((Readings(), *2 * (Readings(replace(MEDIUM, volts=(*MEDIUM.volts, 690))),)))
OLDER = OneOf(
    (
        *2 * (Readings(Need(kinds=PLANT, volts=(220, 440, 480, 550, 600, 380, 400, 415))),),
        Readings(MEDIUM),
    )
)


def altered(station: Station, **changes: object) -> Station:
    """The station with some of its condition changed."""
    was: Condition = station.condition
    return replace(station, altered=replace(was, **changes))  # type: ignore[arg-type]


def damp_to(reading: str, *ranges: Range) -> Change:
    """A winding as damp as brings a reading into one of these ranges; as it is for the range `SOUND`."""

    def change(station: Station, draw: Draw) -> Station:
        span = draw.pick(ranges)
        if span is SOUND:
            return station
        return put(station, "damp_winding", reading, draw.between(*span))

    return change


def kept(*shares: Range) -> Change:
    """A winding that reads a share of what it did a year ago: damper than then, or as it was, or drier."""

    def change(station: Station, draw: Draw) -> Station:
        share = draw.between(*draw.pick(shares))
        if share < 0.9:
            return put(station, "damp_winding", "insulation_kept", 100 * share)
        return altered(station, before=station.condition.megohms / share)

    return change


def ohms_uneven(*ranges: Range) -> Change:
    """Windings that average a round resistance and are as uneven as one of these ranges (percent)."""

    def change(station: Station, draw: Draw) -> Station:
        percent = draw.between(*draw.pick(ranges))
        ohms = figures(station.condition.ohms, 3)
        return altered(station, ohms=ohms, ohms_skew=uneven(draw, percent))

    return change


def ohms_noted(seen: Mapping[str, float], draw: Draw) -> dict[str, float]:
    """Ohms of three windings that average to a round number, that number, and the largest deviation."""
    found = three_noted(seen, OHMS)
    return found | {
        "ohms_average": found.pop("average"),
        "ohms_deviation": found.pop("deviation"),
    }


def ohms_within(*ranges: Range, need: Need = ANY) -> Readings:
    """Windings as uneven as one of these ranges (percent)."""
    return Readings(need, ohms_uneven(*ranges), ohms_noted)


# Ohms of a phase over a sound one's.
ODD = {"sound": (1.0, 1.0), "turns": (0.55, 0.8), "joint": (1.25, 1.6), "open": (inf, inf)}


def faulty(delta: bool, *faults: str) -> Change:
    """A motor with one of these faults in one of its phases."""

    def change(station: Station, draw: Draw) -> Station:
        low, high = ODD[draw.pick(faults)]
        odd = high if isinf(high) else draw.between(low, high)
        a, b, c = draw.shuffled((odd, 1.0, 1.0))
        skew = uneven(draw, draw.between(0.1, 0.3))
        return altered(station, delta=delta, windings=(a, b, c), ohms_skew=skew)

    return change
