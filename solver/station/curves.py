"""Points of a station's curves: what pump and main do at each flow, at the speed it runs."""

from typing import NamedTuple

from .station import Station

__all__ = ["CurvePoint", "curve_points"]

FURTHEST = 1.25  # of the best flow, where a pump's curve is drawn to


class CurvePoint(NamedTuple):
    """One flow (gpm | L/s): heads of pump and system (ft | m), efficiency (percent), shaft power (hp | kW).

    `npsh` is NPSHr (ft | m).
    """

    flow: float
    head: float
    system_head: float
    efficiency: float
    power: float
    npsh: float


def curve_points(station: Station, count: int = 9) -> tuple[CurvePoint, ...]:
    """Points at even steps of flow, from none to a quarter beyond the best point or a little past the duty."""
    pump, speed = station.pump, station.running.speed
    end = max(FURTHEST * pump.flow, 1.1 * station.running.flow)
    return tuple(_point(station, end * step / (count - 1), speed) for step in range(count))


def _point(station: Station, flow: float, speed: float) -> CurvePoint:
    pump, main, suction = station.pump, station.main, station.suction
    head = max(pump.head_at(flow, speed), 0.0)
    power = pump.power_at(flow, speed)
    before = suction.lost(flow) if suction else 0.0
    asked = station.static + main.lost(flow) + before
    water = flow * head / station.system.water_power
    return CurvePoint(flow, head, asked, 100 * water / power, power, pump.npsh_at(flow, speed))
