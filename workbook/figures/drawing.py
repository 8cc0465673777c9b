"""A picture of a report, drawn by matplotlib: for paper, and as SVG in the colors and fonts of a page.

Figures to explore need none of it: they are charts (chart.py).
"""

import logging
import re
from collections.abc import Callable
from dataclasses import dataclass
from io import StringIO
from pathlib import Path
from typing import TYPE_CHECKING

from workbook.ui.markup import Markup

from .view import View

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["INK", "Plotted", "draw_shares", "picture", "printed"]

STYLE = Path(__file__).parent / "wire_to_water.mplstyle"
INK = "#1b1b1b"  # text.color of the style
PAGE_INK = f"var(--jp-ui-font-color1, {INK})"
_PROLOG = re.compile(r"^.*?<svg[^>]*?(viewBox=\"[^\"]*\")[^>]*>", re.DOTALL)
# The metadata name the program; the style would join the lines of every other SVG on the page.
_ASIDE = re.compile(r"<metadata>.*?</metadata>|<style.*?</style>", re.DOTALL)
_NUMBERED = re.compile(r' id="[a-z0-9.]+_\d+"')


@dataclass(frozen=True)
class Plotted:
    """A picture for matplotlib's axes; `height` is in inches, the width is the style's."""

    name: str
    draw: Callable[["Axes", View], None]
    height: float


def picture(figure: Plotted, view: View) -> Markup:
    """The SVG of a picture for a page.

    Raises:
        ImportError: matplotlib is not there.
    """
    return _for_page(_drawn(figure, view, "none"), view.alt)


def printed(figure: Plotted, view: View) -> str:
    """The SVG of a picture for paper: letters are drawn, for the printer has no fonts of ours.

    Raises:
        ImportError: matplotlib is not there.
    """
    return _drawn(figure, view, "path")


def _drawn(figure: Plotted, view: View, letters: str) -> str:
    # It tells of fonts it puts in order; that is nothing to a reader.
    logging.getLogger("matplotlib").setLevel(logging.ERROR)
    # Here, for it takes a second, and a page can do without.
    import matplotlib
    from matplotlib.figure import Figure as Canvas

    style = matplotlib.rc_params_from_file(STYLE, use_default_template=False)
    style["svg.hashsalt"], style["svg.fonttype"] = figure.name, letters
    with matplotlib.rc_context(style):
        canvas = Canvas()
        canvas.set_figheight(figure.height)
        figure.draw(canvas.add_subplot(), view)
        drawn = StringIO()
        canvas.savefig(drawn, format="svg", metadata={"Date": None})
    return drawn.getvalue()


def _for_page(svg: str, alt: str) -> Markup:
    """The SVG as part of a page: described, without a fixed size, in the page's own ink."""
    opening = (
        r'<svg xmlns:xlink="http://www.w3.org/1999/xlink" \1 role="img" stroke-linejoin="round">'
    )
    svg = _ASIDE.sub("", _PROLOG.sub(opening, svg, count=1))
    # Matplotlib numbers its parts from 1 in every picture; two on a page would clash.
    svg = _NUMBERED.sub("", svg).replace(INK, PAGE_INK)
    return Markup(svg.replace('role="img"', f'role="img" aria-label="{Markup.escape(alt)}"', 1))


def draw_shares(axes: "Axes", view: View, label: str) -> None:
    """A bar a row under its name, for names are long; the row's second cell is beside or in it.

    `view.known` has the shares by name, 0 to 100; `label` says what they are shares of.
    """
    places = range(len(view.rows))
    axes.barh(places, list(view.known.values()), color="C0", height=0.4)
    for place, (name, said, *_) in zip(places, view.rows, strict=True):
        share = view.known[name]
        inside = share > 50
        axes.text(0, place - 0.24, name, va="bottom")
        axes.annotate(
            said, (share, place), xytext=(-5 if inside else 5, 0), textcoords="offset points",
            ha="right" if inside else "left", va="center", color="white" if inside else None,
        )  # fmt: skip
    axes.set(xlim=(0, 100), ylim=(len(view.rows) - 0.7, -0.75), xlabel=label)
    axes.set_yticks([])
