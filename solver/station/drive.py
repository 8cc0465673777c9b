"""What stands between the motor and the pump: nothing, belts, a gear, or a variable-frequency drive.

Efficiencies are common practice, no source: V-belts 93 to 97 percent, gears 95 to 98, drives 94.5 to
97.5 at full load (US DOE Motor Systems Tip Sheet 11 has near these, from memory). A variable-frequency drive
stands before the motor, and its own power factor is what the meter sees.
"""

from dataclasses import dataclass
from functools import cache

from solver.engine.draw import Draw

from .kinds import Kind

__all__ = ["DIRECT", "Drive", "draw_drive"]

USUAL = ("direct",) * 12 + ("belt",) * 3 + ("gear",) * 2 + ("variable",) * 4
EFFICIENCIES = {"belt": (93, 97, 0.5), "gear": (95, 98, 0.5), "variable": (94.5, 97.5, 0.5)}
RATIOS = {"belt": (0.55, 1.2, 0.05), "gear": (0.35, 0.7, 0.05)}
DISPLACEMENT = 0.96  # power factor of a drive's rectifier


@dataclass(frozen=True, slots=True)
class Drive:
    """Its name, efficiency (share), and pump speed over motor speed.

    `turned`: frequency that a variable-frequency drive gives, over that of the line.
    """

    name: str
    efficiency: float
    ratio: float
    turned: float = 1.0

    @property
    def says(self) -> str:
        """It in words."""
        if self.turned < 1:
            return "a variable-frequency drive feeds the motor, which is turned down now"
        return SAYS[self.name]

    @property
    def is_direct(self) -> bool:
        """Whether motor and pump are coupled shaft to shaft, on the mains."""
        return self.name == "direct"

    @property
    def is_variable(self) -> bool:
        """Whether it stands before the motor."""
        return self.name == "variable"


SAYS = {
    "direct": "the motor drives the pump directly",
    "belt": "V-belts drive the pump",
    "gear": "a gear drives the pump",
    "variable": "a variable-frequency drive feeds the motor, which runs at full speed now",
}
DIRECT = Drive("direct", 1.0, 1.0)


def draw_drive(draw: Draw, kind: Kind, wanted: tuple[str, ...]) -> Drive:
    """A drive for a kind of station; one of those wanted, or any when none is named."""
    name = draw.pick(_usual(kind, wanted))
    if name == "direct":
        return DIRECT
    ratio = draw.step(*RATIOS[name]) if name in RATIOS else 1.0
    return Drive(name, draw.step(*EFFICIENCIES[name]) / 100, ratio)


@cache
def _usual(kind: Kind, wanted: tuple[str, ...]) -> tuple[str, ...]:
    """The drives of a kind of station, each as often as it is usual."""
    return tuple(n for n in USUAL if n in kind.drives and (not wanted or n in wanted))
