"""The pump: its curves of head, power and needed suction head, shaped by its specific speed.

- Efficiency at the best point: the surface of Commission Regulation (EU) No 547/2012, Annex III, for
  clean water, by specific speed and flow (read in a copy; tests hold it against tabulated tests of two
  pumps). Its C is given for the worst tenth and the worst four tenths of a market, by kind and speed;
  a drawn pump lies between. Solids-handling impellers lie some points lower (common practice, no
  source). Beyond the flows and specific speeds it was fitted to, it is kept at their ends.
- Head falls from `shutoff` times the best head with a power of the flow; power is a parabola that
  starts at `power_at_none` and makes the best point the best (shapes after the charts by specific speed in
  Stepanoff, Centrifugal and Axial Flow Pumps, from memory; held against the same tabulated test).
- Impeller: head at shutoff is the square of diameter times speed over 1,840 (in, rpm, ft), give or
  take a few percent (rule of the trade; Abulencia & Theodore, Fluid Flow, Ex 22.4 has the constant). The rim
  of mixed-flow impellers and propellers is wider, as the water leaves inside it (Stepanoff, from memory).
- NPSHr from a suction specific speed of 7,000 to 9,500 (common practice, no source).
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import log

from solver.engine.draw import Draw

from .system import System

__all__ = ["Pump", "best_efficiency", "draw_pump", "quality_of", "shape_of"]

CUBIC_METRES_HOUR = 0.2271247  # in a gpm
LOG_FLOW = (log(6), 7.0)  # the regulation's least flow; where its surface is highest, of m3/h
LOG_SPECIFIC = (log(6), log(80))
# The regulation's C at MEI 0.40 and 0.10: end suction at 1,450 and at 2,900 rpm, vertical multistage.
SLOW, FAST, STAGES = (128.07, 132.58), (130.27, 135.60), (133.95, 138.19)
FAST_FROM = 2200.0  # rpm
RADIAL = 4.0  # thousands of US specific speed, up to which an impeller is radial
TIP = (0.93, 1.0)  # diameter over what the rule for shutoff head gives
SUCTION_SPECIFIC = (7000.0, 9500.0)  # US units
LEAST_NPSH = 3.0  # ft
NPSH_AT_NONE = 0.4  # of the best point's NPSHr, at no flow


@dataclass(frozen=True, slots=True)
class Pump:
    """A pump by its best point at `speed` (rpm), all stages: flow, head (gpm, ft | L/s, m), percent.

    `quality` is the regulation's C with what solids-handling takes added. What goes wrong with it:
    `leak`, flow back through worn rings at the best head, as a share of the best flow; `worn`,
    share of diameter lost; `clog`, share of its passages closed; `air`, share of head lost to air;
    `backward`: it turns the wrong way.
    """

    system: System
    speed: float
    stages: int
    flow: float
    head: float
    efficiency: float
    shutoff: float
    bend: float
    power_at_none: float
    diameter: float
    npsh: float
    quality: float
    leak: float = 0.0
    worn: float = 0.0
    clog: float = 0.0
    air: float = 0.0
    backward: bool = False

    @property
    def best_power(self) -> float:
        """Shaft power (hp | kW) at the best point."""
        return self.flow * self.head / self.system.water_power * 100 / self.efficiency

    def best_flow(self, speed: float) -> float:
        """The flow (gpm | L/s) at the best point at a speed (rpm)."""
        return self.flow * speed / self.speed

    def _through(self, flow: float, speed: float) -> tuple[float, float]:
        """The speed that counts, and the flow inside the impeller as a share of its best flow."""
        ratio = speed / self.speed * (1 - self.worn)
        inside = flow / (self.flow * ratio * (1 - self.clog)) + self.leak
        return ratio, inside

    def head_at(self, flow: float, speed: float) -> float:
        """Head (ft | m) at a flow and a speed (rpm), by the affinity laws off its own speed."""
        return self.curve(speed)(flow)

    def curve(self, speed: float) -> Callable[[float], float]:
        """Head (ft | m) by flow, at a speed (rpm)."""
        ratio = speed / self.speed * (1 - self.worn)
        best, head = self.flow * ratio * (1 - self.clog), self.head * ratio**2
        lost = (1 - self.air) * (1 - self.clog / 2) * (BACKWARD_HEAD if self.backward else 1)
        shutoff, above, leak, bend = self.shutoff, self.shutoff - 1, self.leak, self.bend

        def at(flow: float) -> float:
            falls: float = (flow / best + leak) ** bend
            return head * (shutoff - above * falls) * lost

        return at

    def power_at(self, flow: float, speed: float) -> float:
        """Shaft power (hp | kW) at a flow and a speed (rpm)."""
        ratio, inside = self._through(flow, speed)
        drag = (1 - self.air) * (1 + self.clog / 4) * (BACKWARD_POWER if self.backward else 1)
        return self.best_power * ratio**3 * self.share_of_power(inside) * drag

    def share_of_power(self, inside: float) -> float:
        """Power over that at the best point, at a share of the best flow."""
        slope = 1 - (self.shutoff - 1) * self.bend  # flow times head over power is flat at 1
        bowed = slope - 1 + self.power_at_none
        return self.power_at_none + (1 - self.power_at_none - bowed) * inside + bowed * inside**2

    def npsh_at(self, flow: float, speed: float) -> float:
        """NPSHr (ft | m) at a flow and a speed (rpm)."""
        ratio, inside = self._through(flow, speed)
        return self.npsh * ratio**2 * (NPSH_AT_NONE + (1 - NPSH_AT_NONE) * inside**2)


# A radial pump that turns backward makes about half its head and keeps most of its load
# (common practice, no source).
BACKWARD_HEAD, BACKWARD_POWER = 0.55, 0.85


def best_efficiency(gpm: float, specific: float, quality: float) -> float:
    """Efficiency (percent) at the best point, from flow (gpm), US specific speed and C.

    >>> round(best_efficiency(600, 1173, 130.27))
    74
    """
    x = min(max(log(specific / 51.64), LOG_SPECIFIC[0]), LOG_SPECIFIC[1])
    y = min(max(log(gpm * CUBIC_METRES_HOUR), LOG_FLOW[0]), LOG_FLOW[1])
    return -11.48 * x**2 - 0.85 * y**2 - 0.38 * x * y + 88.59 * x + 13.46 * y - quality


def shape_of(specific: float) -> tuple[float, float, float]:
    """Shutoff head over best head, the power its fall goes with, and shutoff power over best power.

    By US specific speed. A flat curve and little power at shutoff when it is low; steep, and as much
    power as at the best point, from 5,000 up.
    """
    thousands = specific / 1000
    bend = min(max(3.1 - 0.35 * (thousands - 0.5), 1.8), 3.1)
    return 1.12 + 0.085 * thousands, bend, 0.34 + 0.125 * thousands


def rim(specific: float) -> float:
    """How much wider than a radial impeller one of this US specific speed is."""
    return 1 + 0.1 * max(specific / 1000 - RADIAL, 0.0)


def quality_of(speed: float, stages: int) -> tuple[float, float]:
    """The regulation's C of good and of poor pumps, by speed (rpm) and stages."""
    if stages > 1:
        return STAGES
    return FAST if speed > FAST_FROM else SLOW


def draw_pump(
    draw: Draw, system: System, speed: float, stages: int, duty: tuple[float, float], coarse: float
) -> Pump:
    """A new pump whose curve goes through its duty (flow, head: gpm, ft | L/s, m) at this speed.

    `coarse` is what a solids-handling impeller costs, in points of efficiency.
    """
    share = draw.step(0.78, 1.12, 0.01)  # duty over best flow
    quality = draw.between(*quality_of(speed, stages)) + coarse
    tip, suction = draw.between(*TIP), draw.between(*SUCTION_SPECIFIC)
    flow, head = duty
    best = flow / share
    shutoff, bend, at_none = shape_of(
        system.specific_speed(speed, best, head / stages) * system.us_specific
    )
    best_head = head / (shutoff - (shutoff - 1) * share**bend)
    specific = system.specific_speed(speed, best, best_head / stages) * system.us_specific
    feet = best_head * system.feet
    inches = 1840 * tip * rim(specific) * (feet * shutoff / stages) ** 0.5 / speed
    npsh = max((speed * (best * system.gpm) ** 0.5 / suction) ** (4 / 3), LEAST_NPSH) / system.feet
    return Pump(
        system,
        speed,
        stages,
        best,
        best_head,
        best_efficiency(best * system.gpm, specific, quality),
        shutoff,
        bend,
        at_none,
        inches if system.name == "us" else inches * 25.4,
        npsh,
        quality,
    )
