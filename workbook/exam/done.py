"""An exam that is handed in: its result, and what can follow."""

from collections.abc import Callable
from html import escape

from ipywidgets import HTML, Box, VBox

from solver.sets.paper import Paper
from workbook.ui.controls import Panel, button, classed, say

from .outcome import Outcome
from .result import result_html, summary
from .sitting import Sitting
from .start import fresh

__all__ = ["Done"]


class Done:
    """The last view: `begin` gets a paper, and `back` leads to the set-up.

    `print_` gets a paper too, and the place where it says what came of it.
    """

    def __init__(
        self,
        panel: Panel,
        begin: Callable[[Paper], None],
        print_: Callable[[Paper, HTML], None],
        back: Callable[[], None],
    ):
        self.sitting: Sitting | None = None
        self.top, self.all, self.code, self.printed = HTML(), HTML(), HTML(), HTML()
        self.again = button("Take it again", panel.once(lambda: begin(self.sitting.paper)))
        self.fresh = button(
            "Take one like it", panel.once(lambda: begin(fresh(self.sitting.paper)))
        )
        self.print = button(
            "Print this exam", panel.once(lambda: print_(self.sitting.paper, self.printed))
        )
        self.back = button("Set up another", panel.once(back))
        follow = classed(Box([self.again, self.fresh, self.print, self.back]), "w2w-buttons")
        self.box = VBox([self.top, self.code, follow, self.printed, self.all])

    def show(self, sitting: Sitting, fault: str = "") -> None:
        """The result of this sitting; a fault says that the log did not take it."""
        self.sitting, self.printed.value = sitting, say("")
        outcome = Outcome(sitting)
        said = say("note", *summary(outcome), fault)
        self.top.value = f"<h3>The result</h3>{said}"
        code = f"<b>{escape(sitting.paper.code)}</b>"
        self.code.value = (
            f"<p>Code of this exam: {code}. Share it, and others can take the same exam.</p>"
        )
        self.all.value = result_html(outcome)
        self.back.focus()
