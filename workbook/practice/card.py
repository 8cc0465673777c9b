"""The card of a problem: one at a time, put together from parts; and a worked example.

Practice of one chapter, mixed, guided and with a record's numbers are this card with other parts: what
is chosen (parts.py, wanted.py), whether a problem has a code.
"""

from collections.abc import Callable, Collection, Sequence
from time import monotonic

from ipywidgets import HTML, Widget

from solver import BadCode, Case
from workbook.ui.answer import Answer
from workbook.ui.controls import Fold, Panel, classed, link, row, show
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import say

from .parts import Choosers, Choosing, Code, Drawing, Help, Steps, answering, ask
from .practice import Practice
from .view import (
    MISSED,
    above_html,
    lesson_html,
    problem_html,
    question_html,
    said_of,
    title_html,
)

__all__ = ["Card", "WorkedExample"]

BELOW = tag("p", "This page explains it, below the problem.")


class Card(Panel):
    """One problem at a time: answer it, see what became of it, ask for help, go on.

    `choosing` makes what can be chosen, for this card; `done` gives the codes of the problems worked
    today, where they are counted. `instead` takes the place of the code, where problems have none; `after` come last.
    `explains` is the chapter that the page explains, below this card.
    """

    def __init__(
        self,
        practice: Practice,
        clock: Callable[[], float] = monotonic,
        choosing: Callable[["Card"], Choosing] | None = None,
        instead: Widget | None = None,
        after: Sequence[Widget] = (),
        done: Callable[[], Collection[str]] | None = None,
        explains: str = "",
    ):
        super().__init__("w2w-card", clock=clock)
        self.practice, self._done, self._explains = practice, done, explains
        self.above, self.problem, self.picture = HTML(), HTML(), Drawing()
        self.answer = Answer(self, self._answer)
        self.help = Help(self, practice)
        self.more = link("One more like this", self.once(self._again))
        self.skip = link("Skip", self.once(self._new))
        self.choosing = choosing(self) if choosing else Choosers(self, practice, self.choose)
        self.code = Code(self, self._open)
        self.folds = [
            Fold(self, self.choosing.name, self.choosing.box),
            Fold(self, "Code", instead or self.code.box),
        ]
        links = row("w2w-links", self.help.more, self.help.worked, self.more, self.skip)
        self.put(
            self.above,
            self.problem,
            self.picture.box,
            answering(self.answer, links, self.said),
            self.help.box,
            classed(row("w2w-links", *(fold.button for fold in self.folds)), "w2w-folds"),
            *(fold.part for fold in self.folds),
            *after,
        )
        self._show()

    def _show(self, *sentences: str) -> None:
        """A problem just come: nothing is typed, said or shown yet, but for these sentences.

        The question comes last: once it is there, all else fits it.
        """
        practice, case = self.practice, self.practice.case
        ask(self.answer, case)
        self.code.show(case.code)
        self.help.show(practice)
        self.choosing.show(practice)
        self._show_ways()
        number = len({*self._done(), case.code}) if self._done else 0
        self.above.value = above_html(case, practice.why, number)
        self.said.value = said_quietly(*sentences, then=case.question)
        self.picture.show(case)
        self.problem.value = joined(title_html(case), question_html(case, pictured=True))

    def _show_ways(self, missed: bool = False) -> None:
        """What leads on from here: help and Skip before the right answer, more of the same after."""
        solved = self.practice.solved
        show(self.help.more, not solved)
        show(self.skip, not solved)
        show(self.more, self.practice.repeats and (solved or missed))

    def turn_to(self, practice: Practice) -> None:
        """Show the problems of another practice in place of these."""
        left = self._leaving()
        self.practice = practice
        self._show(left)
        self.focus()

    def focus(self) -> None:
        """The keyboard leads to the answer."""
        self.answer.focus()

    def _leaving(self) -> str:
        """What was typed and never checked, and where to find its problem."""
        typed = self.answer.unsent
        called = self.practice.called
        return f"You typed “{typed[:60]}” for {called} and didn't check it." if typed else ""

    def _answer(self, text: str) -> None:
        """Check the answer; once it is right, the main button leads on."""
        reply = self.practice.answer(text)
        missed = reply.verdict.status in MISSED
        more = self._explained() if missed else None
        self.said.value = said_of(self.practice.case, reply, more)
        self.picture.show(self.practice.case, reply.verdict)
        self.choosing.show(self.practice)
        self._show_ways(missed)
        if self.practice.solved:
            self.answer.lead_on(self._new)
        self.answer.told()

    def _explained(self) -> Markup:
        case = self.practice.case
        return BELOW if case.family.chapter == self._explains else lesson_html(case)

    def _new(self) -> None:
        if self.practice.stuck:
            self.said.value = say("note", self.practice.stuck)
            return
        left = self._leaving()
        self.practice.new()
        self._show(left)
        self.focus()

    def _again(self) -> None:
        left = self._leaving()
        self.practice.again()
        self._show(left)
        self.focus()

    def choose(self, *, kind: str = "", level: int = 0, units: str = "") -> None:
        """Another kind, level or units, and a problem that fits."""
        left = self._leaving()
        self.practice.choose(kind=kind, level=level, units=units)
        self._show(left)

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
        self._show(left)
        self.focus()


def said_quietly(*sentences: str, then: str) -> Markup:
    """These sentences in small letters, and for a screen reader the question that has come."""
    small = (tag("p", sentence, cls="w2w-small") for sentence in sentences if sentence)
    spoken = tag("span", f"New problem. {then}", cls="w2w-heard")
    return tag("div", small, spoken, role="status", aria_live="polite")


class WorkedExample(Panel):
    """A problem whose steps come one at a time, or all at once."""

    def __init__(self, case: Case):
        super().__init__("w2w-example")
        self.case = case
        self.steps = Steps(self)
        self.put(HTML(problem_html(case)), Drawing(case).box, self.steps.box, self.said)
        self.steps.begin(case)
