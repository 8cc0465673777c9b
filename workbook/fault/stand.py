"""The case being worked: its station, the readings to take, the clipboard, the name and the next step."""

from collections.abc import Callable

from ipywidgets import HTML, VBox

from solver import SolverError
from solver.fault.remedies import ACTIONS
from solver.fault.way import DO, NAME, REVIEW
from solver.station.faults import FAULTS
from solver.units.show import capital
from workbook.log import NotKept
from workbook.ui.controls import Panel, button, chooser, classed, link, row, show
from workbook.ui.markup import Markup, tag
from workbook.ui.pieces import say

from .readings import Readings
from .story import Worked
from .view import clipboard_html, head_html, records_html, said_of, standing, station_html

__all__ = ["Stand"]

CHOOSE = ("Choose one", "")
FIRST = "Choose a fault from the list, then press “Say so”."
FIRST_ACTION = "Choose what you do about it, then press “Do that”."
FIRST_BOTH = "Choose a fault and what you do about it, then press “That’s my answer”."
STOP = "Stop here and see the review"


class Stand:
    """One case. `named` hears of each name, and `over` once the case has ended.

    `leave` puts it aside, and `print_` makes it on paper and says what came of it; without them neither is
    there. `stop` is what ending it unnamed is called. With `final` fault and action are one answer, which
    nothing is said of before the exam is turned in.
    """

    story: Worked

    def __init__(
        self,
        panel: Panel,
        named: Callable[[Worked], str],
        over: Callable[[Worked], None],
        leave: Callable[[], None] | None = None,
        print_: Callable[[Worked], Markup] | None = None,
        *,
        stop: str = STOP,
        final: bool = False,
    ):
        self._named, self._over, self._print, self._final = named, over, print_, final
        self.head, self.station, self.records = HTML(), HTML(), HTML()
        self.clipboard, self.standing, self.told = HTML(), HTML(), HTML(say(""))
        self.readings = Readings(panel, self._do)
        self.fault = chooser("What is it?", [CHOOSE])
        self.action = chooser("What do you do about it?", [CHOOSE])
        says = "That’s my answer" if final else "Do that"
        self.name = button("Say so", panel.once(self._name), first=True)
        self.act = button(says, panel.once(self._answer if final else self._act), first=True)
        self.name_it = row("w2w-ask", self.fault, *[self.name] * (not final))
        self.act_on_it = row("w2w-ask", self.action, self.act)
        self.give_up = link(stop, panel.once(lambda: self._do(REVIEW)))
        self.print = link("Print this case", panel.once(self._on_paper))
        self.leave = link("Put it aside", panel.once(leave or (lambda: None)))
        show(self.give_up, not final)
        show(self.print, print_)
        show(self.leave, leave)
        self.box = classed(VBox(self._parts()), "w2w-stand")

    def _parts(self) -> list[VBox]:
        left = classed(VBox([self.head]), "w2w-report")
        drawn = classed(VBox([self.station, self.records]), "w2w-station-side")
        right = VBox(
            [
                classed(self.readings.box, "w2w-readings"),
                classed(self.told, "w2w-now"),
                HTML(tag("h4", "Your clipboard")),
                self.clipboard,
                HTML(tag("h4", "Name it")),
                self.standing,
                self.name_it,
                self.act_on_it,
                row("w2w-links", self.give_up, self.print, self.leave),
            ]
        )
        return [left, drawn, classed(right, "w2w-work")]

    def open(self, story: Worked) -> None:
        """Begin a case, or go on with it."""
        self.story = story
        case = story.way.case
        self.head.value = head_html(story.way)
        self.records.value = records_html(case)
        self.readings.open(story.way)
        self.fault.put("", [CHOOSE, *((capital(FAULTS[n].label), n) for n in case.suspects)])
        self.action.put("", [CHOOSE, *((text, name) for name, text in ACTIONS.items())])
        last = story.way.told[-1:]
        self.told.value = said_of(story.way, last[0]) if last else say("")
        self._show()

    def focus(self) -> None:
        """To the first reading."""
        next(iter(self.readings.acts.values())).focus()

    def _show(self) -> None:
        way = self.story.way
        self.station.value = station_html(way)
        self.clipboard.value = clipboard_html(way)
        self.standing.value = tag("p", standing(way, self._final), cls="w2w-small")
        self.readings.show(way)
        show(self.readings.box, not way.ended)
        show(self.name_it, not (way.ended if self._final else way.named))
        show(self.act_on_it, not way.ended if self._final else way.named and not way.ended)

    def _do(self, *words: str) -> bool:
        """Do one thing, or several at once, keep it, and say what came of it; whether it was done."""
        try:
            self.story.do(*words)
        except (SolverError, NotKept) as fault:
            self.told.value = say("fault" if isinstance(fault, NotKept) else "notice", str(fault))
            return False
        way = self.story.way
        self.told.value = said_of(way, way.told[-1])
        self._show()
        if way.ended:
            self._over(self.story)
        return True

    def _on_paper(self) -> None:
        assert self._print
        self.told.value = say("note", "The PDF is being made.")
        self.told.value = self._print(self.story)

    def _name(self) -> None:
        if not self.fault.value:
            self.told.value = say("notice", FIRST)
            return
        if self._do(f"{NAME}{self.fault.value}"):
            if fault := self._named(self.story):
                self.told.value = say("fault", fault)
            if self.story.way.named:
                self.action.focus()

    def _act(self) -> None:
        if self.action.value:
            self._do(f"{DO}{self.action.value}")
        else:
            self.told.value = say("notice", FIRST_ACTION)

    def _answer(self) -> None:
        """The fault and the action as one answer; of a wrong fault the action says nothing."""
        fault, action = self.fault.value, self.action.value
        if not (fault and action):
            self.told.value = say("notice", FIRST_BOTH)
            return
        right = fault == self.story.way.case.fault
        self._do(f"{NAME}{fault}", f"{DO}{action}" if right else REVIEW)
