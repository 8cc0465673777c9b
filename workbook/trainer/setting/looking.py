"""What the form comes to: the code, all of it in sentences, and the questions of anybody."""

from collections.abc import Callable, Sequence
from html import escape

from ipywidgets import HTML, Box, VBox

from solver import SolverError
from solver.scenario import PEOPLE
from solver.sets.work_set import person_id
from workbook.trainer.assigned import Assigned
from workbook.ui.controls import Panel, button, chooser, classed, say
from workbook.ui.entry import Entry, Gate

from .preview import CARDS, LIST, preview_html

__all__ = ["Looking"]

WAYS = [("A list of the answers", LIST), ("Problems with the solutions", CARDS)]
ABOUT = "Type anyone's id, such as the one they sign in with, to see what they will get."
NOBODY = "Type a person's id to see their questions."


class Looking:
    """Buttons to see the set, and the questions of one person or of two beside each other."""

    def __init__(self, panel: Panel, gate: Gate, other_questions: Callable[[], None]):
        self.see = button("See the set", gate.click, first=True)
        self.others = button("Different questions", panel.once(other_questions))
        self.people = [
            Entry(panel, label, lambda _: None, gate)
            for label in ("As this person", "Beside this one (may be empty)")
        ]
        for entry, person in zip(self.people, PEOPLE, strict=False):
            entry.fill(person.lower())
        self.way = chooser("Shown as", WAYS, panel.safely(lambda _: self._again()))
        self.said, self.preview = HTML(say("")), classed(HTML(), "w2w-previewed")
        self.seen: Assigned | None = None
        self.box = VBox(self._parts())

    def _parts(self) -> list:
        asked = [*(entry.box for entry in self.people), self.way]
        return [
            HTML(f'<h4>See it as anyone</h4><p class="w2w-about">{ABOUT}</p>'),
            classed(Box(asked), "w2w-grid"),
            classed(Box([self.see, self.others]), "w2w-buttons"),
            self.said,
            self.preview,
        ]

    def clear(self) -> None:
        """Nothing is seen: the form has changed as a whole."""
        self.seen, self.said.value, self.preview.value = None, say(""), ""

    def refuse(self, faults: Sequence[str]) -> None:
        """Say everything that keeps the form from being a set."""
        self.clear()
        self.said.value = say("missing", *faults)

    def show(self, assigned: Assigned, sentences: Sequence[str]) -> None:
        """The code of a set, these sentences about it, and its questions."""
        code = f"<p>Code of this set: <b>{escape(assigned.work.code)}</b></p>"
        self.seen, self.said.value = assigned, say("worked", *sentences, html=code)
        self._again()

    def _again(self) -> None:
        if not self.seen:
            return
        typed = [entry.box.value for entry in self.people if entry.box.value.strip()]
        try:
            people = list(dict.fromkeys(map(person_id, typed)))
            if not people and self.seen.work.each:
                raise SolverError(NOBODY)
            shown = preview_html(self.seen.work, people or ["anybody"], self.way.value)
        except SolverError as fault:
            shown = say("missing", str(fault))
        self.preview.value = shown
