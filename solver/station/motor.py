"""The motor: what its nameplate says, and what it takes and how fast it turns at any load.

Losses are a part that is there at no load and a part that grows with the square of the load; the
reactive power likewise (the usual circuit of an induction motor, Hubert, Electric Machines, ch. 4).
Their shares give the part-load efficiency and power factor that the US DOE prints (Determining
Electric Motor Load and Efficiency, from memory; held against its table in a test). Slip goes with
the load and, as the torque goes with the square of the volts, against their square.
Full-load amps of a nameplate are a little under the code's table (NEC 430.250 is for the least
favorable usual motor); how far under, and the slip by size, are common practice, no source.
"""

from dataclasses import dataclass
from functools import cache
from math import pow, sqrt

from solver.engine.draw import Draw
from solver.topics.tables import table_rows

from .motor_table import LOCKED_ROTOR, efficiency_of
from .supply import Legs, Supply, uneven
from .system import System

__all__ = ["Load", "Motor", "draw_motor", "sizes", "table_amps"]

FIXED_LOSS = 0.36  # of the full-load losses: most efficient near three quarters of its load
MAGNETIZING = {2: 0.60, 4: 0.66, 6: 0.72, 8: 0.76}  # of the full-load reactive power
UNDER_THE_TABLE = {2: (0.89, 0.95), 4: (0.90, 0.97), 6: (0.93, 0.99), 8: (0.95, 1.0)}
METRIC_UNDER = (0.95, 1.0)
SERVICE_FACTORS = {"us": (1.15, 1.15, 1.15, 1.25, 1.0), "si": (1.0, 1.1, 1.15)}
RISES = {1.0: (80.0, 105.0), 1.1: (80.0,), 1.15: (80.0, 80.0, 90.0), 1.25: (80.0, 90.0)}
OWN = (0.2, 0.9)  # percent of its amps that a sound motor is uneven by itself
ROOT_THREE = sqrt(3)


@dataclass(frozen=True, slots=True)
class Load:
    """A motor at work: input (kW), reactive power (kvar), amps, share of its size, slip (share)."""

    kilowatts: float
    kvar: float
    amps: float
    share: float
    slip: float


@dataclass(frozen=True, slots=True)
class Motor:
    """A nameplate: size (hp | kW), efficiency (percent), power factor, amps, rpm, rise (°C).

    `own` is how far the motor alone takes the amps of its leads from their average (percent).
    `drag` is power (hp | kW) that a failing bearing takes.
    """

    system: System
    size: float
    poles: int
    grade: str
    rated_volts: float
    efficiency: float
    full_load_amps: float
    rated_speed: float
    service_factor: float
    locked_rotor_amps: float
    rated_rise: float
    own: Legs
    drag: float = 0.0

    @property
    def synchronous_speed(self) -> float:
        """Speed of its field on the mains (rpm)."""
        return 120 * self.system.hertz / self.poles

    @property
    def rated_slip(self) -> float:
        """Slip at full load, as a share of synchronous speed."""
        return 1 - self.rated_speed / self.synchronous_speed

    @property
    def rated_input(self) -> float:
        """Input (kW) at full load."""
        return self.size * self.system.kilowatts * 100 / self.efficiency

    @property
    def power_factor(self) -> float:
        """Power factor at full load: what its amps, volts and efficiency come to."""
        return self.rated_input * 1000 / (ROOT_THREE * self.rated_volts * self.full_load_amps)

    def at(self, shaft: float, supply: Supply) -> Load:
        """What it takes with a load (hp | kW) on its shaft."""
        ratio = supply.ratio
        share = (shaft + self.drag) / self.size
        pull = (share / ratio) ** 2
        output = shaft * self.system.kilowatts
        losses = self.rated_input * (1 - self.efficiency / 100)
        heat = 1 + 0.02 * supply.unbalance**2  # NEMA MG 1: rise grows by twice the square
        lost = losses * (FIXED_LOSS * ratio**2 + (1 - FIXED_LOSS) * pull) * heat
        kilowatts = output + self.drag * self.system.kilowatts + lost
        full = self.rated_input * sqrt(1 / self.power_factor**2 - 1)
        at_rest = MAGNETIZING[self.poles]
        kvar = full * (at_rest * ratio**2 + (1 - at_rest) * pull)
        amps = 1000 * sqrt(kilowatts**2 + kvar**2) / (ROOT_THREE * supply.volts)
        return Load(kilowatts, kvar, amps, share, self.rated_slip * share / ratio**2)


@cache
def sizes(units: str) -> tuple[float, ...]:
    """The standard sizes (hp | kW), smallest first."""
    return tuple(row["size"] for row in table_rows(f"motors_{units}"))


@cache
def _amps_in_table(units: str, volts: float) -> dict[float, float]:
    if volts == 460:
        return {row["size"]: row["amps"] for row in table_rows("motors_us")}
    return {row["size"]: row[f"{volts:g}"] for row in table_rows(f"full_load_amps_{units}")}


def table_amps(size: float, volts: float, units: str) -> float:
    """Full-load amps (A) that the code's table gives for a size (hp | kW) and nameplate volts (V)."""
    return _amps_in_table(units, volts)[size]


def draw_motor(
    draw: Draw, system: System, supply: Supply, size: float, poles: int, standard: bool = False
) -> Motor:
    """A sound motor of this size (hp | kW) and these poles for a supply, `standard` or any grade."""
    units = system.name
    grade = draw.pick(("standard", "standard") if standard else ("premium", "standard"))
    spread = UNDER_THE_TABLE[poles] if units == "us" else METRIC_UNDER
    amps = _shown(table_amps(size, supply.rated_volts, units) * draw.between(*spread))
    factor = draw.pick(SERVICE_FACTORS[units])
    return Motor(
        system,
        size,
        poles,
        grade,
        supply.rated_volts,
        efficiency_of(size, poles, grade, units),
        amps,
        _nameplate_speed(draw, system, size, poles),
        factor,
        _locked(draw, system, supply, size, amps),
        draw.pick(RISES[factor]),
        uneven(draw, draw.between(*OWN)),
    )


def _shown(amps: float) -> float:
    return float(f"{amps:.3g}")


def _nameplate_speed(draw: Draw, system: System, size: float, poles: int) -> float:
    synchronous = 120 * system.hertz / poles
    slip = 0.031 * pow(size * system.horsepower, -0.28) * draw.between(0.85, 1.3)
    return synchronous - max(5.0, 5 * round(synchronous * slip / 5))


def _locked(draw: Draw, system: System, supply: Supply, size: float, amps: float) -> float:
    """NEC Table 430.251(B) is the most a design B motor takes; metric as IEC 60034-12, design N."""
    if system.name == "us":
        return _shown(LOCKED_ROTOR[size] * draw.between(0.88, 1.0) * 460 / supply.rated_volts)
    return _shown(amps * draw.between(6.0, 7.4))
