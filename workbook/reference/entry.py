"""What can be looked up: an entry, the part of the reference it is in, and finding entries by words.

Each word wanted must begin a word of an entry's label, symbol, unit, reason or source.
"""

import re
import unicodedata
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from solver.units.show import counted
from workbook.ui.markup import Markup, joined, tag

__all__ = [
    "RAISED",
    "TRY",
    "Entry",
    "Part",
    "find",
    "folded",
    "long",
    "plain",
    "said",
    "with_source",
]

LONGEST = 100  # characters that are looked for
TRY = "Try one short word: a quantity such as head, a unit such as gpm, or a source such as NEMA."
RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")
_APART = re.compile(r"[\s(),;:|\"“”=]+")


def plain(text: str) -> str:
    """Text as it is searched: one case, one form of each letter, its words parted by a space.

    >>> plain("Flow (m³/h),  NEMA MG 1")
    'flow m3/h nema mg 1'
    """
    folded = unicodedata.normalize("NFKC", text).casefold()
    return _APART.sub(" ", folded).strip()


@dataclass(frozen=True)
class Entry:
    """`html` makes what is shown, open or folded; `words` is all that it is found by."""

    words: str
    html: Callable[[bool], Markup]


@dataclass(frozen=True)
class Part:
    """A part that opens by itself. `make` gives its entries in "us" or "si" units.

    `noun` is what one entry is called; `about` is said once, above them. Where there is no
    `mathematics` in it, a dollar sign is only one.
    """

    title: str
    noun: str
    make: Callable[[str], Iterable[Entry]]
    about: str = ""
    mathematics: bool = False

    def entries(self, units: str) -> tuple[Entry, ...]:
        """What stands in it; made once for each system."""
        return _made(self, units)

    def html(self, entries: Iterable[Entry], opened: bool = False) -> Markup:
        """These entries as a list."""
        items = (tag("li", entry.html(opened)) for entry in entries)
        about = tag("p", self.about) if self.about else None
        return joined(about, tag("ul", items, cls="w2w-entries"))


Found = Mapping[Part, Sequence[Entry]]


@cache
def _made(part: Part, units: str) -> tuple[Entry, ...]:
    return tuple(part.make(units))


def with_source(source: str) -> Markup:
    """Where something is from; a table says so in its own words."""
    said = source if "ource: " in source else f"Source: {source}"
    return tag("div", said, cls="w2w-source mathjax_ignore")


def folded(head: str, body: Markup, opened: bool) -> Markup:
    """HTML under a head that opens it."""
    return tag("details", tag("summary", head), body, open=opened)


def long(value: float, digits: int = 10) -> str:
    """A number with all its figures; a very large or very small one by a power of ten.

    >>> long(3956.044), long(0.00006309), long(1.212e12)
    ('3,956.044', '6.309 × 10⁻⁵', '1.212 × 10¹²')
    """
    if value == 0 or 1e-4 <= abs(value) < 1e10:
        return f"{value:,.{digits}g}" if abs(value) < 10**digits else f"{value:,.0f}"
    number, _, power = f"{value:.{digits - 1}e}".partition("e")
    return f"{float(number):.{digits}g} × 10{str(int(power)).translate(RAISED)}"


def find(parts: Sequence[Part], units: str, wanted: str) -> Found:
    """The entries of each part that have all the words wanted; parts without one are left out."""
    words = _words(wanted)
    found = {part: [e for e in part.entries(units) if _has(e, words)] for part in parts}
    return {part: entries for part, entries in found.items() if entries}


def _words(wanted: str) -> list[str]:
    return plain(wanted[:LONGEST]).split()


def _has(entry: Entry, words: Sequence[str]) -> bool:
    text = f" {entry.words}"
    return all(f" {word}" in text for word in words)


def said(parts: Sequence[Part], units: str, wanted: str, found: Found) -> tuple[str, ...]:
    """How many were found; or that none was, what each word finds alone, and what to try."""
    shown = " ".join(wanted[:LONGEST].split())
    total = sum(map(len, found.values()))
    if total:
        return (f"“{shown}”: {total:,} found, in {counted(len(found), 'part')}.",)
    alone = [_alone(parts, units, word) for word in dict.fromkeys(_words(wanted))]
    each = f"Alone: {', '.join(alone)}." if len(alone) > 1 else ""
    return (f"Nothing here has “{shown}”.", each, TRY)


def _alone(parts: Sequence[Part], units: str, word: str) -> str:
    return f"“{word}” is in {sum(map(len, find(parts, units, word).values())):,}"
