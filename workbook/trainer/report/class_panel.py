"""The page of a class: a set chosen and marked, and how the class did, with names or without.

The parts of the report stand under each other: headings, sentences, pictures, points, wide tables.
"""

from collections.abc import Callable, Sequence
from pathlib import Path
from time import monotonic
from urllib.parse import quote

from ipywidgets import HTML, Box, VBox, Widget

from solver import SolverError
from solver.units.show import counted
from workbook.figures import LOOK, Beside, View, table_html
from workbook.trainer.course import SEND
from workbook.trainer.sets.set_file import SET_FILE
from workbook.trainer.setting.keep import sets_in
from workbook.trainer.terminal import in_terminal
from workbook.ui.controls import Panel, button, chooser, classed, show, tick
from workbook.ui.markup import Child, Markup, joined, tag
from workbook.ui.pages import chapters, titles
from workbook.ui.pieces import say
from workbook.ui.saving import link

from .files import FILES
from .gathered import Gathered, gathered
from .sections import Pictured, Point, Section, report
from .words import LOW

__all__ = ["ClassPanel"]

FEW = 4  # columns that a telephone has room for
UNDERS = [(f"Under {under:.0%} of the points", under) for under in (0.5, 0.6, 0.7, 0.8)]
TOLD_EVERY = 2  # seconds
NO_SETS = "There is no set in this course yet. Make one on the page “Set work”."
ABOUT = (
    "It grades what was turned in again each time, by your own copy of the set, and writes nothing. "
    "Points you gave by hand count here too."
)


class Parts:
    """The parts of a report under each other; a picture is drawn anew only where it has changed."""

    def __init__(self) -> None:
        self.box = VBox()
        self._pictures: dict[str, Beside] = {}

    def show(self, sections: Sequence[Section]) -> None:
        """Show these parts in place of those before."""
        parts = [HTML(LOOK)]
        for section in sections:
            parts.append(HTML(joined(tag("h3", section.title), _lines(section.lines))))
            if section.pictured:
                parts.append(self._picture(section.title, section.pictured))
            if section.points:
                parts.append(HTML(_points(section.points)))
            if section.table:
                parts.append(classed(HTML(_table(section.table)), "w2w-numbers"))
        self.box.children = parts

    def _picture(self, title: str, pictured: Pictured) -> Widget:
        beside = self._pictures.setdefault(title, Beside("w2w-wide"))
        beside.show(*pictured)
        return beside.box


def _lines(lines: Sequence[str]) -> Markup:
    return joined(tag("p", line) for line in lines)


def _points(points: Sequence[Point]) -> Markup:
    files = {chapter.title: chapter.file for chapter in chapters()}
    named = titles()
    items = (_point(point, named.get(point.chapter, ""), files) for point in points)
    return tag("ol", items, cls="w2w-flaws")


def _point(point: Point, title: str, files: dict[str, str]) -> Markup:
    where: Child = title or point.chapter
    if title in files:
        where = tag("a", where, cls="w2w-save", href=quote(files[title]), target="_blank")
    return tag("li", tag("b", point.head), _lines(point.lines), tag("p", "Chapter: ", where))


def _table(table: View) -> Markup:
    """A table; one of many columns is moved sideways on a narrow screen, by keyboard too."""
    shown = table_html(table, table.headline)
    if len(table.columns) <= FEW:
        return tag("div", shown, cls="w2w-reasons")
    return tag(
        "div",
        shown,
        cls="w2w-across",
        tabindex=0,
        role="region",
        aria_label=table.headline,
        # Without it arrow keys would go to JupyterLab's cells.
        data_lm_suppress_shortcuts=True,
    )


def _newest(course: Path, names: Sequence[str]) -> str | None:
    """The set that was written last, which is most often the one to see."""
    files = {name: course / "source" / name / SET_FILE for name in names}
    return max(files, key=lambda name: files[name].stat().st_mtime, default=None)


def _by_name(names: Sequence[str]) -> list[tuple[str, str]]:
    """Sets to choose from, each under its own name."""
    return [(name, name) for name in names]


class ClassPanel(Panel):
    """How the class of a course did in one of its sets; it changes only when asked to."""

    def __init__(self, course: Path, clock: Callable[[], float] = monotonic):
        super().__init__("w2w-class", clock=clock)
        self.course = course
        self.found: Gathered | None = None
        names = sets_in(course)
        self.sets = chooser("Set", _by_name(names), value=_newest(course, names))
        self.see = button("Grade and show", self.once(self.look), first=True)
        self.hidden = tick("No names", False, self.safely(lambda _: self._show()))
        self.low = chooser("Needs help", UNDERS, self.safely(lambda _: self._show()), LOW)
        self.parts, self.saves, self.line = Parts(), HTML(), HTML()
        self.save = button("Make files to save", self.once(self._save))
        self.keep = VBox(
            [HTML(tag("h3", "Keep it")), classed(Box([self.save]), "w2w-buttons"), self.saves]
        )
        self.put(
            HTML(joined(tag("h3", "The class"), tag("p", ABOUT, cls="w2w-about"))),
            classed(Box([self.sets, self.low, self.hidden]), "w2w-grid"),
            classed(Box([self.see]), "w2w-buttons"), self.said, self.line, self.parts.box, self.keep,
        )  # fmt: skip
        self._show()
        if not self.sets.options:
            self.said.value = say("note", NO_SETS)

    def look(self) -> None:
        """Mark what was handed in for the set chosen, and show how it went."""
        chosen, names = self.sets.value, sets_in(self.course)
        if _by_name(names) != list(self.sets.options):
            self.sets.options = _by_name(names)
            self.sets.value = chosen if chosen in names else _newest(self.course, names)
        if not self.sets.value:
            self.said.value = say("note", NO_SETS)
            return
        try:
            found = gathered(self.course, self.sets.value, self._step())
        except SolverError as fault:
            self.said.value = say("missing", str(fault))
            return
        self.found = found
        self.said.value = say("worked", f"{counted(found.marked, 'sheet')} graded.")
        self._show()

    def _step(self) -> Callable[[int, int], None]:
        """What tells how far it is, now and then."""
        told = monotonic()

        def step(done: int, of: int) -> None:
            nonlocal told
            if monotonic() - told > TOLD_EVERY:
                told = monotonic()
                self.said.value = say("note", f"{done:,} of {counted(of, 'sheet')} graded so far.")

        return step

    def _show(self) -> None:
        """What was found, with names or without."""
        found = self.found
        self.saves.value = self.line.value = ""
        show(self.keep, found and found.facts.people)
        if found:
            hidden, low = self.hidden.value, self.low.value
            notes = found.notes(hidden)
            self.line.value = in_terminal(
                self._words(found.assigned.name, ["--low", f"{low * 100:.0f}"])
            )
            title = found.assigned.title
            self.parts.show(report(found.facts, title, notes, hidden=hidden, low=low))

    def _words(self, name: str, more: Sequence[str]) -> list[str]:
        """The words of the command that shows this set as it is shown here, with more of them."""
        hidden = ["--no-names"] * self.hidden.value
        return ["class", name, "--course", str(self.course.absolute()), *hidden, *more]

    def _save(self) -> None:
        if self.found is None:
            return
        name, told, hidden = self.found.assigned.name, self.found.facts, self.hidden.value
        made = [one for one in FILES if one.name != "cases" or told.ways]
        links = [
            link(one.says, f"{name}-{one.name}.csv", "text/csv", one.made(told, hidden))
            for one in made
        ]
        folder = self.course.absolute() / SEND
        folder.mkdir(exist_ok=True)
        files = ((f"--{one.name}", str(folder / f"{name}-{one.name}.csv")) for one in made)
        line = in_terminal(self._words(name, [word for pair in files for word in pair]))
        names = (
            "They have no names in them."
            if hidden
            else "They have people's ids in them: keep them safe."
        )
        items = (tag("li", each) for each in links)
        self.saves.value = joined(tag("ul", items, cls="w2w-saves"), tag("p", names), line)
