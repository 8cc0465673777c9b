"""The pump-day record on its page: a form, what came of it, and what can be done with it."""

from collections.abc import Callable, Sequence
from time import monotonic

from ipywidgets import HTML, Box

from solver.own.record import Examined, Fault, Record, field_named, read_entries
from solver.units.show import capital
from workbook.ui.controls import UNIT_CHOICES, Panel, button, chooser, classed, row, show
from workbook.ui.entry import Gate
from workbook.ui.markup import tag
from workbook.ui.pieces import say

from .draft import Draft
from .findings import summary
from .form import Form
from .outcome import Outcome
from .reading import Message, Pump
from .taken_at import TakenAt

__all__ = ["RecordPanel"]

ABOUT = (
    "Type what you read. Anything may be missing. Another unit is fine if you write it after the number; "
    "so are entries like 3 ft 4 in or 1:52."
)
METRIC, US = "metric", "US"
STILL_HERE = "What you typed last time is still here."
CLEAR, BRING_BACK = "Start with an empty form", "Bring back what I typed"
NOT_KEPT = "What you type can't be kept on this computer ({why}). Save the record before you close the page."


class RecordPanel(Panel):
    """One pump's day typed in, kept at every entry; what came of it under its button."""

    def __init__(self, clock: Callable[[], float] = monotonic, draft: Draft | None = None):
        super().__init__("w2w-day", clock=clock)
        self.gate, self.draft = Gate(self, self._work), draft or Draft()
        self.form = Form(self, self.gate, self._keep)
        self.taken = TakenAt(self)
        self._before: dict[str, str] = {}
        self._filling = False
        self.units = chooser("Units", UNIT_CHOICES, self.safely(self._change_units))
        self.run = button("Check these readings", self.gate.click, first=True)
        self.empty = button(CLEAR, self.once(self._empty))
        self.take_away = button("Remove these units", self.once(self._take_away))
        self.units_said, self.unread = HTML(say("")), classed(Box(), "w2w-buttons")
        self.outcome = Outcome(self)
        show(self.take_away, False)
        self.put(*self._parts())
        self._bring(*self.draft.read())

    @property
    def examined(self) -> Examined | None:
        """What came of the readings when they were checked last."""
        return self.outcome.examined

    def _parts(self) -> list:
        return [
            HTML(tag("h3", "One pump, one day") + tag("p", ABOUT)),
            classed(Box([self.units]), "w2w-settings"),
            classed(Box([self.units_said, self.take_away]), "w2w-told"),
            row("w2w-measured", self.form.box, self.taken.box),
            classed(Box([self.run, self.empty]), "w2w-buttons"),
            classed(self.said, "w2w-told"),
            self.unread,
            self.outcome.box,
        ]

    def _bring(self, units: str, texts: dict[str, str]) -> None:
        """Put in what was kept of an earlier time."""
        self._filling = True
        self.units.put(units)
        self.form.change_units(units)
        self.form.fill(texts)
        self._filling = False
        if texts:
            self.said.value = say("note", STILL_HERE)
        show(self.empty, texts)

    def _keep(self) -> None:
        """Keep what stands in the form; a computer that can't is told of."""
        if self._filling:
            return
        texts = self.form.texts
        show(self.empty, texts or self._before)
        if texts:
            self.empty.description = CLEAR
        try:
            self.draft.keep(self.form.units, texts)
        except OSError as why:
            self.units_said.value = say("notice", NOT_KEPT.format(why=why.strerror or why))

    def _empty(self) -> None:
        """An empty form, or what stood in it before it was emptied."""
        texts, self._before = self._before, self.form.texts
        bring = self.empty.description == BRING_BACK
        self._filling = True
        self.form.fill(texts if bring else {})
        self._filling = False
        self.empty.description = CLEAR if bring else BRING_BACK
        self._keep()
        back = (
            "Your readings are back."
            if bring
            else "The form is empty. You can still bring back what you typed."
        )
        self.said.value = say("note", back)

    def _work(self) -> None:
        """Read the form, work and judge what it holds, and say beside each box what is wrong."""
        texts = self.form.texts
        record, faults = read_entries(texts, self.form.units)
        self.form.show_faults(faults, record.unread)
        self.unread.children = [self._way_to(name) for name in record.unread]
        if not texts:
            self.said.value = say("missing", "Type one reading or more, then check them.")
            return
        told = tuple(Message(f"{field_named(one.field).label}: {one.says}") for one in faults)
        examined = self.outcome.show(Pump(1, record, told), said=False)
        self.said.value = _outcome(examined, faults)

    def _way_to(self, name: str) -> Box:
        """A button that goes to the box of an entry that was not read."""
        label = f"Go to {field_named(name).label}"
        return button(label, self.once(lambda: self.form.go_to(name)))

    def _change_units(self, units: str) -> None:
        """The boxes ask in the other system; what was typed keeps its meaning."""
        written = self.form.change_units(units)
        self._keep()
        show(self.take_away, written)
        if not written:
            self.units_said.value = say("")
            return
        other = US if units == "us" else METRIC
        self.units_said.value = say(
            "note",
            f"Your numbers haven't changed: the old unit is now written after them, as in “{written[0]}”.",
            f"Were they really {other}? Then remove these units.",
        )

    def _take_away(self) -> None:
        count = self.form.take_units_away()
        show(self.take_away, False)
        numbers = "1 number counts" if count == 1 else f"{count} numbers count"
        self.units_said.value = say("note", f"{numbers} in the unit beside the box now.")


def _outcome(examined: Examined, faults: Sequence[Fault]) -> str:
    """What a reader hears after the readings were checked."""
    record: Record = examined.record
    unread = len(record.unread)
    told = f"{capital(summary(examined))}." if examined.findings else ""
    if not unread:
        known = "There is a note on what you typed, beside the box."
        return say("notice" if faults else "worked", told, known if faults else "")
    entries = (
        "1 entry couldn't be read. The note beside its box"
        if unread == 1
        else f"{unread} entries couldn't be read. The note beside each box"
    )
    return say("unreadable", f"{entries} says what to type.", f"Everything else was. {told}")
