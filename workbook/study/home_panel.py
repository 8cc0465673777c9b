"""The first page: the next problem, beside it the exam and what comes back, below it the chapters."""

import asyncio
from collections.abc import Callable, Sequence
from datetime import datetime
from pathlib import Path

from ipywidgets import HTML, VBox

from solver import Family
from workbook.log import Log, NotRead
from workbook.practice import Card, Try, keep
from workbook.ui.controls import Panel, classed, row
from workbook.ui.markup import joined, tag
from workbook.ui.pages import lessons
from workbook.ui.pieces import say

from . import home_shown as words
from .goal_form import GoalForm
from .pieces import LOOK
from .plan import plan_of, seconds_a_problem
from .progress import minutes_on, progress
from .study import Study

__all__ = ["HomePanel"]

SOON = 0.5  # seconds after an answer, which is shown first


def _now() -> datetime:
    return datetime.now().astimezone()


class HomePanel(Panel):
    """Guided practice, at its side what the day has, and the chapters; below it where the page is narrow.

    `card` makes the practice card; it gets what each try is told to. `begun` gives the exams and sets
    to go on with. All but the problem is brought up to date after each answer.
    """

    def __init__(
        self,
        families: Sequence[Family],
        log: Log,
        goal: Path,
        card: Callable[[Callable[[Try], str]], Card],
        begun: Callable[[], Sequence[words.Begun]] = tuple,
        now: Callable[[], datetime] = _now,
    ):
        super().__init__("w2w-home")
        self.families, self.kept, self.now, self.begun = families, log, now, begun
        self.study, self.pages = Study(), lessons()
        self.welcome = HTML()
        self.card = card(self._tried)
        self.exam, self.side = HTML(), HTML()
        self.chapters = classed(HTML(), "w2w-below")
        self.goal = GoalForm(self, goal, self._show, lambda: now().date())
        plan = classed(VBox([self.exam, self.goal.box]), "w2w-block")
        side = classed(VBox([plan, self.side]), "w2w-side")
        main = classed(VBox([self.welcome, self.said, self.card]), "w2w-main")
        self.put(HTML(LOOK), row("w2w-two", main, side, self.chapters))
        self.look()
        if not self.kept.attempts:
            self.welcome.value = tag("p", words.WELCOME, cls="w2w-welcome")

    def _tried(self, told: Try) -> str:
        fault = keep(told)
        try:
            asyncio.get_running_loop().call_later(SOON, self.safely(self.look))
        except RuntimeError:  # no loop runs, so nothing can follow
            self.look()
        return fault

    def look(self) -> None:
        """Read the log, and show at the side what it says now."""
        try:
            self.kept.read()
        except NotRead as fault:
            self.said.value = say("notice", str(fault))
        self.study.follow(self.kept.attempts)
        self._show()

    def _show(self) -> None:
        now, goal = self.now(), self.goal.look()
        told = progress(self.families, self.study, now)
        plan = plan_of(self.families, self.study, goal, now)
        minutes = minutes_on(self.kept.attempts, now.date(), now.tzinfo)
        self.exam.value = words.exam_block(goal, told, plan, minutes, now.date())
        room = goal.minutes * 60 / seconds_a_problem(self.study)
        back = words.back_block(told, now, room)
        self.side.value = joined(words.begun_block(self.begun()), back)
        self.chapters.value = words.chapters_block(told.chapters, self.pages)
