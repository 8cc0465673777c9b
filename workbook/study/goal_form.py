"""Asked once and changed any time: the day of the exam, minutes a day, the pass mark."""

from collections.abc import Callable, Iterable
from datetime import date
from pathlib import Path

from ipywidgets import HTML, DatePicker, VBox

from workbook.ui.controls import AUTO, LABELLED, Panel, button, chooser, classed, link, row, show
from workbook.ui.markup import tag
from workbook.ui.pieces import say

from .goal import MINUTES, PASS_MARKS, Goal, keep_goal, read_goal
from .pieces import day_in_words

__all__ = ["GoalForm"]

ASKS = "When is your exam? You get a plan by week, and you can change this any time."
CHANGE, LATER, CLOSE = "Change exam date or minutes", "Not now", "Leave it as it is"


class GoalForm:
    """A button that opens the boxes; they are open at first until they were answered.

    `box` has both. `changed` is called when something else was saved or put off; `today` gives the day.
    """

    def __init__(
        self, panel: Panel, path: Path, changed: Callable[[], None], today: Callable[[], date]
    ):
        self._path, self._changed, self._today = path, changed, today
        self.goal, self._waits = read_goal(path), False
        self.asks = HTML(tag("p", ASKS))
        self.day = DatePicker(description="Day of the exam", style=LABELLED, layout=AUTO)
        classed(self.day, "w2w-field")
        self.minutes = chooser("Minutes a day", _each(MINUTES, " minutes"))
        self.mark = chooser("Pass mark", _each(PASS_MARKS, "%"))
        self.save = button("Save", panel.once(self._save), first=True)
        self.leave = button(LATER, panel.once(self._leave))
        self.change = link(CHANGE, panel.once(self._open))
        self.said = HTML(say(""))
        fields = row("w2w-goal", self.day, self.minutes, self.mark)
        self.form = VBox([self.asks, fields, row("w2w-buttons", self.save, self.leave)])
        self.box = classed(VBox([self.change, self.form, self.said]), "w2w-goal-form")
        self._show(not self.goal.asked)

    def look(self) -> Goal:
        """The goal as it is kept now, as another page may have changed it; one that waits is tried again."""
        if self._waits:
            self._waits = bool(keep_goal(self._path, self.goal))
        else:
            self.goal = read_goal(self._path)
        return self.goal

    def _show(self, form: bool) -> None:
        goal = self.goal
        show(self.asks, not goal.asked)
        self.leave.description = CLOSE if goal.asked else LATER
        self.day.value = goal.ahead(self._today()).exam
        self.minutes.put(goal.minutes, _each({*MINUTES, goal.minutes}, " minutes"))
        self.mark.put(goal.pass_mark, _each({*PASS_MARKS, goal.pass_mark}, "%"))
        show(self.change, not form)
        show(self.form, form)  # once it holds what is kept

    def _open(self) -> None:
        self.said.value = say("")
        self._show(True)
        self.minutes.focus()

    def _save(self) -> None:
        day = self.day.value
        if day and day < self._today():
            what = f"{day_in_words(day)}, {day.year} has passed."
            self.said.value = say(
                "unreadable", f"{what} Pick today or a later day, or leave it empty."
            )
            return
        self._keep(Goal(day, self.minutes.value, self.mark.value, True))

    def _leave(self) -> None:
        """Put off; that it was asked is kept, so nobody is asked twice."""
        if self.goal.asked:
            self._show(False)
            self.change.focus()
        else:
            self._keep(self.goal._replace(asked=True))

    def _keep(self, goal: Goal) -> None:
        fault = keep_goal(self._path, goal)
        self.goal, self._waits = goal, bool(fault)
        self.said.value = say("fault", fault) if fault else say("")
        self._show(False)
        self._changed()
        self.change.focus()


def _each(values: Iterable[int], unit: str) -> list[tuple[str, int]]:
    return [(f"{value}{unit}", value) for value in sorted(values)]
