"""The pump-day record on its page: a form, what came of it, and what can be done with it."""

from collections.abc import Callable, Sequence
from time import monotonic

from ipywidgets import HTML, Box

from solver.own.record import Examined, Fault, Record, examine, field_named, read_entries
from workbook.ui.controls import UNIT_CHOICES, Panel, button, chooser, classed, show
from workbook.ui.entry import Gate
from workbook.ui.markup import joined, tag
from workbook.ui.pieces import say

from .files import Files
from .findings import examined_html, summary
from .form import Form
from .keep import Keep
from .lesson_card import LessonPart
from .reading import Message, Pump
from .trends import trends_html

__all__ = ["RecordPanel"]

ABOUT = (
    "Type what was read, with its unit or in the unit beside the box. Leave the rest empty: any part may "
    "be missing. Then press Enter, or the button below."
)
METRIC, US = "metric", "US"
MOST_FOLLOWED = 300  # days of one pump that are worked for its trends, the last of the file


class RecordPanel(Panel):
    """One pump's day typed in, or chosen from a file; its findings under it."""

    def __init__(self, clock: Callable[[], float] = monotonic):
        super().__init__("w2w-day", clock=clock)
        self.gate = Gate(self, self._work)
        self.form = Form(self, self.gate)
        self.examined: Examined | None = None
        self._years: Sequence[Pump] = ()
        self.units = chooser("Units", UNIT_CHOICES, self.safely(self._change_units))
        self.run = button("Work this record", self.gate.click, first=True)
        self.take_away = button("Remove these units", self.once(self._take_away))
        self.units_said, self.result, self.trends = HTML(say("")), HTML(), HTML()
        self.keep, self.lesson = Keep(self), LessonPart(self)
        self.files = Files(self, lambda: self.units.value, self._show_day)
        self._offer_take_away(False)
        self.put(*self._parts())

    def _parts(self) -> list:
        return [
            HTML(tag("h3", "One pump’s day") + tag("p", ABOUT)),
            classed(Box([self.units]), "w2w-settings"),
            classed(Box([self.units_said, self.take_away]), "w2w-told"),
            self.form.box,
            classed(Box([self.run]), "w2w-buttons"),
            classed(self.said, "w2w-told"),
            self.files.box,
            self.result,
            self.keep.box,
            self.trends,
            self.lesson.box,
        ]

    def _work(self) -> None:
        """Read the form, work and judge what it holds, and say beside each box what is wrong."""
        texts = self.form.texts
        record, faults = read_entries(texts, self.form.units)
        self.form.show_faults(faults, record.unread)
        if not texts:
            self.said.value = say("missing", "Type one reading or more, then work this record.")
            return
        examined = examine(record)
        self._years, self.trends.value = (), ""
        told = tuple(Message(f"{field_named(one.field).label}: {one.says}") for one in faults)
        self.examined, self.result.value = examined, examined_html(examined)
        self.keep.show(Pump(1, record, told), examined)
        self.lesson.show(examined)
        self.said.value = _outcome(examined, faults)

    def _show_day(self, pump: Pump, years: Sequence[Pump]) -> None:
        """A day chosen from a file, and how the pump went over the years."""
        examined = examine(pump.record)
        self.examined, self.result.value = examined, examined_html(examined, pump.messages)
        self.keep.show(pump, examined, years)
        self.lesson.show(examined)
        self.said.value = say("")
        if years is not self._years:
            self._years = years
            self._show_trends()

    def _show_trends(self) -> None:
        if self._years:
            followed = [examine(one.record) for one in self._years[-MOST_FOLLOWED:]]
            course = trends_html(followed, self._show_trends)
            self.trends.value = joined(tag("h4", "Over the years"), course)

    def _change_units(self, units: str) -> None:
        """The boxes ask in the other system; what was typed keeps its meaning."""
        self.files.read_again()
        written = self.form.change_units(units)
        self._offer_take_away(bool(written))
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
        self._offer_take_away(False)
        numbers = "1 number counts" if count == 1 else f"{count} numbers count"
        self.units_said.value = say("note", f"{numbers} in the unit beside the box now.")

    def _offer_take_away(self, wanted: bool) -> None:
        show(self.take_away, wanted)


def _outcome(examined: Examined, faults: Sequence[Fault]) -> str:
    """What a reader hears after working a record."""
    record: Record = examined.record
    unread = len(record.unread)
    told = f"In short: {summary(examined)}."
    if not unread:
        known = "There is a note on what you typed, beside the box."
        return say("notice" if faults else "worked", told, known if faults else "")
    entries = (
        "1 entry couldn't be read. The note beside its box"
        if unread == 1
        else f"{unread} entries couldn't be read. The note beside each box"
    )
    return say("unreadable", f"{entries} says what to type.", f"Everything else was. {told}")
