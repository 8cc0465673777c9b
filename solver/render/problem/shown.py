"""What a problem's picture may say: what is given, a question mark for what is asked, and where to look."""

from collections.abc import Iterable
from dataclasses import dataclass
from html import escape

from solver.engine.case import Case
from solver.render.svg import ACCENT, INK, LOOK, PAGE, SOFT, TEXT, Look, across, element, rect, wide
from solver.units.quantity import Text, in_system
from solver.units.show import exact, figures, with_unit
from solver.vocabulary import quantity_named

__all__ = ["LEAST", "LINE", "Rows", "Shown", "words"]

Rows = tuple[tuple[str, Text], ...]  # quantities by name, with what each is called in a picture
LEAST = 330.0  # px: the narrowest that a picture is shown
SMALL = 13.0  # px: letters of a name
ASKED = 17.0  # px: a question mark
GAP = 5.0  # px between a name and its value
APART = 12.0  # px between one quantity and the next in a line
NEXT, LINE = 17.0, 19.0  # px from a caption to its value, from a line to the next
COLUMN = 4.0  # px more between two of a column


@dataclass(frozen=True)
class Shown:
    """A problem as its picture may show it.

    `marks` are the quantities to look at; with `answered`, the answer is in place of its question mark.
    What is written stands on a `halo` of the page's color, as lines may cross it.
    """

    case: Case
    marks: frozenset[str] = frozenset()
    answered: bool = False
    halo: bool = True

    def first(self, rows: Rows) -> tuple[str, Text]:
        """The first of some rows that is given or asked; the very first where none is."""
        return next((row for row in rows if self.has(row[0])), rows[0])

    def has(self, *names: str) -> bool:
        """Whether any of these is given or asked."""
        return any(name in self.case.given or name == self.case.asked for name in names)

    def asks(self, name: str) -> bool:
        """Whether this is what the problem asks."""
        return name == self.case.asked

    def works(self, *names: str) -> bool:
        """Whether any of these is given, asked or a step on the way."""
        return self.has(*names) or any(step.name in names for step in self.case.steps)

    def text(self, name: str) -> str:
        """What is given, all of it with its unit; "?" for what is asked; "" for all else."""
        unit = quantity_named(name).unit(self.case.units)
        if name in self.case.given:
            return with_unit(exact(self.case.given[name], unit), unit)
        if name != self.case.asked:
            return ""
        return with_unit(figures(self.case.answer, unit), unit) if self.answered else "?"

    def number(self, name: str) -> float | None:
        """What is given, in its unit of the system; None for what is asked or worked."""
        return self.case.given.get(name)

    def named(self, name: str) -> str:
        """A quantity's abbreviation, or its label where the trade has none."""
        quantity, units = quantity_named(name), self.case.units
        return quantity.short(units) or quantity.label(units)

    def said(self, text: Text) -> str:
        """A text as the problem's system of units says it."""
        return in_system(text, self.case.units)

    def look(self, name: str) -> str:
        """The color of a quantity's value."""
        if name in self.marks:
            return LOOK
        return ACCENT if name == self.case.asked else INK

    def note(
        self,
        share: float,
        y: float,
        name: str,
        caption: Text = "",
        anchor: str = "start",
        dx: float = 0,
        first: bool = False,
    ) -> str:
        """A quantity in one line: its caption and its value, or the value `first`; "" for neither.

        It is at a share (percent) of the width, `dx` px beside that; `y` is the foot of its letters.
        What is asked has its name before its question mark.
        """  # fmt: skip
        said, value = self.caption(name, caption, first), self.text(name)
        first = first and value != "?"
        parts = [(said, False), (value, True)] if not first else [(value, True), (said, False)]
        parts = [part for part in parts if part[0]]
        if not parts:
            return ""
        length = sum(wide(*part) for part in parts) + GAP * (len(parts) - 1)
        box = _box(length, anchor) if name in self.marks else ""
        return _placed(share, dx, y, box + _written(parts, self.look(name), anchor, self.halo))

    def stacked(
        self, share: float, y: float, name: str, caption: Text, anchor: str = "start", dx: float = 0
    ) -> str:
        """A quantity's caption, with its foot at `y`, and under it its value if it has one."""
        said, value = self.said(caption), self.text(name)
        lines = _written([(said, False)], self.look(name), anchor, self.halo)
        if value:
            below = _written([(value, True)], self.look(name), anchor, self.halo)
            lines += element("g", below, transform=f"translate(0,{NEXT:g})")
        length = max(wide(said), wide(value, True))
        box = _box(length, anchor, NEXT if value else 0) if name in self.marks else ""
        return _placed(share, dx, y, box + lines)

    def flow(
        self,
        y: float,
        rows: Iterable[tuple[str, Text]],
        share: float = 0,
        room: float = LEAST,
        dx: float = 0,
    ) -> tuple[list[str], float]:
        """Quantities one after another in as many lines as their room (px) needs, and the last line's foot.

        Each row is a quantity and its caption. Those that are not said are left out, and what is asked
        comes last. The first line's foot is at `y`; without rows it is one line up.
        """  # fmt: skip
        pieces: list[str] = []
        x, foot = 0.0, y
        said = [(name, caption) for name, caption in rows if self.has(name)]
        for name, caption in sorted(said, key=lambda row: row[0] == self.case.asked):
            length = (
                wide(self.caption(name, caption), size=SMALL) + GAP + wide(self.text(name), True)
            )
            if x and x + length > room:
                x, foot = 0.0, foot + LINE
            pieces.append(self.note(share, foot, name, caption, dx=dx + x))
            x += length + APART
        return pieces, foot if pieces else y - LINE

    def column(
        self,
        share: float,
        y: float,
        rows: Iterable[tuple[str, Text]],
        anchor: str = "start",
        dx: float = 0,
    ) -> tuple[list[str], float]:
        """Those quantities that are said, each caption over its value, and the last one's foot."""
        pieces: list[str] = []
        foot = y - LINE
        for name, caption in rows:
            if not self.has(name):
                continue
            pieces.append(self.stacked(share, foot + LINE, name, caption, anchor, dx))
            foot += 2 * NEXT + COLUMN
        return pieces, foot - COLUMN if pieces else foot

    def caption(self, name: str, caption: Text, first: bool = False) -> str:
        """What is said of a quantity beside its value; what is asked has its name and an equals sign."""
        said = self.said(caption)
        if self.text(name) != "?":
            return said
        return f"{self.named(name) if first or not said else said} ="


def words(
    share: float, y: float, text: str, anchor: str = "start", dx: float = 0, look: str = SOFT
) -> str:
    """Some words at a share (percent) of the width, `dx` px beside that."""
    return _placed(share, dx, y, _written([(text, False)], look, anchor)) if text else ""


def _placed(share: float, dx: float, y: float, drawn: str) -> str:
    return across(
        share, element("g", drawn, transform=f"translate({dx:g},0)") if dx else drawn, y=y
    )


def _written(parts: list[tuple[str, bool]], look: str, anchor: str, halo: bool = True) -> str:
    """Captions in soft letters and values in bold ones."""
    spans = []
    for number, (text, bold) in enumerate(parts):
        letters: Look = {"font_size": SMALL, "fill": SOFT if look in (INK, ACCENT) else look}
        if bold:
            letters = {"font_weight": "700", "fill": look}
        if text == "?":
            letters["font_size"] = ASKED
        if number:
            letters["dx"] = GAP
        spans.append(element("tspan", escape(text), **letters))
    edge: Look = {
        "stroke": PAGE,
        "stroke_width": 3.0,
        "stroke_linejoin": "round",
        "paint_order": "stroke",
    }
    return element("text", *spans, text_anchor=anchor, font_size=TEXT, **(edge if halo else {}))


def _box(length: float, anchor: str, more: float = 0) -> str:
    """A dashed box around a text of this length (px) whose foot is at 0, and `more` px below.

    Most browsers' letters are narrower than the widest.
    """
    length *= 0.92
    left = {"start": 0.0, "middle": -length / 2, "end": -length}[anchor]
    return rect(
        left - 5, -16, length + 10, 22 + more, rx=5, fill="none", stroke=LOOK, stroke_width=1.8,
        stroke_dasharray="4 3",
    )  # fmt: skip
