"""A record made a lesson: two buttons, and under them the practice card over its exercises.

The exercises are what is chosen there, and a record's own numbers have no code.
"""

from collections.abc import Callable

from ipywidgets import HTML, VBox, Widget

from solver.own.record import Examined, Lesson, lesson
from workbook.practice import Card, Practice
from workbook.ui.controls import Panel, button, chooser, classed, row, show
from workbook.ui.markup import Markup, tag
from workbook.ui.pieces import say

from .lesson_practice import LessonPractice

__all__ = ["LessonPart"]

LESSON = "Problems with the numbers from this record, or with fresh numbers like them."
NOTHING = (
    "These readings don't make a problem yet. Add more of them: three legs, or a flow and a head, "
    "make several."
)
NOT_FAIR = "None of the problems works out fairly with exactly these numbers. Use fresh numbers."
NO_CODE = (
    "These are your own numbers, so there is no code for them. To share them, save the record as CSV: "
    "the same record makes the same problems anywhere."
)


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
        about = HTML(tag("h4", "Make this a lesson") + tag("p", LESSON))
        buttons = row("w2w-buttons", self.own, self.fresh)
        self.box = VBox([about, buttons, classed(self.said, "w2w-told"), self.holder])
        show(self.box, False)

    def show(self, examined: Examined) -> None:
        """Another record to make a lesson of."""
        self._examined = examined
        self.said.value = say("")
        show(self.box)

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
            self.holder.children = [HTML(tag("h4", _title(found, own))), self.card]
            self.said.value = say("note", "The first problem is below.")


def _title(found: Lesson, own: bool) -> str:
    return f"{'The numbers' if own else 'Fresh numbers like those'} of {found.name}"


def lesson_card(practice: LessonPractice, clock: Callable[[], float]) -> Card:
    """One problem at a time, over what one record knows."""
    own = practice.own
    no_code = classed(HTML(tag("p", NO_CODE, cls="w2w-about")), "w2w-code")
    return Card(
        practice,
        clock,
        choosing=lambda card: Exercises(card, practice),
        instead=no_code if own else None,
        after=[HTML(refused_html(practice))],
    )


class Exercises:
    """The list of a lesson's exercises; level and units are those of the record."""

    name = "Other kinds"

    def __init__(self, card: Card, practice: LessonPractice):
        self.kind = chooser(
            "What to practice", practice.kinds, card.safely(lambda kind: card.choose(kind=kind))
        )
        self.box: Widget = row("w2w-settings", self.kind)

    def show(self, practice: Practice) -> None:
        """Which of them is chosen."""
        self.kind.put(practice.kind)


def refused_html(practice: LessonPractice) -> Markup:
    """What the record knows and what would still be no fair problem with its numbers, and why."""
    refused = practice.lesson.refused if practice.own else ()
    if not refused:
        return Markup()
    items = (
        tag("li", f"{one.title}. ", tag("span", one.refusal, cls="w2w-about")) for one in refused
    )
    kinds = (
        "1 kind of problem doesn't work"
        if len(refused) == 1
        else f"{len(refused)} kinds of problems don't work"
    )
    title = f"{kinds} with these numbers; try fresh ones"
    return tag("details", tag("summary", title), tag("ul", items), cls="w2w-refused")
