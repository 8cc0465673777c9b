"""Setting up an exam: what it is made of, the code of another, and what was begun before."""

import secrets
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from ipywidgets import HTML, Box, Button, VBox, Widget

from solver import SolverError
from solver.fault.case import LEVELS as LEVELS_OF_CASES
from solver.sets.fault_part import FaultPart
from solver.sets.paper import ANY_LEVEL, CHAPTERS, LONGEST, MOST, SEEDS, Paper, checked, read_paper
from solver.topics.catalogue import CATALOGUE
from solver.units.show import counted
from workbook.ui.chapter_ticks import ChapterTicks
from workbook.ui.controls import (
    UNIT_CHOICES,
    Fold,
    Panel,
    button,
    chooser,
    classed,
    row,
    show,
)
from workbook.ui.entry import Entry, Gate, whole_number
from workbook.ui.markup import tag
from workbook.ui.pieces import say
from workbook.ui.static_site import in_browser

from .earlier import found_in, stands
from .elsewhere import SITE, in_address
from .mixture import NAME, Mixture
from .sitting import Sitting

__all__ = ["Earlier", "Start", "fresh"]

LEVELS = [("Any level", ANY_LEVEL), ("Level 1", 1), ("Level 2", 2), ("Level 3", 3)]
CASES = [
    ("None", ""),
    *(
        (f"{counted(n, 'case')}, level {level}", FaultPart(n, level))
        for level in LEVELS_OF_CASES
        for n in (1, 2, 3)
    ),
]
WAYS = [("Choices", True), ("Typed answers", False)]
ABOUT = (
    "An exam covers every chapter unless you choose some. You can pause it, and nothing you answer is lost. "
    "You see what was right after you turn it in."
)
ABOUT_CODE = "A code gives the same exam to anyone. Type one here."
OPEN = 3  # exams to go on with that are shown, the newest
CHOOSE = ("Choose one", None)


class Start:
    """The first view: `begin` gets a paper, and `go_on` a sitting that was begun before.

    `print_` gets a paper too, and the place where it says what came of it.
    """

    def __init__(
        self,
        panel: Panel,
        begin: Callable[[Paper], None],
        print_: Callable[[Paper, HTML], None],
        go_on: Callable[[Sitting], None],
        where: Path,
        units: str,
    ):
        self._begin = begin
        self.said, self.printed, self.code_said = HTML(say("")), HTML(say("")), HTML(say(""))
        self.earlier = Earlier(panel, where, go_on)
        self.chapters = ChapterTicks(panel, CHAPTERS, CHAPTERS)
        self.fold = Fold(panel, "Choose the chapters", self.chapters.box)
        self.level = chooser("Level", LEVELS)
        self.units = chooser("Units", UNIT_CHOICES, value=units)
        self.way = chooser("How to answer", WAYS)
        self.cases = chooser("Faults to find", CASES)
        self.gate = Gate(panel, lambda: self._with_paper(begin))
        self.count = self._number(panel, f"Questions, 1 to {MOST}", "20")
        self.minutes = self._number(panel, f"Minutes, 1 to {LONGEST}", "60")
        self.begin = button("Start this exam", self.gate.click, first=True)
        on_paper = Gate(panel, lambda: self._with_paper(lambda one: print_(one, self.printed)))
        self.mixture = Mixture(panel, where, lambda: self.count.box.value, self.gate)
        self.mixed = Fold(panel, NAME, self.mixture.box)
        if self.mixture.is_kept:
            self.mixed.toggle()
        self.print = button("Print one like this", on_paper.click)
        self.site = Entry(panel, SITE, lambda _: None, on_paper)
        show(self.site.box, not in_browser())
        self._linked, self.not_linked = in_address()
        self.linked = button("Start the exam in your link", panel.once(self._open_link), first=True)
        show(self.linked, self._linked)
        self.code = Entry(panel, "Exam code", self._open)
        self.open = button("Start the exam with this code", self.code.gate.click)
        self.box = VBox(self._parts())

    def _number(self, panel: Panel, label: str, value: str) -> Entry:
        entry = Entry(panel, label, lambda _: None, self.gate).numbers()
        entry.fill(value)
        return entry

    def _parts(self) -> list[Widget]:
        share = HTML(tag("p", ABOUT_CODE, cls="w2w-about"))
        code = row("w2w-ask", self.code.box, self.open)
        return [
            HTML(tag("p", ABOUT, cls="w2w-about")),
            self.linked,
            HTML(say("unreadable", self.not_linked) if self.not_linked else ""),
            self.earlier.box,
            row(
                "w2w-grid",
                self.count.box,
                self.minutes.box,
                self.level,
                self.units,
                self.way,
                self.cases,
            ),
            row("w2w-links", self.fold.button, self.mixed.button),
            self.fold.part,
            self.mixed.part,
            row("w2w-buttons", self.begin, self.print),
            self.site.box,
            self.said,
            self.printed,
            classed(VBox([share, code, self.code_said]), "w2w-code"),
            self.earlier.ended,
        ]

    def show(self, *sentences: str) -> None:
        """The view as it is now: what was begun before may have changed."""
        self.earlier.look()
        self.said.value = self.printed.value = self.code_said.value = say("")
        self.earlier.said.value = say("note", *sentences) if sentences else say("")

    def _with_paper(self, then: Callable[[Paper], None]) -> None:
        try:
            paper = self.paper()
        except SolverError as refusal:
            self.said.value = say("missing", str(refusal))
            return
        self.said.value = say("")
        then(paper)

    def paper(self) -> Paper:
        """A fresh paper as it is set up here.

        Raises:
            SolverError: the sentence says what to choose or type.
        """
        count = whole_number(self.count.box.value, "questions", MOST)
        minutes = whole_number(self.minutes.box.value, "minutes", LONGEST)
        chapters, level = self.chapters.chosen, self.level.value
        if shares := self.mixture.shares():
            chapters = tuple(shares)
        paper = Paper(chapters, level, self.units.value, count, minutes, self.way.value, 0)
        faults, each = self.cases.value or None, tuple(shares.values())
        self.mixture.keep()
        return checked(fresh(replace(paper, faults=faults, shares=each)))

    def _open_link(self) -> None:
        if self._linked:
            self._begin(self._linked)

    def _open(self, text: str) -> None:
        try:
            paper = read_paper(text)
        except SolverError as refusal:
            self.code_said.value = say("unreadable", str(refusal))
            return
        self.code_said.value = say("")
        self._begin(paper)


def fresh(paper: Paper) -> Paper:
    """A paper like this one with other questions."""
    return replace(paper, seed=secrets.randbelow(SEEDS), catalogue=CATALOGUE)


class Earlier:
    """Exams begun before: buttons to go on, and `ended`, a list of those whose result can be seen.

    `go_on` gets the sitting chosen.
    """

    def __init__(self, panel: Panel, where: Path, go_on: Callable[[Sitting], None]):
        self.panel, self.where, self._go_on = panel, where, go_on
        self.said, self.aside = HTML(say("")), HTML()
        self.open = VBox()
        self.buttons: list[Button] = []
        self.ended = chooser("Exams turned in", [CHOOSE], panel.safely(self._show))
        self.box = VBox([self.said, self.open, self.aside])

    def look(self) -> None:
        """Read what there is now."""
        found, strange = found_in(self.where, self.panel.clock)
        rows = [self._row(sitting) for sitting in found if not sitting.ended][:OPEN]
        self.buttons = [row.children[1] for row in rows]
        self.open.children = rows
        ended = [(_named(sitting), sitting.path) for sitting in found if sitting.ended]
        self.ended.put(None, [CHOOSE, *ended])
        show(self.ended, bool(ended))
        said = f"{counted(strange, 'exam')} can't be opened here: its file is damaged, or a newer "
        said += "version of the workbook made it. The files are still in place."
        self.aside.value = tag("p", said, cls="w2w-about") if strange else ""

    def _row(self, sitting: Sitting) -> Box:
        text = f"Started earlier: {stands(sitting)}."
        go_on = button(
            "Continue this exam", self.panel.once(lambda: self._go_on(sitting)), first=True
        )
        return row("w2w-open", HTML(tag("p", text)), go_on)

    def _show(self, path: Path | None) -> None:
        if path:
            self._go_on(Sitting(path, self.panel.clock))


def _named(sitting: Sitting) -> str:
    when = datetime.fromtimestamp(sitting.path.stat().st_mtime)
    code = sitting.path.stem.rpartition("-")[0]
    return f"{when:%Y-%m-%d %H:%M}, {sitting.paper.asked} questions, {code}"
