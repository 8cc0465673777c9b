"""Figures: pictures drawn from numbers, each beside a table with the same numbers.

`show("legs")` is a figure to explore. For a picture of a report: a `View` says what it shows, in a
sentence and as rows, a `Chart` how; `Beside` has both on a page, and `printed` draws a chart for paper.

- `view.py`: what a figure is, its sliders, and how its numbers are worked by the solver
- `chart.py`: a chart in its own numbers; `chart_svg.py`: charts as SVG, which moves at once
- `share_bars.py`: shares as bars under their names; `drawing.py`: a chart on paper, by matplotlib
- `beside.py`: the picture beside its table
- `explorer.py`: the list of all figures to explore, and the frame of sliders around one
- `losses`, `legs`, `cost`, `column`, `lift`, `triangle`, `slowing`, `absorption`, `cycle`, `drop`, `signal`,
  `on_curve`, `surge`, `sheave`, `feeding`, `starting`: a figure each
"""

from typing import TYPE_CHECKING

from .beside import LOOK, Beside, table_html
from .chart import BLUE, INK, ORANGE, Axis, Bar, Chart, Dot, Line, Note, steps
from .chart_svg import charts_svg
from .drawing import printed
from .share_bars import shares
from .view import View

if TYPE_CHECKING:
    from .explorer import Explorer

__all__ = [
    "BLUE",
    "INK",
    "LOOK",
    "ORANGE",
    "Axis",
    "Bar",
    "Beside",
    "Chart",
    "Dot",
    "Line",
    "Note",
    "View",
    "charts_svg",
    "printed",
    "shares",
    "show",
    "steps",
    "table_html",
]


def show(name: str) -> "Explorer":
    """The figure called `name`, ready to be moved.

    Raises:
        ValueError: no figure has this name.

    >>> show("legs").alt[:31]
    'Bars of three legs against thei'
    """
    from .explorer import FIGURES, Explorer  # only this needs every figure

    if name not in FIGURES:
        raise ValueError(f"No figure is called {name!r}; there are: {', '.join(FIGURES)}.")
    return Explorer(FIGURES[name])
