"""What can be wrong with a station: each fault changes it in one place, and every reading follows.

A fault goes from 0, nothing wrong, to 1, as bad as it is drawn; the worse it is, the further its readings
are from the sound station's. Sizes are common practice, no source. `put` finds the severity that brings
a reading to a wanted value, so that a judgment can pick its zone first.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from solver.errors import BadDefinition, NotSolvable

from .changes import (
    air_bound,
    bearing,
    blocked_suction,
    broken,
    clogged_impeller,
    clogged_main,
    damp,
    grounded,
    high_float,
    joint,
    leaking_seal,
    low_float,
    low_volts,
    open_leg,
    open_seat,
    passing,
    setting,
    shorted,
    stuck,
    swapped,
    turned,
    unbalanced,
    valve,
    worn_impeller,
    worn_rings,
)
from .station import Station

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


CLOSE = 1e-6  # of the wanted reading: finer than any instrument
HARDLY = 1e-6  # the least severity: a valve that leaks nothing has no leak to read
FAULTS: Mapping[str, Fault] = MappingProxyType(
    {
        fault.name: fault
        for fault in (
            Fault("worn_rings", "worn wear rings", worn_rings, 0.3),
            Fault("worn_impeller", "worn impeller", worn_impeller, 0.3),
            Fault("clogged_impeller", "clogged impeller", clogged_impeller, 0.2),
            Fault("throttled_valve", "discharge valve partly closed", valve, 0.3),
            Fault("clogged_main", "force main clogged", clogged_main, 0.3),
            Fault("broken_main", "broken force main", broken, 0.4),
            Fault("passing_check", "check valve that leaks back", passing, 0.2, "lift"),
            Fault(
                "open_seat",
                "pump not seated on its discharge",
                open_seat,
                0.2,
                "submerged",
            ),
            Fault("blocked_suction", "clogged suction strainer", blocked_suction, 0.3, "suction"),
            Fault("air_bound", "air in the pump", air_bound, 0.2),
            Fault("turned_supply", "supply phases changed, everything runs backward", turned),
            Fault("swapped_leads", "two motor leads swapped, this pump runs backward", swapped),
            Fault("open_leg", "one leg open", open_leg),
            Fault("loose_joint", "loose joint on one leg", joint),
            Fault("unbalanced_supply", "unbalanced supply voltage", unbalanced, 0.2),
            Fault("low_volts", "low supply voltage", low_volts),
            Fault("damp_winding", "damp winding", damp, 0.3),
            Fault("grounded_winding", "grounded winding", grounded),
            Fault("shorted_turns", "shorted turns in a winding", shorted),
            Fault("failing_bearing", "failing bearing", bearing, 0.2),
            Fault(
                "leaking_seal",
                "shaft seal lets water into the oil",
                leaking_seal,
            ),
            Fault("wrong_overload", "overload set too high", setting),
            Fault("high_float", "on float in the wrong place", high_float, 0.3, "well"),
            Fault("stuck_float", "off float stuck", stuck, 0.3, "well"),
            Fault("short_cycling", "pump short cycling", low_float, 0.3, "well"),
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

    def at(severity: float) -> float:
        return with_fault(station, name, severity).reading(reading) - wanted

    low, high = HARDLY, 1.0
    below, above = at(low), at(high)
    if below * above > 0:
        raise NotSolvable(
            f"{reading} goes from {below + wanted:.4g} to {above + wanted:.4g} with {name}: "
            f"never {wanted:.4g}"
        )
    return with_fault(station, name, _root(at, (low, below), (high, above), abs(wanted) * CLOSE))


def _root(
    at: Callable[[float], float], low: tuple[float, float], high: tuple[float, float], near: float
) -> float:
    """Where `at` is nothing, to `near` of it, between two (severity, value) on either side of it.

    Regula falsi with the Illinois rule: the end that stays twice counts for half the next time.
    """
    (a, fa), (b, fb) = low, high
    side = 0
    for _ in range(60):
        middle = b - fb * (b - a) / (fb - fa)
        found = at(middle)
        if abs(found) <= near:
            return middle
        if found * fb > 0:
            b, fb, fa, side = middle, found, fa / 2 if side == 1 else fa, 1
        else:
            a, fa, fb, side = middle, found, fb / 2 if side == -1 else fb, -1
    return middle
