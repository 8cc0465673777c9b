"""Boxes to tick: one with its label, a group of them, and one for each chapter."""

from collections.abc import Callable, Iterable
from html import escape

from ipywidgets import HTML, Box, Checkbox, VBox

from solver.units.show import capital

from .contents import titles
from .controls import AUTO, Panel, button, classed

__all__ = ["ChapterTicks", "group", "in_words", "tick", "titled"]


def tick(label: str, on: bool, action: Callable[[object], None]) -> Checkbox:
    """A box to tick, with its label."""
    made = Checkbox(value=on, description=label, indent=False, layout=AUTO)
    made.observe(lambda change: action(change["new"]), "value")
    return classed(made, "w2w-tick")


def group(label: str, boxes: dict, *classes: str) -> VBox:
    """Boxes under a heading."""
    head = HTML(f'<p class="w2w-want">{escape(label)}</p>')
    return VBox([head, classed(Box(list(boxes.values())), "w2w-ticks", *classes)])


def in_words(chapter: str) -> str:
    """What a chapter without a page is called."""
    return capital(chapter.replace("_", " "))


def titled(chapters: Iterable[str]) -> dict[str, str]:
    """Chapters by name, with what each is called, in the order of reading.

    A chapter that has no page yet stands last.
    """
    named = titles()
    places = {name: place for place, name in enumerate(named)}
    return {
        name: named.get(name) or in_words(name)
        for name in sorted(chapters, key=lambda name: places.get(name, len(places)))
    }


class ChapterTicks:
    """A box for each chapter, and buttons for all of them; `changed` hears once of each change."""

    def __init__(
        self,
        panel: Panel,
        names: Iterable[str],
        ticked: Iterable[str],
        changed: Callable[[], None] = lambda: None,
    ):
        self._changed, self._setting = changed, False
        ticked, heard = set(ticked), panel.safely(self._heard)
        self.boxes = {
            name: tick(label, name in ticked, heard) for name, label in titled(names).items()
        }
        self.all = button("Check every chapter", panel.once(lambda: self._tick_all(True)))
        self.none = button("Uncheck every chapter", panel.once(lambda: self._tick_all(False)))
        buttons = classed(Box([self.all, self.none]), "w2w-buttons")
        self.box = VBox([group("Chapters", self.boxes), buttons])

    @property
    def chosen(self) -> tuple[str, ...]:
        """The chapters that are ticked."""
        return tuple(name for name, box in self.boxes.items() if box.value)

    def _tick_all(self, on: bool) -> None:
        self._setting = True
        try:
            for box in self.boxes.values():
                box.value = on
        finally:
            self._setting = False
        self._changed()

    def _heard(self, _) -> None:
        if not self._setting:
            self._changed()
