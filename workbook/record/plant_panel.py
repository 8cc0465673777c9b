"""Many pumps from a file on the page: the whole plant, then a pump and a day of it."""

from collections.abc import Callable, Sequence
from time import monotonic
from typing import Any

from ipywidgets import HTML, Box, FileUpload, VBox

from solver import SolverError
from solver.units.show import counted
from workbook.ui.controls import (
    AUTO,
    UNIT_CHOICES,
    Chooser,
    Panel,
    button,
    chooser,
    classed,
    opens,
    show,
)
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import say

from .demo import FAULTS, TASK, Hidden, demo_csv
from .fleet import MOST_BYTES, Fleet
from .keep import template_link
from .outcome import Outcome
from .overview import plant_html
from .reading import Message

__all__ = ["PlantPanel"]

ABOUT = (
    "One row is one pump on one day. Put the unit in the heading, in parentheses, or in the cell. "
    f"Up to {MOST_BYTES // 1_000_000} MB."
)
EXAMPLE = "the example plant"
QUESTION = "What is wrong in the example plant?"
MOST_SAID = 20  # messages shown at first; the others are there to open
SHOW, HIDE = "Show the three faults", "Hide the three faults"


class PlantPanel(Panel):
    """Where a file is chosen; its pumps on one screen, and the day that is chosen in full."""

    def __init__(self, clock: Callable[[], float] = monotonic):
        super().__init__("w2w-day", "w2w-plant-page", clock=clock)
        self.fleet: Fleet | None = None
        self.outcome = Outcome(self)
        self.units = chooser("Units", UNIT_CHOICES, self.safely(lambda _: self._read_again()))
        self._data, self._name = b"", ""
        self.upload = FileUpload(accept=".csv,.txt,text/csv", description="Choose a CSV file")
        self.upload.layout = AUTO
        classed(self.upload, "w2w-button").observe(self.safely(self._uploaded), "value")
        self.example = button("Open the example plant", self.once(self._open_example))
        self.template, self.plant = HTML(template_link("us")), HTML()
        self.pump = chooser("Pump", [("", None)], self.safely(self._choose_pump))
        self.day = chooser("Day", [("", None)], self.safely(self._choose_day))
        self.task, self.answers = HTML(), HTML()
        self.reveal = opens(button(SHOW, self.once(self._reveal)), False)
        self.choosers = classed(Box([self.pump, self.day]), "w2w-settings")
        self.hunt = VBox([self.task, classed(Box([self.reveal]), "w2w-buttons"), self.answers])
        self.put(*self._parts())
        self._display()

    def _parts(self) -> list:
        return [
            HTML(tag("h3", "Many pumps, from a file") + tag("p", ABOUT, cls="w2w-about")),
            classed(Box([self.upload, self.example, self.units]), "w2w-buttons"),
            self.template,
            classed(self.said, "w2w-told"),
            self.hunt,
            self.plant,
            self.choosers,
            self.outcome.box,
        ]

    def _display(self) -> None:
        show(self.choosers, self.fleet)
        show(self.hunt, self.fleet and self._name == EXAMPLE)

    def _uploaded(self, _) -> None:
        if self.upload.value:
            file, self.upload.value = self.upload.value[0], ()
            self._read(bytes(file["content"]), file["name"])

    def _open_example(self) -> None:
        self.task.value = tag("h4", QUESTION) + tag("p", TASK)
        self.answers.value, self.reveal.description = "", SHOW
        opens(self.reveal, False)
        self._read(demo_csv().encode(), EXAMPLE)

    def _read_again(self) -> None:
        """The same file, for its bare numbers and results are in other units now."""
        self.template.value = template_link(self.units.value)
        if self.fleet:
            self._read(self._data, self._name, self.pump.value, self.day.value)

    def _read(self, data: bytes, name: str, pump=None, row: int | None = None) -> None:
        """A file in place of the one before, which stays where this one cannot be read."""
        try:
            fleet = Fleet(data, self.units.value)
        except SolverError as refusal:
            kept = "The file you had before is still open." if self.fleet else ""
            self.said.value = say(
                "unreadable", f"“{name[:80]}” couldn't be read.", str(refusal), kept
            )
            return
        self.fleet, self._data, self._name = fleet, data, name
        self.said.value, self.plant.value = _read_so_far(fleet, name), plant_html(fleet)
        self._set(self.pump, fleet.pumps, pump)
        self._set(self.day, fleet.days(self.pump.value), row)
        self._display()
        self._choose_day()

    def _set(self, box: Chooser, options: list[tuple[str, Any]], value: object) -> None:
        """Other options in a list, without that counting as a choice; the first where `value` is none."""
        box.put(value if value in [key for _, key in options] else options[0][1], options)

    def _choose_pump(self, _=None) -> None:
        if self.fleet:
            self._set(self.day, self.fleet.days(self.pump.value), None)
            self._choose_day()

    def _choose_day(self, _=None) -> None:
        if self.fleet:
            key = self.pump.value
            self.outcome.show(self.fleet.day(key, self.day.value), self.fleet.years(key))

    def _reveal(self) -> None:
        shown = not self.answers.value
        self.answers.value = _answers() if shown else ""
        self.reveal.description = HIDE if shown else SHOW
        opens(self.reveal, shown)


def _read_so_far(fleet: Fleet, name: str) -> str:
    """What was read of a file, and each thing to be known of it by its row and column."""
    pumps, days = len(fleet.pumps), fleet.rows
    read = f"“{name[:80]}”: {counted(pumps, 'pump')}, {counted(days, 'day')}."
    if not fleet.messages:
        return say("worked", read, "Choose a pump and a day.")
    known = f"{counted(len(fleet.messages), 'note')} on this file. Everything else was read."
    first, rest = fleet.messages[:MOST_SAID], fleet.messages[MOST_SAID:]
    more = tag("details", tag("summary", f"And {len(rest):,} more"), _items(rest)) if rest else None
    return say("notice", read, known, html=joined(_items(first), more))


def _items(messages: Sequence[Message]) -> Markup:
    return tag("ul", (tag("li", str(message)) for message in messages))


def _answers() -> Markup:
    """The faults of the example plant, and what shows each."""
    return tag("ol", map(_answer, FAULTS), cls="w2w-hints", role="status")


def _answer(one: Hidden) -> Markup:
    return tag(
        "li",
        tag("p", f"{one.station}, {one.pump}: {one.title}", cls="w2w-want"),
        tag("p", one.shows),
        tag("p", tag("b", "What it could be."), f" {one.may_be}"),
        tag("p", tag("b", "What to check next."), f" {one.tells_more}"),
    )
