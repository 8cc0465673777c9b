"""The practice card: one problem at a time, put together from parts; and a worked example.

Practice of one chapter, mixed, guided and with a record's numbers are this card with other parts: what
is chosen (parts.py, wanted.py), what leads on, whether a problem has a code.
"""

from collections.abc import Callable, Sequence
from time import monotonic

from ipywidgets import HTML, Widget

from solver import BadCode, Case
from solver.render.text import step_texts
from workbook.ui.controls import Panel, button, row
from workbook.ui.entry import Entry
from workbook.ui.markup import joined, tag
from workbook.ui.pieces import heard, say

from .parts import Choosers, Choosing, Code, Help, answering
from .practice import Practice
from .view import answer_label, problem_html, said_of, steps_html

__all__ = ["Card", "WorkedExample"]

HERE = "Here is a new problem."


class Card(Panel):
    """One problem at a time: answer it, see what became of it, ask for help, go on.

    `choosing` makes what can be chosen, for this card. `onward` is what the button to the next
    problem says. `instead` takes the place of the code, where problems have none; `after` come last.
    """

    def __init__(
        self,
        practice: Practice,
        clock: Callable[[], float] = monotonic,
        choosing: Callable[["Card"], Choosing] | None = None,
        onward: str = "New numbers",
        instead: Widget | None = None,
        after: Sequence[Widget] = (),
    ):
        super().__init__("w2w-card", clock=clock)
        self.practice = practice
        self.problem = HTML()
        self.answer = Entry(self, "Your answer", self._answer)
        self.check = button("Check", self.answer.gate.click, first=True)
        self.help = Help(self, practice)
        self.next = button(onward, self.once(self._new))
        self.choosing = choosing(self) if choosing else Choosers(self, practice, self.choose)
        self.code = Code(self, self._open)
        self.put(
            self.problem,
            answering(self.answer, self.check, self.said),
            row("w2w-buttons", self.help.more, self.help.worked, self.next),
            self.help.hints,
            self.help.solution,
            self.choosing.box,
            instead or self.code.box,
            *after,
        )
        self._show()

    def _show(self, *sentences: str) -> None:
        """A problem just come: nothing is typed, said or shown yet, but for these sentences.

        The question comes last: once it is there, all else fits it.
        """
        practice, case = self.practice, self.practice.case
        self.answer.box.description = answer_label(case)
        self.answer.fill("")
        self.said.value = say("note", *sentences, spoken=case.question) if sentences else say("")
        self.code.show(case.code)
        self.help.show(practice)
        self.choosing.show(practice)
        why = tag("p", f"Why this one: {practice.why}", cls="w2w-why") if practice.why else None
        self.problem.value = joined(why, problem_html(case))

    def turn_to(self, practice: Practice) -> None:
        """Show the problems of another practice in place of these."""
        left = self._leaving()
        self.practice = practice
        self._show(HERE, left)
        self.answer.box.focus()

    def _leaving(self) -> str:
        """Where to find the problem left behind, and an answer that was never checked."""
        typed = self.answer.unsent
        unchecked = f" You had typed “{typed[:60]}”." if typed else ""
        return f"The problem before was {self.practice.called}.{unchecked}"

    def _answer(self, text: str) -> None:
        reply = self.practice.answer(text)
        self.said.value = said_of(self.practice.case, reply)
        self.choosing.show(self.practice)

    def _new(self) -> None:
        if self.practice.stuck:
            self.said.value = say("note", self.practice.stuck)
            return
        left = self._leaving()
        self.practice.new()
        self._show(HERE, left)
        self.answer.box.focus()

    def choose(self, *, kind: str = "", level: int = 0, units: str = "") -> None:
        """Another kind, level or units, and a problem that fits."""
        left = self._leaving()
        self.practice.choose(kind=kind, level=level, units=units)
        self._show(HERE, left)

    def _open(self, text: str) -> None:
        left, before = self._leaving(), self.practice.case
        try:
            self.practice.open(text)
        except BadCode as refusal:
            self.code.said.value = say("unreadable", str(refusal), "Your problem is still here.")
            return
        if self.practice.case is before:
            self.code.said.value = say("note", "This problem is already open.")
            return
        self._show("Here is the problem for that code.", left)
        self.answer.box.focus()


class WorkedExample(Panel):
    """A problem whose steps come one at a time, or all at once."""

    def __init__(self, case: Case):
        super().__init__("w2w-example")
        self.case, self.shown = case, 0
        self.steps = HTML()
        self.next = button("Show the next step", self.once(self._next), first=True)
        self.rest = button("Show every step", self.once(self._all))
        buttons = row("w2w-buttons", self.next, self.rest)
        self.put(HTML(problem_html(case)), self.steps, buttons, self.said)

    def _next(self) -> None:
        if self.shown == len(self.case.steps):
            self.said.value = say("note", "That was the last step.")
            return
        self._show(self.shown + 1)

    def _all(self) -> None:
        self._show(len(self.case.steps))

    def _show(self, count: int) -> None:
        case, new = self.case, self.case.steps[self.shown : count]
        self.shown = count
        self.steps.value = steps_html(case, count)
        texts = [step_texts(step, case.known, case.given, case.units) for step in new]
        parts = (part.rstrip(".") for text in texts for part in text if part)
        self.said.value = heard(". ".join(parts))
