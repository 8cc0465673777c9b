"""The panel on which a trainer sets work: fill in, look it over as anybody, write it."""

import secrets
from collections.abc import Callable
from datetime import datetime
from html import escape
from pathlib import Path
from time import monotonic

from ipywidgets import HTML, Box

from solver.sets.paper import SEEDS
from solver.topics.catalogue import CATALOGUE
from workbook.trainer.assigned import Assigned
from workbook.trainer.course import CONFIG
from workbook.trainer.set_file import SET_FILE, SetFault, read_set_file
from workbook.ui.controls import Panel, button, chooser, classed, say
from workbook.ui.entry import Gate

from .draft import Draft, assigned_from, draft_of
from .form import Form
from .keep import sets_in
from .looking import Looking
from .plant import PlantPart
from .words import summary
from .writing import Writing

__all__ = ["SettingPanel"]

NEW = [("A new set", "")]


def _now() -> datetime:
    return datetime.now().astimezone()


class SettingPanel(Panel):
    """Set work in the course in a folder. What the form comes to is shown only when asked for."""

    def __init__(
        self,
        course: Path,
        now: Callable[[], datetime] = _now,
        pick: Callable[[int], int] = secrets.randbelow,
        clock: Callable[[], float] = monotonic,
    ):
        super().__init__("w2w-setting", clock=clock)
        self.course, self.now, self.pick = course, now, pick
        gate = Gate(self, self.look)
        self.form = Form(self, gate)
        self.plant = PlantPart(self, lambda plant: self.form.keep(plant=plant))
        self.looking = Looking(self, gate, self._other_questions)
        self.writing = Writing(self, course, self._assigned, self._written, now)
        self.sets = chooser("Begin with", self._sets(), lambda _: None)
        self.open = button("Open it", self.once(self._open))
        self.put(
            HTML(f'<h3>Set work</h3><p class="w2w-about">{escape(self._where())}</p>'),
            classed(Box([self.sets, self.open]), "w2w-ask"), self.said,
            self.form.box, self.plant.box, self.looking.box, self.writing.box,
        )  # fmt: skip
        self._fill(Draft(seed=pick(SEEDS)))

    def _where(self) -> str:
        if (self.course / CONFIG).exists():
            return f"The course is in {self.course}."
        return (
            f"{self.course} isn't a course yet. Close this page, and type: "
            f'python3 -m workbook trainer "{self.course}"'
        )

    def _sets(self) -> list[tuple[str, str]]:
        return NEW + [(name, name) for name in sets_in(self.course)]

    def _fill(self, draft: Draft) -> None:
        self.form.fill(draft)
        self.plant.show(draft.plant)
        self.looking.clear()
        self.writing.clear()

    def _open(self) -> None:
        """The set chosen, as its file has it; or the form as it was at first."""
        name = self.sets.value
        if not name:
            self._fill(Draft(seed=self.pick(SEEDS)))
            self.said.value = say("note", "The form is back to how it started.")
            return
        try:
            assigned = read_set_file(self.course / "source" / name / SET_FILE)
        except SetFault as fault:
            self.said.value = say("missing", str(fault))
            return
        self._fill(draft_of(assigned))
        self.said.value = say("note", f"“{assigned.title}” is open. Change what you like.")

    def _assigned(self) -> Assigned | None:
        """The set that the form holds, and it is shown; or None, and what is in the way is told."""
        assigned, faults = assigned_from(self.form.draft())
        if assigned:
            self.looking.show(assigned, summary(assigned, self.now()))
        else:
            self.looking.refuse(faults)
        return assigned

    def look(self) -> None:
        """Show the set that the form holds now."""
        self.said.value = say("")
        self.writing.clear()
        self._assigned()

    def _other_questions(self) -> None:
        self.form.keep(seed=self.pick(SEEDS), catalogue=CATALOGUE)
        self.look()

    def _written(self, name: str) -> None:
        self.sets.options = self._sets()
        self.sets.value = name
