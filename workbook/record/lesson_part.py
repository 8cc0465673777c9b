"""Where a record is made a lesson: two buttons, and the card under them."""

from html import escape

from ipywidgets import HTML, Box, VBox

from solver.own.record import Examined, Lesson, lesson
from workbook.practice import Card
from workbook.ui.controls import Panel, button, classed, say

from .lesson_card import lesson_card
from .lesson_practice import LessonPractice

__all__ = ["LessonPart"]

ABOUT = "Problems with the numbers from this record, or with fresh numbers like them."
NOTHING = (
    "These readings don't make a problem yet. Add more of them: three legs, or a flow and a head, "
    "make several."
)
NOT_FAIR = "None of the problems works out fairly with exactly these numbers. Use fresh numbers."


class LessonPart:
    """A lesson of the record shown. A card stays, and what was typed in it, until another is asked for."""

    def __init__(self, panel: Panel):
        self._panel = panel
        self._examined: Examined | None = None
        self.said, self.holder = HTML(say("")), VBox()
        self.card: Card | None = None
        self.own = button("Practice with these numbers", panel.once(lambda: self._open(own=True)))
        self.fresh = button(
            "Practice with fresh numbers", panel.once(lambda: self._open(own=False))
        )
        about = HTML(f"<h4>Make this a lesson</h4><p>{ABOUT}</p>")
        buttons = classed(Box([self.own, self.fresh]), "w2w-buttons")
        self.box = VBox([about, buttons, classed(self.said, "w2w-told"), self.holder])
        self.box.layout.display = "none"

    def show(self, examined: Examined) -> None:
        """Another record to make a lesson of."""
        self._examined = examined
        self.said.value, self.box.layout.display = say(""), ""

    def _open(self, *, own: bool) -> None:
        if self._examined is None:
            return
        found: Lesson = lesson(self._examined)
        if not found.exercises:
            self.said.value = say("missing", NOTHING)
        elif own and not found.own:
            self.said.value = say("missing", NOT_FAIR)
        else:
            self.card = lesson_card(LessonPractice(found, own), self._panel.clock)
            self.holder.children = [HTML(f"<h4>{escape(_title(found, own))}</h4>"), self.card]
            self.said.value = say("note", "The first problem is below.")


def _title(found: Lesson, own: bool) -> str:
    return f"{'The numbers' if own else 'Fresh numbers like those'} of {found.name}"
