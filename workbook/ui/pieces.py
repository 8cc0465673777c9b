"""Pieces of pages that every room shows, in no widgets: what is said, tables, names, the look.

A panel shows them in a widget, a report or a printed page as they are.
"""

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from .markup import Child, Markup, joined, style, tag

if TYPE_CHECKING:
    from solver.units.quantity import Quantity

__all__ = [
    "STATES",
    "Shown",
    "asked_for",
    "css",
    "heard",
    "listed",
    "rules",
    "say",
    "state_line",
    "table",
]

STATES = {  # a mark and a word
    "right": ("✓", "Right"),
    "mistake": ("↺", "Look again"),
    "close": ("≈", "Close"),
    "wrong": ("✗", "Not yet"),
    "unreadable": ("?", "Not read"),
    "worked": ("=", "Worked out"),
    "missing": ("+", "More is needed"),
    "contradiction": ("≠", "Readings disagree"),
    "notice": ("!", "Please check"),
    "note": ("›", "Note"),
    "fault": ("!", "Something went wrong"),
}
LOOK = [Path(__file__).with_name(name) for name in ("theme.css", "look.css", "look_pages.css")]
MOST_NUMBERS = 12  # named in a sentence


def heard(text: str) -> Markup:
    """A region that a screen reader speaks and nobody sees."""
    return tag("div", text, cls="w2w-heard", role="status")


def say(
    state: str, *sentences: str, spoken: str = "", html: Markup | None = None, foot: str = ""
) -> Markup:
    """A region that a screen reader speaks: a mark, a word, then sentences.

    `spoken` is heard but not seen; `html` follows as it is; `foot` comes last, in a softer color.
    Without a state the region is empty.
    """
    if not state:
        return tag("div", cls="w2w-say", role="status", aria_live="polite")
    mark, word = STATES[state]
    parts = [
        state_line(mark, word),
        [tag("p", sentence) for sentence in sentences if sentence],
        tag("span", spoken, cls="w2w-heard") if spoken else None,
        html,
        tag("p", foot, cls="w2w-foot") if foot else None,
    ]
    return tag("div", parts, cls=f"w2w-say w2w-{state}", role="status", aria_live="polite")


def state_line(mark: str, *words: Child) -> Markup:
    """A state on a line of its own: its mark, which is not spoken, then words."""
    return tag("p", tag("span", mark, cls="w2w-mark", aria_hidden="true"), words, cls="w2w-state")


def table(
    rows: Iterable[Sequence[Child]],
    caption: str = "",
    heads: Iterable[Child] = (),
    cls: str = "w2w-givens",
) -> Markup:
    """A table whose first column names its rows; nothing where it has no rows."""
    body = [
        tag("tr", tag("th", first, scope="row"), [tag("td", cell) for cell in cells])
        for first, *cells in rows
    ]
    if not body:
        return Markup()
    top = [tag("th", head, scope="col") if head else tag("td") for head in heads]
    return tag(
        "table",
        tag("caption", caption) if caption else None,
        tag("thead", tag("tr", top)) if top else None,
        tag("tbody", body),
        cls=cls,
    )


def asked_for(quantity: "Quantity", units: str, between: str = ", in ") -> str:
    """What a quantity is called where a reader is asked for it: "brake horsepower (BHP), in hp".

    The unit is said once: "slip in rpm", and "input power, in kW" without "(kW)".
    """
    from solver.units.show import unit_in_words  # the opening page does without the solver

    unit = quantity.unit(units)
    name = quantity.label(units) if quantity.short(units) == unit else quantity.spoken(units)
    return name if quantity.says_unit(units) else f"{name}{between}{unit_in_words(unit)}"


def listed(numbers: Iterable[int | str]) -> str:
    """Numbers of questions, or names, in words.

    >>> listed([4]), listed([4, 7, 9])
    ('4', '4, 7 and 9')
    >>> listed(range(1, 20))
    '1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12 and 7 more'
    """
    parts = [str(number) for number in numbers]
    if len(parts) > MOST_NUMBERS:
        parts = [*parts[:MOST_NUMBERS], f"{len(parts) - MOST_NUMBERS} more"]
    *first, last = parts
    return f"{', '.join(first)} and {last}" if first else last


def css() -> Markup:
    """The look of everything the workbook shows, for a page that does not have it."""
    return style(*LOOK)


def rules() -> str:
    """The same as text, for pages of ours: there it comes with the page, once."""
    return "\n".join(path.read_text(encoding="utf-8") for path in LOOK)


class Shown:
    """HTML for a cell that needs no running page, and the same as plain text where HTML cannot be shown."""

    def __init__(self, html: Markup, text: str, *names: str):
        self.html, self.text = html, text
        self.names = " ".join(("w2w-panel", *names))

    def _repr_mimebundle_(self, include: object = None, exclude: object = None) -> dict[str, str]:
        html = joined(css(), tag("div", self.html, cls=self.names))
        return {"text/html": html, "text/plain": self.text}

    def __repr__(self) -> str:
        return self.text
