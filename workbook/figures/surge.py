"""A valve that closes at the end of a force main: the surge by how long it takes to close."""

from solver.topics.formulas import MAINS
from solver.vocabulary import quantity_named

from .chart import BLUE, GREY, ORANGE, Axis, Chart, Dot, Line
from .view import Figure, Scale, Slide, Values, View, shown, worked

__all__ = ["SURGE"]

SHOWN, TALL = 60, 190  # steps of the curve; px
AT_ONCE = ("wave_speed", "velocity")
SLOWLY = ("wave_speed", "velocity", "pipe_length", "closing_time")


def stopped(values: Values, units: str) -> dict[str, float]:
    """The full surge, the wave's time, and the surge of this closing."""
    given = {name: values[name] for name in AT_ONCE}
    known = {**values, **worked(given, "surge_pressure", MAINS, units)}
    pipe = {name: values[name] for name in ("wave_speed", "pipe_length")}
    known |= worked(pipe, "wave_time", MAINS, units)
    if known["closing_time"] <= known["wave_time"]:
        return known | {"slow_surge": known["surge_pressure"]}
    return known | worked({name: values[name] for name in SLOWLY}, "slow_surge", MAINS, units)


def view(values: Values, units: str) -> View:
    """The surge at this closing time, beside the full one."""
    known = stopped(values, units)
    full, slow, wave, closing = (
        shown(known, name, units)
        for name in ("surge_pressure", "slow_surge", "wave_time", "closing_time")
    )
    if known["closing_time"] <= known["wave_time"]:
        says = f"The wave needs {wave} there and back. Closed in {closing}, the surge is the full {full}."
    else:
        says = f"The wave needs {wave} there and back. Closed in {closing}, the surge is {slow} of the full {full}."
    rows = (
        ("Wave there and back", wave),
        ("Closing time", closing),
        ("Full surge", full),
        ("Surge now", slow),
    )
    alt = f"Surge pressure against closing time. {says}"
    return View(says, alt, ("", "Now"), rows, known, units)


def draw(view: View) -> tuple[Chart, ...]:
    """Level up to the wave's time, then falling with the closing time."""
    known, units = view.known, view.units
    most = max(4 * known["wave_time"], 1.1 * known["closing_time"])
    unit = quantity_named("surge_pressure").unit(units)
    top = 1.15 * known["surge_pressure"]
    chart = Chart(Axis(0, most, "Closing time, s"), Axis(0, top, f"Surge, {unit}"), TALL)
    times = [most * step / SHOWN for step in range(1, SHOWN + 1)]
    times = sorted({*times, known["wave_time"]})
    points = [(0.0, known["surge_pressure"])]
    points += [(t, stopped({**known, "closing_time": t}, units)["slow_surge"]) for t in times]
    chart.put(Line([(known["wave_time"], 0), (known["wave_time"], top)], GREY, dashed=True))
    chart.put(Line(points, BLUE, "surge"))
    chart.put(Dot(known["closing_time"], known["slow_surge"], ORANGE, label="now"))
    return (chart,)


SURGE = Figure(
    "surge",
    "A valve closing on a force main",
    (
        Slide("closing_time", Scale(0.5, 60, 0.5, 6)),
        Slide("pipe_length", Scale(500, 8000, 100, 3000), Scale(150, 2500, 50, 900)),
        Slide("velocity", Scale(1, 8, 0.5, 4), Scale(0.3, 2.4, 0.1, 1.2)),
        Slide("wave_speed", Scale(1000, 4100, 100, 3500), Scale(300, 1250, 50, 1050)),
    ),
    view,
    draw,
)
