"""A labelled box of several lines: into a box of one line, a browser pastes lines run together."""

from ipywidgets import Textarea

from workbook.ui.controls import AUTO, LABELLED, classed
from workbook.ui.entry import Gate

__all__ = ["Paste"]


class Paste:
    """The box, for buttons whose gates wait for its text."""

    def __init__(self, label: str, *gates: Gate):
        self.box = Textarea(
            description=label, continuous_update=False, rows=4, style=LABELLED, layout=AUTO
        )
        classed(self.box, "w2w-field")
        self._heard = [gate.changed for gate in gates]
        self._listen()

    def _listen(self) -> None:
        for hear in self._heard:
            self.box.observe(hear, "value")

    def fill(self, text: str) -> None:
        """Put a text in the box that nobody typed."""
        for hear in self._heard:
            self.box.unobserve(hear, "value")
        self.box.value = text
        self._listen()
