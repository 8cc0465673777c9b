"""Taking an exam: one question at a time, what is typed kept at once, and no verdict."""

from collections.abc import Callable

from ipywidgets import HTML, HTMLMath, VBox

from solver.fault.case import FaultCase
from workbook.log import NotKept
from workbook.practice import Drawing, answering, ask, question_html
from workbook.reference import chapters_html
from workbook.ui.answer import Answer
from workbook.ui.controls import Panel, button, marked, row, show, tick
from workbook.ui.markup import tag
from workbook.ui.pieces import heard, say

from .case_desk import CaseDesk
from .clock import Clock
from .desk import Desk, Told
from .overview import Overview
from .question import Question
from .sitting import Sitting

__all__ = ["AnswerBox", "Sit"]

SHEET, NO_SHEET = "Show the formulas", "Hide the formulas"
HAND_IN, SURE = "Turn it in", "Yes, turn it in"
FINAL = "After you turn it in you can't change an answer. Press “Yes, turn it in” to do it."
SAVE = "Save and go on"
ALL_ANSWERED = ("Every question has an answer.",)

Then = Callable[[Told], None]


class AnswerBox(Answer):
    """The answer box: its text is sent by Enter, and by every button that leads away.

    `send` gets the text, and what to do once it is taken: None after Enter.
    """

    def __init__(self, panel: Panel, send: Callable[[str, Then | None], None]):
        super().__init__(panel, lambda text: send(text, None), SAVE)
        self._panel, self._told = panel, send

    def before(self, then: Then) -> Callable[[], None]:
        """What a button does: have the text taken, then this."""
        return self._panel.once(lambda: self._told(self.take(), then))


class Sit:
    """The questions of a sitting. `left` and `done` are called when it is paused or handed in."""

    desk: Desk  # where the reader is; there is one once a sitting was opened

    def __init__(
        self, panel: Panel, left: Callable[[Sitting, Told], None], done: Callable[[Sitting], None]
    ):
        self._left, self._done = left, done
        self.head, self.question, self.sheet = HTML(), HTML(), HTMLMath()
        self.picture = Drawing()
        self.said = HTML(say(""))
        self.clock, self.answer = Clock(panel), AnswerBox(panel, self._sent)
        before = self.answer.before
        self.case = CaseDesk(panel, self._case_over)
        self.overview = Overview(lambda number: before(lambda told: self._go(number, told)))
        self.previous = button("Previous", before(lambda told: self._step(-1, told)))
        self.next = button("Next", before(lambda told: self._step(1, told)))
        self.flag = tick("Come back to this", False, panel.safely(self._flag))
        self.formulas = button(SHEET, panel.once(self._sheet))
        self.pause = button("Pause and leave", before(self._pause))
        self.hand_in = button(HAND_IN, before(self._hand_in))
        self.not_yet = button("Not yet", panel.once(self._go_on))
        self.box = row("w2w-exam", self._parts(), row("w2w-sheet", self.sheet))

    def _parts(self) -> VBox:
        self.answering = answering(self.answer, row("w2w-links"), self.said)
        return VBox(
            [
                row("w2w-top", self.head, self.clock.box),
                self.clock.calm,
                self.question,
                self.picture.box,
                self.case.box,
                self.answering,
                row("w2w-buttons", self.previous, self.next, self.flag),
                row("w2w-buttons", self.formulas, self.pause, self.hand_in, self.not_yet),
                self.overview.box,
            ]
        )

    def open(self, sitting: Sitting) -> None:
        """Begin a sitting, or go on with it where the first answer is wanting."""
        self.desk = Desk(sitting)
        self.overview.fill(self.desk.count)
        self._show_sheet(False)
        self.clock.begin(sitting)
        self._go(self.desk.number, self.desk.opened())

    def _go_on(self) -> None:
        self._go(self.desk.number, Told("note"))

    def _step(self, by: int, told: Told) -> None:
        self._go(self.desk.number + by, told)

    def _go(self, number: int, told: Told) -> None:
        """To a question; the cursor waits in its answer box."""
        end = self.desk.go(number)
        self._show(told, end)
        (self.case if self.case.shown else self.answer).focus()

    def _show(self, told: Told, *more: str) -> None:
        desk, asked = self.desk, self.desk.asked
        head = f"Question {desk.number} of {desk.count}"
        self.head.value = tag("h3", head)
        spoken = f"{head}. {self._ask(asked, desk.text)}"
        kept = f"Saved for this question: {desk.kept_as}." if desk.kept_as else ""
        sentences = list(filter(None, (*told.sentences, *more, kept)))
        said = say(told.state, *sentences, spoken=spoken) if sentences else heard(spoken)
        self.said.value = said
        self._show_state()

    def _ask(self, asked: Question, text: str) -> str:
        """Show a question and the text of its answer, or why it can't be asked; the same in words."""
        is_case = isinstance(asked.case, FaultCase)
        show(self.answer, not is_case)
        if is_case:
            self.question.value = ""
            self.picture.clear()
            self.answer.ask("No answer is typed here", text="")
            return self.case.open(self.desk.sitting, self.desk.number)
        self.case.close()
        if asked.why:
            self.question.value = tag("p", asked.why)
            self.picture.clear()
            self.answer.ask("No answer is needed here", text=text)
            return asked.why
        case = asked.problem
        self.question.value = question_html(case, pictured=True)
        self.picture.show(case)
        ask(self.answer, case, asked.texts, text)
        return case.question

    def _case_over(self) -> None:
        """A case was answered: on to what comes next."""
        self._show_state()
        (self.next if self.desk.number < self.desk.count else self.hand_in).focus()

    def _show_state(self, sure: bool = False) -> None:
        self.flag.put(self.desk.number in self.desk.sitting.flagged)
        self.hand_in.description = SURE if sure else HAND_IN
        show(self.not_yet, sure)
        self.overview.show(self.desk)

    def _tell(self, told: Told) -> None:
        self.said.value = say(told.state, *told.sentences)
        self._show_state()

    def _sent(self, text: str, then: Then | None) -> None:
        """Take what is in the box, then do what was asked for, or go on to the next question."""
        told = self.desk.take(text, leaving=then is not None)
        if told.state == "fault" or not (then or told.taken):
            self._tell(told)
        else:
            (then or self._onward)(told)

    def _onward(self, told: Told) -> None:
        if self.desk.number < self.desk.count:
            self._step(1, told)
            return
        rest = self.desk.unfinished() or ALL_ANSWERED
        self._tell(told._replace(sentences=(*told.sentences, *rest)))
        self.hand_in.focus()

    def _flag(self, on: bool) -> None:
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
            rest = self.desk.unfinished() or ALL_ANSWERED
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
        self.sheet.value = chapters_html(paper.chapters, paper.units) if on else ""
        marked(self.box, "w2w-with-sheet", on)
