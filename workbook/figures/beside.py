"""A picture and its numbers side by side, drawn anew only where a number has changed."""

from ipywidgets import HTML, Box

from ..controls import classed
from .frame import NO_PICTURE, table_html
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
        try:
            self.picture.value = picture(figure, view)
        except ImportError:
            self.picture.value = f"<p>{NO_PICTURE}</p>"
        self.shown = view
