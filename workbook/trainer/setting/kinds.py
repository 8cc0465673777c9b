"""Single kinds of problem to tick, a chapter at a time; what is ticked in the others stays."""

from collections.abc import Iterable
from html import escape

from ipywidgets import HTML, Box, VBox

from solver import FAMILIES
from solver.sets.paper import CHAPTERS
from workbook.ui.controls import Panel, chooser, classed
from workbook.ui.ticks import tick, titled

__all__ = ["Kinds"]

NONE = "No single kind is chosen."


class Kinds:
    """A list of chapters, boxes for the kinds of the one chosen, and a line of all that are ticked."""

    def __init__(self, panel: Panel):
        self._panel = panel
        self.ticked: set[str] = set()
        options = [(title, name) for name, title in titled(CHAPTERS).items()]
        self.chapter = chooser("Single kinds of this chapter", options, panel.safely(self._show))
        self.ticks, self.line = classed(Box(), "w2w-ticks"), HTML()
        self.box = VBox([self.chapter, self.ticks, self.line])
        self._show(self.chapter.value)
        self._tell()

    @property
    def chosen(self) -> tuple[str, ...]:
        """The families that are ticked, by name, in the order of the library."""
        return tuple(family.name for family in FAMILIES if family.name in self.ticked)

    def choose(self, names: Iterable[str]) -> None:
        """Tick these families and no others, and turn to the chapter of the first."""
        self.ticked = set(names)
        first = next((f.chapter for f in FAMILIES if f.name in self.ticked), self.chapter.value)
        self.chapter.value = first
        self._show(first)
        self._tell()

    def _show(self, chapter: str) -> None:
        self.ticks.children = [
            tick(
                family.title,
                family.name in self.ticked,
                self._panel.safely(self._hear(family.name)),
            )
            for family in FAMILIES
            if family.chapter == chapter
        ]

    def _hear(self, name: str):
        def hear(on) -> None:
            (self.ticked.add if on else self.ticked.discard)(name)
            self._tell()

        return hear

    def _tell(self) -> None:
        named = [family.title for family in FAMILIES if family.name in self.ticked]
        text = f"Single kinds chosen: {'; '.join(named)}." if named else NONE
        self.line.value = f'<p class="w2w-about" role="status">{escape(text)}</p>'
