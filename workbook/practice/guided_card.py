"""The card that guides: the practice card with what comes next, and a sentence why."""

from html import escape

from ipywidgets import HTML, Box, VBox

from workbook.ui.controls import classed

from .guided import Guided
from .mixed_card import MixedCard

__all__ = ["GuidedCard"]

HOW = (
    "A mistake you keep making comes first. Then comes what is due, and then what is new. "
    "What you get right without help comes back later and later."
)
SHOWN = 5  # kinds named that come after this one


class GuidedCard(MixedCard):
    """One problem at a time, in the order in which they are needed."""

    practice: Guided

    def _settings(self) -> Box:
        about = HTML(f'<h4>What comes next</h4><p class="w2w-about">{HOW}</p>')
        parts = [about, self.returning, self.chapters.box, self.units, self.wanted_said]
        return classed(VBox(parts), "w2w-wanted")

    def _problem(self) -> str:
        return (
            f'<p class="w2w-why">Why this one: {escape(self.practice.why)}</p>{super()._problem()}'
        )

    def _show_returning(self) -> None:
        coming = self.practice.next
        items = "".join(
            f"<li>{escape(one.family.title)}, level {one.level} <b>({one.short})</b></li>"
            for one in coming[:SHOWN]
        )
        head = '<p class="w2w-want">Most pressing now</p>'
        self.returning.value = f"{head}<ol>{items}</ol>" if items else ""
