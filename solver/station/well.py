"""The wet well: its size, floats and inflow, and how long a tape and a stopwatch take over it.

The volume between floats is cycle time times pump rate over four (MIL-HDBK-1005/9A, 2.5.3.6), for the
time between starts that US Army Corps of Engineers EI 11C201 Table 7-1 asks of the motor. Floats are at least
half a foot apart and six feet at most, so that no test asks the water to rise further (common practice, no source).
"""

from dataclasses import dataclass
from functools import cache
from math import ceil, pi, sqrt
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.topics.tables import table_rows

from .system import System

__all__ = ["CycleRow", "Well", "cycle_rows", "draw_well", "least_cycle"]

ROUND = {
    "us": (4.0, 5.0, 6.0, 7.0, 8.0, 10.0, 12.0, 14.0),
    "si": (1.2, 1.5, 1.8, 2.0, 2.4, 3.0, 3.6, 4.2),
}
DEEPEST = {"us": 6.0, "si": 1.8}
LEAST = {"us": 0.5, "si": 0.15}


@dataclass(frozen=True, slots=True)
class Well:
    """Depths from the floor and from the rim (ft | m), areas by `diameter` or `sides` (ft | m).

    `inflow` now and over a day (gpm | L/s); `pumps` that take turns, or one alone; `sewer`: storage in the pipe (gal | m3);
    `starts` that its motors allow an hour. Tape readings of the tests (in | cm): `drop`, `rise`
    and `closed`, the rise with the valves closed. `designed`: the on and off level on the
    drawings. `fall`: how far the water now is below where the duty was set (ft | m).
    """

    system: System
    diameter: float
    sides: tuple[float, float] | None
    to_floor: float
    to_overflow: float
    on: float
    off: float
    designed: tuple[float, float]
    level: float
    inflow: float
    daily: float
    pumps: int
    sewer: float
    starts: float
    drop: float
    rise: float
    closed: float
    fall: float = 0.0

    @property
    def area(self) -> float:
        """Floor area (ft2 | m2)."""
        return self.sides[0] * self.sides[1] if self.sides else pi / 4 * self.diameter**2

    @property
    def per_depth(self) -> float:
        """Volume (gal | m3) in a foot | meter of depth."""
        return self.area * self.system.volume

    @property
    def depth(self) -> float:
        """Depth of the water now (ft | m)."""
        return self.level - self.fall

    @property
    def working(self) -> float:
        """Volume between the floats (gal | m3)."""
        return self.per_depth * (self.on - self.off)

    def volume_of(self, parts: float) -> float:
        """Volume (gal | m3) of a tape reading (in | cm)."""
        return self.per_depth * parts / self.system.parts

    def minutes(self, volume: float, rate: float) -> float:
        """How long a rate (gpm | L/s) takes over a volume (gal | m3)."""
        return volume / (rate * self.system.per_minute)

    def seconds(self, parts: float, rate: float) -> float:
        """How long a rate (gpm | L/s) takes over a tape reading (in | cm)."""
        return 60 * self.minutes(self.volume_of(parts), rate)


class CycleRow(NamedTuple):
    """A row of EI 11C201 Table 7-1: motors `under` a size (hp | kW), least times between starts (min)."""

    under: float
    floor: float
    ceiling: float


@cache
def cycle_rows(units: str) -> tuple[CycleRow, ...]:
    """The table, from the smallest motors up; a larger one's manufacturer says how often it may start."""
    column = {"us": "under_hp", "si": "under_kw"}[units]
    return tuple(CycleRow(row[column], row["from"], row["to"]) for row in table_rows("cycles"))


def least_cycle(size: float, units: str) -> tuple[float, float]:
    """The least time between starts (min), from and to, for a motor of this size (hp | kW).

    Above the table its last row, as a maker might say.
    """
    rows = cycle_rows(units)
    row = next((row for row in rows if size < row.under), rows[-1])
    return row.floor, row.ceiling


def draw_well(
    draw: Draw,
    system: System,
    flow: float,
    size: float,
    wanted_round: bool | None = None,
    pumps: int | None = None,
) -> Well | None:
    """A well for a pump (gpm | L/s) and its motor (hp | kW), round or with corners if that is wanted.

    `pumps` take turns, two or three where nothing is said. None where no standard well fits.
    """
    us = system.name == "us"
    cycle = draw.pick(least_cycle(size, system.name))
    wanted = cycle * flow * system.per_minute / 4 * draw.between(1.0, 1.5)
    depth = draw.between(*((1.5, 4.5) if us else (0.5, 1.4)))
    diameter, sides = _shape(draw, system, wanted / system.volume / depth, wanted_round)
    if wanted_round is not None and wanted_round == bool(sides):
        return None
    area = sides[0] * sides[1] if sides else pi / 4 * diameter**2
    step = 0.1 if us else 0.05
    apart = round(ceil(wanted / system.volume / area / step - 1e-9) * step, 2)
    if not LEAST[system.name] <= apart <= DEEPEST[system.name] or (
        sides and sides[0] > (75 if us else 23)
    ):
        return None
    off = draw.step(1, 2.5, 0.5) if us else draw.step(0.3, 0.8, 0.1)
    on = round(off + apart, 2)
    over = round(on + (draw.step(1.5, 5, 0.5) if us else draw.step(0.5, 1.5, 0.1)), 2)
    to_overflow = draw.step(4, 12, 0.5) if us else draw.step(1.2, 3.6, 0.1)
    parts = system.parts * apart
    least, most = (4.0, 18.0) if us else (10.0, 45.0)
    well = Well(
        system,
        diameter,
        sides,
        round(over + to_overflow, 2),
        to_overflow,
        on,
        off,
        (on, off),
        round(off + apart * draw.step(0.2, 0.8, 0.1), 2),
        _round(flow * draw.between(0.2, 0.8), us),
        flow * draw.between(0.12, 0.55),
        pumps or int(draw.pick((2, 2, 2, 3))),
        float(round(wanted * draw.between(0.6, 3), -2 if us else 0)) or 1.0,
        60 / cycle,
        *(float(round(min(parts, draw.between(least, most)))) for _ in range(3)),
    )
    swept = flow * system.per_minute * cycle / well.pumps / 4
    return well if swept / well.per_depth >= LEAST[system.name] else None


def _shape(
    draw: Draw, system: System, area: float, wanted_round: bool | None
) -> tuple[float, tuple[float, float] | None]:
    """A round well where a standard one is wide enough, else sides of whole feet | half meters."""
    across = sqrt(4 * area / pi)
    wide = ROUND[system.name]
    is_round = draw.pick((True, True, False))
    if across <= wide[-1] and (is_round if wanted_round is None else wanted_round):
        return min(wide, key=lambda size: abs(size - across)), None
    step = 1.0 if system.name == "us" else 0.5
    width = max(3 * step, round(sqrt(area / draw.between(1.1, 2.0)) / step) * step)
    return 0.0, (max(width, round(area / width / step) * step), width)


def _round(flow: float, us: bool) -> float:
    step = (50 if flow >= 2000 else 10 if flow >= 300 else 5) if us else (1 if flow >= 20 else 0.5)
    return float(max(step, round(flow / step) * step))
