"""The parts that a problem's view is put together from: an answer, help, a code, what to choose.

Each makes its widgets and shows what a practice holds; a card puts those it needs under each other.
The question and what becomes of an answer are HTML, of view.py.
"""

from collections.abc import Callable, Sequence
from typing import Protocol

from ipywidgets import HTML, Box, VBox, Widget

from solver import Case, Verdict
from solver.render.text import step_texts
from solver.vocabulary import quantity_named
from workbook.ui.answer import Answer
from workbook.ui.controls import (
    UNIT_CHOICES,
    Panel,
    button,
    chooser,
    classed,
    link,
    opens,
    row,
    show,
)
from workbook.ui.entry import Entry
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import heard, say

from .practice import Practice
from .view import answer_label, hints_html, in_one_line, picture_html, steps_html

__all__ = ["Choosers", "Choosing", "Code", "Drawing", "Help", "Steps", "answering", "ask"]

SHOW, HIDE = "Show the steps", "Hide the steps"
ABOUT_CODE = "Share this code, or type another one to open its problem."


def ask(
    answer: Answer, case: Case, choices: Sequence[str] = (), text: str = "", head: str = ""
) -> None:
    """Ask a problem, with these choices where its own are not to be asked; `head` comes first."""
    shown = choices or case.choices
    number = not shown and quantity_named(case.asked).usual(case.units)[0] >= 0
    answer.ask(f"{head}{answer_label(case, len(shown))}", shown, number, text, case.ordered)


def answering(answer: Answer, links: Widget, said: HTML) -> Box:
    """The place for an answer, what else may be pressed, and what is said of the answer."""
    return row("w2w-answering", answer, links, classed(said, "w2w-told"))


class Drawing:
    """The place for the picture of a problem, between the question and the answer."""

    def __init__(self, case: Case | None = None):
        self.box = classed(HTML(), "w2w-drawn")
        if case:
            self.show(case)

    def show(self, case: Case, verdict: Verdict | None = None) -> None:
        """The picture as it is asked; with a verdict, what is right or the place to look at in it."""
        self.box.value = picture_html(case, verdict)

    def clear(self) -> None:
        """No picture."""
        self.box.value = ""


class Steps:
    """The worked solution, a step at a time or whole. `whole` is called when every step is shown."""

    def __init__(self, panel: Panel, whole: Callable[[], object] = lambda: None):
        self._whole = whole
        self.shown = HTML()
        self.next = button("Next step", panel.once(self._next))
        self.rest = link("All steps", panel.once(lambda: self._show(len(self.case.steps))))
        self.buttons = row("w2w-buttons", self.next, self.rest)
        self.box = VBox([self.shown, self.buttons])

    def begin(self, case: Case, count: int = 0) -> None:
        """The first steps of a problem, none at first."""
        self.case, self.count = case, 0
        self._show(count)

    def _next(self) -> None:
        self._show(self.count + 1)

    def _show(self, count: int) -> None:
        case, new = self.case, self.case.steps[self.count : count]
        self.count = count
        whole = count == len(case.steps)
        line = in_one_line(case) if whole else Markup()
        texts = [step_texts(step, case.known, case.given, case.units) for step in new]
        said = ". ".join(part.rstrip(".") for text in texts for part in text if part)
        self.shown.value = joined(steps_html(case, count), line, heard(said)) if count else ""
        show(self.buttons, not whole)
        if whole:
            self._whole()


class Help:
    """Hints one by one, and the steps of the solution: two buttons, and a place for what they show."""

    def __init__(self, panel: Panel, practice: Practice):
        self._practice, self._said = practice, panel.said
        self.more = link("Hint", panel.once(self._hint))
        self.worked = opens(link(SHOW, panel.once(self._reveal)), False)
        self.hints, self.steps = HTML(), Steps(panel, self._seen)
        self.box = VBox([self.hints, self.steps.box])
        self.show(practice)

    def show(self, practice: Practice, steps: bool = False) -> None:
        """The hints given so far of the present problem, and with `steps` those of its solution."""
        self._practice = practice
        self.worked.description = HIDE if steps else SHOW
        opens(self.worked, steps)
        self.hints.value = "" if steps else hints_html(practice)
        show(self.steps.box, steps)
        if steps:
            self.steps.begin(practice.case, 1)

    def _hint(self) -> None:
        if self._practice.hint():
            self.show(self._practice)
        else:
            self._note("That was the last hint. Put in your numbers, or open the steps.")

    def _reveal(self) -> None:
        opening = self.worked.description == SHOW
        if opening:
            self._practice.peek()
        self.show(self._practice, opening)

    def _seen(self) -> None:
        if fault := self._practice.reveal():
            self._note(fault)

    def _note(self, sentence: str) -> None:
        self._said.value = say("note", sentence)


class Code:
    """The code of the present problem, to share; another one typed in its place is opened."""

    def __init__(self, panel: Panel, open_: Callable[[str], None]):
        self.entry, self.said = Entry(panel, "Problem code", open_), HTML()
        self.go = button("Open this code", self.entry.gate.click)
        about = HTML(tag("p", ABOUT_CODE, cls="w2w-about"))
        asked = row("w2w-ask", self.entry.box, self.go)
        self.box = classed(VBox([about, asked, self.said]), "w2w-code")

    def show(self, code: str) -> None:
        """A problem with this code has come."""
        self.entry.fill(code)
        self.said.value = say("")


class Choosing(Protocol):
    """What a card lets its learner choose, in a `box` that opens by this name."""

    name: str
    box: Widget

    def show(self, practice: Practice) -> None:
        """As it is now: a problem has come, or an answer was checked."""


class Choosers:
    """Lists of kinds, levels and units; `choose` takes one of them by its name in Practice.choose."""

    name = "Other kinds"

    def __init__(self, panel: Panel, practice: Practice, choose: Callable[..., None]):
        self.kind = chooser(
            "Kind of problem", practice.kinds, panel.safely(lambda kind: choose(kind=kind))
        )
        self.level = chooser(
            "Level", _named(practice.levels), panel.safely(lambda level: choose(level=level))
        )
        self.units = chooser("Units", UNIT_CHOICES, panel.safely(lambda units: choose(units=units)))
        self.box = row("w2w-settings", self.kind, self.level, self.units)

    def show(self, practice: Practice) -> None:
        """What the present problem is, and all there is to choose from."""
        self.kind.put(practice.kind, practice.kinds)
        self.level.put(practice.level, _named(practice.levels))
        self.units.put(practice.units)


def _named(levels: range) -> list[tuple[str, int]]:
    return [(str(level), level) for level in levels]
