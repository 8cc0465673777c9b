"""The station beside the form: the place of the reading that is typed is marked in it, and told under it.

The page does it by its looks alone: no program has to answer while somebody goes from box to box.
"""

from collections.abc import Iterator

from ipywidgets import HTML, VBox, Widget

from solver.own.record import PLACES, place_of
from solver.render.taken import AT, TALL, TITLE, WIDTH, taken
from workbook.ui.controls import Fold, Panel, classed
from workbook.ui.markup import Markup, tag

__all__ = ["TakenAt", "at_its_place"]

WINDOW = (190, 170)  # px, what of the drawing is seen at once on a telephone
TAP = "Tap a box to see where its reading is taken."


def at_its_place(reading: Widget, field: str) -> None:
    """Have the box of a field mark where that is taken; page.js has a screen reader say it too."""
    if place := place_of(field):
        classed(reading, "w2w-at", f"w2w-at-{place.name}")


class TakenAt:
    """The drawing with its sentences; on a narrow page it opens under a button."""

    def __init__(self, panel: Panel):
        said = (
            tag("p", place.says, cls="w2w-where", id=f"w2w-where-{place.name}") for place in PLACES
        )
        none = tag("p", TAP, cls="w2w-where-none")
        rules = tag("style", Markup("\n".join(_rules())))
        window = tag("div", Markup(taken()), cls="w2w-window")
        drawing = tag("div", window, none, said, rules, cls="w2w-places")
        self.fold = Fold(panel, TITLE, classed(HTML(drawing), "w2w-drawn"))
        self.box = classed(VBox([self.fold.button, self.fold.part]), "w2w-taken")


def _rules() -> Iterator[str]:
    """What shows a place while a reading taken there has the focus."""
    yield ".w2w-day:has(.w2w-at :focus) .w2w-where-none { display: none; }"
    for name in (place.name for place in PLACES):
        here = f".w2w-day:has(.w2w-at-{name} :focus)"
        yield f"{here} .w2w-place-{name}, {here} #w2w-where-{name} {{ display: block; }}"
        if name in AT:
            (x, y), (wide, tall) = AT[name], WINDOW
            left, top = (
                max(0, min(at - side / 3, whole - side))
                for at, side, whole in ((x, wide, WIDTH), (y, tall, TALL))
            )
            yield f"{here} {{ --w2w-x: {-left:g}px; --w2w-y: {-top:g}px; }}"
