"""The reference on a page: a box that finds, parts that open, the sheet to print; a chapter's formulas.

What a part holds is sent when it is opened, for all of it at once would be half a megabyte.
"""

from collections.abc import Callable, Sequence

from ipywidgets import HTML, HTMLMath, VBox

from solver import SolverError
from solver.algebra.formula import Formula
from solver.render.html import formula_text
from solver.units.show import counted
from workbook.ui.chapter_ticks import ChapterTicks
from workbook.ui.controls import (
    UNIT_CHOICES,
    Panel,
    button,
    chooser,
    classed,
    opens,
    row,
    show,
)
from workbook.ui.entry import Entry as Asked
from workbook.ui.markup import Markup, tag
from workbook.ui.pieces import say
from workbook.ui.saving import link

from .entry import TRY, Entry, Part, find, folded, plain, said
from .formulas import by_chapter, formula_parts, sheet_html
from .sheet import Sheet, sheet_of
from .tables import CONSTANTS, LIMITS, TABLES, UNITS

__all__ = ["FormulaSheet", "ReferencePanel", "parts"]

AT_ONCE = 30  # entries found whose parts open by themselves; more would be a long page
UNFOLDED = 5  # entries found that open too
FIRST = "Type a word first."
ON_PAPER = (
    "Check the chapters you want on your sheet. It has two pages at most, "
    "in type of 8 points or larger."
)
FIRST_CHECK = "Check at least one chapter first."
MANY = "Open a section to see them, or add a word."


def parts() -> tuple[Part, ...]:
    """All of it, in the order of the page."""
    return (*formula_parts(), CONSTANTS, UNITS, TABLES, LIMITS)


class Fold:
    """A part under its button, or what was found in it."""

    def __init__(self, panel: Panel, part: Part):
        self.part, self.open = part, False
        self.entries: Sequence[Entry] = ()
        self.found = self.unfolded = False
        self.button = button("", panel.once(lambda: self.show(not self.open)))
        classed(self.button, "w2w-fold")
        self.body = HTMLMath() if part.mathematics else HTML()
        self.box = classed(VBox([self.button, self.body]), "w2w-group")

    def put(
        self, entries: Sequence[Entry], opened: bool, found: bool = False, unfolded: bool = False
    ) -> None:
        """Have these entries, each `unfolded` or under its own head."""
        self.entries, self.found, self.unfolded = entries, found, unfolded
        show(self.box, bool(entries))
        self.show(opened)

    def show(self, opened: bool) -> None:
        """Open or close it."""
        self.open = opened
        self.body.value = self.part.html(self.entries, self.unfolded) if opened else ""
        show(self.body, opened)
        does, found = "Hide" if opened else "Show", " found" * self.found
        count = counted(len(self.entries), self.part.noun)
        self.button.description = f"{does} {self.part.title}: {count}{found}"
        opens(self.button, opened)


class ReferencePanel(Panel):
    """Every formula, constant, unit, table and limit, in US or metric units; what is `wanted` is found at once."""

    def __init__(self, units: str = "us", wanted: str = ""):
        super().__init__("w2w-reference")
        self.folds = [Fold(self, part) for part in parts()]
        self.wanted = ""
        self.units = chooser("Units", UNIT_CHOICES, self.safely(lambda _: self._again()), units)
        self.ask = Asked(self, "Search for a word, such as head, gpm or NEMA", self._find)
        self.find = button("Find", self.ask.gate.click, first=True)
        self.all = button("Show everything", self.once(self._show_all))
        self.printing = Printing(self, lambda: self.units.value)
        asking = row("w2w-settings", self.units, self.ask.box)
        buttons = row("w2w-buttons", self.find, self.all)
        self.listed = VBox([fold.box for fold in self.folds])
        self.put(asking, buttons, self.said, self.listed, self.printing.box)
        self._whole()
        if wanted:
            self.ask.fill(wanted)
            self._find(wanted)

    def _whole(self) -> None:
        for fold in self.folds:
            fold.put(fold.part.entries(self.units.value), opened=False)

    def _show_all(self) -> None:
        self.wanted = ""
        self.ask.fill("")
        self._whole()
        self.said.value = say("note", "Everything is shown again.")

    def _find(self, text: str) -> None:
        """Only what has all the words; where nothing has, what is shown stays."""
        if not plain(text):
            self._nothing_asked()
            return
        among, units = [fold.part for fold in self.folds], self.units.value
        found = find(among, units, text)
        sentences = said(among, units, text, found)
        if not found:
            self.said.value = say("notice", *sentences)
            return
        self.wanted = text
        total = sum(map(len, found.values()))
        for fold in self.folds:
            here = found.get(fold.part, ())
            fold.put(here, bool(here) and total <= AT_ONCE, found=True, unfolded=total <= UNFOLDED)
        self.said.value = say("note", *sentences, "" if total <= AT_ONCE else MANY)

    def _nothing_asked(self) -> None:
        if self.wanted:
            self._show_all()
        else:
            self.said.value = say("missing", FIRST, TRY)

    def _again(self) -> None:
        """The same in other units: what was open stays open."""
        self.printing.clear()
        for fold in self.folds:
            entries = fold.part.entries(self.units.value)
            fold.put(entries, fold.open and not self.wanted)
        if self.wanted:
            self._find(self.wanted)


class Printing:
    """Boxes for the chapters, the button, and what came of it."""

    def __init__(self, panel: Panel, units: Callable[[], str]):
        self._units = units
        self.said = HTML(say(""))
        self.chapters = ChapterTicks(panel, by_chapter(), by_chapter(), self.clear)
        self.make = button("Make a sheet to print", panel.once(self._make), first=True)
        head = HTML(tag("h4", "A formula sheet on paper") + tag("p", ON_PAPER))
        buttons = row("w2w-buttons", self.make)
        self.box = classed(VBox([head, self.chapters.box, buttons, self.said]), "w2w-printing")

    def clear(self) -> None:
        """What was made before does not fit what is ticked now."""
        self.said.value = say("")

    def _make(self) -> None:
        if not self.chapters.chosen:
            self.said.value = say("missing", FIRST_CHECK)
            return
        try:
            sheet = sheet_of(self.chapters.chosen, self._units())
        except SolverError as refusal:
            self.said.value = say("missing", str(refusal))
            return
        held = tag("p", link("Save the sheet", sheet.name, "application/pdf", sheet.pdf))
        html = held + _left(sheet)
        self.said.value = say("worked", "The sheet is ready.", *sheet.says, html=html)


def _left(sheet: Sheet) -> Markup:
    """What found no room, to open."""
    if not sheet.left:
        return Markup()
    items = (tag("li", formula_text(formula, sheet.units)) for formula in sheet.left)
    return folded("What is left out", tag("ul", items), opened=False)


class FormulaSheet(Panel):
    """Formulas in US or metric units; the constants and the units follow the choice."""

    def __init__(self, formulas: tuple[Formula, ...]):
        super().__init__("w2w-formulas")
        self.formulas = formulas
        self.sheet = HTMLMath()
        self.units = chooser("Units", UNIT_CHOICES, self.safely(self._show))
        self.put(self.units, self.sheet, self.said)
        self._show(self.units.value)

    def _show(self, units: str) -> None:
        self.sheet.value = sheet_html(self.formulas, units)
