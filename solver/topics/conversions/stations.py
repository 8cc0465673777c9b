"""The stations that the conversions read their flows, gauges and loads off."""

from solver.engine.draw import Draw
from solver.station.faults import with_fault
from solver.station.need import Need
from solver.station.scene import Readings
from solver.station.station import Station

__all__ = ["CHANNEL_METER", "WORN"]

WEAR = (0.3, 0.95)  # severity of what years do to the rings of a pump


def worn(station: Station, draw: Draw) -> Station:
    """The pump, worn until it moves noticeably less."""
    return with_fault(station, "worn_rings", draw.between(*WEAR))


# A booster pumps from a closed main, and what recirculates passes no channel.
CHANNEL_METER = Readings(Need(kinds=("lift", "flooded", "above", "low_lift")))
WORN = Readings(change=worn)
