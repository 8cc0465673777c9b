"""The code of a problem: a short text that gives the same problem on any machine.

`BP-2U1-4821-K` is family BP, level 2, US units, edition 1, number 4821 and a check character
(ISO 7064, MOD 37,36), which catches a mistyped or swapped character. Letters may be small, the
hyphens may be left out or be spaces, and O and 0, I, L and 1 are taken for each other.
"""

import re
from typing import NamedTuple

from .errors import BadCode

__all__ = ["MOST_SEED", "Code", "check_character", "read_code"]

LETTERS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"
MOST_SEED = 999_999_999
_UNIT_LETTERS = {"us": "U", "si": "M"}
_UNITS = {letter: units for units, letter in _UNIT_LETTERS.items()}
_ALIKE = str.maketrans("OIL", "011")
_PATTERN = re.compile(r"([A-Z]{2,4})([1-9])([UM])([1-9])([0-9OIL]{1,9})([0-9A-Z])")
_LONGEST = 60


class Code(NamedTuple):
    """What a code holds; `str` writes it."""

    tag: str
    level: int
    units: str
    revision: int
    seed: int

    def __str__(self) -> str:
        middle = f"{self.level}{_UNIT_LETTERS[self.units]}{self.revision}"
        check = check_character(f"{self.tag}{middle}{self.seed}")
        return f"{self.tag}-{middle}-{self.seed}-{check}"


def check_character(text: str) -> str:
    """The ISO 7064 MOD 37,36 check character of digits and capital letters.

    >>> check_character("A12425GABC1234002")
    'M'
    """
    total = 36
    for letter in text:
        total = (total + LETTERS.index(letter)) % 36 or 36
        total = total * 2 % 37
    return LETTERS[(37 - total) % 36]


def read_code(text: str) -> Code:
    """The code in a text; BadCode says what is wrong with one that cannot be read.

    >>> read_code("wp 2u1 7 4") == read_code("WP-2U1-7-4")
    True
    """
    packed = re.sub(r"[\s\-\u2010-\u2015\u2212]", "", text[:_LONGEST]).upper()
    match = _PATTERN.fullmatch(packed)
    shown = " ".join(text[:30].split())
    if not match or len(text) > _LONGEST:
        raise BadCode(
            f"“{shown}” is not a problem code. A code looks like {Code('WP', 1, 'us', 1, 7)}; "
            "copy it whole."
        )
    tag, level, letter, revision, seed, check = match.groups()
    code = Code(tag, int(level), _UNITS[letter], int(revision), int(seed.translate(_ALIKE)))
    if str(code)[-1].translate(_ALIKE) != check.translate(_ALIKE):
        raise BadCode(
            f"“{shown}” has a wrong character somewhere. Compare it with the code you were given."
        )
    return code
