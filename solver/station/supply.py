"""The supply: nominal volts, what is really there, and how uneven its three phases are.

A motor's nameplate volts are a little under the nominal ones (NEMA MG 1 and ANSI C84.1: 460 V on a
480 V system). Uneven volts make amps six to ten times as uneven (US DOE Motor Systems Tip Sheet 7);
a leg's amps follow the volts to the two others: from phasors, minus the third pair's deviation.
A healthy supply is drawn within a fraction of a percent (common practice, no source).
"""

from dataclasses import dataclass, replace

from solver.engine.draw import Draw

from .system import System

__all__ = [
    "RATED_VOLTS",
    "Legs",
    "Supply",
    "draw_supply",
    "feeds",
    "unbalance_of",
    "uneven",
]

Legs = tuple[float, float, float]
NOMINAL = {"us": (480.0, 480.0, 480.0, 480.0, 240.0, 208.0, 600.0), "si": (400.0,)}
# Where a need names them: the volts of older systems, whose motors are rated the same, and medium volts.
ON_REQUEST = {
    "us": (220.0, 440.0, 550.0, 2400.0, 4160.0),
    "si": (380.0, 415.0, 690.0, 3000.0, 3300.0),
}
RATED_VOLTS = {
    480.0: 460.0, 240.0: 230.0, 208.0: 200.0, 600.0: 575.0, 2400.0: 2300.0, 4160.0: 4000.0,
    **{volts: volts for volts in (220.0, 440.0, 550.0, *NOMINAL["si"], *ON_REQUEST["si"])},
}  # fmt: skip
SIZES = {  # hp, from and to, that is fed with these volts (common practice, no source)
    208.0: (0.0, 40.0), 220.0: (0.0, 40.0), 240.0: (0.0, 40.0),
    690.0: (99.0, 250.0), 2400.0: (74.0, 250.0), 3000.0: (99.0, 250.0), 3300.0: (99.0, 250.0),
    4160.0: (99.0, 250.0),
}  # fmt: skip
UNBALANCE = (0.15, 0.4)  # percent, of a healthy supply: its amps are some 1 to 3 percent uneven
GAIN = (6.0, 8.0)
EVEN: Legs = (0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Supply:
    """Nominal and average volts (V), deviations of AB, BC and CA (percent of the average).

    `gain`: percent of amps for each percent of volts. `rotation` is 1 in the right order of phases,
    -1 with two of them changed. `joint` is the share of amps that a loose joint holds back on leg
    A; `open_leg`: nothing comes through leg A.
    """

    nominal: float
    volts: float
    skew: Legs
    gain: float
    rotation: int = 1
    joint: float = 0.0
    open_leg: bool = False

    @property
    def rated_volts(self) -> float:
        """The nameplate volts (V) of a motor for this supply."""
        return RATED_VOLTS[self.nominal]

    @property
    def ratio(self) -> float:
        """Average volts over the motor's nameplate volts."""
        return self.volts / self.rated_volts

    @property
    def line_to_line(self) -> Legs:
        """Volts A to B, B to C and C to A (V)."""
        ab, bc, ca = self.skew
        volts = self.volts / 100
        return (volts * (100 + ab), volts * (100 + bc), volts * (100 + ca))

    @property
    def unbalance(self) -> float:
        """Largest deviation from the average volts (percent; NEMA MG 1)."""
        ab, bc, ca = self.skew
        return max(abs(ab), abs(bc), abs(ca))

    @property
    def pull(self) -> Legs:
        """How far it alone takes the amps of legs A, B and C from their average (percent)."""
        ab, bc, ca = self.skew
        a, b, c = -self.gain * bc, -self.gain * ca, -self.gain * ab
        lost = 100 * self.joint
        return (a - lost, b + lost / 2, c + lost / 2)

    def pulling(self, pull: Legs) -> "Supply":
        """The same supply with volts so uneven that they take the amps of A, B and C so far (percent)."""
        ab, bc, ca = (-pull[leg] / self.gain for leg in (2, 0, 1))
        return replace(self, skew=(ab, bc, ca))


def unbalance_of(readings: Legs) -> float:
    """Largest deviation from the average of three readings (percent; NEMA MG 1)."""
    average = sum(readings) / 3
    return 100 * max(abs(reading - average) for reading in readings) / average


def uneven(draw: Draw, percent: float, middle: tuple[float, float] = (0.2, 0.5)) -> Legs:
    """Three deviations that add up to nothing, the largest of them this (percent), in any order.

    `middle`: the smaller of the two others, as a share of the largest.
    """
    near = draw.between(*middle)
    side = draw.pick((1, -1))
    a, b, c = draw.shuffled((percent, -near * percent, (near - 1) * percent))
    return (side * a, side * b, side * c)


def draw_supply(draw: Draw, system: System, wanted: tuple[float, ...] = ()) -> Supply:
    """A healthy supply, at one of the nominal volts wanted (V) that the system has, or at any of its."""
    here = NOMINAL[system.name]
    known = (*here, *ON_REQUEST[system.name])
    nominal = draw.pick(tuple(volts for volts in wanted if volts in known) or here)
    return Supply(
        nominal,
        float(round(nominal * draw.between(0.97, 1.015))),
        uneven(draw, draw.between(*UNBALANCE)),
        draw.between(*GAIN),
    )


def feeds(supply: Supply, horsepower: float) -> bool:
    """Whether a motor of this size (hp) is drawn on this supply."""
    low, high = SIZES.get(supply.nominal, (0.0, 250.0))
    return low <= horsepower <= high
