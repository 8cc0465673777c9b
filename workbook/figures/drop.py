"""The volts along a run of wire, from the panel to the motor, and how much the wire uses up."""

from solver.topics.formulas import ELECTRICITY
from solver.units.show import exact

from .chart import BLUE, GREY, ORANGE, Axis, Chart, Line, Note
from .view import Figure, Scale, Slide, Values, View, shown, told, worked

__all__ = ["DROP"]

SUGGESTED, IN_ALL = 3.0, 5.0  # percent: NEC 210.19 and 215.2, informational notes


def _verdict(percent: float) -> str:
    if percent <= SUGGESTED:
        return "That is within the 3% that the NEC suggests for a branch circuit."
    if percent <= IN_ALL:
        return "That is over the 3% that the NEC suggests for a branch circuit."
    return "That is over the 5% that the NEC suggests for feeder and branch circuit together."


def view(values: Values, units: str) -> View:
    """The volts lost on the way, and those that are left."""
    known = worked(values, "voltage_drop", ELECTRICITY, units)
    for name in ("far_volts", "drop_percent"):
        known |= worked(known, name, ELECTRICITY, units)
    panel = told(known["supply_volts"], "supply_volts", units, exact)
    drop, far, percent = (
        shown(known, name, units) for name in ("voltage_drop", "far_volts", "drop_percent")
    )
    rows = (
        ("At the panel", panel),
        ("Lost in the wire", drop),
        ("In percent", percent),
        ("At the far end", far),
    )
    headline = f"Of {panel}, the wire uses up {drop}: {percent}. {_verdict(known['drop_percent'])}"
    listed = "; ".join(" ".join(row) for row in rows)
    alt = f"A line of volts that slopes down along the run, from the panel to the motor. {listed}."
    return View(headline, alt, ("Where", "Reading"), rows, known, units)


def draw(view: View) -> tuple[Chart, ...]:
    """Volts over the length of the run, with the two percents that are suggested."""
    known = view.known
    panel, far, length = (known[name] for name in ("supply_volts", "far_volts", "run_length"))
    foot = min(0.93 * panel, far - 0.02 * panel)
    unit = "ft" if view.units == "us" else "m"
    chart = Chart(Axis(0, length, f"Along the run, {unit}"), Axis(foot, 1.01 * panel, "Volts"), 190)
    for percent in (SUGGESTED, IN_ALL):
        level = (1 - percent / 100) * panel
        chart.put(Line([(0, level), (length, level)], GREY, dashed=True))
        chart.put(Note(0, level, f"{percent:g}% less", dx=4, dy=-4))
    chart.put(
        Line([(0, panel), (length, panel)], ORANGE, dashed=True),
        Line([(0, panel), (length, far)], BLUE, f"volts in the wire, down to {view.rows[3][1]}"),
    )
    return (chart,)


DROP = Figure(
    "drop",
    "Volts along the wire",
    (
        Slide("supply_volts", Scale(200, 500, 1, 480)),
        Slide("line_amps", Scale(5, 60, 1, 34)),
        Slide("run_length", Scale(50, 600, 10, 350), Scale(15, 180, 5, 105)),
        Slide(
            "wire_ohms",
            Scale(0.12, 2, 0.01, 0.49),
            Scale(0.4, 6.6, 0.05, 1.6),
            label="Wire, {unit}",
        ),
    ),
    view,
    draw,
)
