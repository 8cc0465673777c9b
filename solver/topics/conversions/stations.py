"""The stations that the conversions read their flows, gauges and loads off."""

from solver.engine.draw import Draw
from solver.station.faults import put
from solver.station.need import Need
from solver.station.scene import Readings
from solver.station.station import Station

__all__ = ["CHANNEL_METER", "WORN"]

KEPT = (0.78, 0.95)  # of its flow, by a pump that has worn since it was new


def worn(station: Station, draw: Draw) -> Station:
    """The pump, worn until it moves noticeably less."""
    flow = station.running.flow * draw.between(*KEPT)
    return put(station, "worn_rings", "flow", flow)


# A booster pumps from a closed main, and what recirculates passes no channel.
CHANNEL_METER = Readings(Need(kinds=("lift", "flooded", "above", "low_lift")))
WORN = Readings(change=worn)
