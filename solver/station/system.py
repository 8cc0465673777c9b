"""What differs between a US station and a metric one: its frequency and what its units come to.

A station counts in the units of its own system throughout, so that round numbers stay round. The
factors follow from the definitions of the units (NIST SP 811 App. B) and from water at 62.4 lb/ft3, as the
handbooks have it; Hazen-Williams from Keller & Bliesner, Sprinkle and Trickle Irrigation (from memory). They
are kept apart from the rounded constants of the lessons, so that each holds the other to account.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import pi, pow, sqrt
from types import MappingProxyType

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

    def torque(self, power: float, speed: float) -> float:
        """Torque (lb-ft | N·m) of a shaft that carries a power (hp | kW) at a speed (rpm)."""
        per_radian = 60 * (550 if self.name == "us" else 1000) / (2 * pi)
        return per_radian * power / speed

    def rounded(self, us: float, si: float) -> float:
        """The one of two round numbers that belongs to this system."""
        return us if self.name == "us" else si


_WEIGHT = 62.4 * 4.4482216152605 / 0.3048**3  # N in a cubic meter of water at 62.4 lb/ft3
_FOOT, _GALLON = 0.3048, 231 * 0.0254**3  # m; m3
_GPM, _HORSEPOWER = _GALLON / 60, 550 * 0.3048 * 4.4482216152605  # m3/s; W
_PSI, _INCH_OF_MERCURY = 4.4482216152605 / 0.0254**2, 3386.389  # Pa
_GRAVITY = 9.80665  # m/s2

US = System(
    name="us",
    hertz=60.0,
    water_power=_HORSEPOWER / (_GPM * _FOOT * _WEIGHT),
    kilowatts=_HORSEPOWER / 1000,
    head=_PSI / (_FOOT * _WEIGHT),
    vacuum_head=_INCH_OF_MERCURY / (_FOOT * _WEIGHT),
    velocity=_GPM / _FOOT / (pi / 4 * 0.0254**2),
    gravity=_GRAVITY / _FOOT,
    friction=1050.0,
    volume=_FOOT**3 / _GALLON,
    per_minute=1.0,
    parts=12.0,
    hourly_volume=1e6 / 60,
    gpm=1.0,
    feet=1.0,
    horsepower=1.0,
    us_specific=1.0,
)
SI = System(
    name="si",
    hertz=50.0,
    water_power=1e6 / _WEIGHT,
    kilowatts=1.0,
    head=1000 / _WEIGHT,
    vacuum_head=1000 / _WEIGHT,
    velocity=0.001 / (pi / 4 * 0.001**2),
    gravity=_GRAVITY,
    friction=1.212e12,
    volume=1.0,
    per_minute=0.06,
    parts=100.0,
    hourly_volume=1e6 / 3600,
    gpm=0.001 / _GPM,
    feet=1 / _FOOT,
    horsepower=1000 / _HORSEPOWER,
    us_specific=sqrt(1 / _GPM) / pow(1 / _FOOT, 0.75),
)
SYSTEMS: Mapping[str, System] = MappingProxyType({"us": US, "si": SI})
