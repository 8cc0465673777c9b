"""The condition of motor and pump: insulation, windings, bearings, the oil behind the seal, the overload.

Megohms halve for every 10 °C warmer (IEEE 43-2013); test volts by IEEE 43-2000. A winding's ohms follow
from the motor's own losses: four tenths of those at full load are in the stator (Hubert, Electric
Machines, from memory). Vibration is judged by ISO 10816-1 class I and II (from memory); the
overload is set to nameplate amps, as NEC 430.32 lets it be up to 125 percent of them.
"""

from dataclasses import dataclass
from math import isinf

from solver.engine.draw import Draw
from solver.topics.tables import table_rows

from .motor import Motor
from .supply import Legs, uneven

__all__ = ["Condition", "at_temperature", "between_leads", "draw_condition"]

STATOR = 0.42  # of the full-load losses
HOT = 1.25  # copper at its working temperature over copper at 20 °C
COOL, WARM = (
    (10, 33, 1),
    (47, 66, 1),
)  # °C of a winding that has stood, and of one that has just run


@dataclass(frozen=True, slots=True)
class Condition:
    """Megohms at 40 °C and in a year before, winding temperature then (°C), minutes of the test.

    `index` and `ratio`: PI and DAR; `ohms` of a sound winding, phase to phase; `ohms_skew` of the
    three readings (percent); `windings`: ohms of each phase over a sound one's, infinite where open;
    `delta`: the phases go from lead to lead, not to a star point. `setting` of the
    overload (A); `bearing` (°C) and `vibration` (in/s | mm/s, as noted by the trade);
    `water_in_oil` (percent). `grounded` (min) after the test.
    """

    megohms: float
    temperature: float
    before: float
    temperature_before: float
    index: float
    ratio: float
    test_volts: float
    test_time: float
    grounded: float
    ohms: float
    ohms_skew: Legs
    setting: float
    bearing: float
    vibration: float
    rise_share: float
    water_in_oil: float = 0.0
    windings: Legs = (1.0, 1.0, 1.0)
    delta: bool = False

    @property
    def insulation(self) -> float:
        """Megohms as read today, after a minute, at the winding's temperature."""
        return at_temperature(self.megohms, self.temperature)

    @property
    def phase_to_phase(self) -> Legs:
        """Ohms 1 to 2, 2 to 3, 3 to 1."""
        one = self.ohms * (1.5 if self.delta else 0.5)
        a, b, c = (one * odd for odd in self.windings)
        first, second, third = between_leads("delta" if self.delta else "wye", (a, b, c))
        ab, bc, ca = (1 + skew / 100 for skew in self.ohms_skew)
        return (first * ab, second * bc, third * ca)


def parallel(one: float, other: float) -> float:
    """Two resistances side by side; either may be open."""
    if isinf(one) or isinf(other):
        return min(one, other)
    return one * other / (one + other) if one + other else 0.0


def between_leads(kind: str, phases: Legs) -> Legs:
    """Ohms from lead 1 to 2, 2 to 3 and 3 to 1 of a "wye" or a "delta", from those of its phases.

    The phases of a wye go from each lead to the middle, those of a delta from lead to lead. An
    open one is infinite. Source: arithmetic, resistances in series and in parallel.

    >>> between_leads("wye", (1.0, 1.0, 0.0)), between_leads("delta", (1.0, 1.0, float("inf")))
    ((2.0, 1.0, 1.0), (1.0, 1.0, 2.0))
    """
    a, b, c = phases
    if kind == "wye":
        return a + b, b + c, c + a
    return parallel(a, b + c), parallel(b, c + a), parallel(c, a + b)


def at_temperature(megohms: float, celsius: float) -> float:
    """Megohms at 40 °C as a winding of this temperature (°C) shows them."""
    warmer: float = 0.5 ** ((40 - celsius) / 10)
    return megohms / warmer


def draw_condition(draw: Draw, motor: Motor) -> Condition:
    """A sound motor and pump, some years old."""
    megohms = 10 ** draw.between(2.2, 2.9)
    rows = [row for row in table_rows("insulation_tests") if row["rated"] <= motor.rated_volts]
    losses = 1000 * motor.rated_input * (1 - motor.efficiency / 100)
    test_time = draw.pick((1.0, 1.0, 10.0))
    metric = motor.system.name == "si"
    return Condition(
        megohms,
        draw.step(*draw.pick((COOL, COOL, WARM))),
        megohms * draw.between(1.0, 1.25),
        draw.step(*draw.pick((COOL, COOL, WARM))),
        draw.between(2.1, 3.2),
        draw.between(1.3, 1.7),
        rows[-1]["most"],
        test_time,
        test_time * draw.between(4.0, 6.0),
        2 * STATOR * losses / (3 * HOT * motor.full_load_amps**2),
        uneven(draw, draw.between(0.5, 0.95)),
        float(f"{motor.full_load_amps * draw.pick((1.0, 1.0, 1.05, 1.1)):.3g}"),
        draw.step(38, 62, 1),
        draw.between(*((0.6, 2.4) if metric else (0.024, 0.095))),
        draw.between(0.86, 0.97),
        draw.step(0, 0.4, 0.1),
    )
