"""Mixtures by a name of their own, as text: one line each, to keep several and to send them.

    Grade 2: head 30, wet well 20
    Collections, entry level: wet well 40, mains 30, order 10

What stands before the colon is the name; what follows it is read as the shares of a single mixture are
(shares.py). A line that begins with # is a remark.
"""

from collections.abc import Mapping
from difflib import get_close_matches
from types import MappingProxyType

from solver.errors import SolverError
from solver.topics.catalogue import CHAPTERS

from .shares import NOTHING, read_shares, shares_text

__all__ = [
    "LONGEST_NAME",
    "Mixtures",
    "mixture_named",
    "mixture_of",
    "mixtures_text",
    "read_mixtures",
]

Mixtures = Mapping[str, Mapping[str, int]]  # shares of the chapters, by the name of the mixture
LONGEST_NAME = 40
SUCH = "Grade 2: head 30, wet well 20"
NONE_KEPT: Mixtures = MappingProxyType({})


def mixtures_text(mixtures: Mixtures) -> str:
    """The lines for these mixtures; one without a name is its shares alone.

    >>> mixtures_text({"Grade 2": {"head": 30, "wet_well": 20}})
    'Grade 2: head 30, wet well 20'
    """
    lines = (
        f"{name}: {shares_text(shares)}" if name else shares_text(shares)
        for name, shares in mixtures.items()
    )
    return "\n".join(lines)


def read_mixtures(text: str, called: Mapping[str, str] = NOTHING) -> dict[str, dict[str, int]]:
    """The mixtures in a text, by their names; one that has no name stands alone, under "".

    `called` has other names of chapters.

    >>> read_mixtures("Grade 1: head 1\\nGrade 2: head 3, wet well 2")
    {'Grade 1': {'head': 1}, 'Grade 2': {'head': 3, 'wet_well': 2}}
    >>> read_mixtures("head: 30, wet well: 20")
    {'': {'head': 30, 'wet_well': 20}}

    Raises:
        SolverError: the sentence says what was got, in which line, and what to write.
    """
    lines = [
        line for line in text.splitlines() if line.strip() and not line.lstrip().startswith("#")
    ]
    if not any(_name_of(line, called) for line in lines):
        return {"": read_shares("\n".join(lines), called)}
    found: dict[str, dict[str, int]] = {}
    for at, line in enumerate(lines, 1):
        where = f"Line {at}: " if len(lines) > 1 else ""
        name = _name_of(line, called)
        if not name:
            raise SolverError(f"{where}It has no name. Write it like this: {SUCH}.")
        if len(name) > LONGEST_NAME:
            raise SolverError(
                f"{where}The name is longer than {LONGEST_NAME} characters. Make it shorter."
            )
        if _plain(name) in map(_plain, found):
            raise SolverError(
                f"{where}“{name}” is there twice. Give each mixture a name of its own."
            )
        try:
            found[name] = read_shares(line.partition(":")[2], called)
        except SolverError as fault:
            raise SolverError(f"{where}{fault}") from None
    return found


def mixture_named(name: str, kept: Mixtures) -> str:
    """The name of a kept mixture as it is written, for one typed in any case; "" where there is none."""
    return next((one for one in kept if _plain(one) == _plain(name)), "")


def mixture_of(
    text: str, kept: Mixtures = NONE_KEPT, called: Mapping[str, str] = NOTHING
) -> dict[str, int]:
    """The shares that a text gives: the name of a kept mixture, a line with a name, or a line without.

    >>> mixture_of("grade 2", {"Grade 2": {"head": 30}}), mixture_of("Grade 1: head 5")
    ({'head': 30}, {'head': 5})

    Raises:
        SolverError: it is none of these, or more than one mixture.
    """
    if name := mixture_named(text, kept):
        return dict(kept[name])
    if text.strip() and ":" not in text and not any(map(str.isdecimal, text)):
        raise SolverError(_unknown(text, kept))
    try:
        found = read_mixtures(text, called)
    except SolverError as fault:
        near = get_close_matches(_plain(text), map(_plain, kept), n=1, cutoff=0.8)
        raise SolverError(_unknown(text, kept) if near else str(fault)) from None
    if len(found) > 1:
        raise SolverError(
            f"These are {len(found)} mixtures: {', '.join(found)}. Leave only one of them."
        )
    (shares,) = found.values()
    return shares


def _unknown(text: str, kept: Mixtures) -> str:
    there = (
        f"The kept ones are {', '.join(f'“{name}”' for name in kept)}." if kept else "None is kept."
    )
    return (
        f"There is no mixture “{' '.join(text[:LONGEST_NAME].split())}”. {there} Or write the shares: "
        "head 30, wet well 20."
    )


def _name_of(line: str, called: Mapping[str, str]) -> str:
    """The name in front of a line of shares; "" where there is no colon, or shares or a chapter in front of it."""
    name, colon, _ = line.partition(":")
    chapters = {_plain(one) for one in (*CHAPTERS, *called)}
    shares = any(
        _reads(one, called) for one in (line, name.partition(",")[0], name.partition(";")[0])
    )
    return " ".join(name.split()) if colon and _plain(name) not in chapters and not shares else ""


def _reads(text: str, called: Mapping[str, str]) -> bool:
    try:
        return bool(read_shares(text, called))
    except SolverError:
        return False


def _plain(name: str) -> str:
    return " ".join(name.replace("_", " ").casefold().split())
