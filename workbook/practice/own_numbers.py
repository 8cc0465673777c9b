"""A reader's own readings: which boxes to offer, what comes of what was typed, and the panel for it."""

from collections.abc import Collection, Iterable, Mapping
from itertools import combinations
from typing import NamedTuple

from ipywidgets import HTML, Box

from solver import Unreadable
from solver.algebra.formula import Formula
from solver.engine.plan import reachable
from solver.own.work import Work, read_quantity, work
from solver.topics.formulas import FORMULAS
from solver.units.show import capital
from solver.vocabulary import QUANTITIES, Quantity, quantity_named
from workbook.ui.controls import UNIT_CHOICES, Panel, button, chooser, classed, row
from workbook.ui.entry import Entry, Gate
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import asked_for, say, table

from .view import steps_html

__all__ = ["OwnNumbers", "Result", "label_with_unit", "nearest", "ways_to", "work_readings"]

AT_FIRST = 10  # boxes shown before any is asked for, where the nearest are not more

MOST_WAYS = 4  # to the answer, told where readings are missing


class Result(NamedTuple):
    """What came of the readings: a state for controls.say, sentences, what was read, the work."""

    state: str
    sentences: tuple[str, ...]
    read: tuple[tuple[str, str], ...] = ()
    found: Work | None = None


def label_with_unit(quantity: Quantity, units: str) -> str:
    """What a box asks for, such as "Flow, in gpm"."""
    return capital(asked_for(quantity, units))


def nearest(find: str, among: Collection[str], formulas: Iterable[Formula] = FORMULAS) -> list[str]:
    """The quantities the fewest formulas away from `find`, in the order of `among`.

    Those of one distance come together, for half the legs of a motor are no help.
    """
    near: set[str] = {find}
    kept: list[str] = []
    while True:
        near |= {n for f in formulas if near & set(f.names) for n in f.names}
        wider = [name for name in among if name in near and name != find]
        if len(wider) == len(kept) or (kept and len(wider) > AT_FIRST):
            return kept
        kept = wider


def work_readings(texts: Mapping[str, str], find: str, units: str) -> Result:
    """Work `find` from what was typed, by the names of quantities; empty boxes are left out."""
    values, shown, refused = {}, [], []
    for name, text in texts.items():
        quantity = quantity_named(name)
        if not text.strip():
            continue
        try:
            got = read_quantity(text, quantity, units)
        except Unreadable as refusal:
            refused.append(f"{capital(quantity.label(units))}: {refusal}")
            continue
        values[name] = got.value
        shown.append((quantity.label(units), got.echo))
    if refused:
        return Result("unreadable", tuple(refused), tuple(shown))
    if not values:
        return Result("missing", ("Type at least one reading, then work it out.",))
    empty = [name for name, text in texts.items() if not text.strip() and name != find]
    return _worked(_by_boxes(work(values, find, units), empty), tuple(shown))


def _by_boxes(found: Work, empty: list[str]) -> Work:
    """The same; but what is missing is told by the empty boxes, where one or two would do."""
    for size in (1, 2) if found.missing else ():
        ways = [
            way
            for way in combinations(empty, size)
            if found.find in reachable((*found.given, *way), FORMULAS, found.units)
        ]
        if ways:
            return found._replace(missing=tuple(ways[:MOST_WAYS]))
    return found


def _worked(found: Work, shown: tuple[tuple[str, str], ...]) -> Result:
    says = found.says if found.answer is not None else missing_said(found)
    # Several formulas may find the same two readings at odds.
    sentences = tuple(dict.fromkeys((says, *found.contradictions, *found.notices)))
    if found.contradictions:
        return Result("contradiction", sentences, shown, found)
    if found.answer is None:
        return Result("missing", sentences, shown, found)
    return Result("notice" if found.notices else "worked", sentences, shown, found)


def missing_said(found: Work) -> str:
    """That the answer cannot be worked yet, and how it could be, or why it never can."""
    ways = ways_to(found)
    if not ways:
        return found.says
    asked = quantity_named(found.find).label(found.units)
    add = f"Add the {ways[0]}." if len(ways) == 1 else "Add what one of these lines asks for:"
    return f"The {asked} can't be calculated yet. {add}"


def ways_to(found: Work) -> list[str]:
    """The readings that would unlock the answer, one way a line, in the reader's words."""
    sets = dict.fromkeys(frozenset(names) for names in found.missing)
    ordered = [[n for n in QUANTITIES if n in names] for names in sets]
    return [
        " and the ".join(quantity_named(n).label(found.units) for n in names) for names in ordered
    ]


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
        self.other = chooser("Another reading you have", [("Choose one", "")])
        self.boxes, self.work = classed(Box(), "w2w-grid"), HTML()
        self.add = button("Add a box for it", self.once(self._add))
        self.run = button("Work it out", self.gate.click, first=True)
        self._put_together()
        self._lay_out()

    def _put_together(self) -> None:
        about = HTML(tag("p", "Type what you know, with its unit. Leave the rest empty."))
        top = row("w2w-settings", self.find, self.units)
        more = row("w2w-ask", self.other, self.add)
        run = row("w2w-buttons", self.run)
        title = HTML(tag("h3", "Your own numbers"))
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

    def _lay_out(self) -> None:
        """Boxes for the present choice; what was typed stays."""
        shown, units = self.shown, self.units.value
        for name in shown:
            if name not in self.entries:
                entry = Entry(self, "", lambda _: None, self.gate)
                self.entries[name] = entry.numbers(quantity_named(name).least >= 0)
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

    def _in_units(self, _: object) -> None:
        """The same in the other system, whose names may differ; what is to be found stays."""
        self.find.put(self.find.value, self._to_find())
        self._lay_out()

    def _find_another(self, _: object) -> None:
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


def ways_html(result: Result) -> Markup:
    """The ways to the answer, where there are several."""
    ways = ways_to(result.found) if result.found else []
    items = (tag("li", f"the {way}") for way in ways)
    return tag("ul", items) if len(ways) > 1 else Markup()


def work_html(result: Result) -> Markup:
    """What was read, and the steps."""
    found = result.found
    read = table(result.read, "What was read")
    if found is None or not found.steps:
        return read
    return joined(read, tag("h4", "The full work"), steps_html(found))
