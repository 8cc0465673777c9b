"""Steps that a trainer takes for one person, and those on paper."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from ipywidgets import Combobox

from solver import SolverError
from workbook.trainer.people import PEOPLE, listed
from workbook.ui.controls import show

from .boxes import filled, id_in, person_box, text_box, upload_box, who_is
from .sent import kept_files

if TYPE_CHECKING:
    from .course_panel import CoursePanel

__all__ = ["ByHand", "OnPaper"]


class ByHand:
    """More time for somebody or for a group, and points by hand."""

    def __init__(self, panel: "CoursePanel"):
        self._panel = panel
        self.who, self.until, self.note = (
            person_box("Person"), text_box("Until, such as 2026-12-05T18:00"), text_box("Why")
        )  # fmt: skip
        self.group = text_box("Or a whole group")
        about = "The person reads why in the feedback. It stays through every grading."
        panel.add(
            "extend", "More time", about, "Give more time", self._more_time,
            [self.who, self.group, self.until, self.note],
        )  # fmt: skip
        self.whose, self.number = person_box("Person"), text_box("Question")
        self.points, self.reason = text_box("Points"), text_box("Why")
        panel.add(
            "override", "Points by hand", about, "Give these points", self._points,
            [self.whose, self.number, self.points, self.reason],
        )  # fmt: skip
        self.refresh()

    def refresh(self) -> None:
        """Offer the people who are on the list now, and groups where there are any."""
        people = listed(self._panel.at)
        boxes: tuple[Combobox, ...] = (self.who, self.whose)
        for box in boxes:
            box.options = tuple(who_is(one) for one in people)
        show(self.group, any(one.group for one in people))

    def _more_time(self) -> Sequence[str]:
        words = ["extend", self._panel.chosen(), id_in(self.who.value), *self._panel.course_words()]
        return filled(words, ("--group", self.group), ("--due", self.until), ("--note", self.note))

    def _points(self) -> Sequence[str]:
        whose = id_in(self.whose.value)
        if not whose or not self.number.value.strip():
            raise SolverError("Choose the person and type the number of the question first.")
        return filled(
            ["override", self._panel.chosen(), whose, *self._panel.course_words()],
            ("--question", self.number), ("--points", self.points), ("--reason", self.reason),
        )  # fmt: skip


class OnPaper:
    """Sheets to print, and the answers typed from them."""

    def __init__(self, panel: "CoursePanel"):
        self._panel = panel
        about = "A sheet for everybody on the list and a key at the end, with a file to type the answers into."
        panel.add(
            "paper", "Print it on paper", about, "Make the sheets", self._sheets,
            makes=lambda: panel.sent(f"{panel.chosen()}.pdf", f"{panel.chosen()}-answers.csv"),
        )  # fmt: skip
        self.typed = upload_box("Choose the answers you typed", ".csv,.txt,.tsv")
        about = "The answers you typed from paper go to the others. Then choose Take in and grade."
        panel.add(
            "typed", "Answers from paper", about, "Take the answers in", self._answers, [self.typed]
        )

    def _common(self) -> list[str]:
        listed_in = ["--people", str(self._panel.course / PEOPLE)]
        return ["paper", self._panel.chosen(), *self._panel.course_words(), *listed_in]

    def _sheets(self) -> Sequence[str]:
        return [*self._common(), "--pdf", str(self._panel.out(f"{self._panel.chosen()}.pdf"))]

    def _answers(self) -> Sequence[str]:
        name = self._panel.chosen()
        if not self.typed.value:
            raise SolverError("Choose the file with the answers first.")
        folder = kept_files(self._panel.course, f"{name}-paper", [self.typed.value[0]])
        newest = max(folder.iterdir(), key=lambda path: path.stat().st_ctime)
        marks = str(self._panel.out(f"{name}-paper.csv"))
        return [*self._common(), "--mark", str(newest), "--keep", "--csv", marks]
