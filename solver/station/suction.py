"""At the pump: its suction pipe, the air on its water, and its two gauges.

Barometric pressure by altitude from the table of the lessons (U.S. Standard Atmosphere 1976); vapor
pressure of water by Buck's equation (1981, from memory; held against the steam tables in a test).
Suction pipes are as wide as the main or a size wider (common practice, no source).
"""

from dataclasses import dataclass
from math import exp, pow

from solver.engine.draw import Draw
from solver.errors import NotSolvable
from solver.topics.tables import between_rows

from .kinds import Kind
from .main import EXPONENT, SIZES, Main, friction_rate
from .system import SI, System

__all__ = ["Gauges", "Suction", "draw_gauges", "draw_suction", "vapor_head"]

KPA_HEAD = SI.head  # meters of water in a kPa
SLOWEST, FASTEST = 2.4, 14.0  # ft/s: in a suction pipe, past a discharge gauge
ENTRANCE, ELBOW, GATE = 0.5, 0.6, 0.2  # K, of a square entrance, a long-radius elbow, a gate valve


@dataclass(frozen=True, slots=True)
class Suction:
    """The suction pipe: diameter (in | mm), length (ft | m), C, K of its fittings.

    `lift` from the water up to the pump (ft | m), below zero when flooded; `altitude` (ft | m);
    `air` and `vapor`: barometric and vapor pressure (ft | m of water). `margin`: what NPSHa
    should have over NPSHr (ft | m). `blocked`: K that a clogged strainer adds.
    """

    system: System
    diameter: float
    length: float
    c_factor: float
    fittings: float
    lift: float
    altitude: float
    air: float
    vapor: float
    margin: float
    blocked: float = 0.0

    def velocity(self, flow: float) -> float:
        """Velocity (ft/s | m/s) at a flow (gpm | L/s)."""
        return self.system.velocity * flow / self.diameter**2

    def velocity_head(self, flow: float) -> float:
        """Velocity head (ft | m)."""
        return self.velocity(flow) ** 2 / (2 * self.system.gravity)

    def lost(self, flow: float) -> float:
        """Loss from the water to the pump (ft | m)."""
        rubbed, stirred = self.law()
        return rubbed * pow(flow, EXPONENT) + stirred * flow**2

    def law(self) -> tuple[float, float]:
        """What `lost` is at a flow of 1, of all that goes with flow**EXPONENT and with its square."""
        rate = friction_rate(self.system, self.diameter, self.c_factor, 1.0)
        local = (self.fittings + self.blocked) * self.velocity_head(1.0)
        return rate * self.length / 100, local


@dataclass(frozen=True, slots=True)
class Gauges:
    """Where the discharge gauge is: heights over the pump (ft | m), diameter of its pipe (in | mm).

    A submersible's gauge is on the pipe at the top, its height counted from the water.
    """

    discharge_diameter: float
    discharge_height: float
    suction_height: float


def air_head(altitude: float, system: System) -> float:
    """Barometric pressure (ft | m of water) at an altitude (ft | m).

    Raises:
        NotSolvable: the altitude is outside the table.
    """
    head = between_rows(f"atmosphere_{system.name}", "altitude", "head", altitude)
    if head is None:
        raise NotSolvable(f"the altitude table has no {altitude:,.0f}")
    return head


def vapor_head(celsius: float, system: System) -> float:
    """Vapor pressure of water (ft | m of water) at a temperature.

    >>> from .system import SI
    >>> round(vapor_head(20, SI), 3)
    0.239
    """
    kilopascals = 0.61121 * exp((18.678 - celsius / 234.5) * celsius / (257.14 + celsius))
    return kilopascals * KPA_HEAD * (SI.feet if system.name == "us" else 1)


def draw_suction(draw: Draw, system: System, kind: Kind, main: Main, flow: float) -> Suction:
    """A suction for a kind of station whose pump is not in its water."""
    spans = kind.spans(system.name)
    us = system.name == "us"
    wide = SIZES[system.name]
    place = min(wide.index(main.diameter) + draw.pick((0, 1, 1)), len(wide) - 1)
    if system.velocity * flow / wide[place] ** 2 * system.feet < SLOWEST:
        place = wide.index(main.diameter)
    altitude = draw.step(0, 4500, 100) if us else draw.step(0, 1400, 50)
    celsius = (draw.step(45, 80, 1) - 32) / 1.8 if us else draw.step(8, 26, 1)
    return Suction(
        system,
        wide[place],
        draw.step(8, 40, 1) if us else draw.step(2.5, 12, 0.5),
        main.c_factor,
        ENTRANCE + GATE + ELBOW * draw.pick((1, 1, 2)),
        draw.step(*spans.suction) if spans.suction else 0.0,
        altitude,
        air_head(altitude, system),
        vapor_head(celsius, system),
        draw.pick((2.0, 3.0, 5.0) if us else (0.5, 1.0, 1.5)),
    )


def draw_gauges(
    draw: Draw, system: System, main: Main, suction: Suction | None, flow: float
) -> Gauges:
    """Gauges at a pump of this flow (gpm | L/s); in one station of three level, on pipes of one size."""
    us = system.name == "us"
    level = draw.pick((True, False, False))
    above = draw.step(1, 4, 0.5) if us else draw.step(0.3, 1.2, 0.1)
    below = draw.step(-2, 1, 0.5) if us else draw.step(-0.6, 0.3, 0.1)
    if suction is None:
        return Gauges(
            main.diameter,
            min(round(main.static * draw.between(0.15, 0.4) * 2) / 2, system.rounded(20, 6)),
            0.0,
        )
    if level:
        return Gauges(suction.diameter, above, above)
    narrow = SIZES[system.name][max(SIZES[system.name].index(main.diameter) - 1, 0)]
    if system.velocity * flow / narrow**2 * system.feet > FASTEST:
        narrow = main.diameter
    return Gauges(draw.pick((main.diameter, narrow)), above, below)
