"""Why a person must look at what was handed in, said shortly, whatever was handed in."""

from collections.abc import Iterable

__all__ = ["plain", "quoted", "told"]

MOST = 4  # sentences; a spoilt sheet could give thousands
LONGEST = 200  # characters of an answer that are kept; no answer that can be read is as long


def plain(text: str, longest: int = LONGEST) -> str:
    """A text in one line of printable letters, which every file and gradebook can hold."""
    line = " ".join(text[: 2 * longest].split())
    piece = line if len(line) <= longest else line[: longest - 1] + "…"
    if piece.isprintable():
        return piece
    return "".join(mark if mark.isprintable() else "?" for mark in piece)


def quoted(text: str) -> str:
    """A short piece of what was got.

    >>> quoted("ana\\x00"), quoted("x" * 50)[-3:]
    ('“ana?”', 'x…”')
    """
    return f"“{plain(text, 40)}”"


def told(reasons: Iterable[str]) -> str:
    """The reasons, each once; of many the first, and how many there are more.

    >>> told(["One.", "Two.", "One."])
    'One. Two.'
    """
    each = list(dict.fromkeys(reasons))
    if len(each) > MOST:
        each = [*each[:MOST], f"There are {len(each) - MOST:,} more reasons like these."]
    return " ".join(each)
