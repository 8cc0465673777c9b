"""What each fault changes, in one place of a station, at a severity from 0 (hardly anything) to 1.

Sizes are common practice, no source.
"""

from dataclasses import replace
from math import pow, sqrt

from .main import DIAMETER_EXPONENT
from .station import Station
from .supply import Legs

__all__ = [
    "ALL_AIR",
    "VOLTS_LEFT",
    "air_bound",
    "bearing",
    "blocked_suction",
    "broken",
    "clogged_impeller",
    "clogged_main",
    "damp",
    "grounded",
    "high_float",
    "joint",
    "leaking_seal",
    "low_float",
    "low_volts",
    "open_leg",
    "open_seat",
    "passing",
    "setting",
    "shorted",
    "stuck",
    "swapped",
    "turned",
    "unbalanced",
    "valve",
    "worn_impeller",
    "worn_rings",
]

ALL_AIR = 0.8  # of its head and load, that air takes at worst
VOLTS_LEFT = (0.84, 0.94)  # of the nameplate's volts, when they are low


def worn_rings(station: Station, bad: float) -> Station:
    """Up to a third of the best flow goes back through the rings."""
    return replace(station, pump=replace(station.pump, leak=0.35 * bad))


def worn_impeller(station: Station, bad: float) -> Station:
    """Up to an eighth of the diameter worn away."""
    return replace(station, pump=replace(station.pump, worn=0.12 * bad))


def clogged_impeller(station: Station, bad: float) -> Station:
    return replace(station, pump=replace(station.pump, clog=0.5 * bad))


def air_bound(station: Station, bad: float) -> Station:
    return replace(station, pump=replace(station.pump, air=ALL_AIR * bad))


def clogged_main(station: Station, bad: float) -> Station:
    """Grease or scale narrows it until its friction grows by up to 0.7 of the rated head."""
    flow, head = station.rated
    times = 1 + 0.7 * bad * head / station.main.friction(flow)
    left = pow(times, -1 / DIAMETER_EXPONENT)
    return replace(station, main=replace(station.main, narrowed=1 - left))


def valve(station: Station, bad: float) -> Station:
    """A discharge valve nearly closed; its K goes up as the square of what is closed."""
    moving = station.main.velocity_head(station.rated[0])
    return replace(
        station, main=replace(station.main, closed=bad**2 * 4 * station.rated[1] / moving)
    )


def broken(station: Station, bad: float) -> Station:
    return replace(station, main=replace(station.main, broken=1 - 0.8 * bad))


def passing(station: Station, bad: float) -> Station:
    """Up to half the rated flow comes back through the check valve at rest."""
    rated = station.rated[0] / sqrt(station.static)
    return replace(station, main=replace(station.main, passing=0.5 * bad * rated))


def open_seat(station: Station, bad: float) -> Station:
    """Up to four tenths of the rated flow goes past the discharge seat."""
    rated = station.rated[0] / sqrt(station.rated[1])
    return replace(station, main=replace(station.main, seat=0.4 * bad * rated))


def blocked_suction(station: Station, bad: float) -> Station:
    """A strainer clogged until it takes up to 12 ft of suction head at the rated flow."""
    suction = station.suction
    assert suction is not None
    lost = 12 * bad / station.system.feet / suction.velocity_head(station.rated[0])
    return replace(station, suction=replace(suction, blocked=lost))


def turned(station: Station, bad: float) -> Station:
    """Two of the supply's phases changed, so that everything on it turns the other way."""
    supply = replace(station.supply, rotation=-1)
    return replace(station, supply=supply, pump=replace(station.pump, backward=True))


def swapped(station: Station, bad: float) -> Station:
    """Two of this motor's leads swapped: it alone turns the other way."""
    return replace(station, pump=replace(station.pump, backward=True))


def open_leg(station: Station, bad: float) -> Station:
    return replace(station, supply=replace(station.supply, open_leg=True))


def joint(station: Station, bad: float) -> Station:
    return replace(station, supply=replace(station.supply, joint=0.05 + 0.2 * bad))


def unbalanced(station: Station, bad: float) -> Station:
    """The supply's own pattern, up to 6.5 percent: past what a motor may run on."""
    a, b, c = station.supply.skew
    wider = 1 + bad * (6.5 / station.supply.unbalance - 1)
    skew: Legs = (a * wider, b * wider, c * wider)
    return replace(station, supply=replace(station.supply, skew=skew))


def low_volts(station: Station, bad: float) -> Station:
    least, most = VOLTS_LEFT
    volts = station.supply.rated_volts * (most - (most - least) * bad)
    return replace(station, supply=replace(station.supply, volts=volts))


def damp(station: Station, bad: float) -> Station:
    """At worst a few megohms, which fall while the test goes on."""
    was = station.condition
    return replace(
        station,
        altered=replace(
            was,
            megohms=was.megohms * 10 ** (-2.4 * bad),
            index=was.index - bad * (was.index - 0.7),
            ratio=was.ratio - bad * (was.ratio - 0.75),
        ),
    )


def grounded(station: Station, bad: float) -> Station:
    return replace(
        station,
        altered=replace(station.condition, megohms=0.2 * 10 ** (-2 * bad), index=1.0, ratio=1.0),
    )


def shorted(station: Station, bad: float) -> Station:
    """Shorted turns take ohms from a phase, and more amps go through its lead."""
    turns = 0.14 * bad
    a, b, c = station.motor.own
    own: Legs = (a + 200 * turns, b - 100 * turns, c - 100 * turns)
    condition = replace(station.condition, windings=(1 - turns, 1.0, 1.0))
    return replace(station, motor=replace(station.motor, own=own), altered=condition)


def bearing(station: Station, bad: float) -> Station:
    motor = replace(station.motor, drag=0.02 * bad * station.motor.size)
    was = station.condition
    condition = replace(
        was, bearing=was.bearing + 45 * bad, vibration=was.vibration * (1 + 5 * bad)
    )
    return replace(station, motor=motor, altered=condition)


def leaking_seal(station: Station, bad: float) -> Station:
    """From 2 to 30 percent of water in the oil."""
    return replace(station, altered=replace(station.condition, water_in_oil=2 + 28 * bad))


def setting(station: Station, bad: float) -> Station:
    amps = round(station.motor.full_load_amps * (1.25 + 0.5 * bad), 1)
    return replace(station, altered=replace(station.condition, setting=amps))


def low_float(station: Station, bad: float) -> Station:
    """The on float set too low, down to a tenth of the way: the pump starts too often."""
    well = station.well
    assert well is not None
    return replace(station, well=replace(well, on=well.on - 0.9 * bad * (well.on - well.off)))


def high_float(station: Station, bad: float) -> Station:
    """The on float set too high, up to where half the way to the overflow is gone."""
    well = station.well
    assert well is not None
    over = well.to_floor - well.to_overflow
    return replace(station, well=replace(well, on=well.on + 0.5 * bad * (over - well.on)))


def stuck(station: Station, bad: float) -> Station:
    """The off float stuck up: the pump runs on, and the water goes below where it should stop."""
    well = station.well
    assert well is not None
    return replace(station, well=replace(well, fall=well.level - well.off * (1 - 0.8 * bad)))
