"""The page for a set that a trainer sent as a link or a text: opened, worked, and sent back as a file."""

from collections.abc import Callable
from contextlib import suppress
from time import monotonic

from ipywidgets import HTML, Box, VBox, Widget

from solver import SolverError
from workbook.log import lasting
from workbook.trainer.sets.told import about, how
from workbook.ui.controls import Panel, button, chooser, classed, show
from workbook.ui.entry import Gate, Paste
from workbook.ui.markup import joined, tag
from workbook.ui.pieces import say
from workbook.ui.static_site import words_of_address

from .fault_card import FaultCard
from .own_set import OwnSet
from .sent_set import opened_before, sent_set
from .set_card import SetCard
from .set_panel import HandIn, SetTop

__all__ = ["WORD", "SentPanel"]

WORD = "class"  # in the address of the page
ABOUT = (
    "Your trainer's link opens the set by itself. Or paste the text your trainer sent, and open it. "
    "There is no account, and nothing is sent anywhere until you send your file."
)
FORGETS = (
    "This browser forgets your answers when you close the page. Save your file before you do, or open "
    "the link in a window that isn't private."
)
KEPT_HERE = "on this device"


class SentPanel(Panel):
    """Where a set is opened; then who works at it, its questions, and the file to send."""

    def __init__(self, clock: Callable[[], float] = monotonic):
        super().__init__("w2w-together", clock=clock)
        gate = Gate(self, lambda: self._open(self.pasted.box.value))
        self.pasted = Paste("Text of the set", gate)
        self.open = button("Open this set", gate.click, first=True)
        self.before = chooser(
            "Sets you opened here", [("Choose one", "")], self.safely(self._again)
        )
        self.another = button("Open another set", self.once(lambda: self._ask(True)))
        self.head, self.work = HTML(), VBox()
        self.asking = [
            HTML(tag("p", ABOUT, cls="w2w-about")),
            classed(Box([self.pasted.box, self.open]), "w2w-ask"),
            self.before,
        ]
        self.going_on = classed(Box([self.another]), "w2w-buttons")
        told = classed(self.said, "w2w-told")
        self.put(*self.asking, told, self.head, self.work, self.going_on)
        self._ask(True)
        if text := (words_of_address() or {}).get(WORD, ""):
            self._open(text)

    def _ask(self, on: bool) -> None:
        """Show where a set is opened, or with a set open the button that leads there."""
        self.before.put("", options := self._opened())
        for part in self.asking:
            show(part, on)
        show(self.before, on and len(options) > 1)
        show(self.going_on, not on)

    def _opened(self) -> list[tuple[str, str]]:
        """The sets that can be gone on with; those of another version are left out."""
        options = [("Choose one", "")]
        for one in opened_before().values():
            with suppress(SolverError, OSError):
                options.append((sent_set(one.text).title, one.text))
        return options

    def _again(self, _: object = None) -> None:
        if self.before.value:
            self._open(self.before.value)

    def _open(self, text: str) -> None:
        try:
            own = sent_set(text)
            own.note()
        except SolverError as refusal:
            self.said.value = say("unreadable", str(refusal))
            return
        except OSError as error:
            self.said.value = say("fault", f"The set couldn't be saved here: {error}.")
            return
        self.said.value = say("") if lasting() else say("notice", FORGETS)
        self.work.children = self._parts(own)
        self._ask(False)

    def _parts(self, own: OwnSet) -> list[Widget]:
        own.parts.clear()
        assigned = own.assigned
        if assigned is None:
            self.head.value = say("missing", own.fault)
            return []
        lines = (tag("li", line) for line in how(assigned, KEPT_HERE))
        self.head.value = joined(
            tag("h3", assigned.title), tag("p", about(assigned)), tag("ul", lines)
        )
        count, asked = assigned.work.count, assigned.work.asked
        cards = [_with_number(number, SetCard(own, number)) for number in range(1, count + 1)]
        cards += [_with_number(n, FaultCard(own, n)) for n in range(count + 1, asked + 1)]
        return [SetTop(own), *cards, HandIn(own)]


def _with_number(number: int, card: Panel) -> VBox:
    return VBox([HTML(tag("h3", f"Question {number}")), card])
