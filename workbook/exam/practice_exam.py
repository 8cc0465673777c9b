"""The practice exam: set up, sat and seen through on one panel."""

from collections.abc import Callable
from pathlib import Path
from time import monotonic

from ipywidgets import HTML, VBox

from solver import SolverError
from solver.sets.paper import Paper
from workbook.log import Attempt, NotKept, NotRead
from workbook.ui.controls import Panel, button, row, show
from workbook.ui.markup import joined, tag
from workbook.ui.pieces import say

from .desk import Told
from .printed import save_pdf
from .question import check_askable
from .result import Outcome, result_html, summary
from .sit import Sit
from .sitting import Sitting, begin
from .start import Start, fresh

__all__ = ["Done", "ExamPanel"]

SHARE = "Share it, and others can take the same exam."


class Done:
    """The last view: the result, and what can follow. `begin` gets a paper, `back` leads to the set-up.

    `print_` gets a paper too, and the place where it says what came of it.
    """

    sitting: Sitting  # the one whose result is shown

    def __init__(
        self,
        panel: Panel,
        begin: Callable[[Paper], None],
        print_: Callable[[Paper, HTML], None],
        back: Callable[[], None],
    ):
        once = panel.once
        self.top, self.all, self.code, self.printed = HTML(), HTML(), HTML(), HTML()
        self.again = button("Take it again", once(lambda: begin(self.sitting.paper)))
        self.fresh = button("Take one like it", once(lambda: begin(fresh(self.sitting.paper))))
        self.print = button(
            "Print this exam", once(lambda: print_(self.sitting.paper, self.printed))
        )
        self.back = button("Set up another", once(back))
        follow = row("w2w-buttons", self.again, self.fresh, self.print, self.back)
        self.box = VBox([self.top, self.code, follow, self.printed, self.all])

    def show(self, sitting: Sitting, fault: str = "") -> None:
        """The result of this sitting; a fault says that the log did not take it."""
        self.sitting, self.printed.value = sitting, say("")
        outcome = Outcome(sitting)
        self.top.value = joined(tag("h3", "The result"), say("note", *summary(outcome), fault))
        code = tag("b", sitting.paper.code)
        self.code.value = tag("p", "Code of this exam: ", code, f". {SHARE}")
        self.all.value = result_html(outcome)
        self.back.focus()


class ExamPanel(Panel):
    """Three views, one of them shown: to set up, to sit, to see the result.

    `where` is the folder of sittings, `pages` the reader's folder for what is printed. `log` takes
    the attempts of an exam that is handed in, and may raise NotKept or NotRead.
    """

    def __init__(
        self,
        where: Path,
        log: Callable[[list[Attempt]], object],
        pages: Path,
        units: str = "us",
        clock: Callable[[], float] = monotonic,
    ):
        super().__init__("w2w-exams", clock=clock)
        self.where, self._log, self._pages = where, log, pages
        self.start = Start(self, self._begin, self._print, self._open, where, units)
        self.sit = Sit(self, self._paused, self._open)
        self.result = Done(self, self._begin, self._print, self._set_up)
        self.views = (self.start, self.sit, self.result)
        self.put(*(view.box for view in self.views), self.said)
        self._set_up()

    def _view(self, shown: "Start | Sit | Done") -> None:
        for view in self.views:
            show(view.box, view is shown)
        self.said.value = say("")

    def _set_up(self, *sentences: str) -> None:
        self.start.show(*sentences)
        self._view(self.start)

    def _begin(self, paper: Paper) -> None:
        try:
            check_askable(paper)
            sitting = begin(paper, self.where, self.clock)
        except (SolverError, NotKept) as fault:
            self.said.value = say("fault", "The exam didn't start.", str(fault))
            return
        self._open(sitting)

    def _open(self, sitting: Sitting) -> None:
        """Go on with a sitting, or see its result where it is handed in."""
        if not sitting.ended:
            self._view(self.sit)
            self.sit.open(sitting)
            return
        fault = ""
        try:
            self._log(sitting.attempts())
        except (NotKept, NotRead) as refusal:
            fault = str(refusal)
        self._view(self.result)
        self.result.show(sitting, fault)

    def _paused(self, sitting: Sitting, told: Told) -> None:
        self._set_up(*told.sentences, "The exam is paused, and the clock is stopped.")
        if self.start.earlier.buttons:
            self.start.earlier.buttons[0].focus()

    def _print(self, paper: Paper, told: HTML) -> None:
        """Make the PDF of a paper, and say so in this place."""
        told.value = say("note", "The PDF is being made.")
        told.value = save_pdf(paper, self._pages)
