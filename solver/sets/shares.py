"""Shares of the chapters, as one line of text that anyone can keep, send and change.

    head 30, wet well 20, electricity 10

Shares are whole numbers from 1 to 99. Only how large they are beside each other counts: of 60 questions,
30, 20 and 10 come from these chapters. Where they don't come out even, each chapter has the whole part of
what is due to it, and the questions left over go where most of one is missing (the largest remainder).
A kind of certificate and a grade are a mixture and a level, set by whoever knows that exam; none is named here.
"""

import re
from collections.abc import Mapping, Sequence
from difflib import get_close_matches
from types import MappingProxyType

from solver.engine.code import DIGIT, number
from solver.errors import SolverError
from solver.topics.catalogue import CHAPTERS

__all__ = [
    "IN_CODE",
    "MOST_SHARE",
    "counts_of",
    "in_code",
    "read_shares",
    "shares_in",
    "shares_text",
]

MOST_SHARE = 99
IN_CODE = rf"(?:-S(?P<shares>(?:{DIGIT}{{2}})+))?"
SUCH = "head 30, wet well 20"
NOTHING: Mapping[str, str] = MappingProxyType({})
_PIECES = re.compile(r"(?<=\d)\s*%?\s*[,;\n]+\s*")  # a chapter's name may have a comma
_PIECE = re.compile(r"(?:\d+\.\s*)?(\D+?)[\s:=]*(\d{1,9})\s*%?", re.DOTALL)


def counts_of(total: int, shares: Sequence[int]) -> list[int]:
    """How many of so many questions each share gets; of equal remainders, the first.

    >>> counts_of(20, [30, 20, 10]), counts_of(2, [1, 1, 1])
    ([10, 7, 3], [1, 1, 0])
    """
    whole = sum(shares)
    counts = [total * share // whole for share in shares]
    left = [total * share % whole for share in shares]
    for at in sorted(range(len(shares)), key=lambda at: -left[at])[: total - sum(counts)]:
        counts[at] += 1
    return counts


def in_code(shares: Sequence[int]) -> str:
    """The shares as a code has them.

    >>> in_code([30, 5])
    'S3005'
    """
    return f"S{''.join(f'{share:02}' for share in shares)}"


def shares_in(piece: str | None) -> tuple[int, ...]:
    """The shares in the piece of a code that IN_CODE found; without one, none.

    >>> shares_in("3005"), shares_in(None)
    ((30, 5), ())
    """
    return tuple(number(pair) for pair in re.findall("..", piece or ""))


def shares_text(shares: Mapping[str, int]) -> str:
    """The line for these shares.

    >>> shares_text({"head": 30, "wet_well": 20})
    'head 30, wet well 20'
    """
    return ", ".join(f"{_plain(name)} {share}" for name, share in shares.items())


def read_shares(text: str, called: Mapping[str, str] = NOTHING) -> dict[str, int]:
    """The share of each chapter in such a line, or in several; `called` has other names of chapters.

    >>> read_shares("Head: 30%; wet well 20")
    {'head': 30, 'wet_well': 20}

    Raises:
        SolverError: the sentence says what was got and what to write.
    """
    names = {_plain(name): name for name in CHAPTERS}
    names |= {_plain(title): name for title, name in called.items()}
    found: dict[str, int] = {}
    for piece in filter(None, _PIECES.split(text.strip().rstrip(".,;% "))):
        match = _PIECE.fullmatch(piece)
        if not match:
            raise SolverError(
                f"“{_short(piece)}” isn't a chapter and its share. Write them like this: {SUCH}."
            )
        name, share = names.get(_plain(match[1])), int(match[2])
        if name is None:
            near = get_close_matches(_plain(match[1]), names, n=1, cutoff=0.5)
            meant = f"Did you mean “{near[0]}”?" if near else f"One is “{next(iter(names))}”."
            raise SolverError(f"There is no chapter “{_short(match[1])}”. {meant}")
        if name in found:
            raise SolverError(f"“{_short(match[1])}” is there twice. Write one share for it.")
        if not 1 <= share <= MOST_SHARE:
            raise SolverError(
                f"The share of “{_short(match[1])}” is {share}. Write a whole number from 1 to "
                f"{MOST_SHARE}, or leave the chapter out."
            )
        found[name] = share
    if not found:
        raise SolverError(f"There are no shares here. Write them like this: {SUCH}.")
    return {name: found[name] for name in CHAPTERS if name in found}


def _plain(name: str) -> str:
    return " ".join(name.replace("_", " ").casefold().split())


def _short(text: str) -> str:
    return " ".join(text[:40].split())
