"""Flow, head, pipes, gauges, suction, and the pump's own figures."""

from types import MappingProxyType
from typing import TYPE_CHECKING

from solver.engine.draw import Draw

from .read import NotRead, Reads, at_the_pump, earlier, later, there

if TYPE_CHECKING:
    from solver.station.station import Station

__all__ = ["WATER"]


def flow(station: "Station") -> float:
    """Flow into the main (gpm | L/s)."""
    return station.running.flow


def suction_head(station: "Station") -> float:
    """Total head at the suction, over the pump (ft | m)."""
    suction = at_the_pump(station)
    return -lift(station) - suction.lost(station.running.pumped)


def lift(station: "Station") -> float:
    """From the water up to the pump (ft | m), below zero when flooded."""
    fall = station.well.fall if station.well else 0.0
    return at_the_pump(station).lift + fall


def suction_lift(station: "Station") -> float:
    """Static suction lift (ft | m)."""
    if lift(station) <= 0:
        raise NotRead("the suction is flooded")
    return lift(station)


def static_suction_head(station: "Station") -> float:
    """Water over the pump (ft | m)."""
    if lift(station) >= 0:
        raise NotRead("the pump is above its water")
    return -lift(station)


def static_head(station: "Station") -> float:
    """From the water up to the end of the main (ft | m)."""
    if not station.main.static:
        raise NotRead("there is nothing to lift")
    return station.static - station.main.delivery


def discharge_head(station: "Station") -> float:
    """Total head at the discharge, over the pump; of a submersible over the water (ft | m)."""
    over = suction_head(station) if station.suction else 0.0
    return station.running.head + over


def discharge_velocity(station: "Station") -> float:
    """Velocity past the discharge gauge (ft/s | m/s)."""
    return station.system.velocity * flow(station) / station.gauges.discharge_diameter**2


def discharge_velocity_head(station: "Station") -> float:
    """Velocity head at the discharge gauge (ft | m)."""
    return discharge_velocity(station) ** 2 / (2 * station.system.gravity)


def discharge_gauge(station: "Station") -> float:
    """The discharge gauge (psi | kPa)."""
    still = discharge_head(station) - discharge_velocity_head(station)
    return (still - station.gauges.discharge_height) / station.system.head


def suction_gauge_height(station: "Station") -> float:
    """The suction gauge over the pump (ft | m)."""
    at_the_pump(station)
    return station.gauges.suction_height


def suction_gauge_head(station: "Station") -> float:
    """The suction gauge as head (ft | m), below zero under vacuum."""
    suction = at_the_pump(station)
    moving = suction.velocity_head(station.running.pumped)
    return suction_head(station) - moving - station.gauges.suction_height


def suction_gauge(station: "Station") -> float:
    """The suction gauge (psi | kPa)."""
    return suction_gauge_head(station) / station.system.head


def suction_vacuum(station: "Station") -> float:
    """The suction gauge as a vacuum (inHg | kPa)."""
    suction_lift(station)
    return -suction_gauge_head(station) / station.system.vacuum_head


def across(station: "Station") -> float:
    """Discharge gauge less suction gauge (psi | kPa)."""
    return discharge_gauge(station) - suction_gauge(station)


def npsh_available(station: "Station") -> float:
    """NPSHa (ft | m)."""
    suction = at_the_pump(station)
    return suction.air - suction.vapor + suction_head(station)


def npsh_required(station: "Station") -> float:
    """NPSHr (ft | m)."""
    return station.pump.npsh_at(station.running.pumped, station.running.speed)


def greatest_lift(station: "Station") -> float:
    """The highest lift that keeps the margin (ft | m)."""
    suction_lift(station)
    suction = at_the_pump(station)
    above = suction.air - suction.vapor - suction.lost(station.running.pumped)
    return above - npsh_required(station) - suction.margin


def outlet(station: "Station") -> float:
    """Velocity out of the nozzle (ft/s | m/s)."""
    there(station.main.nozzle, "nozzle")
    return station.main.outlet_velocity(flow(station))


def delivery(station: "Station") -> float:
    """Pressure wanted at the end, as head (ft | m)."""
    return there(station.main.delivery or None, "pressure to deliver at")


def dynamic_lift(station: "Station") -> float:
    """Static lift and suction loss (ft | m)."""
    return suction_lift(station) + at_the_pump(station).lost(station.running.pumped)


def flow_drop(station: "Station") -> float:
    """What was lost of the flow since a year ago (gpm | L/s)."""
    return earlier(station).running.flow - flow(station)


def to_the_end(station: "Station") -> float:
    """From the pump up to the end of the main (ft | m)."""
    return static_head(station) - lift(station)


def end_elevation(station: "Station") -> float:
    """Elevation of the end of the main (ft | m), over water near the altitude of the pump."""
    draw, us = Draw(f"levels {station.chance}"), station.system.name == "us"
    if station.suction:
        altitude = station.suction.altitude
    else:
        altitude = draw.step(0, 3000, 100) if us else draw.step(0, 900, 50)
    water = altitude + (draw.step(5, 95, 0.5) if us else draw.step(2, 45, 0.1))
    return water + station.main.static


WATER: Reads = MappingProxyType(
    {
        "flow": flow,
        "head": lambda s: s.running.head,
        "pressure": lambda s: s.running.head / s.system.head,
        "rated_flow": lambda s: s.rated[0],
        "flow_share": lambda s: 100 * flow(s) / s.rated[0],
        "earlier_flow": lambda s: earlier(s).running.flow,
        "flow_drop": flow_drop,
        "flow_drop_share": lambda s: 100 * flow_drop(s) / earlier(s).running.flow,
        # Levels
        "static_head": static_head,
        "static_discharge_head": to_the_end,
        "suction_lift": suction_lift,
        "static_suction_head": static_suction_head,
        "discharge_elevation": end_elevation,
        "suction_elevation": lambda s: end_elevation(s) - static_head(s),
        "static_now": lambda s: static_head(later(s)),
        "static_kept": lambda s: 100 * static_head(later(s)) / static_head(s),
        "static_rise": lambda s: static_head(later(s)) - static_head(s),
        # Gauges
        "discharge_gauge": discharge_gauge,
        "discharge_gauge_head": lambda s: discharge_gauge(s) * s.system.head,
        "discharge_gauge_height": lambda s: s.gauges.discharge_height,
        "discharge_diameter": lambda s: s.gauges.discharge_diameter,
        "discharge_velocity": discharge_velocity,
        "discharge_velocity_head": discharge_velocity_head,
        "discharge_head": discharge_head,
        "suction_gauge": suction_gauge,
        "suction_gauge_head": suction_gauge_head,
        "suction_gauge_height": suction_gauge_height,
        "suction_diameter": lambda s: at_the_pump(s).diameter,
        "suction_velocity": lambda s: at_the_pump(s).velocity(s.running.pumped),
        "suction_velocity_head": lambda s: at_the_pump(s).velocity_head(s.running.pumped),
        "suction_head": suction_head,
        "suction_vacuum": suction_vacuum,
        "discharge_gauge_now": lambda s: discharge_gauge(later(s)),
        "suction_gauge_now": lambda s: suction_gauge(later(s)),
        "pressure_now": lambda s: across(later(s)),
        # The main
        "pipe_diameter": lambda s: s.main.bore,
        "pipe_length": lambda s: s.main.run,
        "c_factor": lambda s: s.main.c_factor,
        "velocity": lambda s: s.main.velocity(flow(s)),
        "velocity_head": lambda s: s.main.velocity_head(flow(s)),
        "friction_rate": lambda s: s.main.friction_rate(flow(s)),
        "friction_head": lambda s: s.main.friction(flow(s)),
        "elbows": lambda s: float(s.main.elbows),
        "elbow_coefficient": lambda s: s.main.elbow_k,
        "elbows_coefficient": lambda s: s.main.elbows * s.main.elbow_k,
        "check_valve_coefficient": lambda s: s.main.check_k,
        "gate_valve_coefficient": lambda s: s.main.gate_k + s.main.closed,
        "outlet_coefficient": lambda s: there(s.main.outlet_k or None, "full-bore outlet"),
        "loss_coefficient": lambda s: s.main.fittings + s.main.closed,
        "minor_loss": lambda s: s.main.minor(flow(s)),
        "outlet_velocity": outlet,
        "outlet_velocity_head": lambda s: outlet(s) ** 2 / (2 * s.system.gravity),
        "delivery_pressure": lambda s: delivery(s) / s.system.head,
        "delivery_head": delivery,
        # Suction
        "suction_loss": lambda s: at_the_pump(s).lost(s.running.pumped),
        "dynamic_suction_lift": dynamic_lift,
        "altitude": lambda s: at_the_pump(s).altitude,
        "atmospheric_head": lambda s: at_the_pump(s).air,
        "vapor_head": lambda s: at_the_pump(s).vapor,
        "npsh_available": npsh_available,
        "npsh_required": npsh_required,
        "npsh_margin": lambda s: at_the_pump(s).margin,
        "npsh_usable": lambda s: npsh_available(s) - at_the_pump(s).margin,
        "greatest_lift": greatest_lift,
    }
)
