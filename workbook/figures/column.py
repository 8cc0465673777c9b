"""One height of water on three scales, as a gauge at the foot of it shows it."""

from typing import TYPE_CHECKING

from solver.topics.formulas import CONVERSIONS
from solver.units.show import exact, figures
from solver.vocabulary import quantity_named

from .drawing import INK
from .view import Figure, Scale, Slide, Values, View, shown, told, worked

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["COLUMN"]

SCALES = {"water_height": 4.0, "gauge_pressure": 6.1, "second_scale": 8.2}  # where each is drawn
TANK, GAUGE, EDGE = 2.4, 2.9, 10.0  # the tank's width, the gauge's middle, the end of the picture
# What a line of type takes of the picture's height, and how near two may come.
LINE = 0.08
HEADED = 1 + 1.5 * LINE  # the heads of the scales stand above a reading at the very top

DEPTH = Slide("tank_depth", Scale(10, 100, 1, 46), Scale(3, 30, 0.5, 14))
TAP = Slide("tap_height", Scale(0, 8, 0.5, 4), Scale(0, 2.5, 0.1, 1.2))


def view(values: Values, units: str) -> View:
    """The water above the gauge as a height, and as the pressure on both scales of the gauge."""
    known = worked(values, "second_scale", CONVERSIONS, units)
    height, gauge, second = (shown(known, name, units) for name in SCALES)
    depth, tap = (told(values[name], name, units, exact) for name in ("tank_depth", "tap_height"))
    rows = (
        ("Depth in the tank", depth),
        ("Height of the gauge", tap),
        ("Water above the gauge", height),
        ("Gauge reading", gauge),
        ("Second scale", second),
    )
    headline = f"With {height} of water above it, the gauge reads {gauge}, or {second}."
    listed = "; ".join(" ".join(row) for row in rows)
    alt = f"A tank, and three scales from its gauge up to the water's surface. {listed}."
    return View(headline, alt, ("What", "Reading"), rows, known, units)


def draw(axes: "Axes", view: View) -> None:
    """The tank on the left; on the right the scales, which all start at the gauge."""
    known, top = view.known, DEPTH.scale(view.units).high
    tap, surface = known["tap_height"], known["tank_depth"]
    axes.bar(0, tap, TANK, align="edge", color="C0", alpha=0.25)
    axes.bar(0, surface - tap, TANK, tap, align="edge", color="C0")
    axes.plot((0, 0, TANK, TANK), (top, 0, 0, top), color=INK, clip_on=False)
    axes.plot((TANK, GAUGE), (tap, tap), color=INK)
    axes.plot(GAUGE, tap, "o", color="C1", markersize=15, clip_on=False, zorder=3)
    axes.plot((TANK, EDGE), (surface, surface), color="C0", linestyle="--")
    for name, at in SCALES.items():
        _scale(axes, view, name, at)
    axes.set(xlim=(0, EDGE), ylim=(-0.6 * LINE * top, top * HEADED), xticks=[], yticks=[])
    axes.spines["bottom"].set_visible(False)
    axes.set_xlabel("Dot: the gauge. Pale: the water below it,\nwhich it doesn't feel.")


def _scale(axes: "Axes", view: View, name: str, at: float) -> None:
    """A scale from the gauge to the top, and bold on it what the water's surface stands at."""
    # Here, for only the drawing needs it.
    from matplotlib.ticker import MaxNLocator

    known, top = view.known, DEPTH.scale(view.units).high
    tap, surface, reading = known["tap_height"], known["tank_depth"], known[name]
    each = (surface - tap) / reading
    axes.plot((at, at), (tap, top), color="C1")
    most = (top - tap) / each
    for tick in MaxNLocator(5, steps=[1, 2, 5, 10]).tick_values(0, most):
        height = tap + tick * each
        if 0 <= tick <= most:
            axes.plot((at - 0.12, at), (height, height), color="C1")
            if not -LINE < (height - surface) / top < 1.6 * LINE:
                axes.text(at + 0.15, height, f"{tick:g}", va="center")
    axes.text(at + 0.15, surface + 0.01 * top, figures(reading), va="bottom", weight="bold")
    unit = quantity_named(name).unit(view.units)
    axes.text(at, top * HEADED, unit, va="bottom", ha="center", weight="bold")


COLUMN = Figure("column", "One height, three scales", (DEPTH, TAP), view, draw, height=3.2)
