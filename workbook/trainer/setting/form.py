"""The form of a set: every choice in its box, with what most trainers take filled in.

Single kinds of problem are ticked a chapter at a time; what is ticked in the others stays.
"""

from collections.abc import Iterable

from ipywidgets import HTML, Box, DatetimePicker, VBox

from solver import FAMILIES
from solver.fault.case import LEVELS as FAULT_LEVELS
from solver.sets.fault_part import MOST_FAULTS
from solver.sets.mixtures import mixtures_text
from solver.sets.paper import ANY_LEVEL, CHAPTERS
from solver.sets.work_set import MOST, TOP
from workbook.trainer.sets.set_keys import COUNTS as COUNTED
from workbook.trainer.sets.set_keys import COUNTS_NOT
from workbook.ui.chapter_ticks import ChapterTicks
from workbook.ui.contents import titled
from workbook.ui.controls import (
    AUTO,
    LABELLED,
    UNIT_CHOICES,
    Panel,
    chooser,
    classed,
    show,
    tick,
)
from workbook.ui.entry import Entry, Gate
from workbook.ui.kept_mixtures import KeptMixtures
from workbook.ui.markup import tag

from .draft import Draft

__all__ = ["Form"]

NONE = "No single kind is chosen."
SHARES = (
    "Such as: head 30, wet well 20. Or the name of a mixture that you keep on the Practice exam page. It takes the "
    "place of the boxes above."
)
TYPED = ("The shares as typed", "")
LEVELS = [("Any level", ANY_LEVEL), *((f"Level {n}", n) for n in range(1, TOP + 1))]
NUMBERS = [("Each person's own", True), ("The same for all", False)]
CASE_LEVELS = [(f"Level {n}", n) for n in FAULT_LEVELS]
AFTER = [("Don't count", COUNTS_NOT), ("Count too, and show", COUNTED)]
COUNTS = [("The best try", "best"), ("The last try", "last"), ("The first try", "first")]


class Kinds:
    """A list of chapters, boxes for the kinds of the one chosen, and a line of all that are ticked."""

    def __init__(self, panel: Panel):
        self._panel = panel
        self.ticked: set[str] = set()
        options = [(title, name) for name, title in titled(CHAPTERS).items()]
        self.chapter = chooser("Single kinds of this chapter", options, panel.safely(self._show))
        self.ticks, self.line = classed(Box(), "w2w-ticks"), HTML()
        self.box = VBox([self.chapter, self.ticks, self.line])
        self._show(self.chapter.value)
        self._tell()

    @property
    def chosen(self) -> tuple[str, ...]:
        """The families that are ticked, by name, in the order of the library."""
        return tuple(family.name for family in FAMILIES if family.name in self.ticked)

    def choose(self, names: Iterable[str]) -> None:
        """Tick these families and no others, and turn to the chapter of the first."""
        self.ticked = set(names)
        first = next((f.chapter for f in FAMILIES if f.name in self.ticked), self.chapter.value)
        self.chapter.value = first
        self._show(first)
        self._tell()

    def _show(self, chapter: str) -> None:
        self.ticks.children = [
            tick(
                family.title,
                family.name in self.ticked,
                self._panel.safely(self._hear(family.name)),
            )
            for family in FAMILIES
            if family.chapter == chapter
        ]

    def _hear(self, name: str):
        def hear(on) -> None:
            (self.ticked.add if on else self.ticked.discard)(name)
            self._tell()

        return hear

    def _tell(self) -> None:
        named = [family.title for family in FAMILIES if family.name in self.ticked]
        text = f"Single kinds chosen: {'; '.join(named)}." if named else NONE
        self.line.value = tag("p", text, cls="w2w-about", role="status")


class Form:
    """The boxes of a set. `draft` reads them; `fill` puts a draft into them."""

    def __init__(self, panel: Panel, gate: Gate):
        self._kept = Draft()
        self.chapters = ChapterTicks(panel, CHAPTERS, ())
        self.kinds = Kinds(panel)
        self._make_texts(panel, gate)
        self._make_choices()
        self._make_mixtures(panel)
        self.due = DatetimePicker(description="Due, in your own time", style=LABELLED, layout=AUTO)
        classed(self.due, "w2w-field")
        self.box = VBox(self._parts())
        self.fill(self._kept)

    def _make_texts(self, panel: Panel, gate: Gate) -> None:
        self.texts = {
            name: Entry(panel, label, lambda _: None, gate)
            for name, label in (
                ("title", "Title"),
                ("name", "Folder name (empty: from the title)"),
                ("shares", "Share of each chapter (empty: in turn)"),
                ("questions", f"Questions, 1 to {MOST}"),
                ("points", "Points of each question"),
                ("tries", "Tries at each (empty: no limit)"),
                ("choice_tries", "Tries where there are choices (empty: the same)"),
                ("wrong_choice", "A wrong choice earns, % (empty: as a slip)"),
                ("group", "Only for this group of people.csv (empty: everybody)"),
                ("minutes", "Minutes from opening the questions (empty: no limit)"),
                ("late", "Taken off for being late, % of the score"),
                ("close", "A close answer earns, %"),
                ("mistake", "A known slip earns, %"),
                ("each_try", "Taken off for each earlier try, %"),
                ("cases", f"Cases, up to {MOST_FAULTS} (empty: none)"),
                ("case_points", "Points of each case"),
                ("unsafe", "Taken off for each unsafe step, %"),
            )
        }

    def _make_choices(self) -> None:
        self.choices = {
            name: chooser(label, options, lambda _: None)
            for name, label, options in (
                ("level", "Level", LEVELS),
                ("units", "Units", UNIT_CHOICES),
                ("each", "Numbers", NUMBERS),
                ("counts", "Which try counts", COUNTS),
                ("after_time", "Answers after the time", AFTER),
                ("case_level", "Level of the cases", CASE_LEVELS),
            )
        }

    def _make_mixtures(self, panel: Panel) -> None:
        """A list of the mixtures that are kept, each of which fills the box of the shares."""
        self._mixtures = KeptMixtures().read()
        options = [TYPED, *((name, name) for name in self._mixtures)]
        self.mixture = chooser("A mixture you keep", options, panel.safely(self._mix))
        show(self.mixture, self._mixtures)

    def _mix(self, name: str) -> None:
        if name:
            self.texts["shares"].fill(mixtures_text({name: self._mixtures[name]}))

    def _parts(self) -> list:
        text, choice = {name: entry.box for name, entry in self.texts.items()}, self.choices
        return [
            _grid(text["title"], text["name"]),
            classed(VBox([self.chapters.box]), "w2w-wanted"),
            classed(VBox([self.kinds.box]), "w2w-wanted"),
            _grid(self.mixture, text["shares"], HTML(tag("p", SHARES, cls="w2w-about"))),
            _heading("The questions"),
            _grid(text["questions"], choice["level"], choice["units"], choice["each"]),
            _heading("Points and tries"),
            _grid(text["points"], text["tries"], choice["counts"], text["each_try"]),
            _grid(text["choice_tries"], text["wrong_choice"], text["mistake"], text["close"]),
            _heading("Cases of find the fault, after the questions"),
            _grid(text["cases"], choice["case_level"], text["case_points"], text["unsafe"]),
            _heading("When it is due"),
            _grid(self.due, text["late"], text["group"]),
            _heading("A time limit, as for an exam"),
            _grid(text["minutes"], choice["after_time"]),
        ]

    def draft(self) -> Draft:
        """What stands in the form."""
        typed = {name: entry.box.value for name, entry in self.texts.items()}
        chosen = {name: box.value for name, box in self.choices.items()}
        return self._kept._replace(
            **typed,
            **chosen,
            chapters=self.chapters.chosen,
            families=self.kinds.chosen,
            due=self.due.value,
        )

    def fill(self, draft: Draft) -> None:
        """Put a draft into the form; what has no box is kept beside it."""
        self._kept = draft
        for name, entry in self.texts.items():
            entry.fill(getattr(draft, name))
        for name, box in self.choices.items():
            box.value = getattr(draft, name)
        self.mixture.put(TYPED[1])
        for name, box in self.chapters.boxes.items():
            box.value = name in draft.chapters
        self.kinds.choose(draft.families)
        self.due.value = draft.due

    def keep(self, **fields) -> None:
        """Other values for what has no box: the number drawn from, the plant."""
        self._kept = self._kept._replace(**fields)


def _grid(*boxes) -> Box:
    return classed(Box(boxes), "w2w-grid")


def _heading(text: str) -> HTML:
    return HTML(tag("h4", text))
