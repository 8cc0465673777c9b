"""What stations several chapters read their problems off, and the scene of a problem without numbers.

A power before and after a machine is read where nothing else is between them: so `DIRECT`, unless the
question tells of the drive.
"""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Small
from solver.station.need import Need
from solver.station.scene import Readings

__all__ = ["ANY", "AT_A_WELL", "BELTED", "DIRECT", "DRY", "NO_NUMBERS"]

ANY = Readings()
DIRECT = Readings(Need(drives=("direct",)))
BELTED = Readings(Need(drives=("belt",)))


def _nothing(draw: Draw, units: str) -> Mapping[str, float]:
    """No values: the judge draws everything itself, or there are no numbers."""
    return {}


NO_NUMBERS = Small(_nothing)
DRY = Small(_nothing, BELTED.places)  # the same, at pumps that are not under water
AT_A_WELL = Small(_nothing, Readings(Need(well=True)).places)  # the same, where sewage comes in
