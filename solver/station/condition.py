"""The condition of motor and pump: insulation, windings, bearings, the oil behind the seal, the overload.

Megohms halve for every 10 °C warmer (IEEE 43-2013); test volts by IEEE 43-2000. A winding's ohms follow
from the motor's own losses: four tenths of those at full load are in the stator (Hubert, Electric
Machines, from memory). Vibration is judged by ISO 10816-1 class I and II (from memory); the
overload is set to nameplate amps, as NEC 430.32 lets it be up to 125 percent of them.
"""

from dataclasses import dataclass

from solver.engine.draw import Draw
from solver.topics.tables import table_rows

from .motor import Motor
from .supply import Legs, uneven

__all__ = ["Condition", "draw_condition"]

STATOR = 0.42  # of the full-load losses
HOT = 1.25  # copper at its working temperature over copper at 20 °C


@dataclass(frozen=True, slots=True)
class Condition:
    """Megohms at 40 °C and in a year before, winding temperature then (°C), minutes of the test.

    `index` and `ratio`: PI and DAR; `ohms` of a sound winding, phase to phase; `ohms_skew` of the
    three readings (percent); `shorted`: share of one phase's turns that are shorted. `setting` of the
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
    shorted: float = 0.0

    @property
    def insulation(self) -> float:
        """Megohms as read today, after a minute, at the winding's temperature."""
        return at_temperature(self.megohms, self.temperature)

    @property
    def phase_to_phase(self) -> Legs:
        """Ohms 1 to 2, 2 to 3, 3 to 1. Shorted turns take from the phase between 1 and 2's star point.

        A star winding: each reading is two phases; phase 1 is the one with shorted turns.
        """
        a, b, c = self.ohms_skew
        lost = self.ohms * self.shorted / 2
        ohms = self.ohms / 100
        return (ohms * (100 + a) - lost, ohms * (100 + b), ohms * (100 + c) - lost)


def at_temperature(megohms: float, celsius: float) -> float:
    """Megohms at 40 °C as a winding of this temperature (°C) shows them."""
    warmer: float = 0.5 ** ((40 - celsius) / 10)
    return megohms / warmer


def draw_condition(draw: Draw, motor: Motor) -> Condition:
    """A sound motor and pump, some years old."""
    megohms = 10 ** draw.between(2.2, 3.1)
    rows = [row for row in table_rows("insulation_tests") if row["rated"] <= motor.rated_volts]
    losses = 1000 * motor.rated_input * (1 - motor.efficiency / 100)
    test_time = draw.pick((1.0, 1.0, 10.0))
    metric = motor.system.name == "si"
    return Condition(
        megohms,
        draw.step(18, 48, 1),
        megohms * draw.between(1.0, 1.25),
        draw.step(18, 48, 1),
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
