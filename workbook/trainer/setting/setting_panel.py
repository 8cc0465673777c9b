"""The panel on which a trainer sets work: fill in, look it over as anybody, write it or hear why not."""

import secrets
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from time import monotonic

from ipywidgets import HTML, Box, VBox

from solver.sets.paper import SEEDS
from solver.topics.catalogue import CATALOGUE
from workbook.trainer.course import CONFIG
from workbook.trainer.sets.set_file import SET_FILE, Assigned, SetFault, read_set_file
from workbook.ui.controls import Panel, button, chooser, classed, show
from workbook.ui.entry import Gate
from workbook.ui.markup import joined, tag
from workbook.ui.pieces import say

from .draft import Draft, assigned_from, draft_of
from .form import Form
from .keep import CannotPut, already_there, put, sets_in
from .plant import PlantPart
from .preview import Looking
from .summary import next_steps, summary

__all__ = ["SettingPanel"]

ANOTHER = "To keep both, type another folder name. To replace the old one, choose Replace it."
NEW = [("A new set", "")]
COURSE_PAGE = "03-the-course.ipynb"


class Writing:
    """A button that writes the set, and one that replaces what stands in its place.

    `assigned` gives the set that the form holds, or None where it has told what is in the way;
    `written` hears its name.
    """

    def __init__(
        self,
        panel: Panel,
        course: Path,
        assigned: Callable[[], Assigned | None],
        written: Callable[[str], None],
        now: Callable[[], datetime],
    ):
        self._course, self._assigned, self._written, self._now = course, assigned, written, now
        self.write = button("Save the set", Gate(panel, self._write).click, first=True)
        self.replace = button("Replace it", panel.once(self._replace))
        self._asked: Assigned | None = None
        self.said = HTML(say(""))
        buttons = classed(Box([self.write, self.replace]), "w2w-buttons")
        self.box = VBox([HTML(tag("h4", "Save it")), buttons, self.said])
        self.clear()

    def clear(self) -> None:
        """Nothing was asked or said yet."""
        self._ask(None)
        self.said.value = say("")

    def _ask(self, assigned: Assigned | None) -> None:
        """Offer to replace what stands in the place of this set; None offers nothing."""
        self._asked = assigned
        show(self.replace, assigned)

    def _write(self) -> None:
        self._ask(None)
        assigned = self._assigned()
        if assigned is None:
            self.said.value = say("missing", "Nothing was saved. What is missing is shown above.")
            return
        there = already_there(self._course, assigned)
        if there and not there.same:
            self._ask(assigned)
            self.said.value = say("notice", "Nothing was saved.", *there.says, ANOTHER)
            return
        self._put(assigned, replace=False)

    def _replace(self) -> None:
        """Only the very set that was asked about: the form may have changed since."""
        asked, assigned = self._asked, self._assigned()
        if asked is None or assigned != asked:
            self._write()
            return
        self._ask(None)
        self._put(assigned, replace=True)

    def _put(self, assigned: Assigned, *, replace: bool) -> None:
        try:
            said = put(self._course, assigned, self._now(), replace=replace)
        except CannotPut as fault:
            self.said.value = say("fault", "Nothing was saved.", str(fault))
            return
        steps = (
            tag("li", f"{what}: ", tag("code", command))
            for what, command in next_steps(assigned, self._course.absolute())
        )
        page = tag("a", "The course", cls="w2w-save", href=COURSE_PAGE)
        now = tag("p", "Now go on with the page ", page, ", or in a terminal:")
        html = joined(now, tag("ol", steps))
        self.said.value = say("worked", *said, html=html)
        self._written(assigned.name)


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
            HTML(joined(tag("h3", "Set work"), tag("p", self._where(), cls="w2w-about"))),
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
