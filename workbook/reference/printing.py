"""The part of the reference that makes the formula sheet to print."""

from collections.abc import Callable
from html import escape

from ipywidgets import HTML, Box, VBox

from solver import SolverError
from solver.render.html import formula_text
from workbook.ui.controls import ChapterTicks, Panel, button, classed, say
from workbook.ui.saving import link

from .entry import folded
from .formulas import by_chapter
from .sheet import Sheet, sheet_of

__all__ = ["Printing"]

ABOUT = (
    "Check the chapters you want on your sheet. It has two pages at most, "
    "in type of 8 points or larger."
)
FIRST = "Check at least one chapter first."


class Printing:
    """Boxes for the chapters, the button, and what came of it."""

    def __init__(self, panel: Panel, units: Callable[[], str]):
        self._units = units
        self.said = HTML(say(""))
        self.chapters = ChapterTicks(panel, by_chapter(), by_chapter(), self.clear)
        self.make = button("Make a sheet to print", panel.once(self._make), first=True)
        head = HTML(f"<h4>A formula sheet on paper</h4><p>{ABOUT}</p>")
        buttons = classed(Box([self.make]), "w2w-buttons")
        self.box = classed(VBox([head, self.chapters.box, buttons, self.said]), "w2w-printing")

    def clear(self) -> None:
        """What was made before does not fit what is ticked now."""
        self.said.value = say("")

    def _make(self) -> None:
        if not self.chapters.chosen:
            self.said.value = say("missing", FIRST)
            return
        try:
            sheet = sheet_of(self.chapters.chosen, self._units())
        except SolverError as refusal:
            self.said.value = say("missing", str(refusal))
            return
        held = f"<p>{link('Save the sheet', sheet.name, 'application/pdf', sheet.pdf)}</p>"
        html = held + _left(sheet)
        self.said.value = say("worked", "The sheet is ready.", *sheet.says, html=html)


def _left(sheet: Sheet) -> str:
    """What found no room, to open."""
    items = "".join(f"<li>{escape(formula_text(f, sheet.units))}</li>" for f in sheet.left)
    return folded("What is left out", f"<ul>{items}</ul>", opened=False) if items else ""
