"""The step that puts a set on the trainer's website."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from solver import SolverError
from workbook.trainer.course import course_at
from workbook.trainer.people import people_in
from workbook.trainer.sets.on_site import linked, page_html
from workbook.trainer.sets.set_file import SET_FILE, read_set_file
from workbook.ui.markup import Markup

from .boxes import text_box

if TYPE_CHECKING:
    from .course_panel import CoursePanel

__all__ = ["OnSite"]

NO_SITE = "Type the address of your website first, such as https://example.org/pumps/."


class OnSite:
    """A link, a QR code and a text that open a set there."""

    def __init__(self, panel: "CoursePanel"):
        self._panel = panel
        self.site = text_box("Address of your website")
        about = (
            "Makes a link, a QR code and a text that open the set on your website, with each person's own "
            "numbers. Their files come back to you, and you take them in below."
        )
        panel.add(
            "on site", "Put it on your website", about, "Make the link", self._words,
            [self.site], shows=self._linked,
        )  # fmt: skip

    def _words(self) -> Sequence[str]:
        if not (site := self.site.value.strip()):
            raise SolverError(NO_SITE)
        return ["set", self._panel.chosen(), *self._panel.course_words(), "--site", site]

    def _linked(self) -> Markup:
        name = self._panel.chosen()
        assigned = read_set_file(self._panel.course / "source" / name / SET_FILE)
        listed = people_in(course_at(self._panel.course), assigned.group)
        return page_html(linked(assigned, self.site.value, listed))
