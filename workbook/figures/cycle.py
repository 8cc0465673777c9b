"""The level between two floats over an hour, and how often the pump starts at each inflow."""

from math import ceil, nan
from typing import TYPE_CHECKING

from solver.algebra.expression import Known, Number
from solver.topics.formulas import WET_WELL
from solver.units.show import figures
from solver.vocabulary import quantity_named

from .view import Figure, Scale, Slide, Values, View, shown, valued, worked

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["CYCLE"]

HOUR = 60  # minutes
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


def draw(axes: "Axes", view: View) -> None:
    """Above, the level over an hour, so its peaks are the starts; below, starts by inflow."""
    figure = axes.figure
    grid = figure.add_gridspec(2, 1, height_ratios=(3, 2))
    axes.set_subplotspec(grid[0])
    _draw_level(axes, view)
    _draw_starts(figure.add_subplot(grid[1]), view)
    figure.legend(loc="outside upper left", ncols=3, columnspacing=0.8, handlelength=1)


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


def _draw_level(axes: "Axes", view: View) -> None:
    fills, empties = levels(view.known)
    axes.plot(*zip(*fills, strict=True), color="C0", label="pump off: fills")
    label = "pump on: empties" if keeps_up(view.known) else "pump on: too slow"
    axes.plot(*zip(*empties, strict=True), color="C1", linestyle="--", label=label)
    depth = view.known["working_depth"]
    axes.set_yticks((0, depth), ("pump off", "pump on"))
    axes.set(xlim=(0, HOUR), xticks=range(0, HOUR + 1, 10), ylim=(0, depth * 1.15))
    axes.set_xlabel("Minutes")


def _draw_starts(axes: "Axes", view: View) -> None:
    """The hump over every inflow; the dot is the inflow now."""
    known, units = view.known, view.units
    inflows = [known["flow"] * share / 100 for share in range(1, 100)]
    starts = [cycled({**known, "inflow": inflow}, units)[TIMES[-1]] for inflow in inflows]
    axes.plot(inflows, starts, color="C2")
    axes.axvline(valued(HALF, known, units), color="#888888", linestyle=":")
    axes.plot(known["inflow"], known.get(TIMES[-1], 0), "o", color="C1", clip_on=False, label="now")
    axes.set(xlim=(0, max(known["flow"], known["inflow"])), ylim=(0, None))
    axes.locator_params(axis="y", nbins=3, integer=True)
    unit = quantity_named("inflow").unit(units)
    axes.set(xlabel=f"Inflow, {unit} (dotted: half the pump's flow)", ylabel="Starts/h")


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
    height=4.2,
)
