"""The view of one problem of a set: question, answer and help, and nothing that leads to others."""

from collections.abc import Callable, Sequence

from ipywidgets import HTML

from workbook.log import Attempt
from workbook.practice import Help, answer_label, answering, question_html, said_of
from workbook.ui.controls import Panel, button, row, say
from workbook.ui.entry import Entry
from workbook.ui.markup import joined, tag

from .posed import Posed

__all__ = ["PosedCard"]


class PosedCard(Panel):
    """Problem `number` of a set. It is inside a panel, which has the look for all of them.

    `before` is what was answered so far.
    """

    def __init__(self, number: int, practice: Posed, clock: Callable[[], float]):
        super().__init__("w2w-card", "w2w-posed", clock=clock)
        self.practice = practice
        self.before: Sequence[Attempt] = []
        case = practice.case
        head = tag("h4", f"Question {number}. {case.family.title}")
        self.problem = HTML(joined(head, question_html(case, case.choices)))
        self.answer = Entry(self, f"Question {number}. {answer_label(case)}", self._answer)
        self.check = button("Check", self.answer.gate.click, first=True)
        self.help = Help(self, practice)
        self.children = (
            self.problem,
            answering(self.answer, self.check, self.said),
            row("w2w-buttons", self.help.more, self.help.worked),
            self.help.hints,
            self.help.solution,
        )

    def _answer(self, text: str) -> None:
        self.said.value = said_of(self.practice.case, self.practice.answer(text))

    def restore(self, before: Sequence[Attempt]) -> None:
        """Show what was answered before; what is typed and not yet checked stays."""
        self.before = before
        last = self.practice.restore(before)
        if not self.answer.unsent:
            self.answer.fill(last[0] if last else "")
        self.said.value = said_of(self.practice.case, last[1]) if last else say("")
        self.help.show(self.practice)
