"""The practice card of a lesson: the practice card, over what one record knows."""

from html import escape

from ipywidgets import HTML, Box

from workbook.practice.card import Card
from workbook.ui.controls import classed

from .lesson_practice import LessonPractice

__all__ = ["LessonCard", "refused_html"]

NO_CODE = (
    "These are your own numbers, so there is no code for them. To share them, save the record as CSV: "
    "the same record makes the same problems anywhere."
)


class LessonCard(Card):
    """One problem at a time. With a record's own numbers there is no code."""

    practice: LessonPractice

    def _make_buttons(self) -> None:
        super()._make_buttons()
        self.next.description = "Next problem" if self.practice.own else "New numbers like these"

    def _rows(self) -> list[Box]:
        rows = super()._rows()
        if self.practice.own:
            rows[-1] = classed(HTML(f'<p class="w2w-about">{NO_CODE}</p>'), "w2w-code")
        return [*rows, HTML(refused_html(self.practice))]

    def _settings(self) -> Box:
        self.kind.description = "What to practice"
        return classed(Box([self.kind]), "w2w-settings")

    def _set_choosers(self) -> None:
        self._setting = True
        try:
            self.kind.value = self.practice.kind
        finally:
            self._setting = False

    def _leaving(self) -> str:
        if not self.practice.own:
            return super()._leaving()
        typed = self.answer.unsent
        unchecked = f" You had typed “{typed[:60]}”." if typed else ""
        return f"The problem before was “{self.practice.case.family.title}”.{unchecked}"

    def _new(self) -> None:
        if self.practice.own and len(self.practice.exercises) == 1:
            self._note("These readings make just this one problem. Fresh numbers make more.")
        else:
            super()._new()


def refused_html(practice: LessonPractice) -> str:
    """What the record knows and what would still be no fair problem with its numbers, and why."""
    refused = practice.lesson.refused if practice.own else ()
    if not refused:
        return ""
    items = "".join(
        f"<li>{escape(one.title)}. <span class='w2w-about'>{escape(one.refusal)}</span></li>"
        for one in refused
    )
    kinds = (
        "1 kind of problem doesn't work"
        if len(refused) == 1
        else f"{len(refused)} kinds of problems don't work"
    )
    title = f"{kinds} with these numbers; try fresh ones"
    return f'<details class="w2w-refused"><summary>{title}</summary><ul>{items}</ul></details>'
