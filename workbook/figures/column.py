"""One height of water on three scales, as a gauge at the foot of it shows it."""

from solver.topics.formulas import CONVERSIONS
from solver.units.show import exact, figures
from solver.vocabulary import quantity_named

from .chart import BLUE, INK, ORANGE, Axis, Bar, Chart, Dot, Line, Note, steps
from .view import Figure, Scale, Slide, Values, View, shown, told, worked

__all__ = ["COLUMN"]

SCALES = {"water_height": 4.0, "gauge_pressure": 6.1, "second_scale": 8.2}  # where each is drawn
TANK, GAUGE, EDGE = 2.4, 2.9, 10.0  # the tank's width, the gauge's middle, the end of the picture
# What a line of type takes of the picture's height, and how near two may come.
LINE = 0.08
TALL = 240.0  # px
BELOW = "Dot: the gauge. Pale: the water below it,\nwhich it doesn't feel."

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


def draw(view: View) -> tuple[Chart, ...]:
    """The tank on the left; on the right the scales, which all start at the gauge."""
    known, top = view.known, DEPTH.scale(view.units).high
    tap, surface = known["tap_height"], known["tank_depth"]
    up = Axis(-0.6 * LINE * top, top * (1 + 2.5 * LINE), ticks=())
    chart = Chart(Axis(0, EDGE, BELOW, ()), up, TALL)
    chart.put(
        Bar(0, 0, TANK, tap, BLUE, faint=True),
        Bar(0, tap, TANK, surface - tap, BLUE),
        Line([(0, top), (0, 0), (TANK, 0), (TANK, top)], INK),
        Line([(TANK, tap), (GAUGE, tap)], INK),
        Line([(TANK, surface), (EDGE, surface)], BLUE, dashed=True),
        Dot(GAUGE, tap, ORANGE),
    )
    for name, at in SCALES.items():
        _scale(chart, view, name, at)
    return (chart,)


def _scale(chart: Chart, view: View, name: str, at: float) -> None:
    """A scale from the gauge to the top, and bold on it what the water's surface stands at."""
    known, top = view.known, DEPTH.scale(view.units).high
    tap, surface, reading = known["tap_height"], known["tank_depth"], known[name]
    each = (surface - tap) / reading
    chart.put(Line([(at, tap), (at, top)], ORANGE))
    for mark in steps(0, (top - tap) / each):
        height = tap + mark * each
        chart.put(Line([(at - 0.12, height), (at, height)], ORANGE))
        if not -LINE < (height - surface) / top < 1.6 * LINE:
            chart.put(Note(at + 0.15, height, f"{mark:g}", dy=5))
    chart.put(Note(at + 0.15, surface, figures(reading), bold=True, dy=-4))
    unit = quantity_named(name).unit(view.units)
    chart.put(Note(at, top * (1 + 1.5 * LINE), unit, "middle", bold=True))


COLUMN = Figure("column", "One height, three scales", (DEPTH, TAP), view, draw)
