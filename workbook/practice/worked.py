"""One worked example, opened step by step."""

from ipywidgets import HTML, Box

from solver import Case
from solver.render.text import step_texts
from workbook.ui.controls import Panel, button, classed, heard, say

from .view import problem_html, steps_html

__all__ = ["WorkedExample"]


class WorkedExample(Panel):
    """A problem whose steps come one at a time, or all at once."""

    def __init__(self, case: Case):
        super().__init__("w2w-example")
        self.case, self.shown = case, 0
        self.steps = HTML()
        self.next = button("Show the next step", self.once(self._next), first=True)
        self.rest = button("Show every step", self.once(self._all))
        buttons = classed(Box([self.next, self.rest]), "w2w-buttons")
        self.put(HTML(problem_html(case)), self.steps, buttons, self.said)

    def _next(self) -> None:
        if self.shown == len(self.case.steps):
            self.said.value = say("note", "That was the last step.")
            return
        self._show(self.shown + 1)

    def _all(self) -> None:
        self._show(len(self.case.steps))

    def _show(self, count: int) -> None:
        case, new = self.case, self.case.steps[self.shown : count]
        self.shown = count
        self.steps.value = steps_html(case, count)
        texts = [step_texts(step, case.known, case.given, case.units) for step in new]
        parts = (part.rstrip(".") for text in texts for part in text if part)
        self.said.value = heard(". ".join(parts))
