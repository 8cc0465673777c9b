"""The mixed practice card: the practice card, drawing from the chapters and levels ticked."""

from collections.abc import Callable
from html import escape
from time import monotonic

from ipywidgets import HTML, Box, VBox

from workbook.ui.controls import UNIT_CHOICES, chooser, classed, group_of_ticks, say, tick
from workbook.ui.ticks import ChapterTicks

from .card import Card
from .mixed import PROMISE, Mixed

__all__ = ["MixedCard"]

HOW = "About one problem in three is of a kind you missed, until you get it right."
SHOWN = 5  # kinds coming back that are named


class MixedCard(Card):
    """One problem at a time, of any chapter that is ticked."""

    practice: Mixed

    def __init__(self, practice: Mixed, clock: Callable[[], float] = monotonic):
        super().__init__(practice, clock)
        self.add_class("w2w-mixed")

    def _make_buttons(self) -> None:
        super()._make_buttons()
        self.next.description = "Next problem"

    def _make_choosers(self) -> None:
        wanted, every = self.practice.wanted, self.practice.every
        ticked = self.safely(self._ticked)
        self.chapters = ChapterTicks(self, every.chapters, wanted.chapters, self._ticked)
        self.levels = {n: tick(f"Level {n}", n in wanted.levels, ticked) for n in every.levels}
        self.units = chooser("Units", UNIT_CHOICES, ticked, wanted.units)
        self.wanted_said, self.returning = HTML(say("")), HTML()

    def _settings(self) -> Box:
        about = HTML(
            f'<h4>What to practice</h4><p>{PROMISE} <span class="w2w-about">{HOW}</span></p>'
        )
        parts = [
            about,
            self.returning,
            self.chapters.box,
            group_of_ticks("Levels", self.levels, "w2w-few"),
            self.units,
            self.wanted_said,
        ]
        return classed(VBox(parts), "w2w-wanted")

    def _set_choosers(self) -> None:
        """What is wanted stays as it is, whatever problem is shown."""
        self._show_returning()

    def _ticked(self, _=None) -> None:
        levels = tuple(n for n, box in self.levels.items() if box.value)
        self.practice.want(chapters=self.chapters.chosen, levels=levels, units=self.units.value)
        missing = self.practice.missing
        self.wanted_said.value = say("missing" if missing else "note", missing or self._next_is())
        self._show_returning()

    def _next_is(self) -> str:
        chapters, levels, _ = self.practice.wanted
        many = f"{len(chapters)} chapter{'s' * (len(chapters) > 1)}"
        level = f"level{'s' * (len(levels) > 1)} {', '.join(map(str, levels))}"
        return f"Starting with the next problem: {many}, {level}, {self.units.label}."

    def _show_returning(self) -> None:
        kinds = [f"{kind.family.title}, level {kind.level}" for kind in self.practice.returning]
        more = [f"and {len(kinds) - SHOWN} more"] * (len(kinds) > SHOWN)
        items = "".join(f"<li>{escape(text)}</li>" for text in kinds[:SHOWN] + more)
        head = '<p class="w2w-want">Coming back until you get them right</p>'
        self.returning.value = f"{head}<ul>{items}</ul>" if items else ""

    def _answer(self, text: str) -> None:
        super()._answer(text)
        self._show_returning()

    def _new(self) -> None:
        if missing := self.practice.missing:
            self._note(missing)
        else:
            super()._new()
