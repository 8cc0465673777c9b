"""Speed and impeller: the pump's own figures, another speed or trim, curves that cross, two pumps."""

from types import MappingProxyType
from typing import TYPE_CHECKING

from .money import energy_per_volume, yearly
from .power import input_power
from .read import NotRead, Reads
from .water import WATER

if TYPE_CHECKING:
    from solver.station.station import Station

__all__ = ["SPEED"]

flow = WATER["flow"]


def other_speed(station: "Station") -> float:
    """New speed over the speed."""
    if station.plans.change != "speed":
        raise NotRead("no other speed is thought of")
    return station.change


def trim(station: "Station") -> float:
    """New diameter over the diameter."""
    if station.plans.change != "trim":
        raise NotRead("no trim is thought of")
    return station.change


def slowed(station: "Station") -> float:
    """Input at the new speed (kW), with the motor and the drive as efficient as now."""
    other_speed(station)
    return input_power(station) * station.changed.shaft / station.running.shaft


def slowing_saved(station: "Station") -> float:
    """What the pump takes less when it is slowed (kW)."""
    return input_power(station) - slowed(station)


def losses(station: "Station", at: float) -> float:
    """All losses of the system at a flow, by the square of the flow from here (ft | m)."""
    now = station.running
    return (now.head - station.static) * (at / now.flow) ** 2


def power_ratio(station: "Station") -> float:
    """Shaft power after the change over that before."""
    other_speed(station)
    return station.changed.shaft / station.running.shaft


def shutoff(station: "Station") -> float:
    """Head at no flow (ft | m)."""
    return station.pump.head_at(0.0, station.running.speed)


def least_speed(station: "Station") -> float:
    """The speed that only just lifts water (rpm)."""
    if station.static <= 0:
        raise NotRead("there is nothing to lift")
    return station.running.speed * station.least_ratio


def added(station: "Station") -> float:
    """Flow that a second pump adds (gpm | L/s)."""
    return station.paired.flow - flow(station)


def known_flow(station: "Station") -> float:
    """A flow at which the losses are known (gpm | L/s)."""
    return station.plans.known * flow(station)


def stage_head(station: "Station") -> float:
    """Head of one stage (ft | m)."""
    return station.running.head / station.pump.stages


SPEED: Reads = MappingProxyType(
    {
        "pump_speed": lambda s: s.running.speed,
        "new_speed": lambda s: other_speed(s) * s.running.speed,
        "speed_ratio": other_speed,
        "speed_cut": lambda s: 100 * (1 - other_speed(s)),
        "shaft_torque": lambda s: s.system.torque(s.running.shaft, s.running.speed),
        "impeller_diameter": lambda s: s.pump.diameter,
        "new_diameter": lambda s: trim(s) * s.pump.diameter,
        "trim_ratio": trim,
        "new_flow": lambda s: s.changed.flow,
        "new_head": lambda s: s.changed.head,
        "new_shaft_power": lambda s: s.changed.shaft,
        "power_ratio": power_ratio,
        "power_cut": lambda s: 100 * (1 - power_ratio(s)),
        "slowed_power": slowed,
        "slowing_saved_power": slowing_saved,
        "slowing_saved_energy": lambda s: slowing_saved(s) * yearly(s),
        "slowing_saving": lambda s: slowing_saved(s) * yearly(s) * s.bill.energy_price,
        "flow_ratio": lambda s: s.changed.flow / flow(s),
        "new_friction": lambda s: losses(s, s.changed.flow),
        "system_head": lambda s: s.static + losses(s, s.changed.flow),
        "new_energy_per_volume": lambda s: (
            energy_per_volume(s) * slowed(s) / input_power(s) * flow(s) / s.changed.flow
        ),
        "shutoff_head": shutoff,
        "new_shutoff_head": lambda s: s.changed.shutoff,
        "least_speed": least_speed,
        "static_share": lambda s: 100 * WATER["static_head"](s) / s.running.head,
        # The shape of the impeller
        "stages": lambda s: float(s.pump.stages),
        "stage_head": stage_head,
        "specific_speed": lambda s: s.system.specific_speed(
            s.running.speed, flow(s), stage_head(s)
        ),
        # Curves that cross
        "rated_head": lambda s: s.rated[1],
        "head_share": lambda s: 100 * s.running.head / s.rated[1],
        "rated_friction": lambda s: losses(s, s.rated[0]),
        "known_flow": known_flow,
        "known_friction": lambda s: losses(s, known_flow(s)),
        "spare_head": lambda s: shutoff(s) - s.static,
        "curve_drop": lambda s: shutoff(s) - s.rated[1],
        "shared_drop": lambda s: (shutoff(s) - s.rated[1]) / 4,
        "parallel_flow": lambda s: s.paired.flow,
        "added_flow": added,
        "parallel_gain": lambda s: 100 * added(s) / flow(s),
    }
)
