"""The end of an exam: what came of it, what was missed and how, and problems like those."""

from collections.abc import Callable

from ipywidgets import HTML, VBox

from solver.sets.paper import Paper
from workbook.practice import Card, Missed, codes_today, keep
from workbook.ui.controls import Panel, button, row, show
from workbook.ui.markup import joined, tag
from workbook.ui.pieces import say

from .elsewhere import on_another_device
from .outcome import Outcome
from .result import missed_html, rest_html, summary
from .sitting import Sitting
from .start import fresh

__all__ = ["Done"]

SHARE = "Share it, and others can take the same exam."


class Done:
    """The last view: the result, what was missed, and what can follow.

    `begin` gets a paper, and `back` leads to the set-up. `print_` gets a paper too, and the place where
    it says what came of it. `pass_mark` is in percent.
    """

    sitting: Sitting  # the one whose result is shown
    outcome: Outcome

    def __init__(
        self,
        panel: Panel,
        begin: Callable[[Paper], None],
        print_: Callable[[Paper, HTML], None],
        back: Callable[[], None],
        pass_mark: int | None = None,
    ):
        once = panel.once
        self._pass_mark = pass_mark
        self.top, self.missed, self.rest, self.code, self.printed = (HTML() for _ in range(5))
        self.practice = button("Practice these", once(self._practice), first=True)
        self.again = button("Take it again", once(lambda: begin(self.sitting.paper)))
        self.fresh = button("Take one like it", once(lambda: begin(fresh(self.sitting.paper))))
        self.print = button(
            "Print this exam", once(lambda: print_(self.sitting.paper, self.printed))
        )
        self.back = button("Set up another", once(back))
        self.practicing = VBox()
        follow = row("w2w-buttons", self.again, self.fresh, self.print, self.back)
        self.box = VBox(
            [
                self.top, row("w2w-buttons", self.practice), self.practicing, self.missed,
                self.rest, follow, self.printed, self.code,
            ]
        )  # fmt: skip

    def show(self, sitting: Sitting, fault: str = "") -> None:
        """The result of this sitting; a fault says that the log did not take it."""
        self.sitting, self.outcome = sitting, Outcome(sitting)
        self.printed.value, self.practicing.children = say(""), ()
        said = summary(self.outcome, self._pass_mark)
        self.top.value = joined(tag("h3", "The result"), say("note", " ".join(said), fault))
        self.missed.value = missed_html(self.outcome)
        self.rest.value = rest_html(self.outcome)
        code = tag("b", sitting.paper.code)
        told = tag("p", "Code of this exam: ", code, f". {SHARE}")
        self.code.value = joined(told, on_another_device(sitting.paper))
        show(self.practice, self.outcome.to_practice)
        (self.practice if self.outcome.to_practice else self.back).focus()

    def _practice(self) -> None:
        """Open problems of the kinds that were missed, each kind in turn."""
        missed = Missed(self.outcome.to_practice, self.sitting.paper.units, keep)
        if self.practicing.children:
            self.practicing.children[0].turn_to(missed)
        else:
            self.practicing.children = [Card(missed, done=codes_today)]
            self.practicing.children[0].focus()
