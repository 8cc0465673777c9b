"""What people report, and oddities that do no harm.

What is heard follows from the model where it can; where it can't (noise, a trip), the faults that make it are
common practice, no source.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from math import sqrt
from types import MappingProxyType

from solver.station.station import Station

from .seen import SMOOTH, sound

__all__ = ["COMPLAINTS", "ODDITIES", "SIMPLE", "Complaint", "Oddity", "over_setting"]


@dataclass(frozen=True, slots=True)
class Complaint:
    """What people report: its title, a sentence or two, and whether a station with a fault gives cause."""

    title: str
    says: str
    heard: Callable[[Station], bool]


@dataclass(frozen=True, slots=True)
class Oddity:
    """Something that catches the eye and does no harm: it was so last year too."""

    says: str
    change: Callable[[Station], Station]


def share_of_time(station: Station) -> float:
    """The part of the day that pumping takes, what leaks back through the check valve pumped again."""
    well = station.well
    assert well is not None
    back: float = station.main.passing * sqrt(max(station.static, 0.0))
    moved: float = max(station.running.flow + back, 0.02 * station.rated[0])
    return (well.daily + back) / moved


def _sound(station: Station) -> Station:
    assert station.then is not None
    return station.then


def long_hours(station: Station) -> bool:
    """A quarter more hours, or a pump that never stops."""
    runs_on = station.fault == "stuck_float"
    return runs_on or share_of_time(station) >= 1.25 * share_of_time(_sound(station))


def high_water(station: Station) -> bool:
    """Water that the pump can't keep up with, that starts it too late, or a pump that trips."""
    trips = station.fault in ("open_leg", "grounded_winding", "high_float")
    return trips or station.running.flow < 0.65 * _sound(station).running.flow


def tripped(station: Station) -> bool:
    """A leg over the overload's setting, or a fault that opens it in another way."""
    if station.fault in ("open_leg", "grounded_winding", "short_cycling"):
        return True
    return over_setting(station)


def over_setting(station: Station) -> bool:
    """A leg that pulls more than the overload allows."""
    legs = [station.reading(f"amps_{leg}") for leg in "abc"]
    return max(legs) > 1.02 * station.condition.setting


def noisy(station: Station) -> bool:
    """A pump that can be heard across the yard."""
    return sound(station) != SMOOTH or bool(
        station.main.passing
    )  # a leaking valve slams as it stops


def high_bill(station: Station) -> bool:
    """An eighth more energy for the same water."""
    now, then = (
        each.running.load.kilowatts * share_of_time(each) for each in (station, _sound(station))
    )
    return now >= 1.12 * then


COMPLAINTS: Mapping[str, Complaint] = MappingProxyType(
    {
        "hours": Complaint(
            "{pump} runs many more hours than it used to",
            "The run-hour report shows {pump} at least a quarter above last year's hours, and no more rain. "
            "A pump that doesn't stop shows up the same way.",
            long_hours,
        ),
        "alarm": Complaint(
            "The high-water alarm came in overnight",
            "The alarm float came up with {pump} in the lead. It took a portable pump to bring the level down.",
            high_water,
        ),
        "tripped": Complaint(
            "{pump} was found tripped",
            "The overload was open this morning. Somebody reset it once, and it tripped again before long.",
            tripped,
        ),
        "noise": Complaint(
            "A neighbor says {pump} sounds wrong",
            "The day crew heard it too, but can't say what it is.",
            noisy,
        ),
        "bill": Complaint(
            "The electric bill went up, and the flow didn't",
            "The station used at least an eighth more kilowatt-hours than a year ago, for the same water.",
            high_bill,
        ),
        "annual": Complaint(
            "The annual check of {pump} is due",
            "Nobody has complained. Something is off, though, or will be soon.",
            lambda station: not (high_water(station) or over_setting(station)),
        ),
    }
)


def uneven_motor(station: Station) -> Station:
    a, b, c = station.motor.own
    times = 3.6 / max(abs(a), abs(b), abs(c))
    return replace(station, motor=replace(station.motor, own=(a * times, b * times, c * times)))


def warm_bearing(station: Station) -> Station:
    condition = station.condition
    return replace(station, altered=replace(condition, bearing=max(condition.bearing + 8, 66)))


def damp_oil(station: Station) -> Station:
    return replace(station, altered=replace(station.condition, water_in_oil=1.2))


def modest_megohms(station: Station) -> Station:
    return replace(station, altered=replace(station.condition, megohms=170.0))


ODDITIES = (
    Oddity(
        "The operator adds that one leg always pulls a little more than the others.", uneven_motor
    ),
    Oddity("The operator adds that the bearing has always run warm.", warm_bearing),
    Oddity("The operator adds that the oil was a bit cloudy last year too.", damp_oil),
    Oddity("The operator adds that the insulation never read very high.", modest_megohms),
)
# The suspects of level 1: clear signs, no two of them alike.
SIMPLE = frozenset(
    (
        *(
            "clogged_impeller",
            "throttled_valve",
            "broken_main",
            "passing_check",
            "open_seat",
            "air_bound",
        ),
        *("swapped_leads", "open_leg", "unbalanced_supply", "grounded_winding", "shorted_turns"),
        *(
            "failing_bearing",
            "leaking_seal",
            "wrong_overload",
            "high_float",
            "stuck_float",
            "short_cycling",
        ),
    )
)
