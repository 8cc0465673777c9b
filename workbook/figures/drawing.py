"""A chart on paper, drawn by matplotlib: its lines, dots and words.

Its letters are drawn, for the printer has no fonts of ours. Bars are for pages alone.
"""

import logging
from io import StringIO
from pathlib import Path
from typing import TYPE_CHECKING

from .chart import Chart, Dot, Line, Note
from .chart_svg import ticks_of

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["printed"]

STYLE = Path(__file__).parent / "wire_to_water.mplstyle"
POINTS = 0.75  # points a px
INCH = 96  # px
AROUND = 70  # px that titles and years take, over and under the axes
SIDES = {"start": "left", "middle": "center", "end": "right"}


def printed(chart: Chart, name: str) -> str:
    """The SVG of a chart for paper; `name` makes its bytes the same each time.

    Raises:
        ImportError: matplotlib is not there.
    """
    # It tells of fonts it puts in order; that is nothing to a reader.
    logging.getLogger("matplotlib").setLevel(logging.ERROR)
    # Here, for it takes a second, and only what is printed needs it.
    import matplotlib
    from matplotlib.figure import Figure as Canvas

    style = matplotlib.rc_params_from_file(STYLE, use_default_template=False)
    style["svg.hashsalt"] = name
    with matplotlib.rc_context(style):
        canvas = Canvas()
        canvas.set_figheight((chart.tall + AROUND) / INCH)
        axes = canvas.add_subplot()
        _set(axes, chart)
        pieces: list[Line | Dot | Note] = [*chart.lines, *chart.dots, *chart.notes]
        for one in pieces:
            _draw(axes, one)
        drawn = StringIO()
        canvas.savefig(drawn, format="svg", metadata={"Date": None})
    return drawn.getvalue()


def _set(axes: "Axes", chart: Chart) -> None:
    """The axes with their ticks, and what the upright one shows over it, as on a page."""
    across, up = chart.across, chart.up
    if up.tenfold:
        axes.set_yscale("log")
    axes.minorticks_off()
    for axis, put in ((across, axes.set_xticks), (up, axes.set_yticks)):
        ticks = ticks_of(axis)
        put([value for value, _ in ticks], [text for _, text in ticks])
    axes.set_xlim(across.low, across.high)
    axes.set_ylim(up.low, up.high)
    axes.set_xlabel(across.label)
    axes.set_title(up.label, loc="left", pad=10)
    axes.grid(axis="y")


def _draw(axes: "Axes", one: Line | Dot | Note) -> None:
    match one:
        case Line():
            x, y = zip(*one.points, strict=True)
            dash, width = "--" if one.dashed else "-", one.width * POINTS
            axes.plot(x, y, color=one.color, linestyle=dash, linewidth=width)
        case Dot():
            fill = "none" if one.shape == "ring" else one.color
            axes.plot(
                [one.x], [one.y], "o", markersize=2 * one.r * POINTS,
                markerfacecolor=fill, markeredgecolor=one.color, clip_on=False,
            )  # fmt: skip
        case Note():
            beside = (one.dx * POINTS, -one.dy * POINTS)
            axes.annotate(
                one.text, (one.x, one.y), xytext=beside, textcoords="offset points",
                ha=SIDES[one.anchor], fontweight="bold" if one.bold else "normal",
            )  # fmt: skip
