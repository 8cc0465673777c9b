"""The card of one problem of a set: the practice card without what leads to other problems."""

from collections.abc import Callable, Sequence

from ipywidgets import Box

from workbook.log import Attempt
from workbook.practice import answer_label, question_html, said_of
from workbook.practice.card import Card
from workbook.ui.controls import classed, say
from workbook.ui.markup import Markup, joined, tag

from .posed import Posed

__all__ = ["PosedCard"]


class PosedCard(Card):
    """Problem `number` of a set. It stands inside a panel, which has the look for all of them."""

    practice: Posed

    def __init__(self, number: int, practice: Posed, clock: Callable[[], float]):
        self.number, self.before = number, []
        super().__init__(practice, clock)
        self.add_class("w2w-posed")

    def put(self, *parts) -> None:
        """Show these parts."""
        self.children = parts

    def _make_ways_on(self) -> None:
        """There are none: the other problems of the set stand beside it."""

    def _make_choosers(self) -> None:
        """There is nothing to choose."""

    def _rows(self) -> list[Box]:
        ask = classed(Box([self.answer.box, self.check]), "w2w-ask")
        return [
            classed(Box([ask, classed(self.said, "w2w-told")]), "w2w-answering"),
            classed(Box([self.more, self.worked]), "w2w-buttons"),
            self.hints,
            self.solution,
        ]

    def _show(self, *sentences: str) -> None:
        label = answer_label(self.practice.case)
        self.answer.box.description = f"Question {self.number}. {label}"
        self.problem.value = self._problem()

    def _problem(self) -> Markup:
        case = self.practice.case
        head = tag("h4", f"Question {self.number}. {case.family.title}")
        return joined(head, question_html(case, case.choices))

    def restore(self, before: Sequence[Attempt]) -> None:
        """Show what was answered before; what is typed and not yet checked stays."""
        self.before = before
        last = self.practice.restore(before)
        if not self.answer.unsent:
            self.answer.fill(last[0] if last else "")
        self.said.value = said_of(self.practice.case, last[1]) if last else say("")
        self._show_help(whole=False)
