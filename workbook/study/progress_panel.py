"""The progress page: how the study stands, in words, pictures and tables, and what to practice."""

import contextlib
from collections.abc import Callable, Sequence
from datetime import datetime
from functools import partial

from ipywidgets import HTML, Button, VBox

from solver import Family
from workbook.figures import LOOK, Beside, View, table_html
from workbook.log import Log, NotKept, NotRead
from workbook.practice import Card, Focused, keep, units_of
from workbook.ui.contents import in_words
from workbook.ui.controls import Panel, button, chooser, classed, row
from workbook.ui.markup import tag
from workbook.ui.pages import titles
from workbook.ui.pieces import say

from . import progress_shown as words
from .progress import Flaw, kinds, progress
from .study import Study

__all__ = ["ProgressPanel"]

MOST = 6  # mistakes, and kinds that are due, shown at once
HEADS = ("Kind of problem", "Right the first time", "Level", "Due", "Usual time")


def _now() -> datetime:
    return datetime.now().astimezone()


class ProgressPanel(Panel):
    """How the study stands. `look` reads what has been logged since and shows it anew.

    It changes only when asked to, so that nothing moves while somebody works at a problem.
    """

    def __init__(self, families: Sequence[Family], log: Log, now: Callable[[], datetime] = _now):
        super().__init__("w2w-progress")
        self.kept, self.now, self.study = log, now, Study()
        self.names = _names(families)
        order = list(self.names)
        self.families = sorted(families, key=lambda family: order.index(family.chapter))
        self._make_parts()
        self.put(
            HTML(LOOK), self.top, row("w2w-buttons", self.again), self.said, self.ready,
            _heading("The chapters"), self.chapters.box, self.chapter, self.kinds,
            _heading("Mistakes you keep making"), self.flaws,
            _heading("What comes back today"), self.due, self.practising, self.coming,
            _heading("Days you practiced"), self.days.box,
        )  # fmt: skip
        self.look()

    def _make_parts(self) -> None:
        self.top, self.ready, self.kinds, self.coming = (HTML() for _ in range(4))
        classed(self.kinds, "w2w-numbers")
        self.chapters, self.days = Beside("w2w-wide"), Beside()
        self.flaws, self.due, self.practising = VBox(), VBox(), VBox()
        self.again = button("Look again", self.once(self.look))
        options = [(name, chapter) for chapter, name in self.names.items()]
        self.chapter = chooser(
            "Kinds of problems in this chapter", options, self.safely(self._show_kinds)
        )

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
        now = self.now()
        self.told = progress(self.families, self.study, now)
        self.top.value = words.summary(self.told, self.kept)
        self.ready.value = words.ready(self.told)
        self.chapters.show(*words.chapters_picture(self.told, self.names))
        self.days.show(*words.days_picture(self.told, now.date()))
        self.coming.value = words.coming(self.told, now.date())
        self._show_kinds(self.chapter.value)
        self._show_flaws()
        self._show_due()

    def _show_kinds(self, chapter: str) -> None:
        found = kinds(self.families, self.study, chapter)
        rows = words.kind_rows(found, self.told.due_now, self.now())
        self.kinds.value = table_html(View("", "", HEADS, tuple(rows), {}, ""), self.names[chapter])

    def _show_flaws(self) -> None:
        rows = [self._flaw(flaw) for flaw in self.told.flaws[:MOST]]
        self.flaws.children = rows or [HTML(tag("p", words.NO_FLAWS))]

    def _flaw(self, flaw: Flaw) -> VBox:
        said, mistake = HTML(words.flaw(flaw)), flaw.recurring.mistake
        focus = partial(Focused, flaw.family, flaw.level, self.units, mistake, keep)
        return VBox([said, row("w2w-buttons", self._practise("Practice exactly this", focus))])

    def _show_due(self) -> None:
        offered = self.told.due_now[:MOST]
        buttons = [self._practise(f"Practice: {f.title}", self._focus(f)) for f in offered]
        self.due.children = [HTML(words.due(self.told, MOST)), row("w2w-buttons", *buttons)]

    def _focus(self, family: Family) -> Callable[[], Focused]:
        return partial(Focused, family, self.study.level(family), self.units, on_try=keep)

    def _practise(self, label: str, focus: Callable[[], Focused]) -> Button:
        """A button that opens the card; its problem is drawn when it is pressed."""

        def show() -> None:
            if self.practising.children:
                self.practising.children[0].turn_to(focus())
            else:
                self.practising.children = [Card(focus())]
                self.practising.children[0].answer.box.focus()

        return button(label, self.once(show))


def _names(families: Sequence[Family]) -> dict[str, str]:
    """What each chapter is called, in the order of the pages; those without a page come last."""
    ours, named = dict.fromkeys(family.chapter for family in families), titles()
    paged = {chapter: title for chapter, title in named.items() if chapter in ours}
    return paged | {chapter: in_words(chapter) for chapter in ours if chapter not in named}


def _heading(text: str) -> HTML:
    return HTML(tag("h3", text))
