"""The set written into its course, or the reason why not; then what to do next."""

from collections.abc import Callable
from datetime import datetime
from html import escape
from pathlib import Path

from ipywidgets import HTML, Box, VBox

from workbook.trainer.assigned import Assigned
from workbook.ui.controls import Panel, button, classed, say
from workbook.ui.entry import Gate

from .keep import CannotPut, put, standing
from .words import next_steps

__all__ = ["Writing"]

ANOTHER = "To keep both, type another folder name. To replace the old one, choose Replace it."


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
        self.box = VBox([HTML("<h4>Save it</h4>"), buttons, self.said])
        self.clear()

    def clear(self) -> None:
        """Nothing was asked or said yet."""
        self._ask(None)
        self.said.value = say("")

    def _ask(self, assigned: Assigned | None) -> None:
        """Offer to replace what stands in the place of this set; None offers nothing."""
        self._asked = assigned
        self.replace.layout.display = "" if assigned else "none"

    def _write(self) -> None:
        self._ask(None)
        assigned = self._assigned()
        if assigned is None:
            self.said.value = say("missing", "Nothing was saved. What is missing is shown above.")
            return
        there = standing(self._course, assigned)
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
        steps = "".join(
            f"<li>{escape(what)}: <code>{escape(command)}</code></li>"
            for what, command in next_steps(assigned)
        )
        html = f"<p>Now, in a terminal in the folder of this course:</p><ol>{steps}</ol>"
        self.said.value = say("worked", *said, html=html)
        self._written(assigned.name)
