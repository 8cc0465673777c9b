"""A lesson as the practice card: its exercises are what is chosen, and its own numbers have no code."""

from collections.abc import Callable

from ipywidgets import HTML, Widget

from workbook.practice import Card
from workbook.ui.controls import chooser, classed, row
from workbook.ui.markup import Markup, tag

from .lesson_practice import LessonPractice

__all__ = ["lesson_card", "refused_html"]

NO_CODE = (
    "These are your own numbers, so there is no code for them. To share them, save the record as CSV: "
    "the same record makes the same problems anywhere."
)


def lesson_card(practice: LessonPractice, clock: Callable[[], float]) -> Card:
    """One problem at a time, over what one record knows."""
    own = practice.own
    no_code = classed(HTML(tag("p", NO_CODE, cls="w2w-about")), "w2w-code")
    return Card(
        practice,
        clock,
        choosing=lambda card: Exercises(card, practice),
        onward="Next problem" if own else "New numbers like these",
        instead=no_code if own else None,
        after=[HTML(refused_html(practice))],
    )


class Exercises:
    """The list of a lesson's exercises; level and units are those of the record."""

    def __init__(self, card: Card, practice: LessonPractice):
        self.kind = chooser(
            "What to practice", practice.kinds, card.safely(lambda kind: card.choose(kind=kind))
        )
        self.box: Widget = row("w2w-settings", self.kind)

    def show(self, practice: LessonPractice) -> None:
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
