"""All questions of an exam at a glance: a tile each, with its number and how it stands.

A question to come back to has a folded corner, as one folds a page, and says so.
"""

from collections.abc import Callable

from ipywidgets import HTML, Box, VBox

from workbook.ui.controls import button, classed, marked
from workbook.ui.markup import tag

from .desk import Desk

__all__ = ["Overview"]

HERE, DONE, FOLDED = "w2w-here", "w2w-done", "w2w-folded"
COME_BACK = "come back"


class Overview:
    """The tiles, each a button; `going` gives what the one of a number does."""

    def __init__(self, going: Callable[[int], Callable[[], None]]):
        self._going = going
        self.counts = HTML()
        self.tiles = classed(Box(), "w2w-tiles")
        self.box = classed(VBox([self.counts, self.tiles]), "w2w-overview")

    def fill(self, count: int) -> None:
        """Tiles for an exam of so many questions."""
        numbers = range(1, count + 1)
        self.tiles.children = [button(str(number), self._going(number)) for number in numbers]

    def show(self, desk: Desk) -> None:
        """How each question stands: its number, then a mark and a word, on a line of its own."""
        sitting = desk.sitting
        for number, tile in enumerate(self.tiles.children, 1):
            folded, here = number in sitting.flagged, number == desk.number
            mark, word = desk.state(number).split(" ", 1)
            word = COME_BACK if folded else word
            tile.description = f"{number}{', here' * here}\n{mark} {word}"
            looks = {HERE: here, DONE: number in sitting.answers, FOLDED: folded}
            for name, on in looks.items():
                marked(tile, name, on)
        answered, back = len(sitting.answers), len(sitting.flagged)
        self.counts.value = tag(
            "p", f"{answered} of {desk.count} answered, {back} to come back to."
        )
