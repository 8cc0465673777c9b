"""What can be wrong with a station: each fault changes it in one place, and every reading follows.

A fault goes from 0, nothing wrong, to 1, as bad as it is drawn; the worse it is, the further its readings
are from the sound station's. Sizes are common practice, no source. `put` finds the severity that brings
a reading to a wanted value, so that a judgment can pick its zone first.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from math import pow, sqrt
from types import MappingProxyType

from solver.errors import BadDefinition, NotSolvable

from .main import DIAMETER_EXPONENT
from .station import Station
from .supply import Legs

__all__ = ["FAULTS", "Fault", "applies", "fault_named", "put", "with_fault"]

Change = Callable[[Station, float], Station]


@dataclass(frozen=True, slots=True)
class Fault:
    """One fault: its name in code, what a person calls it, and the change at a severity above 0 up to 1.

    `least` is the severity from which a field instrument can see it. `needs`: the part without
    which a station cannot have it ("well", "lift", "suction", "submerged").
    """

    name: str
    label: str
    change: Change
    least: float = 0.3
    needs: str = ""


def _worn_rings(station: Station, bad: float) -> Station:
    """Up to a third of the best flow goes back through the rings."""
    return replace(station, pump=replace(station.pump, leak=0.35 * bad))


def _worn_impeller(station: Station, bad: float) -> Station:
    """Up to an eighth of the diameter worn away."""
    return replace(station, pump=replace(station.pump, worn=0.12 * bad))


def _clogged_impeller(station: Station, bad: float) -> Station:
    return replace(station, pump=replace(station.pump, clog=0.5 * bad))


def _air_bound(station: Station, bad: float) -> Station:
    return replace(station, pump=replace(station.pump, air=0.8 * bad))


def _clogged_main(station: Station, bad: float) -> Station:
    """Grease or scale narrows it until its friction grows by up to 0.7 of the rated head."""
    flow, head = station.rated
    times = 1 + 0.7 * bad * head / station.main.friction(flow)
    left = pow(times, -1 / DIAMETER_EXPONENT)
    return replace(station, main=replace(station.main, narrowed=1 - left))


def _valve(station: Station, bad: float) -> Station:
    """A discharge valve nearly closed; its K goes up as the square of what is closed."""
    moving = station.main.velocity_head(station.rated[0])
    return replace(
        station, main=replace(station.main, closed=bad**2 * 4 * station.rated[1] / moving)
    )


def _broken(station: Station, bad: float) -> Station:
    return replace(station, main=replace(station.main, broken=1 - 0.8 * bad))


def _passing(station: Station, bad: float) -> Station:
    """Up to half the rated flow comes back through the check valve at rest."""
    rated = station.rated[0] / sqrt(station.static)
    return replace(station, main=replace(station.main, passing=0.5 * bad * rated))


def _open_seat(station: Station, bad: float) -> Station:
    """Up to four tenths of the rated flow goes past the discharge seat."""
    rated = station.rated[0] / sqrt(station.rated[1])
    return replace(station, main=replace(station.main, seat=0.4 * bad * rated))


def _blocked_suction(station: Station, bad: float) -> Station:
    """A strainer clogged until it takes up to 12 ft of suction head at the rated flow."""
    suction = station.suction
    assert suction is not None
    lost = 12 * bad / station.system.feet / suction.velocity_head(station.rated[0])
    return replace(station, suction=replace(suction, blocked=lost))


def _turned(station: Station, bad: float) -> Station:
    """Two of the supply's phases changed, so that everything on it turns the other way."""
    supply = replace(station.supply, rotation=-1)
    return replace(station, supply=supply, pump=replace(station.pump, backward=True))


def _swapped(station: Station, bad: float) -> Station:
    """Two of this motor's leads swapped: it alone turns the other way."""
    return replace(station, pump=replace(station.pump, backward=True))


def _open_leg(station: Station, bad: float) -> Station:
    return replace(station, supply=replace(station.supply, open_leg=True))


def _joint(station: Station, bad: float) -> Station:
    return replace(station, supply=replace(station.supply, joint=0.05 + 0.2 * bad))


def _unbalanced(station: Station, bad: float) -> Station:
    """The supply's own pattern, up to 4.5 percent."""
    a, b, c = station.supply.skew
    wider = 1 + bad * (4.5 / station.supply.unbalance - 1)
    skew: Legs = (a * wider, b * wider, c * wider)
    return replace(station, supply=replace(station.supply, skew=skew))


def _low_volts(station: Station, bad: float) -> Station:
    volts = station.supply.rated_volts * (0.94 - 0.1 * bad)
    return replace(station, supply=replace(station.supply, volts=volts))


def _damp(station: Station, bad: float) -> Station:
    was = station.condition
    return replace(
        station,
        altered=replace(
            was,
            megohms=was.megohms * 10 ** (-2.4 * bad),
            index=was.index - bad * (was.index - 1.15),
            ratio=was.ratio - bad * (was.ratio - 1.05),
        ),
    )


def _grounded(station: Station, bad: float) -> Station:
    return replace(
        station,
        altered=replace(station.condition, megohms=0.2 * 10 ** (-2 * bad), index=1.0, ratio=1.0),
    )


def _shorted(station: Station, bad: float) -> Station:
    """Shorted turns take ohms from a phase, and more amps go through its lead."""
    turns = 0.02 + 0.1 * bad
    a, b, c = station.motor.own
    own: Legs = (a + 200 * turns, b - 100 * turns, c - 100 * turns)
    condition = replace(station.condition, shorted=turns)
    return replace(station, motor=replace(station.motor, own=own), altered=condition)


def _bearing(station: Station, bad: float) -> Station:
    motor = replace(station.motor, drag=0.02 * bad * station.motor.size)
    was = station.condition
    condition = replace(
        was, bearing=was.bearing + 45 * bad, vibration=was.vibration * (1 + 5 * bad)
    )
    return replace(station, motor=motor, altered=condition)


def _leaking_seal(station: Station, bad: float) -> Station:
    """From 2 to 30 percent of water in the oil."""
    return replace(station, altered=replace(station.condition, water_in_oil=2 + 28 * bad))


def _setting(station: Station, bad: float) -> Station:
    amps = round(station.motor.full_load_amps * (1.25 + 0.5 * bad), 1)
    return replace(station, altered=replace(station.condition, setting=amps))


def _float(station: Station, bad: float) -> Station:
    """The on float set too low, down to a tenth of the way: the pump starts too often."""
    well = station.well
    assert well is not None
    return replace(station, well=replace(well, on=well.on - 0.9 * bad * (well.on - well.off)))


def _high_float(station: Station, bad: float) -> Station:
    """The on float set too high, up to where half the way to the overflow is gone."""
    well = station.well
    assert well is not None
    over = well.to_floor - well.to_overflow
    return replace(station, well=replace(well, on=well.on + 0.5 * bad * (over - well.on)))


def _stuck(station: Station, bad: float) -> Station:
    """The off float stuck up: the pump runs on, and the water goes below where it should stop."""
    well = station.well
    assert well is not None
    return replace(station, well=replace(well, fall=well.level - well.off * (1 - 0.8 * bad)))


FAULTS: Mapping[str, Fault] = MappingProxyType(
    {
        fault.name: fault
        for fault in (
            Fault("worn_rings", "worn wear rings", _worn_rings, 0.3),
            Fault("worn_impeller", "worn impeller", _worn_impeller, 0.3),
            Fault("clogged_impeller", "clogged impeller", _clogged_impeller, 0.2),
            Fault("throttled_valve", "discharge valve partly closed", _valve, 0.3),
            Fault("clogged_main", "force main clogged", _clogged_main, 0.3),
            Fault("broken_main", "broken force main", _broken, 0.4),
            Fault("passing_check", "check valve that leaks back", _passing, 0.2, "lift"),
            Fault(
                "open_seat",
                "pump not seated on its discharge",
                _open_seat,
                0.2,
                "submerged",
            ),
            Fault("blocked_suction", "clogged suction strainer", _blocked_suction, 0.3, "suction"),
            Fault("air_bound", "air in the pump", _air_bound, 0.2),
            Fault("turned_supply", "supply phases changed, everything runs backward", _turned),
            Fault("swapped_leads", "two motor leads swapped, this pump runs backward", _swapped),
            Fault("open_leg", "one leg open", _open_leg),
            Fault("loose_joint", "loose joint on one leg", _joint),
            Fault("unbalanced_supply", "unbalanced supply voltage", _unbalanced, 0.2),
            Fault("low_volts", "low supply voltage", _low_volts),
            Fault("damp_winding", "damp winding", _damp, 0.3),
            Fault("grounded_winding", "grounded winding", _grounded),
            Fault("shorted_turns", "shorted turns in a winding", _shorted),
            Fault("failing_bearing", "failing bearing", _bearing, 0.2),
            Fault(
                "leaking_seal",
                "shaft seal lets water into the oil",
                _leaking_seal,
            ),
            Fault("wrong_overload", "overload set too high", _setting),
            Fault("high_float", "on float in the wrong place", _high_float, 0.3, "well"),
            Fault("stuck_float", "off float stuck", _stuck, 0.3, "well"),
            Fault("short_cycling", "pump short cycling", _float, 0.3, "well"),
        )
    }
)


def applies(fault: Fault, station: Station) -> bool:
    """Whether a station can have this fault."""
    return (
        not fault.needs
        or (fault.needs == "well" and station.well is not None)
        or (fault.needs == "lift" and station.well is not None and station.static > 0)
        or (fault.needs == "suction" and station.suction is not None)
        or (fault.needs == "submerged" and station.kind.submerged)
    )


def fault_named(name: str) -> Fault:
    """The fault called `name`; BadDefinition where there is none."""
    try:
        return FAULTS[name]
    except KeyError:
        raise BadDefinition(
            f"No fault is called “{name}”. Use one of: {', '.join(FAULTS)}."
        ) from None


def with_fault(station: Station, name: str, severity: float = 1.0) -> Station:
    """The same station with a fault, and as it was before in `then`.

    Raises:
        BadDefinition: no such fault, or no severity from 0 to 1.
        NotSolvable: this station cannot have it.
    """
    fault = fault_named(name)
    if not 0 <= severity <= 1:
        raise BadDefinition(f"A severity is from 0 to 1; got {severity:g}.")
    if not applies(fault, station):
        raise NotSolvable(f"This station has no part that could have “{fault.label}”.")
    sound = station.then or station
    return replace(fault.change(sound, severity), fault=name, then=sound)


def put(station: Station, name: str, reading: str, wanted: float) -> Station:
    """The station with as much of a fault as brings a reading to a wanted value.

    Raises:
        NotSolvable: the reading never gets there.
    """
    low, high = 0.0, 1.0
    first = with_fault(station, name, low).reading(reading)
    last = with_fault(station, name, high).reading(reading)
    if not min(first, last) <= wanted <= max(first, last):
        raise NotSolvable(
            f"{reading} goes from {first:.4g} to {last:.4g} with {name}: never {wanted:.4g}"
        )
    rising = last > first
    for _ in range(60):
        middle = (low + high) / 2
        above = with_fault(station, name, middle).reading(reading) > wanted
        low, high = (low, middle) if above == rising else (middle, high)
    return with_fault(station, name, (low + high) / 2)
