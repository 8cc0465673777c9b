"""The progress page: how the study stands, in words, pictures and tables, and what to practise."""

from collections.abc import Callable, Sequence
from datetime import datetime
from functools import partial
from html import escape

from ipywidgets import HTML, Box, VBox

from solver import Family
from workbook.log import Log
from workbook.study import Study

from ..card import Card
from ..contents import titles
from ..controls import Panel, button, classed
from ..figures.frame import LOOK, NO_PICTURE, table_html
from ..figures.ink import picture
from ..guided import Focused
from ..keeper import keep, units_of
from . import words
from .facts import Flaw, Progress, progress
from .pictures import Pictured, chapters_picture, days_picture

__all__ = ["ProgressPanel"]

MOST = 6  # mistakes, and kinds that are due, shown at once


def _now() -> datetime:
    return datetime.now().astimezone()


class ProgressPanel(Panel):
    """How the study stands. `look` reads what has been logged since and shows it anew."""

    def __init__(self, families: Sequence[Family], log: Log, now=_now):
        super().__init__("w2w-progress", "w2w-figure")
        self.families, self.kept, self.now = families, log, now
        self.top, self.ready = HTML(), HTML()
        self.chapters, self.days = _Beside(), _Beside()
        self.flaws, self.due, self.practising = VBox(), VBox(), VBox()
        self.again = button("Look again", self.once(self.look))
        self.put(
            HTML(LOOK), self.top, self.again, self.said, self.ready,
            _heading("The chapters"), self.chapters.box,
            _heading("Mistakes that come back"), self.flaws,
            _heading("What is due"), self.due,
            self.practising,
            _heading("Days of work"), self.days.box,
        )  # fmt: skip
        self.look()

    def look(self) -> None:
        """Read the log and show what it says now."""
        self.kept.read()
        attempts = self.kept.attempts
        self.units, self.study = units_of(attempts), Study(attempts)
        now = self.now()
        told = progress(self.families, self.study, attempts, now)
        self.top.value = words.summary(told, self.kept)
        self.ready.value = words.ready(told)
        self.chapters.show(chapters_picture(told, titles()))
        self.days.show(days_picture(told, now.date()))
        self._show_flaws(told)
        self._show_due(told, now)

    def _show_flaws(self, told: Progress) -> None:
        rows = [self._flaw(flaw) for flaw in told.flaws[:MOST]]
        self.flaws.children = rows or [HTML(f"<p>{words.NO_FLAWS}</p>")]

    def _flaw(self, flaw: Flaw) -> VBox:
        said, one = HTML(words.flaw(flaw)), flaw.recurring
        focus = partial(Focused, flaw.family, one.level, self.units, one.mistake, keep)
        return classed(VBox([said, self._practise("Practise exactly this", focus)]), "w2w-due")

    def _show_due(self, told: Progress, now: datetime) -> None:
        rows = [
            self._practise(
                f"Practise: {family.title}",
                partial(Focused, family, self.study.level(family), self.units, on_try=keep),
            )
            for family in told.due_now[:MOST]
        ]
        self.due.children = [HTML(words.due(told, now.date())), *rows]

    def _practise(self, label: str, focus: Callable[[], Focused]) -> Box:
        """A button that opens a card; its problem is drawn when it is pressed."""

        def show() -> None:
            card = Card(focus())
            self.practising.children = [card]
            card.answer.box.focus()

        return classed(Box([button(label, self.once(show))]), "w2w-buttons")


class _Beside:
    """A picture and its table."""

    def __init__(self):
        self.picture, self.table = classed(HTML(), "w2w-picture"), classed(HTML(), "w2w-numbers")
        self.box = classed(Box([self.picture, self.table]), "w2w-beside")

    def show(self, pictured: Pictured) -> None:
        figure, view = pictured
        self.table.value = table_html(view, "The same numbers")
        try:
            self.picture.value = picture(figure, view)
        except ImportError:
            self.picture.value = f"<p>{NO_PICTURE}</p>"


def _heading(text: str) -> HTML:
    return HTML(f"<h3>{escape(text)}</h3>")
