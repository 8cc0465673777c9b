"""The card of one question of a set: the question, an answer, what became of it, tries left."""

from collections.abc import Callable
from time import monotonic

from ipywidgets import HTML

from solver import SolverError
from workbook.log import NotRead
from workbook.practice import (
    Drawing,
    Reply,
    answering,
    ask,
    problem_html,
    question_html,
    said_of,
    title_html,
)
from workbook.ui.answer import Answer
from workbook.ui.controls import Panel, show
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import say

from .answer_sheet import Asked, in_words
from .own_set import OwnSet

__all__ = ["SetCard"]

LEAVE = "If there is no box to type in, write your answer in the cell below this one."


class SetCard(Panel):
    """Question `number` of a set. After a reload it stands as the answer sheet has it."""

    def __init__(self, own: OwnSet, number: int, clock: Callable[[], float] = monotonic):
        super().__init__("w2w-card", "w2w-asked", clock=clock)
        self.own, self.number = own, number
        self.asked: Asked | None = None
        self._settled = ""  # the text in the box that is kept, or was told not to count
        self.problem, self.picture = HTML(), Drawing()
        self.answer = Answer(self, self._answer)
        self.answer.observe(self.safely(lambda _: own.told()), "value")
        self.answering = answering(self.answer, HTML(), self.said)
        self.put(self.problem, self.picture.box, self.answering)
        name = f"question {number}"
        before, own.parts[name] = own.parts.get(name), self
        self.redraw()
        if isinstance(before, SetCard) and before.unsent and self._is_of(before.asked):
            self.answer.fill(before.unsent)

    def _is_of(self, asked: Asked | None) -> bool:
        return bool(asked and self.asked and asked.case == self.asked.case)

    @property
    def unsent(self) -> str:
        """What was typed and is no answer yet: it was not checked, or could not be read."""
        text = self.answer.value
        return text.strip() if self.asked and text != self._settled else ""

    def redraw(self) -> None:
        """The question of whoever this is now; what was typed and not checked stays with it."""
        try:
            asked = self.own.question(self.number, self.clock)
            last = asked.last()
        except (SolverError, NotRead) as why:
            self.asked = None
            show(self.answering, False)
            self.picture.clear()
            self.problem.value = _aside(str(why))
            return
        if self._is_of(asked) and self.unsent:
            return
        self.asked = asked
        show(self.answering)
        self._settled = last[0] if last else ""
        ask(self.answer, asked.case, text=self._settled, head=f"Question {self.number}. ")
        self.said.value = _kept(asked, last[1]) if last else say("")
        self.picture.show(asked.case, last[1].verdict if last else None)
        title = title_html(asked.case)
        self.problem.value = joined(
            title, question_html(asked.case, pictured=True), _how_many(asked)
        )

    def _answer(self, text: str) -> None:
        if not (asked := self.asked):
            return
        try:
            reply = asked.answer(text)
        except NotRead as fault:
            self.said.value = say("fault", str(fault), "Your answer wasn't checked.")
            return
        if reply.verdict.counts:
            self._settled = text
        self.said.value = said_of(asked.case, reply)
        self.picture.show(asked.case, reply.verdict)
        after = self.own.parts.get(f"question {self.number + 1}")
        if reply.verdict.status == "right" and isinstance(after, SetCard):
            self.answer.lead_on(after.answer.focus)
        self.answer.told()
        self.own.told()

    def plain(self) -> dict[str, str]:
        """The question for a page that can show no widgets."""
        if self.asked is None:
            return super().plain()
        shown = joined(problem_html(self.asked.case), _how_many(self.asked), tag("p", LEAVE))
        return {**super().plain(), "text/html": shown}


def _kept(asked: Asked, reply: Reply) -> Markup:
    return said_of(asked.case, reply._replace(note=f"This answer is kept. {reply.note}"))


def _how_many(asked: Asked) -> Markup:
    limit = asked.assigned.tries_for(asked.case)
    return _aside(f"You have {in_words(limit)} for this question.") if limit else Markup()


def _aside(sentence: str) -> Markup:
    """In no region that speaks: a page has many cards, and all say it."""
    return tag("p", sentence, cls="w2w-about")
