"""The practice exam: set up, taken and seen through on one panel."""

from collections.abc import Callable
from pathlib import Path
from time import monotonic

from ipywidgets import HTML

from solver import SolverError
from solver.sets.paper import Paper
from workbook.log import Attempt, NotKept, NotRead
from workbook.ui.controls import Panel, show
from workbook.ui.markup import style
from workbook.ui.pieces import say

from .desk import Told
from .done import Done
from .printed import save_pdf
from .question import check_askable
from .sit import Sit
from .sitting import Sitting, begin
from .start import Start

__all__ = ["ExamPanel"]

LOOK = style(Path(__file__).with_name("exam.css"))


class ExamPanel(Panel):
    """Three views, one of them shown: to set up, to sit, to see the result.

    `where` is the folder of sittings, `pages` the reader's folder for what is printed. `log` takes
    the attempts of an exam that is turned in, and may raise NotKept or NotRead. `pass_mark` is what
    the result is held against, in percent.
    """

    def __init__(
        self,
        where: Path,
        log: Callable[[list[Attempt]], object],
        pages: Path,
        units: str = "us",
        pass_mark: int | None = None,
        clock: Callable[[], float] = monotonic,
    ):
        super().__init__("w2w-exams", clock=clock)
        self.where, self._log, self._pages = where, log, pages
        self.start = Start(self, self._begin, self._print, self._open, where, units)
        self.sit = Sit(self, self._paused, self._open)
        self.result = Done(self, self._begin, self._print, self._set_up, pass_mark)
        self.views = (self.start, self.sit, self.result)
        self.put(HTML(LOOK), *(view.box for view in self.views), self.said)
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
        told.value = save_pdf(paper, self._pages, self.start.site.box.value)
