"""The level between two floats over an hour, and how often the pump starts at each inflow."""

from math import ceil, nan

from solver.algebra.expression import Known, Number
from solver.topics.formulas import WET_WELL
from solver.units.show import figures
from solver.vocabulary import quantity_named

from .chart import BLUE, GREEN, GREY, ORANGE, Axis, Chart, Dot, Line, steps
from .view import Figure, Scale, Slide, Values, View, shown, valued, worked

__all__ = ["CYCLE"]

HOUR = 60  # minutes
EACH = 40  # parts of the pump's flow, for the curve of starts
TIMES = ("fill_time", "pump_down_time", "cycle_time", "starts_per_hour")
# One rate is the same in and out: starts are most frequent there (MIL-HDBK-1005/9A 2.5.3.6).
HALF = Known("flow") / Number(2)
GIVEN = ("inflow", "flow", "volume_per_depth", "working_depth")


def keeps_up(known: Values) -> bool:
    """Whether the pump moves more than comes in."""
    return known["flow"] > known["inflow"]


def cycled(values: Values, units: str) -> dict[str, float]:
    """The times of one cycle; only the fill time where the pump cannot keep up."""
    given = {name: values[name] for name in GIVEN}
    asked = "starts_per_hour" if keeps_up(values) else "fill_time"
    return worked(given, asked, WET_WELL, units)


def at_half(values: Values, units: str) -> dict[str, float]:
    """The same well when half of what the pump moves comes in."""
    return cycled({**values, "inflow": valued(HALF, values, units)}, units)


def column(known: Values, units: str) -> list[str]:
    """What the table says of one inflow."""
    found = [shown(known, name, units) if name in known else "endless" for name in TIMES[:-1]]
    starts = figures(known.get(TIMES[-1], 0))
    return [shown(known, "working_volume", units), shown(known, "inflow", units), *found, starts]


LABELS = ("Between floats", "Inflow", "Fill time", "Pump-down", "Cycle", "Starts per hour")


def view(values: Values, units: str) -> View:
    """The cycle at this inflow beside the shortest there can be."""
    known, worst = cycled(values, units), at_half(values, units)
    now, most = column(known, units), column(worst, units)
    rows = tuple(zip(LABELS, now, most, strict=True))
    headline = f"The most is {most[-1]}, one every {most[-2]}, at an inflow of {most[1]}."
    if keeps_up(known):
        headline = f"From start to start it takes {now[-2]}: {now[-1]} starts per hour. {headline}"
    else:
        headline = (
            "As much comes in as the pump moves, or more, so the pump never stops. "
            "Another pump must help, or the well overflows."
        )
    told_rows = "; ".join(f"{label}: now {a}, at the worst {b}" for label, a, b in rows)
    alt = f"The level over an hour, and starts against inflow. {headline} {told_rows}."
    columns = ("", "Now", "Worst")
    return View(headline, alt, columns, rows, known, units)


def draw(view: View) -> tuple[Chart, ...]:
    """Above, the level over an hour, so its peaks are the starts; below, starts by inflow."""
    return _level(view), _starts(view)


def levels(known: Values) -> tuple[list[tuple], list[tuple]]:
    """Where the level is while it fills and while it is pumped down, as (minute, height) lines."""
    fill, depth = known["fill_time"], known["working_depth"]
    if not keeps_up(known):
        # With the pump on it rises more slowly, by what the pump leaves of the inflow.
        more = depth * (known["inflow"] - known["flow"]) / known["inflow"]
        return [(0, 0), (fill, depth)], [(fill, depth), (HOUR, depth + more * (HOUR - fill) / fill)]
    cycle, gap = known["cycle_time"], (nan, nan)
    starts = [number * cycle for number in range(ceil(HOUR / cycle))]
    fills = [p for at in starts for p in ((at, 0), (at + fill, depth), gap)]
    empties = [p for at in starts for p in ((at + fill, depth), (at + cycle, 0), gap)]
    return fills, empties


def _level(view: View) -> Chart:
    known = view.known
    fills, empties = levels(known)
    depth = known["working_depth"]
    minutes = [(at, str(at)) for at in range(0, HOUR + 1, 10)]
    up = Axis(0, 1.15 * depth, ticks=((0, "pump off"), (depth, "pump on")))
    chart = Chart(Axis(0, HOUR, "Minutes", minutes), up, 110)
    on = "pump on: empties" if keeps_up(known) else "pump on: too slow"
    chart.put(Line(fills, BLUE, "pump off: fills"), Line(empties, ORANGE, on, dashed=True))
    return chart


def _starts(view: View) -> Chart:
    """The hump over every inflow; the dot is the inflow now."""
    known, units = view.known, view.units
    inflows = [known["flow"] * share / EACH for share in range(1, EACH)]
    starts = [cycled({**known, "inflow": inflow}, units)[TIMES[-1]] for inflow in inflows]
    half, unit = valued(HALF, known, units), quantity_named("inflow").unit(units)
    top = 1.1 * max(starts)
    across = Axis(
        0, max(known["flow"], known["inflow"]), f"Inflow, {unit} (dashes: half the pump's flow)"
    )
    rises = [(at, figures(at)) for at in steps(0, top, 3)]
    chart = Chart(across, Axis(0, top, "Starts/h", rises), 90)
    chart.put(Line(list(zip(inflows, starts, strict=True)), GREEN))
    chart.put(Line([(half, 0), (half, top)], GREY, dashed=True))
    chart.put(Dot(known["inflow"], known.get(TIMES[-1], 0), ORANGE, label="now"))
    return chart


CYCLE = Figure(
    "cycle",
    "An hour between two floats",
    (
        Slide("inflow", Scale(10, 600, 5, 150), Scale(0.5, 40, 0.5, 9.5)),
        Slide("flow", Scale(100, 600, 5, 400), Scale(6, 40, 0.5, 25), label="Pump's flow, {unit}"),
        Slide("volume_per_depth", Scale(100, 900, 10, 250), Scale(1.2, 11, 0.1, 3.1)),
        Slide("working_depth", Scale(1, 6, 0.5, 4), Scale(0.3, 1.8, 0.1, 1.2)),
    ),
    view,
    draw,
)
