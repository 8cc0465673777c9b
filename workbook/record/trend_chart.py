"""A trend as a chart: the readings in time, each limit as a dashed line with its name."""

from collections.abc import Sequence

from solver.own.record import Line as Limit
from solver.own.record import Trend
from solver.units.show import figures, with_unit
from workbook.figures import BLUE, ORANGE, Axis, Chart, Dot, Line, Note, steps

__all__ = ["trend_chart"]

TENFOLDS = {"insulation_at_40"}  # it falls by tenfolds, not by steps
NARROWEST = 0.4  # of the middle: so much an axis spans at least, or chance would look like a trend
ROOM = 0.2  # of the axis: so much a number takes that is under its point
FEW = 12  # readings with a large dot each
TALL = 160  # px
YEARS = 6  # named at most
RISING, FALLING = "rising", "falling"


def trend_chart(
    trend: Trend, limits: Sequence[Limit], span: tuple[float, float], title: str
) -> Chart:
    """The readings of `trend` over the years `span`, under `title`."""
    points = [(point.years, point.value) for point in trend.points]
    up = _up(trend, limits, title)
    chart = Chart(_years(*span), up, TALL, right=24)
    for limit in limits:
        ends = (chart.across.low, chart.across.high)
        chart.put(Line([(x, limit.value) for x in ends], ORANGE, dashed=True, width=1.6))
        said = f"{limit.label} {with_unit(figures(limit.value, trend.unit), trend.unit)}"
        chart.put(Note(chart.across.low, limit.value, said, dx=3, dy=-5))
    chart.put(Line(points, BLUE))
    chart.put(*(Dot(x, y, BLUE, r=5 if len(points) <= FEW else 3) for x, y in points))
    if trend.sudden:
        chart.put(Dot(*points[-1], ORANGE, "ring", r=9))
        chart.put(Note(*points[-1], "sudden", "end", dx=-13, dy=18))
    chart.put(*(_number(trend, up, at) for at in (0, -1)))
    return chart


def _number(trend: Trend, up: Axis, at: int) -> Note:
    """The first reading or the last; clear of the line that goes from it, or comes to it."""
    point = trend.points[at]
    under = trend.direction == (FALLING if at else RISING) and up.share(point.value) > ROOM
    said = figures(point.value, trend.unit)
    return Note(point.years, point.value, said, "middle", dy=24 if under else -11)


def _up(trend: Trend, limits: Sequence[Limit], title: str) -> Axis:
    """The upright axis: all readings and limits, and never too little."""
    every = [point.value for point in trend.points] + [limit.value for limit in limits]
    if trend.name in TENFOLDS:
        over_none = [value for value in every if value > 0]
        low, high = min(over_none, default=1.0) / 2.5, max(over_none, default=1.0) * 4
        return Axis(low, high, title, tenfold=True)
    low, high = min(every), max(every)
    middle = (low + high) / 2
    half = max((high - low) / 2 * 1.15, abs(middle) * NARROWEST / 2) or 1.0
    least = middle - 1.1 * half
    # A number or a limit's name is over the highest of them.
    return Axis(max(least, 0.0) if low >= 0 else least, middle + 1.3 * half, title)


def _years(first: float, last: float) -> Axis:
    """Whole years, from the start of the first, with room for a point and its number."""
    room = max(0.06 * (last - first), 0.1)
    low, high = min(float(int(first)), first - room), last + room
    whole = [(year, f"{year:.0f}") for year in steps(low, high, YEARS) if year == int(year)]
    return Axis(low, high, ticks=whole)
