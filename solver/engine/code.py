"""The code of a problem: a short text that gives the same problem on any machine.

`BP-2U1-4821-NTS` is family BP, level 2, US units, revision 1, number 4821 and three check letters
(codec.py). The hyphens may be left out, all of them.
"""

import re
from functools import lru_cache
from typing import NamedTuple

from solver.errors import BadCode

from .codec import (
    CHECK,
    DIGIT,
    SYSTEMS,
    UNIT_LETTERS,
    dashed,
    folded,
    number,
    sealed,
    sealed_as_first,
    shown,
)

__all__ = ["MOST_SEED", "Code", "as_written_now", "read_code"]

MOST_SEED = 999_999_999
_SHAPE = re.compile(  # with all its hyphens, or with none
    rf"([A-Z]{{2,4}})(-?)([1-9IL])([UM])([1-9IL])\2({DIGIT}{{1,9}})\2{CHECK}"
)
_WRONG = "has a wrong character somewhere. Compare it with the code you were given."


class Code(NamedTuple):
    """What a code holds; `str` writes it."""

    tag: str
    level: int
    units: str
    revision: int
    seed: int

    @property
    def _parts(self) -> tuple[str, str, int]:
        return self.tag, f"{self.level}{UNIT_LETTERS[self.units]}{self.revision}", self.seed

    def __str__(self) -> str:
        return sealed(*self._parts)

    @property
    def as_first(self) -> str:
        """The code as version 0.1.0 wrote it.

        >>> Code("BP", 2, "us", 1, 4821).as_first
        'BP-2U1-4821-12'
        """
        return sealed_as_first(*self._parts, hyphen="")


def read_code(text: str) -> Code:
    """The code in a text; BadCode says what is wrong with one that cannot be read.

    >>> read_code("wp lui 7 60") == read_code("WP-1U1-7-60") == Code("WP", 1, "us", 1, 7)
    True
    """
    match = _SHAPE.fullmatch(dashed(text))
    if not match:
        raise BadCode(
            f"“{shown(text)}” isn't a problem code. A code looks like "
            f"{Code('WP', 1, 'us', 1, 7)}; copy it whole."
        )
    tag, _, level, units, revision, seed, check = match.groups()
    code = Code(tag, number(level), SYSTEMS[units], number(revision), number(seed))
    form = code.as_first if len(check) == 2 else str(code)
    if form.replace("-", "") != f"{tag}{folded(level)}{units}{folded(revision + seed + check)}":
        raise BadCode(f"“{shown(text)}” {_WRONG}")
    return code


@lru_cache(maxsize=4096)
def as_written_now(text: str) -> str:
    """The code of a problem as it is written now, where version 0.1.0 wrote it; else the text.

    >>> as_written_now("BP-2U1-4821-12") == str(read_code("BP-2U1-4821-12"))
    True
    """
    if not text[-1:].isdecimal():
        return text
    try:
        return str(read_code(text))
    except BadCode:
        return text
