"""What differs between a US station and a metric one: its frequency and what its units come to.

A station counts in the units of its own system throughout, so that round numbers stay round. The
factors are the exact values of the constants that the lessons teach in rounded form.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import pow, sqrt
from types import MappingProxyType

from solver.algebra.expression import Constant
from solver.topics.constants import HEAD_PER_PRESSURE, HOURLY_VOLUME, KW_PER_HP, WATER_POWER
from solver.topics.head.formulas_pipes import FRICTION, GRAVITY, VELOCITY
from solver.topics.head.formulas_static import HEAD_PER_VACUUM

__all__ = ["SI", "SYSTEMS", "US", "System"]


@dataclass(frozen=True, slots=True)
class System:
    """One system of units, in the order us | si.

    `name` "us" or "si"; `hertz` of its supply; `water_power`: flow (gpm | L/s) times head (ft | m)
    over this is power (hp | kW); `kilowatts` in a unit of power; `head` of water (ft | m) in a unit
    of pressure (psi | kPa) and `vacuum_head` in one of vacuum (inHg | kPa); `velocity`: flow times
    this over the square of a diameter (in | mm) is ft/s | m/s; `gravity` (ft/s2 | m/s2);
    `friction`, the constant of Hazen-Williams; `volume` (gal | m3) in a unit of area times depth;
    `per_minute`, volume that a unit of flow brings in a minute; `parts` (in | cm) of a depth (ft | m);
    `hourly_volume`: flow times hours over this is MG | ML. `gpm`, `feet`, `horsepower`: in a unit of
    flow, head and power; `us_specific`: US specific speed in one of its own.
    """

    name: str
    hertz: float
    water_power: float
    kilowatts: float
    head: float
    vacuum_head: float
    velocity: float
    gravity: float
    friction: float
    volume: float
    per_minute: float
    parts: float
    hourly_volume: float
    gpm: float
    feet: float
    horsepower: float
    us_specific: float

    def specific_speed(self, speed: float, flow: float, head: float) -> float:
        """Specific speed (US: rpm, gpm, ft; metric: rpm, m3/s, m) of one stage."""
        cubic = 1 if self.name == "us" else 1000
        return speed * sqrt(flow / cubic) / pow(head, 0.75)

    def rounded(self, us: float, si: float) -> float:
        """The one of two round numbers that belongs to this system."""
        return us if self.name == "us" else si


def _exact(constant: Constant, units: str) -> float:
    figure = constant.figure(units)
    return figure.value if figure.exact is None else figure.exact


_CUBIC_FOOT = 7.480519  # gallons; NIST SP 811 App. B
_METRE, _LITRE_SECOND = 1 / 0.3048, 15.850323  # feet; gallons per minute (NIST SP 811 App. B)
_HORSEPOWER = _exact(KW_PER_HP, "us")


def _system(name: str, **own: float) -> System:
    return System(
        name=name,
        water_power=_exact(WATER_POWER, name),
        head=_exact(HEAD_PER_PRESSURE, name),
        vacuum_head=_exact(HEAD_PER_VACUUM, name),
        velocity=_exact(VELOCITY, name),
        gravity=_exact(GRAVITY, name),
        friction=_exact(FRICTION, name),
        hourly_volume=_exact(HOURLY_VOLUME, name),
        **own,
    )


US = _system(
    "us",
    hertz=60.0,
    kilowatts=_HORSEPOWER,
    volume=_CUBIC_FOOT,
    per_minute=1.0,
    parts=12.0,
    gpm=1.0,
    feet=1.0,
    horsepower=1.0,
    us_specific=1.0,
)
SI = _system(
    "si",
    hertz=50.0,
    kilowatts=1.0,
    volume=1.0,
    per_minute=0.06,
    parts=100.0,
    gpm=_LITRE_SECOND,
    feet=_METRE,
    horsepower=1 / _HORSEPOWER,
    us_specific=(1000 * _LITRE_SECOND) ** 0.5 / _METRE**0.75,
)
SYSTEMS: Mapping[str, System] = MappingProxyType({"us": US, "si": SI})
