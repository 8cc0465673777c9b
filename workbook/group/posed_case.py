"""A case of find the fault in a group's set, and its card: worked as alone, its names kept with the set's answers."""

from collections.abc import Callable, Sequence

from ipywidgets import HTML

from solver.fault.case import FaultCase
from solver.fault.way import Way
from workbook.fault import LOOK, Stand, Story, Worked, begin, review_html, story_of
from workbook.log import Attempt
from workbook.ui.controls import Panel, show
from workbook.ui.markup import tag
from workbook.ui.pieces import say

from .own_group import OwnGroup

__all__ = ["PosedCase"]


class OwnStory:
    """One member's way through a case; its file begins with the first thing done."""

    def __init__(self, own: OwnGroup, case: FaultCase):
        self._own, self._case = own, case
        found = (story_of(str(case.code), where) for where in own.stories())
        self._story: Story | None = next(filter(None, found), None)

    @property
    def way(self) -> Way:
        """All that was done so far."""
        return self._story.way if self._story else Way(self._case)

    def do(self, *words: str) -> None:
        """Do one thing more; raises as a story does."""
        self.way.then(*words)  # what can't be done begins nothing
        if self._story is None:
            self._story = begin(str(self._case.code), self._own.stories()[0])
        self._story.do(*words)


class PosedCase(Panel):
    """Question `number` of a set, a case. `before` is what the log has of it under the name there is."""

    def __init__(self, number: int, case: FaultCase, own: OwnGroup, told: Callable[[], None]):
        super().__init__("w2w-faults", "w2w-posed", clock=own.clock)
        self.case, self.own, self._told = case, own, told
        self.before: Sequence[Attempt] = []
        self.review = HTML()
        self.stand = Stand(self, self._named, self._over)
        head = HTML(tag("h4", f"Question {number}. {case.family.title}"))
        self.children = (HTML(LOOK), head, self.stand.box, self.review, self.said)
        self.restore(())

    unsent = ""  # each thing done is kept at once

    def restore(self, before: Sequence[Attempt]) -> None:
        """Show the case as it was left under the name there is."""
        self.before = before
        self.stand.open(OwnStory(self.own, self.case))
        self._show(self.stand.story.way)

    def focus(self) -> None:
        """To the first reading."""
        self.stand.focus()

    def _show(self, way: Way) -> None:
        show(self.stand.box, not way.ended)
        self.review.value = tag("div", review_html(way), cls="w2w-review") if way.ended else ""

    def _named(self, story: Worked) -> str:
        fault = self.own.keep_way(story.way)
        self._told()
        return fault

    def _over(self, story: Worked) -> None:
        fault = self.own.keep_way(story.way)
        self.said.value = say("fault", fault) if fault else say("")
        self._show(story.way)
        self._told()
