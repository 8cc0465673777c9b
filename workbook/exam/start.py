"""Setting up an exam: what it is made of, the code of another, and what was begun before."""

import secrets
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from ipywidgets import HTML, Box, VBox

from solver import SolverError
from solver.sets.paper import ANY_LEVEL, CHAPTERS, LONGEST, MOST, SEEDS, Paper, checked, read_paper
from solver.topics.catalogue import CATALOGUE
from workbook.ui.controls import UNIT_CHOICES, Panel, button, chooser, classed, say
from workbook.ui.entry import Entry, Gate, whole_number
from workbook.ui.ticks import ChapterTicks

from .earlier import Earlier
from .sitting import Sitting

__all__ = ["Start"]

LEVELS = [("Any level", ANY_LEVEL), ("Level 1", 1), ("Level 2", 2), ("Level 3", 3)]
WAYS = [("Choices", True), ("Typed answers", False)]
ABOUT = (
    "Choose what goes into the exam. You can pause it, and nothing you answer is lost. "
    "You see what was right after you turn it in."
)


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
        self.level = chooser("Level", LEVELS, lambda _: None)
        self.units = chooser("Units", UNIT_CHOICES, lambda _: None, units)
        self.way = chooser("How to answer", WAYS, lambda _: None)
        self.gate = Gate(panel, lambda: self._with_paper(begin))
        self.count = self._number(panel, f"Questions, 1 to {MOST}", "20")
        self.minutes = self._number(panel, f"Minutes, 1 to {LONGEST}", "60")
        self.begin = button("Start this exam", self.gate.click, first=True)
        on_paper = Gate(panel, lambda: self._with_paper(lambda one: print_(one, self.printed)))
        self.print = button("Print one like this", on_paper.click)
        self.code = Entry(panel, "Exam code", self._open)
        self.open = button("Start the exam with this code", self.code.gate.click)
        self.box = VBox(self._parts())

    def _number(self, panel: Panel, label: str, value: str) -> Entry:
        entry = Entry(panel, label, lambda _: None, self.gate)
        entry.fill(value)
        return entry

    def _parts(self) -> list:
        about = HTML(f'<h3>Practice exam</h3><p class="w2w-about">{ABOUT}</p>')
        numbers = [self.count.box, self.minutes.box, self.level, self.units, self.way]
        code = classed(Box([self.code.box, self.open]), "w2w-ask")
        share = '<p class="w2w-about">A code gives the same exam to anyone. Type one here.</p>'
        return [
            about,
            self.earlier.box,
            classed(VBox([self.chapters.box]), "w2w-wanted"),
            classed(Box(numbers), "w2w-grid"),
            classed(Box([self.begin, self.print]), "w2w-buttons"),
            self.said,
            self.printed,
            classed(VBox([HTML(share), code, self.code_said]), "w2w-code"),
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
        return checked(
            fresh(Paper(chapters, level, self.units.value, count, minutes, self.way.value, 0))
        )

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
