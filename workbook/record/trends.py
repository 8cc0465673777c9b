"""Trends of one pump: each figure it is followed by, its limits, and the same in a table.

`plots_of(years)` takes what `examine` gave for each record of one pump. Each `Plot` has its
`trend`, its `view` in words and its `chart` (`trend_chart.py`); `page_svg` and `print_svg` draw that.
`table_of(plots)` has the same numbers, a row a day. `trends_html(years)` puts all of it on a page.
"""

from collections.abc import Sequence
from typing import NamedTuple

from solver.own.record import Examined, Line, Trend, limit_lines, trend_of
from solver.units.show import capital, figures, with_unit
from workbook.figures import LOOK, Chart, View, charts_svg, printed, table_html
from workbook.ui.markup import Markup, joined, tag

from .trend_chart import trend_chart

__all__ = [
    "Plot",
    "page_svg",
    "plots_of",
    "print_svg",
    "table_of",
    "trends_html",
]

FEWEST = 2  # readings: one alone shows no way it goes
CAPTION = "The same numbers"
LIMITS = "Limits"
TOO_FEW = "It takes two or more dated readings of one pump to see a trend."
GRID = tag(
    "style",
    Markup("""
.w2w-trends { display: grid; gap: 1.2em 2em;
  grid-template-columns: repeat(auto-fill, minmax(min(100%, 360px), 1fr)); }
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

    @property
    def chart(self) -> Chart:
        """The readings over the years, with their limits."""
        return trend_chart(self.trend, self.lines, self.years, self.title)


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
    """The picture for a page."""
    return charts_svg((plot.chart,), plot.view.alt, f"trend-{plot.trend.name}")


def print_svg(plot: Plot) -> str:
    """The picture for paper.

    Raises:
        ImportError: matplotlib is not there.
    """
    return printed(plot.chart, f"trend {plot.trend.name}")


def table_of(plots: Sequence[Plot]) -> tuple[tuple[str, ...], tuple[tuple[str, ...], ...]]:
    """The heads and the rows of a table: a row for each day, then the limits."""
    days = sorted({point.day for plot in plots for point in plot.trend.points})
    rows = [(str(day), *(_on(plot.trend, day) for plot in plots)) for day in days]
    if any(plot.lines for plot in plots):
        rows.append((LIMITS, *(_limits(plot) or "none known" for plot in plots)))
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


def trends_html(examined: Sequence[Examined]) -> Markup:
    """The trends of one pump, inside a panel.

    `examined` is what `examine` gave for its records, in any order.

    Raises:
        SolverError: the records are of several pumps, or in several systems of units.
    """
    plots = plots_of(examined)
    if not plots:
        return tag("p", TOO_FEW)
    pictures = (
        tag("div", tag("div", page_svg(plot), cls="w2w-picture"), tag("p", plot.view.headline))
        for plot in plots
    )
    columns, rows = table_of(plots)
    days = tuple(row for row in rows if row[0] != LIMITS)
    table = table_html(View("", "", columns, days, {}, ""), CAPTION)
    limits = [f"{plot.trend.label}: {said}" for plot in plots if (said := _limits(plot))]
    return joined(
        LOOK,
        GRID,
        tag("div", pictures, cls="w2w-trends"),
        tag("div", table, cls="w2w-numbers", tabindex=0, role="region", aria_label=CAPTION),
        tag("p", f"{LIMITS} for {'; '.join(limits)}.", cls="w2w-about") if limits else None,
    )
