"""Exams that were begun before: those to go on with, and those whose result can be seen again."""

from collections.abc import Callable
from datetime import datetime
from html import escape
from pathlib import Path

from ipywidgets import HTML, Box, VBox

from solver import SolverError
from solver.units.show import counted
from workbook.ui.controls import Panel, button, chooser, classed, say

from .clock import duration
from .lines import sittings
from .sitting import Sitting

__all__ = ["Earlier"]

OPEN = 3  # exams to go on with that are shown, the newest
LOOKED_AT = 40  # files that are read
CHOOSE = ("Choose one", None)


class Earlier:
    """Buttons to go on, and a list of what is handed in; `go_on` gets the sitting chosen."""

    def __init__(self, panel: Panel, where: Path, go_on: Callable[[Sitting], None]):
        self.panel, self.where, self._go_on, self._setting = panel, where, go_on, False
        self.said, self.aside = HTML(say("")), HTML()
        self.open, self.buttons = VBox(), []
        self.ended = chooser("Exams turned in", [CHOOSE], panel.safely(self._show))
        self.box = VBox([self.said, self.open, self.ended, self.aside])

    def look(self) -> None:
        """Read what there is now."""
        found, strange = [], 0
        for path in sittings(self.where)[:LOOKED_AT]:
            try:
                found.append(Sitting(path, self.panel.clock))
            except (SolverError, OSError):
                strange += 1
        rows = [self._row(sitting) for sitting in found if not sitting.ended][:OPEN]
        self.buttons = [row.children[1] for row in rows]
        self.open.children = rows
        self._list([sitting for sitting in found if sitting.ended])
        said = f"{counted(strange, 'exam')} can't be opened here: its file is damaged, or a newer "
        said += "version of the workbook made it. The files are still in place."
        self.aside.value = f'<p class="w2w-about">{said}</p>' if strange else ""

    def _row(self, sitting: Sitting) -> Box:
        left = max(sitting.left, 0)
        time = f"{duration(left)} left" if left else "time is up"
        text = (
            f"Started earlier: {sitting.paper.count} questions, "
            f"{len(sitting.answers)} answered, {time}."
        )
        go_on = button(
            "Continue this exam", self.panel.once(lambda: self._go_on(sitting)), first=True
        )
        return classed(Box([HTML(f"<p>{escape(text)}</p>"), go_on]), "w2w-open")

    def _list(self, ended: list[Sitting]) -> None:
        self._setting = True
        try:
            self.ended.options = [CHOOSE, *((_named(one), one.path) for one in ended)]
            self.ended.value = None
        finally:
            self._setting = False
        self.ended.layout.display = "" if ended else "none"

    def _show(self, path: Path | None) -> None:
        if path and not self._setting:
            self._go_on(Sitting(path, self.panel.clock))


def _named(sitting: Sitting) -> str:
    when = datetime.fromtimestamp(sitting.path.stat().st_mtime)
    return f"{when:%Y-%m-%d %H:%M}, {sitting.paper.count} questions, {sitting.path.stem.rpartition('-')[0]}"
