"""The trends of one pump for a page: small pictures, what each says, one table of the numbers."""

from collections.abc import Callable, Sequence
from html import escape

from solver.own.record import Examined
from workbook.figures import LOOK, View, table_html
from workbook.ui.static_site import no_picture

from .plots import CAPTION, Plot, page_svg, plots_of, table_of

__all__ = ["trends_html", "trends_text"]

TOO_FEW = "It takes two or more dated readings of one pump to see a trend."
GRID = """<style>
.w2w-trends { display: grid; gap: 1.2em 2em;
  grid-template-columns: repeat(auto-fill, minmax(min(100%, 330px), 1fr)); }
.w2w-trends > div { min-width: 0; max-width: 440px; }
.w2w-trends p { margin: 0.2em 0 0; }
.w2w-panel .w2w-numbers { overflow-x: auto; margin-top: 1em; }
.w2w-panel .w2w-numbers th[scope="row"] { white-space: nowrap; }
</style>"""


def trends_html(examined: Sequence[Examined], redraw: Callable[[], None] | None = None) -> str:
    """The trends of one pump as HTML inside a panel; all that was typed is escaped.

    `examined` is what `examine` gave for its records, in any order. `redraw` is called once the
    pictures can be had, where they cannot yet.
    """
    plots = plots_of(examined)
    if not plots:
        return f"<p>{TOO_FEW}</p>"
    pictures = "".join(
        f"<div>{_picture(plot, redraw)}<p>{escape(plot.view.headline)}</p></div>" for plot in plots
    )
    columns, rows = table_of(plots)
    table = table_html(View("", "", columns, rows, {}, ""), CAPTION)
    return (
        f'{LOOK}{GRID}<div class="w2w-trends">{pictures}</div>'
        f'<div class="w2w-numbers" tabindex="0" role="region" aria-label="{CAPTION}">{table}</div>'
    )


def _picture(plot: Plot, redraw: Callable[[], None] | None) -> str:
    try:
        return f'<div class="w2w-picture">{page_svg(plot)}</div>'
    except ImportError:
        return f"<p>{no_picture(redraw)}</p>"


def trends_text(examined: Sequence[Examined]) -> str:
    """The same in plain text: what each trend says."""
    return "\n".join(plot.view.headline for plot in plots_of(examined)) or TOO_FEW
