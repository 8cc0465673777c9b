"""A picture and its numbers side by side, drawn anew only where a number has changed."""

from functools import partial

from ipywidgets import HTML, Box

from workbook.ui.controls import classed
from workbook.ui.later import no_picture

from .frame import table_html
from .ink import picture
from .view import Figure, View

__all__ = ["Beside"]


class Beside:
    """A picture and its table in one box; `names` are more names for look.css."""

    def __init__(self, *names: str):
        self.picture, self.table = classed(HTML(), "w2w-picture"), classed(HTML(), "w2w-numbers")
        self.box = classed(Box([self.picture, self.table]), "w2w-beside", *names)
        self.shown: View | None = None

    def show(self, figure: Figure, view: View) -> None:
        """Show this figure; only the table where matplotlib is missing."""
        if view == self.shown:
            return
        self.table.value = table_html(view, "The same numbers")
        self.shown, self._draw = view, partial(self._show, figure, view)
        self._draw()

    def _show(self, figure: Figure, view: View) -> None:
        if view != self.shown:
            return  # another one has taken its place while it waited
        try:
            self.picture.value = picture(figure, view)
        except ImportError:
            self.picture.value = f"<p>{no_picture(self._draw)}</p>"
