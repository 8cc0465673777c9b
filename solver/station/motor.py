"""The motor: what its nameplate says, and what it takes and how fast it turns at any load.

Losses are a part that is there at no load and a part that grows with the square of the load; the
reactive power likewise (the usual circuit of an induction motor, Hubert, Electric Machines, ch. 4).
Their shares give the part-load efficiency and power factor that the US DOE prints (Determining
Electric Motor Load and Efficiency, from memory; held against its table in a test). Slip goes with
the load and, as the torque goes with the square of the volts, against their square.
Full-load amps of a nameplate are a little under the code's table (NEC 430.250 is for the least
favorable usual motor), locked-rotor amps a little under NEC Table 430.251(B); how far under, and the slip
by size and grade, are common practice, no source. Turned down by a drive, volts go with the frequency, so
the same torque takes the same slip (Hubert, ch. 5, from memory).
"""

from dataclasses import dataclass
from math import pow, sqrt
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.topics.tables import by_size, table_rows

from .need import Need
from .supply import Legs, Supply, uneven
from .system import System

__all__ = ["Load", "Motor", "draw_motor", "efficiency_of", "locked_amps", "table_amps"]

FIXED_LOSS = 0.36  # of the full-load losses: most efficient near three quarters of its load
MAGNETIZING = {2: 0.60, 4: 0.66, 6: 0.72, 8: 0.76}  # of the full-load reactive power
UNDER_THE_TABLE = {2: (0.89, 0.95), 4: (0.90, 0.97), 6: (0.93, 0.99), 8: (0.95, 1.0)}
METRIC_UNDER = (0.95, 1.0)
SERVICE_FACTORS = {"us": (1.15, 1.15, 1.15, 1.25, 1.0), "si": (1.0, 1.1, 1.15)}
RISES = {1.0: (80.0, 105.0), 1.1: (80.0,), 1.15: (80.0, 80.0, 90.0), 1.25: (80.0, 90.0)}
OLD_RISES = (40.0, 40.0, 40.0, 50.0, 55.0, 75.0)  # by thermometer, as old nameplates have them
MARGIN = 1.15  # NEC 430.32: the service factor from which an overload may be set at 125 percent
LOW_RISE = 40.0  # °C: a motor that warms no more than this may be set so too; 72 °F is 40 °C
# Slip over that of its size, by system and grade; 50 Hz motors of a size slip more.
SLIPS = {
    ("us", "premium"): (0.85, 1.15),
    ("us", "standard"): (1.1, 1.6),
    ("si", "premium"): (1.1, 1.45),
    ("si", "standard"): (1.45, 2.0),
    ("us", "old"): (1.6, 2.3),
    ("si", "old"): (1.9, 2.6),
}
MORE_SLIP = {2: 1.0, 4: 1.0, 6: 1.1, 8: 1.2}  # by poles
LEAST_SLIP = 10.0  # rpm
REWOUND = (5.0, 8.0, 0.5)  # points that an old motor's rewinds cost it (common practice, no source)
OWN = (0.2, 0.9)  # percent of its amps that a sound motor is uneven by itself
ROOT_THREE = sqrt(3)


class Load(NamedTuple):
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
    `drag` is power (hp | kW) that a failing bearing takes. `old`: a nameplate that gives the rise and no
    service factor.
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
    old: bool = False

    @property
    def has_margin(self) -> bool:
        """Whether the code lets its overload be set at 125 percent instead of 115."""
        return self.service_factor >= MARGIN or (self.old and self.rated_rise <= LOW_RISE)

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

    def at(self, shaft: float, supply: Supply, turned: float = 1.0) -> Load:
        """What it takes with a load (hp | kW) on its shaft; `turned`: frequency over that of the line."""
        ratio, unit, rated = supply.ratio, self.system.kilowatts, self.rated_input
        share = (shaft + self.drag) / self.size
        torque = share / turned
        pull = (torque / ratio) ** 2
        losses = rated * (1 - self.efficiency / 100)
        heat = 1 + 0.02 * supply.unbalance**2  # NEMA MG 1: rise grows by twice the square
        lost = losses * (FIXED_LOSS * turned * ratio**2 + (1 - FIXED_LOSS) * pull) * heat
        kilowatts = shaft * unit + self.drag * unit + lost
        full = rated * sqrt(1 / self.power_factor**2 - 1)
        at_rest = MAGNETIZING[self.poles]
        kvar = full * turned * (at_rest * ratio**2 + (1 - at_rest) * pull)
        amps = 1000 * sqrt(kilowatts**2 + kvar**2) / (ROOT_THREE * supply.volts)
        return Load(kilowatts, kvar, amps, share, self.rated_slip * torque / ratio**2 / turned)


def efficiency_of(size: float, poles: int, grade: str, units: str) -> float:
    """Nominal full-load efficiency (percent) of a standard motor (hp | kW), "premium" or "standard".

    Raises:
        KeyError: no such motor.

    >>> efficiency_of(100, 4, "premium", "us")
    95.4
    """
    return by_size(f"{grade}_motors_{units}", f"{poles}_poles")[size]


def locked_amps(size: float, volts: float) -> float:
    """The most amps (A) of the code's table with the rotor held, by size (hp) and nameplate volts (V).

    >>> locked_amps(100, 460)
    725.0
    """
    return _at_volts("locked_rotor_amps_us", size, volts, 460.0)


def table_amps(size: float, volts: float, units: str) -> float:
    """Full-load amps (A) that the code's table gives for a size (hp | kW) and nameplate volts (V)."""
    usual = 460.0 if units == "us" else 400.0
    return _at_volts(f"full_load_amps_{units}", size, volts, usual)


def _at_volts(table: str, size: float, volts: float, usual: float) -> float:
    """Amps of a table's column; where it has none, those at the usual volts by the ratio.

    So much above 600 V: the code's own column for 2,300 V is within 6 percent of it.
    """
    if f"{volts:g}" in table_rows(table)[0]:
        return by_size(table, f"{volts:g}")[size]
    return by_size(table, f"{usual:g}")[size] * usual / volts


def draw_motor(
    draw: Draw, system: System, supply: Supply, size: float, poles: int, need: Need
) -> Motor:
    """A sound motor of this size (hp | kW) and these poles for a supply.

    One that a better one is thought of for isn't premium, and was rewound more than once: it takes
    more amps. An old one isn't premium either.
    """
    units = system.name
    rewound = need.upgrade in ("motor", "both")
    grade = draw.pick(("standard",) if rewound or need.old_plate else ("premium", "standard"))
    efficiency = efficiency_of(size, poles, grade, units)
    lost = draw.step(*REWOUND) if rewound else 0.0
    spread = UNDER_THE_TABLE[poles] if units == "us" else METRIC_UNDER
    share = draw.between(*spread) * efficiency / (efficiency - lost)
    amps = _shown(table_amps(size, supply.rated_volts, units) * share)
    factors = [f for f in SERVICE_FACTORS[units] if not need.service or f in need.service]
    factor = 1.0 if need.old_plate else draw.pick(factors)
    return Motor(
        system,
        size,
        poles,
        grade,
        supply.rated_volts,
        efficiency - lost,
        amps,
        _nameplate_speed(draw, system, size, poles, "old" if need.old_plate else grade),
        factor,
        _locked(draw, system, supply, size, amps),
        draw.pick(OLD_RISES if need.old_plate else RISES[factor]),
        uneven(draw, draw.between(*OWN)),
        old=need.old_plate,
    )


def _shown(amps: float) -> float:
    return float(f"{amps:.3g}")


def _nameplate_speed(draw: Draw, system: System, size: float, poles: int, grade: str) -> float:
    synchronous = 120 * system.hertz / poles
    usual = 0.031 * pow(size * system.horsepower, -0.28)
    slip = usual * MORE_SLIP[poles] * draw.between(*SLIPS[system.name, grade])
    return synchronous - max(LEAST_SLIP, 5 * round(synchronous * slip / 5))


def _locked(draw: Draw, system: System, supply: Supply, size: float, amps: float) -> float:
    """NEC Table 430.251(B) is the most a design B motor takes; metric as IEC 60034-12, design N."""
    if system.name == "us":
        return _shown(locked_amps(size, supply.rated_volts) * draw.between(0.88, 1.0))
    return _shown(amps * draw.between(6.0, 7.4))
