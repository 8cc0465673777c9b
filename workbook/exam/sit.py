"""Sitting an exam: one question at a time, what is typed kept at once, and no verdict."""

from collections.abc import Callable
from html import escape

from ipywidgets import HTML, Box, HTMLMath, VBox

from solver.algebra.formula import Formula
from workbook.log import NotKept
from workbook.practice import answer_label, question_html
from workbook.reference.formula_sheet import sheet_html
from workbook.ui.chapter import formulas_of
from workbook.ui.controls import Panel, button, classed, heard, say, tick

from .answer_box import AnswerBox
from .clock import Clock
from .desk import Desk, Told
from .overview import Overview
from .sitting import Sitting

__all__ = ["Sit"]

SHEET, NO_SHEET = "Show the formulas", "Hide the formulas"
HAND_IN, SURE = "Turn it in", "Yes, turn it in"
FINAL = "After you turn it in you can't change an answer. Press “Yes, turn it in” to do it."


class Sit:
    """The questions of a sitting. `left` and `done` are called when it is paused or handed in."""

    def __init__(self, panel: Panel, left: Callable[..., None], done: Callable[[Sitting], None]):
        self._left, self._done, self._setting = left, done, False
        self.desk: Desk | None = None
        self.head, self.question, self.sheet = HTML(), HTML(), HTMLMath()
        self.said = classed(HTML(say("")), "w2w-told")
        self.clock, self.answer = Clock(panel), AnswerBox(panel, self._sent)
        before = self.answer.before
        self.overview = Overview(lambda number: before(lambda told: self._go(number, told)))
        self.keep = button("Save this answer", before(None), first=True)
        self.previous = button(
            "Previous", before(lambda told: self._go(self.desk.number - 1, told))
        )
        self.next = button("Next", before(lambda told: self._go(self.desk.number + 1, told)))
        self.flag = tick("Come back to this", False, panel.safely(self._flag))
        self.formulas = button(SHEET, panel.once(self._sheet))
        self.pause = button("Pause and leave", before(self._pause))
        self.hand_in = button(HAND_IN, before(self._hand_in))
        self.not_yet = button("Not yet", panel.once(self._go_on))
        beside = classed(Box([self.sheet]), "w2w-sheet")
        self.box = classed(Box([self._parts(), beside]), "w2w-exam")

    def _parts(self) -> VBox:
        ask = classed(Box([self.answer.box, self.keep]), "w2w-ask")
        ends = [self.formulas, self.pause, self.hand_in, self.not_yet]
        return VBox(
            [
                classed(Box([self.head, self.clock.box]), "w2w-top"),
                self.clock.calm,
                self.question,
                classed(Box([ask, self.said]), "w2w-answering"),
                classed(Box([self.previous, self.next, self.flag]), "w2w-buttons"),
                classed(Box(ends), "w2w-buttons"),
                self.overview.box,
            ]
        )

    def open(self, sitting: Sitting) -> None:
        """Begin a sitting, or go on with it where the first answer is wanting."""
        self.desk = Desk(sitting)
        self.overview.fill(self.desk.count)
        self._show_sheet(False)
        self.clock.start(sitting)
        self._go(self.desk.number, self.desk.opened())

    def _go_on(self) -> None:
        self._go(self.desk.number, Told("note"))

    def _go(self, number: int, told: Told) -> None:
        """To a question; the cursor waits in its answer box."""
        end = self.desk.go(number)
        self._show(told, end)
        self.answer.box.focus()

    def _show(self, told: Told, *more: str) -> None:
        desk, case = self.desk, self.desk.asked.case
        head, choices = f"Question {desk.number} of {desk.count}", desk.asked.choices
        self.head.value = f"<h3>{head}</h3>"
        if desk.asked.why:
            self.question.value = f"<p>{escape(desk.asked.why)}</p>"
            self.answer.box.description = "No answer is needed here"
        else:
            self.question.value = question_html(case, [choice.text for choice in choices])
            self.answer.box.description = answer_label(case, len(choices))
        self.answer.fill(desk.text)
        kept = f"Saved for this question: {desk.kept_as}." if desk.kept_as else ""
        sentences = list(filter(None, (*told.sentences, *more, kept)))
        spoken = f"{head}. {desk.asked.why or case.question}"
        said = say(told.state, *sentences, spoken=spoken) if sentences else heard(spoken)
        self.said.value = said
        self._show_state()

    def _show_state(self, sure: bool = False) -> None:
        self._setting = True
        try:
            self.flag.value = self.desk.number in self.desk.sitting.flagged
        finally:
            self._setting = False
        self.hand_in.description = SURE if sure else HAND_IN
        self.not_yet.layout.display = "" if sure else "none"
        self.overview.show(self.desk)

    def _tell(self, told: Told) -> None:
        self.said.value = say(told.state, *told.sentences)
        self._show_state()

    def _sent(self, text: str, then: Callable[[Told], None] | None) -> None:
        """Take what is in the box, then do what was asked for, or go on to the next question."""
        told = self.desk.take(text, leaving=then is not None)
        if told.state == "fault" or not (then or told.taken):
            self._tell(told)
        else:
            (then or self._onward)(told)

    def _onward(self, told: Told) -> None:
        if self.desk.number < self.desk.count:
            self._go(self.desk.number + 1, told)
            return
        rest = self.desk.unfinished() or ("Every question has an answer.",)
        self._tell(told._replace(sentences=(*told.sentences, *rest)))
        self.hand_in.focus()

    def _flag(self, on: bool) -> None:
        if not self._setting:
            told = self.desk.flag(on)
            if told.taken:
                self._show_state()
            else:
                self._tell(told)

    def _pause(self, told: Told) -> None:
        try:
            self.desk.sitting.pause()
        except NotKept as fault:
            self.desk.sitting.go_on()
            self._tell(Told("fault", (str(fault),)))
            return
        self.clock.stop()
        self._left(self.desk.sitting, told)

    def _hand_in(self, told: Told) -> None:
        """At the first press, say what is unanswered; at the second, end it."""
        if self.hand_in.description == HAND_IN:
            rest = self.desk.unfinished() or ("Every question has an answer.",)
            self._tell(Told("notice", (*told.sentences, *rest, FINAL)))
            self._show_state(sure=True)
            return
        try:
            self.desk.sitting.end()
        except NotKept as fault:
            self._tell(Told("fault", (str(fault), "It isn't turned in yet. Try again.")))
            return
        self.clock.stop()
        self._done(self.desk.sitting)

    def _sheet(self) -> None:
        self._show_sheet(self.formulas.description == SHEET)

    def _show_sheet(self, on: bool) -> None:
        paper = self.desk.sitting.paper
        self.formulas.description = NO_SHEET if on else SHEET
        self.sheet.value = sheet_html(_formulas(paper.chapters), paper.units) if on else ""
        (self.box.add_class if on else self.box.remove_class)("w2w-with-sheet")


def _formulas(chapters: tuple[str, ...]) -> list[Formula]:
    """The formulas of these chapters, each once."""
    return list({id(f): f for chapter in chapters for f in formulas_of(chapter)}.values())
