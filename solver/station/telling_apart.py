"""Which readings tell one state of a station from another: computed from the model, never listed by hand.

A reading tells when it differs by more than its instrument may be off in either state, or when one of them
has no such reading, as a well that is not drawn down any more.
"""

from collections.abc import Iterable

from .instruments import error_of
from .readings import SIGNS, NotRead
from .station import Station

__all__ = ["READ", "telling"]

# What a person can read at a station, none of it worked out.
READ = (
    *("flow", "discharge_gauge", "suction_gauge", "suction_vacuum", "input_power", "power_factor"),
    *("running_speed", "amps_a", "amps_b", "amps_c", "volts_ab", "volts_bc", "volts_ca"),
    *("drawdown_time", "rise_time", "on_level", "off_level", "water_depth", "overload_setting"),
    *("insulation", "insulation_10min", "ohms_12", "ohms_23", "ohms_31", *SIGNS),
)


def telling(one: Station, other: Station, names: Iterable[str] = READ) -> dict[str, float]:
    """The readings that tell two states apart, each with how many times its error they differ by.

    A reading that only one of them has counts as infinitely far.
    """
    found = {}
    for name in names:
        first, second = _read(one, name), _read(other, name)
        if first is None and second is None:
            continue
        times = float("inf")
        if first is not None and second is not None:
            units = one.system.name
            off = max(error_of(name, value, units) for value in (first, second))
            times = abs(first - second) / off if off else (0.0 if first == second else times)
        if times > 1:
            found[name] = times
    return found


def _read(station: Station, name: str) -> float | None:
    try:
        return station.reading(name)
    except NotRead:
        return None
