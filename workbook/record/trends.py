"""Trends of one pump: each figure it is followed by, its limits, and the same in a table.

`plots_of(years)` takes what `examine` gave for each record of one pump. Each `Plot` has its
`trend`, and its `view` in words; `page_svg` and `print_svg` draw it. `table_of(plots)` has the same
numbers, a row a day. `trends_html(years)` puts all of it on a page.
"""

from collections.abc import Callable, Sequence
from functools import partial
from typing import TYPE_CHECKING, NamedTuple

from solver.own.record import Examined, Line, Trend, limit_lines, trend_of
from solver.units.show import capital, figures, with_unit
from workbook.figures import LOOK, Plotted, View, picture, printed, table_html
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.static_site import no_picture

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = [
    "Plot",
    "page_svg",
    "plots_of",
    "print_svg",
    "table_of",
    "trends_html",
    "trends_text",
]

FEWEST = 2  # readings: one alone shows no way it goes
LOGARITHMIC = {"insulation_at_40"}  # it falls by tenfolds, not by steps
NARROWEST = 0.4  # of the middle: so much an axis spans at least, or chance would look like a trend
ROOM_UNDER = 0.2  # of the axis: so much a number takes that stands under its point
HEIGHT = 2.3  # inches
SMALL = 10
RISING, FALLING = "rising", "falling"
CAPTION = "The same numbers"
TOO_FEW = "It takes two or more dated readings of one pump to see a trend."
GRID = tag(
    "style",
    Markup("""
.w2w-trends { display: grid; gap: 1.2em 2em;
  grid-template-columns: repeat(auto-fill, minmax(min(100%, 330px), 1fr)); }
.w2w-trends > div { min-width: 0; max-width: 440px; }
.w2w-trends p { margin: 0.2em 0 0; }
.w2w-panel .w2w-numbers { overflow-x: auto; margin-top: 1em; }
.w2w-panel .w2w-numbers th[scope="row"] { white-space: nowrap; }
"""),
)


class Plot(NamedTuple):
    """One figure over the years. `years` is the span of the axis, the same for all of a pump."""

    trend: Trend
    lines: tuple[Line, ...]
    years: tuple[float, float]

    @property
    def title(self) -> str:
        """What it shows, in which unit, and which way it goes."""
        trend = self.trend
        name = capital(trend.label)
        return f"{name}{', ' * bool(trend.unit)}{trend.unit}: {trend.direction}"

    @property
    def view(self) -> View:
        """The picture in words and as a table."""
        trend = self.trend
        readings = ", ".join(f"{point.day}: {_said(trend, point.value)}" for point in trend.points)
        limits = _limits(self)
        alt = f"{self.title}. {readings}.{f' Limits: {limits}.' * bool(limits)}"
        columns, rows = table_of((self,))
        return View(_told(trend), f"{alt} {trend.sudden}".strip(), columns, rows, {}, "")


def plots_of(examined: Sequence[Examined]) -> tuple[Plot, ...]:
    """The plots of one pump, for each figure that was read on two days or more.

    Raises:
        SolverError: the records are of several pumps, or in several systems of units.
    """
    trends = [one for one in trend_of(examined) if len(one.points) >= FEWEST]
    days = [point.years for trend in trends for point in trend.points]
    span = (min(days, default=0.0), max(days, default=0.0))
    return tuple(Plot(one, _lines(one.name, examined), span) for one in trends)


def _lines(name: str, examined: Sequence[Examined]) -> tuple[Line, ...]:
    """The limits by the last record that knows them: nameplates are often read once only."""
    return next(filter(None, (limit_lines(name, one) for one in reversed(examined))), ())


def page_svg(plot: Plot) -> Markup:
    """The picture for a page, in its own ink.

    Raises:
        ImportError: matplotlib is not there.
    """
    return picture(_plotted(plot), plot.view)


def print_svg(plot: Plot) -> str:
    """The picture for paper.

    Raises:
        ImportError: matplotlib is not there.
    """
    return printed(_plotted(plot), plot.view)


def table_of(plots: Sequence[Plot]) -> tuple[tuple[str, ...], tuple[tuple[str, ...], ...]]:
    """The heads and the rows of a table: a row for each day, then the limits."""
    days = sorted({point.day for plot in plots for point in plot.trend.points})
    rows = [(str(day), *(_on(plot.trend, day) for plot in plots)) for day in days]
    if any(plot.lines for plot in plots):
        rows.append(("Limits", *(_limits(plot) or "none known" for plot in plots)))
    heads = (
        f"{plot.trend.label}{f' ({plot.trend.unit})' * bool(plot.trend.unit)}" for plot in plots
    )
    return ("Day", *heads), tuple(rows)


def _on(trend: Trend, day) -> str:
    values = [figures(one.value, trend.unit) for one in trend.points if one.day == day]
    return "; ".join(values) or "not measured"


def _limits(plot: Plot) -> str:
    return ", ".join(f"{one.label} {figures(one.value, plot.trend.unit)}" for one in plot.lines)


def _said(trend: Trend, value: float) -> str:
    return with_unit(figures(value, trend.unit), trend.unit)


def _told(trend: Trend) -> str:
    """Which way it goes, what that may mean, and what came suddenly."""
    return " ".join(filter(None, (trend.says, trend.sudden, trend.may_mean)))


def _plotted(plot: Plot) -> Plotted:
    return Plotted(f"trend {plot.trend.name}", partial(_draw, plot), HEIGHT)


def trends_html(examined: Sequence[Examined], redraw: Callable[[], None] | None = None) -> Markup:
    """The trends of one pump, inside a panel.

    `examined` is what `examine` gave for its records, in any order. `redraw` is called once the
    pictures can be had, where they cannot yet.

    Raises:
        SolverError: the records are of several pumps, or in several systems of units.
    """
    plots = plots_of(examined)
    if not plots:
        return tag("p", TOO_FEW)
    pictures = (tag("div", _picture(plot, redraw), tag("p", plot.view.headline)) for plot in plots)
    columns, rows = table_of(plots)
    table = table_html(View("", "", columns, rows, {}, ""), CAPTION)
    return joined(
        LOOK,
        GRID,
        tag("div", pictures, cls="w2w-trends"),
        tag("div", table, cls="w2w-numbers", tabindex=0, role="region", aria_label=CAPTION),
    )


def _picture(plot: Plot, redraw: Callable[[], None] | None) -> Markup:
    try:
        return tag("div", page_svg(plot), cls="w2w-picture")
    except ImportError:
        return tag("p", no_picture(redraw))


def trends_text(examined: Sequence[Examined]) -> str:
    """The same in plain text: what each trend says."""
    return "\n".join(plot.view.headline for plot in plots_of(examined)) or TOO_FEW


def _draw(plot: Plot, axes: "Axes", view: View) -> None:
    """The readings as points in time, each limit as a dashed line with its name."""
    trend = plot.trend
    years = [point.years for point in trend.points]
    values = [point.value for point in trend.points]
    if trend.name in LOGARITHMIC:
        axes.set_yscale("log", nonpositive="clip")
        axes.yaxis.set_major_formatter("{x:,.10g}")
    else:
        axes.locator_params(axis="y", nbins=4, steps=[1, 2, 5, 10])
    axes.set_ylim(*_reach(plot))
    for line in plot.lines:
        axes.axhline(line.value, color="C3", linestyle="--", linewidth=1.2)
        said = f"{line.label} {_said(trend, line.value)}"
        _write(axes, said, (0, line.value), (2, 3.5), ("axes fraction", "data"))
    axes.plot(years, values, marker="o", color="C0", clip_on=False)
    if trend.sudden:
        axes.plot(
            years[-1:], values[-1:], "o", markersize=13, markerfacecolor="none",
            markeredgecolor="C1", clip_on=False,
        )  # fmt: skip
        _write(axes, "sudden", (years[-1], values[-1]), (-9, -16), "data", ha="right")
    # Each number stands clear of the line that comes to it, or goes from it.
    for at, under in ((0, RISING), (-1, FALLING)):
        is_under = trend.direction == under and _height(axes, values[at]) > ROOM_UNDER
        off = (0, -17 if is_under else 7)
        said = figures(values[at], trend.unit)
        _write(axes, said, (years[at], values[at]), off, "data", ha="center")
    _set_years(axes, *plot.years)
    axes.set_title(plot.title, loc="left", fontsize=12, pad=10)


def _write(axes: "Axes", text: str, at, off, where, ha: str = "left") -> None:
    axes.annotate(
        text, at, xytext=off, xycoords=where, textcoords="offset points", ha=ha, fontsize=SMALL
    )


def _height(axes: "Axes", value: float) -> float:
    """How far up the axis a value stands, from 0 to 1."""
    return axes.transLimits.transform(axes.transScale.transform((0.0, value)))[1]


def _reach(plot: Plot) -> tuple[float, float]:
    """From where to where the upright axis goes: all readings and limits, and never too little."""
    every = [point.value for point in plot.trend.points] + [line.value for line in plot.lines]
    low, high = min(every), max(every)
    if plot.trend.name in LOGARITHMIC:
        above_none = [value for value in every if value > 0]
        return min(above_none, default=1.0) / 2.5, max(above_none, default=1.0) * 2.5
    middle = (low + high) / 2
    half = max((high - low) / 2 * 1.15, abs(middle) * NARROWEST / 2) or 1.0
    lowest = middle - half * 1.1
    return (max(lowest, 0.0) if low >= 0 else lowest), middle + half * 1.1


def _set_years(axes: "Axes", first: float, last: float) -> None:
    """An axis of whole years, from the start of the first, with room for a point and its number."""
    from matplotlib.ticker import MaxNLocator  # here, for only the drawing needs it

    room = max(0.06 * (last - first), 0.1)
    axes.set_xlim(min(int(first), first - room), last + room)
    axes.xaxis.set_major_locator(MaxNLocator(min(6, int(last - first) + 1), integer=True))
    axes.xaxis.set_major_formatter("{x:.0f}")
