"""A chart in its own numbers: axes, and the bars, lines, areas, dots and words on them.

It knows nothing of pixels; `chart_svg.py` draws it.
"""

from collections.abc import Sequence
from math import floor, log10
from typing import NamedTuple

__all__ = [
    "BLUE",
    "GREEN",
    "GREY",
    "INK",
    "ORANGE",
    "PINK",
    "Axis",
    "Bar",
    "Chart",
    "Dot",
    "Line",
    "Note",
    "steps",
    "tenfolds",
]

# Okabe and Ito's, which color-blind readers tell apart; of their eight only these four stand out
# (3 to 1) on a white page and on a dark one alike. The ink is the page's own.
BLUE, ORANGE, GREEN, PINK, GREY = "#0072b2", "#d55e00", "#009e73", "#cc79a7", "#888888"
INK = "currentColor"
MOST_STEPS = 5

Points = Sequence[tuple[float, float]]


class Axis(NamedTuple):
    """From `low` to `high`, which may be the smaller; `ticks` are values with their words, or are chosen.

    On a `tenfold` one, whose ends are over 0, every tenfold is equally long.
    """

    low: float
    high: float
    label: str = ""
    ticks: Sequence[tuple[float, str]] | None = None
    tenfold: bool = False

    def share(self, value: float) -> float:
        """How far along it a value is: 0 at `low`, 1 at `high`; nothing is below the low end of tenfolds.

        >>> Axis(0, 50).share(10), Axis(1, 100, tenfold=True).share(10)
        (0.2, 0.5)
        """
        if not self.tenfold:
            return (value - self.low) / (self.high - self.low)
        return log10(max(value, self.low) / self.low) / log10(self.high / self.low)


class Bar(NamedTuple):
    """A rectangle by its lower left corner."""

    left: float
    foot: float
    wide: float
    tall: float
    color: str
    label: str = ""
    hatched: bool = False
    faint: bool = False


class Line(NamedTuple):
    """A line through points; without color inside unless it is an `area`."""

    points: Points
    color: str
    label: str = ""
    dashed: bool = False
    width: float = 2.0
    area: bool = False


class Dot(NamedTuple):
    """A mark on one point: "dot", "ring", "diamond" or "square"; `r` px from its middle to its edge."""

    x: float
    y: float
    color: str
    shape: str = "dot"
    label: str = ""
    r: float = 6


class Note(NamedTuple):
    """Words at a point, `dx` and `dy` px beside it."""

    x: float
    y: float
    text: str
    anchor: str = "start"
    bold: bool = False
    dx: float = 0
    dy: float = 0
    color: str = INK


class Chart:
    """Two axes, and what is on them in the order in which it is drawn.

    `tall` is how high it is between them, `right` the room kept beside it, both in px. With `even` both
    axes have one scale, so that angles are true; then the one with room to spare goes on farther.
    """

    def __init__(
        self, across: Axis, up: Axis, tall: float, right: float = 12, even: bool = False
    ) -> None:
        self.across, self.up, self.tall, self.right, self.even = across, up, tall, right, even
        self.drawn: list[Bar | Line | Dot | Note] = []

    def put(self, *drawn: Bar | Line | Dot | Note) -> None:
        """Draw these over what is there."""
        self.drawn += drawn

    def evened(self, wide: float) -> tuple[Axis, Axis]:
        """Both axes where it is `wide` px between their ends."""
        across, up = self.across, self.up
        if not self.even:
            return across, up
        each = max((across.high - across.low) / wide, (up.high - up.low) / self.tall)
        far, top = across.low + each * wide, up.low + each * self.tall
        return across._replace(high=far), up._replace(high=top)

    @property
    def bars(self) -> list[Bar]:
        """Its bars."""
        return [one for one in self.drawn if isinstance(one, Bar)]

    @property
    def lines(self) -> list[Line]:
        """Its lines and areas."""
        return [one for one in self.drawn if isinstance(one, Line)]

    @property
    def dots(self) -> list[Dot]:
        """Its dots."""
        return [one for one in self.drawn if isinstance(one, Dot)]

    @property
    def notes(self) -> list[Note]:
        """Its words."""
        return [one for one in self.drawn if isinstance(one, Note)]


def steps(low: float, high: float, most: int = MOST_STEPS) -> list[float]:
    """Round values from `low` to `high`, at most so many steps apart.

    >>> steps(0, 24), steps(0, 0.6), steps(-30, 30)
    ([0.0, 5.0, 10.0, 15.0, 20.0], [0.0, 0.2, 0.4, 0.6], [-20.0, 0.0, 20.0])
    """
    low, high = sorted((low, high))
    least = (high - low) / most or 1.0
    size = 10.0 ** floor(log10(least))
    step = next(size * by for by in (1, 2, 5, 10) if size * by >= least * (1 - 1e-9))
    first = -floor(-low / step + 1e-9)
    return [round(step * n, 10) for n in range(first, floor(high / step + 1e-9) + 1)]


def tenfolds(low: float, high: float) -> list[float]:
    """The powers of ten from `low` to `high`, both over 0; of few, also twice and five times each.

    >>> tenfolds(2, 1250), tenfolds(30, 400)
    ([10.0, 100.0, 1000.0], [50.0, 100.0, 200.0])
    """
    powers = [10.0**n for n in range(floor(log10(low)), floor(log10(high)) + 1)]
    between = [power * by for power in powers for by in (1, 2, 5)]
    for values in (powers, between):
        if len(found := [value for value in values if low <= value <= high]) > 1:
            break
    return found
