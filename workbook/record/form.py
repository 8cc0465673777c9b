"""The form of one pump's day: boxes in groups that open and close, each fault beside its box.

Nothing typed is lost: closed groups keep their texts, and a change of units gives every bare
number the unit it had, so that it means what it meant.
"""

from collections.abc import Callable, Iterable, Mapping

from ipywidgets import HTML, Box, Dropdown, Text, VBox

from solver import Unreadable
from solver.own.record import FIELDS, GROUPS, Fault, Field, field_named
from solver.units.reading import Reading, read
from solver.units.show import capital
from workbook.ui.controls import AUTO, LABELLED, Panel, button, classed, opens, show
from workbook.ui.entry import Entry, Gate
from workbook.ui.markup import Markup, tag

from .taken_at import at_its_place

__all__ = ["Form"]

NOT_NOTED = "not noted"
OPEN_FIRST = ("pump",)
HINTS = {"date": "Date, such as 2024-05-31"}


def asks(field: Field, units: str) -> str:
    """What a box is called: "Flow by meter, in gpm"."""
    unit = field.unit(units)
    label = HINTS.get(field.name) or capital(field.label)
    return f"{label}, in {unit}" if unit else label


def beside(fault: Fault, unread: bool) -> Markup:
    """What stands under a box: that it was not read and why, or what is to be known."""
    state, mark, word = ("unreadable", "?", "Not read") if unread else ("note", "›", "Note")
    marked = tag("span", mark, cls="w2w-mark", aria_hidden="true")
    head = tag("span", marked, f"{word}.", cls="w2w-state")
    return tag("div", tag("p", head, f" {fault.says}"), cls=f"w2w-say w2w-{state}")


class Group:
    """A group of boxes under its button. The boxes are made when it is first opened."""

    def __init__(self, form: "Form", name: str):
        self.form, self.name, self.open = form, name, False
        self.fields = [field for field in FIELDS if field.group == name]
        self.button = button("", form.panel.once(lambda: self.show(not self.open)))
        classed(self.button, "w2w-fold")
        self.body = classed(Box(), "w2w-grid", "w2w-readings")
        show(self.body, False)
        self.box = classed(VBox([self.button, self.body]), "w2w-group")
        self.count()

    def show(self, opened: bool = True) -> None:
        """Open or close it."""
        if opened and not self.body.children:
            self.body.children = [self.form.made(field) for field in self.fields]
        self.open = opened
        show(self.body, opened)
        self.count()

    def count(self, _=None) -> None:
        """Say on the button how many boxes are filled."""
        filled = sum(bool(self.form.text(field.name)) for field in self.fields)
        does = "Hide" if self.open else "Show"
        self.button.description = f"{does} {self.name}: {filled} of {len(self.fields)} filled"
        opens(self.button, self.open)


class Form:
    """Every field of a record. `texts` is what stands in the boxes, by the name of the field.

    `changed` hears of every entry.
    """

    def __init__(self, panel: Panel, gate: Gate, changed: Callable[[], None] = lambda: None):
        self.panel, self.gate, self.units = panel, gate, "us"
        self._changed = changed
        self.controls: dict[str, Text | Dropdown] = {}
        self.faults: dict[str, HTML] = {}
        self.given_units: dict[str, tuple[str, str]] = {}
        self.groups = {name: Group(self, name) for name in GROUPS}
        for name in OPEN_FIRST:
            self.groups[name].show()
        self.box = classed(VBox([group.box for group in self.groups.values()]), "w2w-form")

    def made(self, field: Field) -> VBox:
        """The box of a field, and the place for its fault under it."""
        label = asks(field, self.units)
        if field.choices:
            options = [(NOT_NOTED, ""), *((word, word) for word in field.words)]
            control = Dropdown(description=label, options=options, style=LABELLED, layout=AUTO)
            classed(control, "w2w-field").observe(self.gate.changed, "value")
        else:
            entry = Entry(self.panel, label, lambda _: None, self.gate)
            quantity = field.quantity
            control = entry.numbers(bool(quantity and quantity.least >= 0)).box
        control.observe(self.panel.safely(self._entered(field)), "value")
        # Shown only when it says something, or it would part the rows of boxes.
        self.controls[field.name] = control
        self.faults[field.name] = HTML(layout={"display": "none"})
        reading = classed(VBox([control, self.faults[field.name]]), "w2w-reading")
        at_its_place(reading, field.name)
        return reading

    def _entered(self, field: Field) -> Callable[[object], None]:
        """What counts the boxes filled in the group of a field, and tells of the entry."""

        def entered(_: object) -> None:
            self.groups[field.group].count()
            self._changed()

        return entered

    def text(self, name: str) -> str:
        """What stands in one box, also while its group is closed."""
        return self.controls[name].value.strip() if name in self.controls else ""

    @property
    def texts(self) -> dict[str, str]:
        """What was typed, for `read_entries`; empty boxes are left out."""
        return {name: text for name in self.controls if (text := self.text(name))}

    def fill(self, texts: Mapping[str, str]) -> None:
        """Put these texts in the boxes, whose groups are opened, and nothing in the others."""
        for field in FIELDS:
            text = texts.get(field.name, "")
            if text and not self.groups[field.group].open:
                self.groups[field.group].show()
            if control := self.controls.get(field.name):
                control.value = text if not field.choices or text in field.words else ""
        self.show_faults((), ())

    def go_to(self, name: str) -> None:
        """Open the group of a field and put the cursor in its box."""
        group = self.groups[field_named(name).group]
        if not group.open:
            group.show()
        self.controls[name].focus()

    def show_faults(self, faults: Iterable[Fault], unread: Iterable[str]) -> None:
        """Each fault beside its box, whose group is opened; no others."""
        told: dict[str, Markup] = {}
        for fault in faults:
            told[fault.field] = told.get(fault.field, Markup()) + beside(
                fault, fault.field in unread
            )
        for name, place in self.faults.items():
            place.value = told.get(name, "")
            show(place, place.value)
        for field in FIELDS:
            if field.name in told and not self.groups[field.group].open:
                self.groups[field.group].show()

    def change_units(self, units: str) -> list[str]:
        """Ask in the other system; return the texts that got their old unit written behind them."""
        before, self.units = self.units, units
        self.given_units = {}
        for field in FIELDS:
            control = self.controls.get(field.name)
            if control is None:
                continue
            control.description = asks(field, units)
            old = field.unit(before)
            if old != field.unit(units) and (written := _with_unit(control.value, old)):
                self.given_units[field.name] = (control.value, written)
                control.value = written
        return [written for _, written in self.given_units.values()]

    def take_units_away(self) -> int:
        """Undo what the last change of units wrote, where it still stands; return how often."""
        count = 0
        for name, (plain, written) in self.given_units.items():
            if self.controls[name].value == written:
                self.controls[name].value = plain
                count += 1
        self.given_units = {}
        return count


def _with_unit(text: str, unit: str) -> str:
    """A bare number with the unit that it has been in; nothing for any other text."""
    bare = _reading(text, unit)
    if bare is None or bare.typed_unit is not None:
        return ""
    number = repr(bare.value).removesuffix(".0")
    for written in (f"{text.strip()} {unit}", f"{number} {unit}"):
        again = _reading(written, unit)
        if again and again.typed_unit and again.value == bare.value:
            return written
    return ""


def _reading(text: str, unit: str) -> Reading | None:
    try:
        return read(text, unit)
    except Unreadable:
        return None
