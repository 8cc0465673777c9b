"""A box to check for each chapter."""

from collections.abc import Callable, Iterable

from ipywidgets import VBox

from .contents import titled
from .controls import Panel, button, group_of_ticks, row, tick

__all__ = ["ChapterTicks"]


class ChapterTicks:
    """A box for each chapter, and buttons for all of them; `changed` hears once of each change."""

    def __init__(
        self,
        panel: Panel,
        names: Iterable[str],
        ticked: Iterable[str],
        changed: Callable[[], None] = lambda: None,
    ):
        self._changed = changed
        on, heard = set(ticked), panel.safely(lambda _: changed())
        self.boxes = {name: tick(label, name in on, heard) for name, label in titled(names).items()}
        self.all = button("Check every chapter", panel.once(lambda: self._tick_all(True)))
        self.none = button("Uncheck every chapter", panel.once(lambda: self._tick_all(False)))
        chapters = group_of_ticks("Chapters", self.boxes)
        self.box = VBox([chapters, row("w2w-buttons", self.all, self.none)])

    @property
    def chosen(self) -> tuple[str, ...]:
        """The chapters that are checked."""
        return tuple(name for name, box in self.boxes.items() if box.value)

    def _tick_all(self, on: bool) -> None:
        for box in self.boxes.values():
            box.put(on)
        self._changed()
