"""All questions of an exam at a glance, each a button that leads to it."""

from collections.abc import Callable

from ipywidgets import HTML, Box, Button, VBox

from workbook.ui.controls import button, classed

from .desk import Desk

__all__ = ["Overview"]

FLAG = "⚑ come back"


class Overview:
    """Buttons for the questions; `going` gives what the button of a number does."""

    def __init__(self, going: Callable[[int], Callable[[], None]]):
        self._going = going
        self.counts = HTML()
        self.buttons = classed(Box(), "w2w-overview")
        self.box = VBox([HTML("<h4>All questions</h4>"), self.counts, self.buttons])

    def fill(self, count: int) -> None:
        """Buttons for an exam of so many questions."""
        self.buttons.children = [self._button(number) for number in range(1, count + 1)]

    def _button(self, number: int) -> Button:
        return button(str(number), self._going(number))

    def show(self, desk: Desk) -> None:
        """Each question's state, in a mark and a word."""
        flagged, answered = desk.sitting.flagged, len(desk.sitting.answers)
        for number, each in enumerate(self.buttons.children, 1):
            here = "▸ " * (number == desk.number)
            flag = f" {FLAG}" * (number in flagged)
            each.description = f"{here}{number} {desk.state(number)}{flag}"
        text = f"{answered} of {desk.count} answered, {len(flagged)} to come back to."
        self.counts.value = f"<p>{text}</p>"
