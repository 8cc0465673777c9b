"""The panel of find the fault: choose a case, work it, look back on it."""

import secrets
from collections.abc import Callable
from pathlib import Path

from ipywidgets import HTML, VBox

from solver import SolverError
from solver.fault.case import LEVELS, fault_case
from solver.units.show import capital
from workbook.log import Attempt, NotKept
from workbook.ui.controls import UNIT_CHOICES, Panel, button, chooser, classed, row, show
from workbook.ui.entry import Entry
from workbook.ui.markup import Markup, tag
from workbook.ui.pieces import say

from .printed import save_pdf
from .stand import Stand
from .story import Story, Worked, attempt_of_way, begin, unfinished
from .view import LOOK, review_html

__all__ = ["FaultPanel"]

SEEDS = 100_000
ABOUT = (
    "Decide what to measure, in any order. Each reading takes minutes, and some need a "
    "qualified person, a lockout or a permit first. Then name the fault and say what you do about it."
)


class FaultPanel(Panel):
    """Three views, one of them shown. `where` is the folder of cases, `pages` the reader's folder for
    what is printed; `log` takes attempts, and may raise NotKept."""

    def __init__(
        self, where: Path, log: Callable[[Attempt], object], pages: Path, units: str = "us"
    ):
        super().__init__("w2w-faults")
        self.where, self._log, self._pages = where, log, pages
        levels = [(f"Level {n}: {capital(says)}", n) for n, says in LEVELS.items()]
        self.level = chooser("Level", levels)
        self.units = chooser("Units", UNIT_CHOICES, value=units)
        self.new = button("Start a case", self.once(self._new), first=True)
        self.code = Entry(self, "Case code", self._open_code)
        self.open = button("Open this case", self.code.gate.click)
        self.start = VBox(
            [
                HTML(tag("p", ABOUT)),
                row("w2w-ask", self.level, self.units, self.new),
                classed(row("w2w-ask", self.code.box, self.open), "w2w-code"),
            ]
        )
        self.stand = Stand(self, self._named, self._over, self._set_up, self._print)
        self.lesson = HTML()
        self.next = button("Next case", self.once(self._new), first=True)
        self.again = button("Work this case again", self.once(self._again))
        self.other = button("Another level or a code", self.once(self._set_up))
        self.review = classed(
            VBox([self.lesson, row("w2w-buttons", self.next, self.again, self.other)]), "w2w-review"
        )
        self.views = (self.start, self.stand.box, self.review)
        self.put(HTML(LOOK), *self.views, self.said)
        story = unfinished(where)
        if story:
            self._work(story)
        else:
            self._set_up()

    def _view(self, shown: VBox) -> None:
        for view in self.views:
            show(view, view is shown)
        self.said.value = say("")

    def _set_up(self) -> None:
        self._view(self.start)

    def _new(self) -> None:
        level, units = self.level.value, self.units.value
        self._begin(str(fault_case(level, units, secrets.randbelow(SEEDS)).code))

    def _open_code(self, text: str) -> None:
        self._begin(text)

    def _again(self) -> None:
        self._begin(str(self.stand.story.way.case.code))

    def _begin(self, code: str) -> None:
        try:
            story = begin(code, self.where)
        except (SolverError, NotKept) as fault:
            self.said.value = say("notice", "The case didn't start.", str(fault))
            return
        self._work(story)

    def _work(self, story: Story) -> None:
        case = story.way.case
        self.level.put(case.level)
        self.units.put(case.units)
        self._view(self.stand.box)
        self.stand.open(story)
        self.stand.focus()

    def _named(self, story: Worked) -> str:
        """Keep a name in the study log; a sentence where that can't be."""
        return self._keep(attempt_of_way(story.way))

    def _print(self, story: Worked) -> Markup:
        return save_pdf(story.way.case, self._pages)

    def _over(self, story: Worked) -> None:
        fault = "" if story.way.named else self._keep(attempt_of_way(story.way))
        self.lesson.value = review_html(story.way)
        self._view(self.review)
        if fault:
            self.said.value = say("fault", fault)
        self.next.focus()

    def _keep(self, attempt: Attempt) -> str:
        try:
            self._log(attempt)
        except NotKept as fault:
            return str(fault)
        return ""
