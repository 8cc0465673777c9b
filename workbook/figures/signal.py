"""A signal of 4 to 20 mA and the level that it stands for."""

from solver.topics.formulas import CONTROLS
from solver.units.show import exact

from .chart import BLUE, GREY, ORANGE, Axis, Chart, Dot, Line
from .view import Figure, Scale, Slide, Values, View, shown, told, worked

__all__ = ["SIGNAL"]

BOTTOM, TOP = 4.0, 20.0  # mA


def view(values: Values, units: str) -> View:
    """What the transmitter's signal says of the level."""
    known = worked(values, "signal_level", CONTROLS, units)
    for end, current in (("bottom", BOTTOM), ("top", TOP)):
        given = {**values, "loop_current": current}
        known[end] = worked(given, "signal_level", CONTROLS, units)["signal_level"]
    signal = told(known["loop_current"], "loop_current", units, exact)
    percent, level = (shown(known, name, units) for name in ("signal_percent", "signal_level"))
    bottom, top = (told(known[end], "signal_level", units) for end in ("bottom", "top"))
    rows = (
        ("Signal", signal),
        ("Of its range", percent),
        ("Level", level),
        ("Level at 4 mA", bottom),
        ("Level at 20 mA", top),
    )
    headline = f"{signal} is {percent} of the way from 4 to 20 mA. The level is {level}."
    listed = "; ".join(" ".join(row) for row in rows)
    alt = f"A straight line from 4 mA up to 20 mA, with a dot at the signal. {listed}."
    return View(headline, alt, ("What", "Reading"), rows, known, units)


def draw(view: View) -> tuple[Chart, ...]:
    """Level over the signal; the line begins at 4 mA, not at nothing."""
    known = view.known
    current, level, bottom, top = (
        known[name] for name in ("loop_current", "signal_level", "bottom", "top")
    )
    unit = "ft" if view.units == "us" else "m"
    marks = [(at, f"{at:g}") for at in (0, 4, 8, 12, 16, 20)]
    chart = Chart(Axis(0, 21, "Signal, mA", marks), Axis(0, 1.1 * top, f"Level, {unit}"), 190)
    chart.put(
        Line([(current, 0), (current, level), (0, level)], GREY, dashed=True),
        Line([(BOTTOM, bottom), (TOP, top)], BLUE, "the transmitter's range"),
        Dot(current, level, ORANGE, label=view.rows[2][1]),
    )
    return (chart,)


SIGNAL = Figure(
    "signal",
    "From milliamps to level",
    (
        Slide("loop_current", Scale(4, 20, 0.1, 11.2), label="Signal, mA"),
        Slide(
            "signal_span", Scale(5, 40, 1, 20), Scale(2, 12, 0.5, 6), label="Level range, {unit}"
        ),
        Slide("signal_zero", Scale(0.5, 8, 0.5, 2), Scale(0.2, 2.4, 0.1, 0.6)),
    ),
    view,
    draw,
)
