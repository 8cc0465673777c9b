"""One thing to look up, and the part of the reference it stands in."""

import re
import unicodedata
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cache
from html import escape

__all__ = ["RAISED", "Entry", "Part", "folded", "long", "plain", "with_source"]

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
    html: Callable[[bool], str]


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

    def html(self, entries: Iterable[Entry], opened: bool = False) -> str:
        """These entries as a list."""
        about = f"<p>{escape(self.about)}</p>" if self.about else ""
        items = "".join(f"<li>{entry.html(opened)}</li>" for entry in entries)
        return f'{about}<ul class="w2w-entries">{items}</ul>'


@cache
def _made(part: Part, units: str) -> tuple[Entry, ...]:
    return tuple(part.make(units))


def with_source(source: str) -> str:
    """Where something is from; a table says so in its own words."""
    said = source if "ource: " in source else f"Source: {source}"
    return f'<div class="w2w-source mathjax_ignore">{escape(said)}</div>'


def folded(head: str, body: str, opened: bool) -> str:
    """HTML under a head that opens it."""
    return f"<details{' open' * opened}><summary>{head}</summary>{body}</details>"


def long(value: float, digits: int = 10) -> str:
    """A number with all its figures; a very large or very small one by a power of ten.

    >>> long(3956.044), long(0.00006309), long(1.212e12)
    ('3,956.044', '6.309 × 10⁻⁵', '1.212 × 10¹²')
    """
    if value == 0 or 1e-4 <= abs(value) < 1e10:
        return f"{value:,.{digits}g}" if abs(value) < 10**digits else f"{value:,.0f}"
    number, _, power = f"{value:.{digits - 1}e}".partition("e")
    return f"{float(number):.{digits}g} × 10{str(int(power)).translate(RAISED)}"
