"""A pump's curves as its data sheet has them: even steps of flow, round axes, and what is read at each step.

A curve is read to about a twentieth of the space between two lines of its axis.
"""

from dataclasses import dataclass
from math import ceil, floor, log10

from solver.errors import NotSolvable

from .pump import Pump
from .station import Station

__all__ = ["HIGH", "LOW", "PERCENT", "Sheet", "sheet_of"]

FURTHEST = 1.35  # of the best flow, at least, where the sheet ends
FLOWS = 6  # steps of flow, about
HIGH, LOW = 5, 4  # spaces between the lines of the upper and of the lower picture
ROUND = (1, 2, 3, 4, 5, 6, 8, 10)
FINE = (1, 2, 5)
PERCENT = 20.0  # between two lines of efficiency


@dataclass(frozen=True, slots=True)
class Sheet:
    """A new pump at one speed (rpm).

    `flows` (gpm | L/s) at even steps from none; `heads` (ft | m), `efficiencies` (percent), `powers`
    (hp | kW) and `npsh`, NPSHr (ft | m), as read at each of them. The `_step`s are from line to line.
    """

    pump: Pump
    speed: float
    flows: tuple[float, ...]
    heads: tuple[float, ...]
    efficiencies: tuple[float, ...]
    powers: tuple[float, ...]
    npsh: tuple[float, ...]
    head_step: float
    power_step: float
    npsh_step: float

    def at(self, flow: float) -> tuple[float, float, float, float]:
        """Head, efficiency, power and NPSHr at a flow, unrounded."""
        return _at(self.pump, self.speed, flow)

    @property
    def best_flow(self) -> float:
        """The flow at the best efficiency point (gpm | L/s), unrounded."""
        return self.pump.best_flow(self.speed)

    @property
    def best_line(self) -> float:
        """The flow at the line of the sheet with the highest efficiency (gpm | L/s)."""
        return self.flows[self.efficiencies.index(max(self.efficiencies))]


def sheet_of(station: Station) -> Sheet:
    """The sheet of a station's pump as it was new, at the speed it runs.

    Raises:
        NotSolvable: its curve ends before the sheet does.
    """
    pump, speed = station.pump, station.running.speed
    best = pump.best_flow(speed)
    step = _round_up(FURTHEST * best / FLOWS)
    flows = tuple(step * n for n in range(ceil(FURTHEST * best / step) + 1))
    points = [_at(pump, speed, flow) for flow in flows]
    heads, efficiencies, powers, npsh = zip(*points, strict=True)
    if min(heads) < 0.15 * max(heads):
        raise NotSolvable("its curve ends before the sheet does")
    steps = [
        _round_up(max(row) * 1.02 / spaces)
        for row, spaces in ((heads, HIGH), (powers, LOW), (npsh, LOW))
    ]
    read = [
        tuple(_read(value, step) for value in row)
        for row, step in zip((heads, powers, npsh), steps, strict=True)
    ]
    percent = tuple(float(round(value)) for value in efficiencies)
    return Sheet(pump, speed, flows, read[0], percent, read[1], read[2], *steps)


def _at(pump: Pump, speed: float, flow: float) -> tuple[float, float, float, float]:
    head, power = pump.head_at(flow, speed), pump.power_at(flow, speed)
    water = flow * head / pump.system.water_power
    return head, 100 * water / power, power, pump.npsh_at(flow, speed)


def _round_up(value: float) -> float:
    """The least round number at or above a value."""
    ten = 10.0 ** floor(log10(value))
    return round(next(n * ten for n in ROUND if n * ten >= value * (1 - 1e-9)), 9)


def _read(value: float, step: float) -> float:
    """A value as it is read between lines that are a step apart."""
    wanted = step / 20
    ten = 10.0 ** floor(log10(wanted * (1 + 1e-9)))
    fine = max(n * ten for n in FINE if n * ten <= wanted * (1 + 1e-9))
    return round(round(value / fine) * fine, 6)
