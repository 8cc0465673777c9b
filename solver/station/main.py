"""The main: pipe, fittings and what it ends in, so what a system asks of a pump at any flow.

Friction by Hazen-Williams (EPANET 2.2 manual, ch. 3), C by material and age and K of fittings from
the tables of the lessons. A loss goes with the flow to the power 1.852 in the pipe, and with its
square in fittings and valves. In a what-if, as in the lesson, all of it goes with the square.
Mains are sized for 2 to 8 ft/s at duty (Ten States Standards ask 2 ft/s at least of a force main).
"""

from dataclasses import dataclass
from math import ceil, pow, sqrt

from solver.engine.draw import Draw
from solver.topics.tables import named_rows

from .kinds import Kind
from .system import System

__all__ = ["EXPONENT", "SIZES", "Main", "draw_main", "friction_rate", "round_length"]

SIZES = {
    "us": (2.0, 2.5, 3.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0, 24.0, 30.0),
    "si": (50.0, 65.0, 80.0, 100.0, 150.0, 200.0, 250.0, 300.0, 350.0, 400.0, 500.0, 600.0, 700.0),
}
EXPONENT, DIAMETER_EXPONENT = 1.852, 4.87
C_FACTORS = (150.0, 140.0, 140.0, 130.0, 130.0, 120.0, 110.0, 100.0)  # plastic, new iron, aged
FASTEST, STEEPEST = 8.0, 8.0  # ft/s; ft in 100 ft
ELBOWS = ("short-radius elbow", "medium-radius elbow", "long-radius elbow")


@dataclass(frozen=True, slots=True)
class Main:
    """Diameter (in | mm), length (ft | m), C; elbows and the K of one, of check, gate and outlet.

    `nozzle`: diameter (in | mm) of what it ends in; none when it ends full bore, with an outlet's K.
    `static`: head from the water pumped to the end (ft | m); `delivery`: pressure wanted there, as
    head. What goes wrong: `closed`, K that a valve adds; `narrowed`, share of diameter lost to
    grease or scale; `broken`, share of the way at which all of it runs out, 1 when whole; `passing`, flow
    (gpm | L/s) back through the check valve for each root of head (ft | m), and `beside`, through that
    of the pump beside it; `seat`, the same past the discharge seat while the pump runs.
    """

    system: System
    diameter: float
    length: float
    c_factor: float
    elbows: int
    elbow_k: float
    check_k: float
    gate_k: float
    outlet_k: float
    static: float
    nozzle: float | None = None
    delivery: float = 0.0
    closed: float = 0.0
    narrowed: float = 0.0
    broken: float = 1.0
    passing: float = 0.0
    beside: float = 0.0
    seat: float = 0.0

    @property
    def fittings(self) -> float:
        """K of all its fittings, without a valve that is partly closed."""
        return self.elbows * self.elbow_k + self.check_k + self.gate_k + self.outlet_k

    @property
    def bore(self) -> float:
        """Diameter (in | mm) that is left open."""
        return self.diameter * (1 - self.narrowed)

    @property
    def run(self) -> float:
        """Length (ft | m) that the water goes along."""
        return self.length * self.broken

    def velocity(self, flow: float) -> float:
        """Velocity (ft/s | m/s) at a flow (gpm | L/s)."""
        return self.system.velocity * flow / self.bore**2

    def velocity_head(self, flow: float) -> float:
        """Velocity head (ft | m)."""
        return self.velocity(flow) ** 2 / (2 * self.system.gravity)

    def friction_rate(self, flow: float) -> float:
        """Friction in 100 ft | 100 m of pipe (ft | m)."""
        return friction_rate(self.system, self.bore, self.c_factor, flow)

    def friction(self, flow: float) -> float:
        """Friction in the pipe (ft | m)."""
        return self.friction_rate(flow) * self.run / 100

    def minor(self, flow: float) -> float:
        """Loss in fittings and valves (ft | m)."""
        return (self.fittings + self.closed) * self.velocity_head(flow)

    def outlet_velocity(self, flow: float) -> float:
        """Velocity (ft/s | m/s) out of the nozzle; 0 without one."""
        return self.system.velocity * flow / self.nozzle**2 if self.nozzle else 0.0

    def outlet_head(self, flow: float) -> float:
        """Velocity head (ft | m) at the nozzle; 0 without one."""
        return self.outlet_velocity(flow) ** 2 / (2 * self.system.gravity)

    def lost(self, flow: float) -> float:
        """All that goes with the flow (ft | m): pipe, fittings, valves, nozzle."""
        return self.friction(flow) + self.minor(flow) + self.outlet_head(flow)

    def law(self) -> tuple[float, float]:
        """What `lost` is at a flow of 1, of all that goes with flow**EXPONENT and with its square."""
        return self.friction(1.0), self.minor(1.0) + self.outlet_head(1.0)

    @property
    def lift(self) -> float:
        """Static head and wanted pressure (ft | m), as far as the main is whole."""
        return (self.static + self.delivery) * self.broken


def friction_rate(system: System, diameter: float, c_factor: float, flow: float) -> float:
    """Friction in 100 ft | 100 m of pipe (ft | m), by diameter (in | mm), C and flow (gpm | L/s)."""
    return system.friction * pow(flow / c_factor, EXPONENT) / pow(diameter, DIAMETER_EXPONENT)


def draw_main(draw: Draw, system: System, kind: Kind, flow: float) -> Main:
    """A main for this flow (gpm | L/s), with the static head and length of its kind."""
    spans = kind.spans(system.name)
    fittings = named_rows("fittings")
    wanted = draw.between(*kind.speeds) / system.feet  # ft/s | m/s
    across = sqrt(system.velocity * flow / wanted)
    diameter = _size(system, across)
    c_factor = draw.pick(C_FACTORS)
    while too_narrow(system, diameter, c_factor, flow):
        diameter = SIZES[system.name][SIZES[system.name].index(diameter) + 1]
    step = system.rounded(0.5, 5)
    share = draw.between(0.6, 0.78) if draw.pick(kind.nozzles) else 0
    nozzle = ceil(diameter * share / step) * step
    return Main(
        system,
        diameter,
        round_length(draw.between(*spans.length), system),
        c_factor,
        int(draw.step(2, 8, 1)),
        fittings[draw.pick(ELBOWS)][0],
        fittings["swing check valve"][0],
        fittings["gate valve"][0],
        0.0 if nozzle else fittings["outlet"][0],
        draw.step(*spans.static) if spans.static else 0.0,
        nozzle or None,
        draw.step(*spans.delivery) * system.head if spans.delivery else 0.0,
    )


def _size(system: System, across: float) -> float:
    """The standard size (in | mm) that is nearest."""
    return min(SIZES[system.name], key=lambda size: abs(size - across))


def too_narrow(system: System, diameter: float, c_factor: float, flow: float) -> bool:
    """Whether a flow (gpm | L/s) is more than people put through a pipe of this size (in | mm)."""
    velocity = system.velocity * flow / diameter**2
    rate = friction_rate(system, diameter, c_factor, flow)
    return velocity * system.feet > FASTEST or rate > STEEPEST


def round_length(length: float, system: System) -> float:
    """A length (ft | m) as a drawing would say it."""
    step = 50 if length > 1000 else 10 if length > 100 else system.rounded(5, 1)
    return float(max(step, round(length / step) * step))
