"""What the problems share: the stations they read, near a standard size of motor."""

from solver.engine.draw import Draw
from solver.errors import NotSolvable
from solver.station.faults import put
from solver.station.need import Need
from solver.station.scene import Change, Readings
from solver.station.station import Station
from solver.topics.chapter import Chapter
from solver.topics.formulas import POWER
from solver.topics.tables import motor_sizes

__all__ = ["CHAPTER", "NEAR_A_SIZE", "OVER_A_SIZE"]

CHAPTER = Chapter("efficiency", POWER)


def at_share(low: float, high: float) -> Change:
    """Throttled until the motor gives a share of a standard size, within the range.

    Near the size, an efficiency too many takes the next motor; just over one, one left out takes
    the smaller.
    """

    def change(station: Station, draw: Draw) -> Station:
        share = draw.between(low, high) * station.drive.efficiency
        now = station.reading("brake_power")
        below = [size for size in motor_sizes(station.system.name) if size * share < now]
        if not below:
            raise NotSolvable("its motor is the smallest")
        return put(station, "throttled_valve", "brake_power", below[-1] * share)

    return change


FLAT = ("lift", "flooded", "above", "recirculation")
NEAR_A_SIZE = Readings(
    Need(drives=("direct",), kinds=FLAT, sizes=(10, 500), load=(99, 118)), at_share(0.96, 0.99)
)
OVER_A_SIZE = Readings(
    Need(drives=("belt",), kinds=FLAT, sizes=(10, 500), load=(103, 122)), at_share(1.01, 1.02)
)
