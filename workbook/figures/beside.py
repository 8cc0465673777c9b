"""A picture beside its numbers: the two in one box, and the table that has the numbers."""

from collections.abc import Callable, Sequence

from ipywidgets import HTML, Box

from workbook.ui.controls import classed
from workbook.ui.markup import Markup, tag
from workbook.ui.pieces import table

from .chart import Chart
from .chart_svg import charts_svg
from .view import View

__all__ = ["LOOK", "Beside", "table_html"]

UNBROKEN = 9  # characters, as in "3,034 kWh"
# What only figures have, once on a page; look.css has the rest.
LOOK = tag(
    "style",
    Markup("""
.w2w-panel .w2w-sliders { display: grid; gap: 0.3em 2em; overflow: visible;
  grid-template-columns: repeat(auto-fill, minmax(min(100%, 13em), 1fr)); }
.w2w-sliders .widget-hslider { width: auto; height: auto; margin: 0; flex-wrap: wrap;
  align-items: center; }
.w2w-sliders .widget-label, .w2w-sliders .widget-readout { font: inherit; color: inherit; }
.w2w-sliders .widget-label { flex: 1 0 100%; max-width: none; height: auto; text-align: left;
  white-space: normal; }
.w2w-sliders .widget-hslider .slider-container { flex: 1 1 8em; }
.w2w-sliders .widget-hslider .noUi-target { background: var(--jp-ui-font-color3, #888); }
.w2w-sliders .widget-hslider .noUi-handle { background: var(--w2w-accent);
  border-color: var(--w2w-page); width: 24px; height: 24px; top: -10px; right: -12px; }
.w2w-sliders .widget-readout { margin: 0 0 0 1em; font-variant-numeric: tabular-nums; }
.w2w-panel .w2w-beside { display: flex; flex-wrap: wrap; gap: 0.6em 2em; }
.w2w-figure .w2w-ask .w2w-field { flex: 0 1 13em; margin-bottom: 0.6em; }
.w2w-panel .widget-html.w2w-headline { margin: 1em 0 0.4em; }
.w2w-beside .w2w-picture { flex: 0 1 410px; min-width: min(100%, 330px); }
.w2w-beside .w2w-numbers { flex: 1 1 18em; }
.w2w-picture > svg { display: block; width: 100%; height: auto; }
.w2w-picture svg text { font-family: var(--jp-ui-font-family, sans-serif) !important; }
.w2w-panel .w2w-numbers table { border-collapse: collapse; width: 100%; margin: 0; font: inherit; }
.w2w-numbers caption { text-align: left; padding: 0.3em 0; color: var(--w2w-soft); }
.w2w-numbers th, .w2w-numbers td { padding: 0.3em 0 0.3em 0.7em; border: 0; text-align: right;
  border-bottom: 1px solid var(--w2w-line); font-weight: normal; background: none; }
.w2w-numbers td { font-weight: 600; font-variant-numeric: tabular-nums; }
@container (max-width: 420px) { .w2w-panel .w2w-numbers table { font-size: 0.92em; } }
.w2w-numbers :is(th, td):first-child { text-align: left; padding-left: 0; }
"""),
)


def table_html(view: View, caption: str) -> Markup:
    """The numbers of a view as a table, with heads for screen readers."""
    rows = ((first, *map(_unbroken, rest)) for first, *rest in view.rows)
    return table(rows, caption, view.columns, cls="")


def _unbroken(text: str) -> str:
    """A number with its unit; only a long one may break between the two on a phone."""
    return text if len(text) > UNBROKEN else text.replace(" ", "\N{NO-BREAK SPACE}")


class Beside:
    """A picture and its table in one box; `names` are more names for look.css.

    The picture is drawn anew only where a number has changed.
    """

    def __init__(self, *names: str):
        self.picture, self.table = classed(HTML(), "w2w-picture"), classed(HTML(), "w2w-numbers")
        self.box = classed(Box([self.picture, self.table]), "w2w-beside", *names)
        self.shown: View | None = None

    def show(self, name: str, view: View, draw: Callable[[View], Sequence[Chart]]) -> None:
        """Show this view, as `draw` draws it; `name` makes the picture's ids its own."""
        if view == self.shown:
            return
        self.table.value = table_html(view, "The same numbers")
        self.picture.value = charts_svg(draw(view), view.alt, name)
        self.shown = view
