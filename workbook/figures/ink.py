"""A figure drawn by matplotlib, as SVG that takes the colours and the fonts of the page."""

import logging
import re
from html import escape
from io import StringIO
from pathlib import Path

from .view import Figure, View

__all__ = ["picture", "printed"]

STYLE = Path(__file__).parent / "wire_to_water.mplstyle"
INK = "#1b1b1b"  # text.color of the style
PAGE_INK = f"var(--jp-ui-font-color1, {INK})"
_PROLOG = re.compile(r"^.*?<svg[^>]*?(viewBox=\"[^\"]*\")[^>]*>", re.DOTALL)
# The metadata name the program; the style would join the lines of every other SVG on the page.
_ASIDE = re.compile(r"<metadata>.*?</metadata>|<style.*?</style>", re.DOTALL)
_NUMBERED = re.compile(r' id="[a-z0-9.]+_\d+"')


def picture(figure: Figure, view: View) -> str:
    """The SVG of a figure for a page; ImportError where matplotlib is not there."""
    return _for_page(_drawn(figure, view, "none"), view.alt)


def printed(figure: Figure, view: View) -> str:
    """The SVG of a figure for paper: letters are drawn, for the printer has no fonts of ours."""
    return _drawn(figure, view, "path")


def _drawn(figure: Figure, view: View, letters: str) -> str:
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


def _for_page(svg: str, alt: str) -> str:
    """The SVG as part of a page: described, without a fixed size, in the page's own ink."""
    opening = (
        r'<svg xmlns:xlink="http://www.w3.org/1999/xlink" \1 role="img" stroke-linejoin="round">'
    )
    svg = _ASIDE.sub("", _PROLOG.sub(opening, svg, count=1))
    # Matplotlib numbers its parts from 1 in every figure; two figures on a page would clash.
    svg = _NUMBERED.sub("", svg).replace(INK, PAGE_INK)
    return svg.replace('role="img"', f'role="img" aria-label="{escape(alt)}"', 1)
