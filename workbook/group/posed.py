"""One problem of a set, to be worked as often as its learner likes, and its card.

The card has question, answer and help, and nothing that leads to other problems.
"""

from collections.abc import Callable, Iterable, Sequence
from time import monotonic

from ipywidgets import HTML

from solver import Case, grade
from solver.engine.telling import hints_of
from workbook.log import SHOWN, Attempt
from workbook.practice import (
    Drawing,
    Help,
    Practice,
    Reply,
    Try,
    answering,
    ask,
    question_html,
    said_of,
)
from workbook.ui.answer import Answer
from workbook.ui.controls import Panel, row
from workbook.ui.markup import joined, tag
from workbook.ui.pieces import say

__all__ = ["Posed", "PosedCard"]


class Posed(Practice):
    """Practice of one problem alone, which goes on from what was tried before."""

    def __init__(
        self,
        case: Case,
        on_try: Callable[[Try], str | None] | None = None,
        clock: Callable[[], float] = monotonic,
    ):
        self._posed = case
        super().__init__([case.family], on_try=on_try, clock=clock)
        self.level, self.units = case.level, case.units

    def _drawn(self, before: Case | None = None) -> Case:
        return self._posed

    def restore(self, before: Iterable[Attempt]) -> tuple[str, Reply] | None:
        """Stand as after these tries, oldest first; the last answer and what became of it."""
        self._show(self._posed)
        last = None
        for made in before:
            self.hints = min(max(self.hints, made.hints), len(hints_of(self.case)))
            if made.status == SHOWN:
                self.solution = True
            elif (verdict := grade(self.case, made.typed)).counts:
                self.tries += 1
                if verdict.value is not None:
                    self._answers.add(verdict.value)
                self.solved = self.solved or verdict.status == "right"
                note = f"Try {self.tries}. This answer is kept."
                last = made.typed, Reply(verdict, True, note)
        return last


class PosedCard(Panel):
    """Problem `number` of a set. It is inside a panel, which has the look for all of them.

    `before` is what was answered so far; `onward` leads to the next problem of the set.
    """

    def __init__(
        self,
        number: int,
        practice: Posed,
        clock: Callable[[], float],
        onward: Callable[[], None] | None = None,
    ):
        super().__init__("w2w-card", "w2w-posed", clock=clock)
        self.practice, self._onward = practice, onward
        self.before: Sequence[Attempt] = []
        case = practice.case
        head = f"Question {number}. "
        title = tag("h4", f"{head}{case.family.title}")
        self.problem = HTML(joined(title, question_html(case, pictured=True)))
        self.picture = Drawing(case)
        self.answer = Answer(self, self._answer)
        ask(self.answer, case, head=head)
        self.help = Help(self, practice)
        links = row("w2w-links", self.help.more, self.help.worked)
        said = answering(self.answer, links, self.said)
        self.children = (self.problem, self.picture.box, said, self.help.box)

    @property
    def unsent(self) -> str:
        """What was typed and not checked."""
        return self.answer.unsent

    def focus(self) -> None:
        """To the answer box."""
        self.answer.focus()

    def _answer(self, text: str) -> None:
        reply = self.practice.answer(text)
        self.said.value = said_of(self.practice.case, reply)
        self.picture.show(self.practice.case, reply.verdict)
        if self.practice.solved:
            self.answer.lead_on(self._onward)
        self.answer.told()

    def restore(self, before: Sequence[Attempt]) -> None:
        """Show what was answered before; what is typed and not yet checked stays."""
        self.before = before
        last = self.practice.restore(before)
        if not self.answer.unsent:
            self.answer.fill(last[0] if last else "")
        self.said.value = said_of(self.practice.case, last[1]) if last else say("")
        self.help.show(self.practice)
