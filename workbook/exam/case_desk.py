"""A case of find the fault in an exam: worked as alone, its fault and call one answer, and no verdict."""

from collections.abc import Callable

from ipywidgets import HTML, VBox

from solver.fault.way import Way
from workbook.fault import LOOK, Stand
from workbook.ui.controls import Panel, classed, show
from workbook.ui.markup import tag

from .sitting import Sitting

__all__ = ["CaseDesk"]

ABOUT = (
    "Measure what you like, in any order. It counts as right with the fault named, the right call made, and "
    "nothing unsafe tried. Your answer to a case is final."
)
OVER = "Your answer to this case is in. You see the review after you turn the exam in."


class SittingCase:
    """The case that is one question of a sitting, being worked."""

    def __init__(self, sitting: Sitting, number: int):
        self._sitting, self._number = sitting, number

    @property
    def way(self) -> Way:
        """All that was done so far."""
        return self._sitting.way(self._number)

    def do(self, *words: str) -> None:
        """Do one thing more; raises as the sitting does."""
        self._sitting.did(self._number, *words)


class CaseDesk:
    """Where a case is worked. `told` hears that something was done; `shown` tells whether one is there."""

    def __init__(self, panel: Panel, told: Callable[[], object]):
        self._told = told
        self.shown = False
        self.stand = Stand(panel, lambda _: "", self._over, final=True)
        self.about = HTML()
        self.box = classed(VBox([HTML(LOOK), self.about, self.stand.box]), "w2w-faults")
        self.close()

    def open(self, sitting: Sitting, number: int) -> str:
        """Show a case as far as it was worked; what it is, to be spoken."""
        self.shown = True
        show(self.box)
        story = SittingCase(sitting, number)
        self.stand.open(story)
        self._say(story.way)
        return story.way.case.title

    def close(self) -> None:
        """Show none."""
        self.shown = False
        show(self.box, False)

    def focus(self) -> None:
        """To the first reading."""
        self.stand.focus()

    def _say(self, way: Way) -> None:
        self.about.value = tag("p", OVER if way.ended else ABOUT, cls="w2w-about")

    def _over(self, story: object) -> None:
        self._say(self.stand.story.way)
        self._told()
