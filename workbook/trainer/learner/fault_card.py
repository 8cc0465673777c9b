"""The card of a case of find the fault in a set: the station, the readings, the name and the call."""

from collections.abc import Callable
from time import monotonic

from ipywidgets import HTML

from solver import SolverError
from workbook.fault import LOOK, Stand, Worked
from workbook.log import NotRead
from workbook.ui.controls import Panel, show
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import say

from .own_set import OwnSet

__all__ = ["FaultCard"]

STOP = "Stop here, without a name"
OVER = "This case is done, and everything you did in it is kept. The review comes with your grade."
NEEDS_PAGE = "This case has to be worked on the running page. Ask your trainer if it doesn’t open."


class FaultCard(Panel):
    """Question `number` of a set, a case. After a reload it is as the answer sheet has it."""

    def __init__(self, own: OwnSet, number: int, clock: Callable[[], float] = monotonic):
        super().__init__("w2w-faults", clock=clock)
        self.own, self.number = own, number
        self.why = HTML()
        self.stand = Stand(self, self._named, self._over, stop=STOP)
        self.put(HTML(LOOK), self.why, self.stand.box, self.said)
        own.parts[f"question {number}"] = self
        self.redraw()

    def redraw(self) -> None:
        """The case of whoever this is now, as far as it was worked."""
        try:
            case = self.own.case(self.number)
            way = case.way
        except (SolverError, NotRead) as why:
            show(self.stand.box, False)
            self.why.value = tag("p", str(why), cls="w2w-about")
            return
        self.why.value = ""
        show(self.stand.box)
        self.stand.open(case)
        self.said.value = say("note", OVER) if way.ended else say("")

    def _named(self, _: Worked) -> str:
        self.own.told()
        return ""

    def _over(self, _: Worked) -> None:
        self.said.value = say("note", OVER)
        self.own.told()

    def plain(self) -> dict[str, str]:
        """What a page that can show no widgets has in its place."""
        shown = joined(
            self.stand.head.value and Markup(self.stand.head.value), tag("p", NEEDS_PAGE)
        )
        return {**super().plain(), "text/html": shown}
