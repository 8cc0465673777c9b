"""The practice card: what practice.py holds, shown and made to answer."""

from collections.abc import Callable
from time import monotonic

from ipywidgets import HTML, Box, VBox

from solver import BadCode
from workbook.ui.controls import UNIT_CHOICES, Panel, button, chooser, classed, say
from workbook.ui.entry import Entry

from .practice import Practice
from .view import answer_label, hints_html, problem_html, said_of, solution_html

__all__ = ["Card"]

SHOW, HIDE = "Show the worked solution", "Hide the worked solution"


class Card(Panel):
    """One problem at a time: answer it, see what became of it, ask for help, go on."""

    def __init__(self, practice: Practice, clock: Callable[[], float] = monotonic):
        super().__init__("w2w-card", clock=clock)
        self.practice = practice
        self._setting = False
        self.problem, self.hints, self.solution = (HTML() for _ in range(3))
        self.answer = Entry(self, "Your answer", self._answer)
        self._make_buttons()
        self._make_choosers()
        self.put(self.problem, *self._rows())
        self._show()

    def _make_buttons(self) -> None:
        self.check = button("Check", self.answer.gate.click, first=True)
        self.more = button("Give me a hint", self.once(self._hint))
        self.worked = button(SHOW, self.once(self._reveal))
        self._make_ways_on()

    def _make_ways_on(self) -> None:
        """What leads to other problems."""
        self.next = button("New numbers", self.once(self._new))
        self.code, self.code_said = Entry(self, "Problem code", self._open), HTML()
        self.go = button("Open this code", self.code.gate.click)

    def _make_choosers(self) -> None:
        practice, safely = self.practice, self.safely
        self.kind = chooser("Kind of problem", practice.kinds, safely(self._choose("kind")))
        levels = [(str(level), level) for level in practice.levels]
        self.level = chooser("Level", levels, safely(self._choose("level")))
        self.units = chooser("Units", UNIT_CHOICES, safely(self._choose("units")))

    def _rows(self) -> list[Box]:
        ask = classed(Box([self.answer.box, self.check]), "w2w-ask")
        told = classed(self.said, "w2w-told")
        code = classed(Box([self.code.box, self.go]), "w2w-ask")
        about = HTML("<p>Share this code, or type another one to open its problem.</p>")
        return [
            classed(Box([ask, told]), "w2w-answering"),
            classed(Box([self.more, self.worked, self.next]), "w2w-buttons"),
            self.hints,
            self.solution,
            self._settings(),
            classed(VBox([classed(about, "w2w-about"), code, self.code_said]), "w2w-code"),
        ]

    def _settings(self) -> Box:
        return classed(Box([self.kind, self.level, self.units]), "w2w-settings")

    def _show(self, *sentences: str) -> None:
        """A problem just come: nothing is typed, said or shown yet, but for these sentences.

        The question comes last: once it is there, all else fits it.
        """
        case = self.practice.case
        self.answer.box.description = answer_label(case)
        self.answer.fill("")
        self.said.value = say("note", *sentences, spoken=case.question) if sentences else say("")
        self.code.fill(case.code)
        self.code_said.value = say("")
        self._show_help(whole=False)
        self._set_choosers()
        self.problem.value = self._problem()

    def _problem(self) -> str:
        return problem_html(self.practice.case)

    def turn_to(self, practice: Practice) -> None:
        """Show the problems of another practice in place of these."""
        left = self._leaving()
        self.practice = practice
        self._show("Here is a new problem.", left)
        self.answer.box.focus()

    def _show_help(self, whole: bool) -> None:
        """The whole worked solution, or else the hints given so far."""
        self.worked.description = HIDE if whole else SHOW
        self.solution.value = solution_html(self.practice.case) if whole else ""
        self.hints.value = "" if whole else hints_html(self.practice)

    def _set_choosers(self) -> None:
        practice = self.practice
        self._setting = True
        try:
            self.kind.options, self.kind.value = practice.kinds, practice.kind
            levels = [(str(level), level) for level in practice.levels]
            self.level.options, self.level.value = levels, practice.level
            self.units.value = practice.units
        finally:
            self._setting = False

    def _answer(self, text: str) -> None:
        reply = self.practice.answer(text)
        self.said.value = said_of(self.practice.case, reply)

    def _hint(self) -> None:
        if self.solution.value:
            self._note("Every step is in the worked solution.")
        elif self.practice.hint():
            self._show_help(whole=False)
        else:
            self._note("That was the last hint. Put in your numbers, or open the worked solution.")

    def _note(self, sentence: str) -> None:
        self.said.value = say("note", sentence)

    def _reveal(self) -> None:
        whole = not self.solution.value
        if whole and (fault := self.practice.reveal()):
            self._note(fault)
        self._show_help(whole)

    def _leaving(self) -> str:
        """Where to find the problem left behind, and an answer that was never checked."""
        typed = self.answer.unsent
        unchecked = f" You had typed “{typed[:60]}”." if typed else ""
        return f"The problem before was {self.practice.case.code}.{unchecked}"

    def _new(self) -> None:
        left = self._leaving()
        self.practice.new()
        self._show("Here is a new problem.", left)
        self.answer.box.focus()

    def _choose(self, what: str):
        def choose(value) -> None:
            if self._setting:
                return
            left = self._leaving()
            self.practice.choose(**{what: value})
            self._show("Here is a new problem.", left)

        return choose

    def _open(self, text: str) -> None:
        left, before = self._leaving(), self.practice.case
        try:
            self.practice.open(text)
        except BadCode as refusal:
            self.code_said.value = say("unreadable", str(refusal), "Your problem is still here.")
            return
        if self.practice.case is before:
            self.code_said.value = say("note", "This problem is already open.")
            return
        self._show("Here is the problem for that code.", left)
        self.answer.box.focus()
