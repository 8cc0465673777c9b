"""The parts that a problem's view is put together from: an answer, help, a code, what to choose.

Each makes its widgets and shows what a practice holds; a card puts those it needs under each other.
The question and what becomes of an answer are HTML, of view.py.
"""

from collections.abc import Callable
from typing import Protocol

from ipywidgets import HTML, Box, Button, VBox, Widget

from workbook.ui.controls import UNIT_CHOICES, Panel, button, chooser, classed, row
from workbook.ui.entry import Entry
from workbook.ui.markup import tag
from workbook.ui.pieces import say

from .practice import Practice
from .view import hints_html, solution_html

__all__ = ["Choosers", "Choosing", "Code", "Help", "answering"]

SHOW, HIDE = "Show the worked solution", "Hide the worked solution"
ABOUT_CODE = "Share this code, or type another one to open its problem."


def answering(entry: Entry, check: Button, said: HTML) -> Box:
    """The box for an answer with its button, and beside them what is said of it."""
    return row("w2w-answering", row("w2w-ask", entry.box, check), classed(said, "w2w-told"))


class Help:
    """Hints one by one, and the worked solution to show and hide: two buttons, two places."""

    def __init__(self, panel: Panel, practice: Practice):
        self._practice, self._said = practice, panel.said
        self.more = button("Give me a hint", panel.once(self._hint))
        self.worked = button(SHOW, panel.once(self._reveal))
        self.hints, self.solution = HTML(), HTML()

    def show(self, practice: Practice, whole: bool = False) -> None:
        """The whole worked solution of the present problem, or else the hints given so far."""
        self._practice = practice
        self.worked.description = HIDE if whole else SHOW
        self.solution.value = solution_html(practice.case) if whole else ""
        self.hints.value = "" if whole else hints_html(practice)

    def _hint(self) -> None:
        if self.solution.value:
            self._note("Every step is in the worked solution.")
        elif self._practice.hint():
            self.show(self._practice)
        else:
            self._note("That was the last hint. Put in your numbers, or open the worked solution.")

    def _reveal(self) -> None:
        whole = not self.solution.value
        if whole and (fault := self._practice.reveal()):
            self._note(fault)
        self.show(self._practice, whole)

    def _note(self, sentence: str) -> None:
        self._said.value = say("note", sentence)


class Code:
    """The code of the present problem, to share; another one typed in its place is opened."""

    def __init__(self, panel: Panel, open_: Callable[[str], None]):
        self.entry, self.said = Entry(panel, "Problem code", open_), HTML()
        self.go = button("Open this code", self.entry.gate.click)
        about = classed(HTML(tag("p", ABOUT_CODE)), "w2w-about")
        asked = row("w2w-ask", self.entry.box, self.go)
        self.box = classed(VBox([about, asked, self.said]), "w2w-code")

    def show(self, code: str) -> None:
        """A problem with this code has come."""
        self.entry.fill(code)
        self.said.value = say("")


class Choosing(Protocol):
    """What a card lets its learner choose, in a `box`."""

    box: Widget

    def show(self, practice: Practice) -> None:
        """As it is now: a problem has come, or an answer was checked."""


class Choosers:
    """Lists of kinds, levels and units; `choose` takes one of them by its name in Practice.choose."""

    def __init__(self, panel: Panel, practice: Practice, choose: Callable[..., None]):
        self.kind = chooser(
            "Kind of problem", practice.kinds, panel.safely(lambda kind: choose(kind=kind))
        )
        self.level = chooser(
            "Level", _named(practice.levels), panel.safely(lambda level: choose(level=level))
        )
        self.units = chooser("Units", UNIT_CHOICES, panel.safely(lambda units: choose(units=units)))
        self.box = row("w2w-settings", self.kind, self.level, self.units)

    def show(self, practice: Practice) -> None:
        """What the present problem is, and all there is to choose from."""
        self.kind.put(practice.kind, practice.kinds)
        self.level.put(practice.level, _named(practice.levels))
        self.units.put(practice.units)


def _named(levels: range) -> list[tuple[str, int]]:
    return [(str(level), level) for level in levels]
