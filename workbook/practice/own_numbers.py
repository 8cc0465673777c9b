"""The panel for a reader's own readings: choose what to find, type what is known, see the work."""

from collections.abc import Mapping
from html import escape

from ipywidgets import HTML, Box

from solver.render.html import step_html
from solver.vocabulary import Quantity, quantity_named
from workbook.ui.controls import UNIT_CHOICES, Panel, button, chooser, classed, say
from workbook.ui.entry import Entry, Gate

from .readings import Result, label_with_unit, nearest, ways_to, work_readings
from .view import table

__all__ = ["OwnNumbers"]


class OwnNumbers(Panel):
    """Boxes for the readings nearest to what is to be found, and for any other one by choice.

    `asked` has what is mostly to be found, each with the readings that people have for it.
    """

    def __init__(self, quantities: tuple[Quantity, ...], asked: Mapping[str, tuple[str, ...]]):
        super().__init__("w2w-own")
        self.asked = asked
        self.names = [quantity.name for quantity in quantities]
        self.entries: dict[str, Entry] = {}
        self.added: list[str] = []
        self.gate = Gate(self, self._work)
        find = self.safely(self._find_another)
        self.units = chooser("Units", UNIT_CHOICES, self.safely(self._in_units))
        self.find = chooser("What do you want to find?", self._to_find(), find)
        self.other = chooser("Another reading you have", [("Choose one", "")], lambda _: None)
        self.boxes, self.work = classed(Box(), "w2w-grid"), HTML()
        self.add = button("Add a box for it", self.once(self._add))
        self.run = button("Work it out", self.gate.click, first=True)
        self._put_together()
        self._lay_out()

    def _put_together(self) -> None:
        about = HTML("<p>Type what you know, with its unit. Leave the rest empty.</p>")
        top = classed(Box([self.find, self.units]), "w2w-settings")
        more = classed(Box([self.other, self.add]), "w2w-ask")
        run = classed(Box([self.run]), "w2w-buttons")
        title = HTML("<h3>Your own numbers</h3>")
        self.put(
            title, top, about, self.boxes, more, run, classed(self.said, "w2w-told"), self.work
        )

    @property
    def shown(self) -> list[str]:
        """The readings that have a box: the nearest to what is to be found, then those added.

        A box is added last, for those after it are made anew, and the cursor in them is lost.
        """
        near = self.asked.get(self.find.value) or nearest(self.find.value, self.names)
        return list(dict.fromkeys([*near, *self.added]))

    def _lay_out(self, _=None) -> None:
        """Boxes for the present choice; what was typed stays."""
        shown, units = self.shown, self.units.value
        for name in shown:
            if name not in self.entries:
                self.entries[name] = Entry(self, "", lambda _: None, self.gate)
            label = label_with_unit(quantity_named(name), units)
            self.entries[name].box.description = label
        self.boxes.children = [self.entries[name].box for name in shown]
        rest = [
            (quantity_named(name).label(units), name) for name in self.names if name not in shown
        ]
        self.other.options = [("Choose one", ""), *rest]
        self.work.value, self.said.value = "", say("")

    def _to_find(self) -> list[tuple[str, str]]:
        """What may be found, as the chosen system names it; what is mostly asked comes first."""
        others = [name for name in self.names if name not in self.asked]
        return [(self._label(name), name) for name in (*self.asked, *others)]

    def _label(self, name: str) -> str:
        return quantity_named(name).spoken(self.units.value)

    def _in_units(self, _) -> None:
        """The same in the other system, whose names may differ; what is to be found stays."""
        chosen, added = self.find.value, self.added
        self.find.options = self._to_find()  # which chooses the first
        self.find.value, self.added = chosen, added
        self._lay_out()

    def _find_another(self, _) -> None:
        self.added = [name for name, entry in self.entries.items() if entry.box.value.strip()]
        self._lay_out()

    def _add(self) -> None:
        name = self.other.value
        if not name:
            self.said.value = say("note", "Choose a reading from the list first.")
            return
        self.added.append(name)
        self._lay_out()
        self.entries[name].box.focus()

    def _work(self) -> None:
        texts = {name: self.entries[name].box.value for name in self.shown}
        result = work_readings(texts, self.find.value, self.units.value)
        missing = result.found.missing if result.found else ()
        new = {name for names in missing for name in names} - set(self.shown)
        if new:
            self.added += sorted(new)
            self._lay_out()
        self.said.value = say(result.state, *result.sentences, html=ways_html(result))
        self.work.value = work_html(result)


def ways_html(result: Result) -> str:
    """The ways to the answer, where there are several."""
    ways = ways_to(result.found) if result.found else []
    items = "".join(f"<li>the {escape(way)}</li>" for way in ways)
    return f"<ul>{items}</ul>" if len(ways) > 1 else ""


def work_html(result: Result) -> str:
    """What was read, and the steps."""
    found = result.found
    read = table(result.read, "What was read")
    if found is None or not found.steps:
        return read
    items = "".join(
        step_html(number, step, found.known, found.given, found.units)
        for number, step in enumerate(found.steps, 1)
    )
    return f'{read}<h4>The full work</h4><ol class="w2w-steps">{items}</ol>'
