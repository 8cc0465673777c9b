"""Finding entries by words: each must begin a word of the label, symbol, unit, reason or source."""

from collections.abc import Mapping, Sequence

from solver.units.show import counted

from .entry import Entry, Part, plain

__all__ = ["TRY", "Found", "find", "said"]

LONGEST = 100  # characters that are looked for
TRY = "Try one short word: a quantity such as head, a unit such as gpm, or a source such as NEMA."

Found = Mapping[Part, Sequence[Entry]]


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
