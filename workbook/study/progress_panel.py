"""The study page: what to expect, the plan, the chapters, mistakes that come back, days of work."""

import contextlib
from collections.abc import Callable, Sequence
from datetime import datetime
from functools import partial
from itertools import islice
from pathlib import Path

from ipywidgets import HTML, Box, VBox, Widget

from solver import Family
from workbook.log import Log, NotKept, NotRead
from workbook.practice import Card, Focused, codes_today, keep, units_of
from workbook.ui.controls import Panel, button, classed, row
from workbook.ui.markup import joined, tag
from workbook.ui.pages import lessons
from workbook.ui.pieces import say

from . import progress_shown as words
from .goal_form import GoalForm
from .home_shown import exam_in_words
from .pieces import LOOK
from .plan import plan_of
from .plan_shown import plan_table, ready_block, to_cover_block
from .progress import Flaw, flaws, kinds, progress
from .study import Study

__all__ = ["ProgressPanel"]

MOST = 6  # mistakes shown at once


def _now() -> datetime:
    return datetime.now().astimezone()


class ProgressPanel(Panel):
    """How the study stands. `look` reads what has been logged since and shows it anew.

    It changes only when asked to, so that nothing moves while somebody works at a problem.
    """

    def __init__(
        self,
        families: Sequence[Family],
        log: Log,
        goal: Path,
        now: Callable[[], datetime] = _now,
    ):
        super().__init__("w2w-progress", "w2w-study")
        self.kept, self.now, self.study = log, now, Study()
        self.pages = lessons()
        place = {name: number for number, name in enumerate(self.pages)}
        self.families = sorted(families, key=lambda f: place.get(f.chapter, len(place)))
        self.top, self.expected, self.plan, self.chapters, self.coming, self.days = (
            HTML() for _ in range(6)
        )
        self.flaws, self.practicing = VBox(), VBox()
        self.goal = GoalForm(self, goal, self._show, lambda: now().date())
        self.again = button("Bring this up to date", self.once(self.look))
        self.put(
            HTML(LOOK),
            VBox([self.expected, self.said]),
            _block(self.plan, self.goal.box),
            _block(_heading("Mistakes that come back"), self.flaws, self.practicing),
            _block(_heading("The chapters"), self.chapters),
            _block(_heading("Coming back today"), self.coming),
            _block(_heading("Days you practiced"), self.top, self.days),
            row("w2w-buttons", self.again),
        )  # fmt: skip
        self.look()

    def look(self) -> None:
        """Read the log and show what it says now."""
        self.said.value = say("")
        with contextlib.suppress(NotKept):  # what waits is told in the summary
            if self.kept.waiting:
                self.kept.keep()
        try:
            self.kept.read()
        except NotRead as fault:
            self.said.value = say("notice", str(fault))
        attempts = self.kept.attempts
        self.units = units_of(attempts)
        self.study.follow(attempts)
        self._show()

    def _show(self) -> None:
        now, goal = self.now(), self.goal.look()
        today = now.date()
        told = progress(self.families, self.study, now)
        plan = plan_of(self.families, self.study, goal, now)
        cover = to_cover_block(told, goal, plan, today)
        self.expected.value = tag("div", ready_block(told, goal), cover, cls="w2w-twofold")
        heading = exam_in_words(goal, today)
        self.plan.value = joined(tag("h3", heading), plan_table(plan, goal, today))
        by_chapter = {c.name: kinds(self.families, self.study, c.name) for c in told.chapters}
        self.chapters.value = words.chapters_list(told, by_chapter, self.pages, now)
        rows = [self._flaw(flaw) for flaw in islice(flaws(self.families, self.study), MOST)]
        self.flaws.children = rows or [HTML(tag("p", words.NO_FLAWS))]
        self.coming.value = words.coming(told, now)
        self.top.value = words.summary(told, self.kept)
        self.days.value = words.calendar(told, today)

    def _flaw(self, flaw: Flaw) -> Box:
        mistake = flaw.recurring.mistake
        focus = partial(Focused, flaw.family, flaw.level, self.units, mistake, keep)
        go = button("Practice this", self.once(lambda: self._practice(focus())))
        return row("w2w-flaw", HTML(words.flaw(flaw)), go)

    def _practice(self, focus: Focused) -> None:
        """Open the problem under the mistakes; it takes the place of the one before."""
        if self.practicing.children:
            self.practicing.children[0].turn_to(focus)
        else:
            self.practicing.children = [Card(focus, done=codes_today)]
            self.practicing.children[0].focus()


def _block(*parts: Widget) -> VBox:
    return classed(VBox(parts), "w2w-block")


def _heading(text: str) -> HTML:
    return HTML(tag("h3", text))
