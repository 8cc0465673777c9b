"""The code of a problem: a short text that gives the same problem on any machine.

`BP-2U1-4821-12` is family BP, level 2, US units, edition 1, number 4821 and two check digits
(ISO 7064, MOD 97-10), which catch every mistyped character and every swap of two neighbours.
Letters may be small, the hyphens may be left out or be spaces, and O and 0, I, L and 1 are taken
for each other where a digit stands. Check digits, not a letter: a letter could be one of those.
"""

import re
from string import ascii_uppercase
from typing import NamedTuple

from .errors import BadCode

__all__ = ["MOST_SEED", "Code", "check_digits", "read_code"]

MOST_SEED = 999_999_999
_UNIT_LETTERS = {"us": "U", "si": "M"}
_UNITS = {letter: units for units, letter in _UNIT_LETTERS.items()}
_VALUES = str.maketrans({letter: f"{int(letter, 36)}" for letter in ascii_uppercase})
_ALIKE = str.maketrans("OIL", "011")
_PATTERN = re.compile(r"([A-Z]{2,4})([1-9IL])([UM])([1-9IL])([0-9OIL]{1,9})([0-9OIL]{2})")
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
        check = check_digits(f"{self.tag}{middle}{self.seed}")
        return f"{self.tag}-{middle}-{self.seed}-{check}"


def check_digits(text: str) -> str:
    """The ISO 7064 MOD 97-10 check digits of digits and capital letters.

    >>> check_digits("794")
    '44'
    """
    number = int(text.translate(_VALUES))
    return f"{98 - number * 100 % 97:02}"


def read_code(text: str) -> Code:
    """The code in a text; BadCode says what is wrong with one that cannot be read.

    >>> read_code("wp lui 7 60") == read_code("WP-1U1-7-60")
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
    tag, level, letter, revision, seed, check = (
        part if at in (0, 2) else part.translate(_ALIKE) for at, part in enumerate(match.groups())
    )
    code = Code(tag, int(level), _UNITS[letter], int(revision), int(seed))
    if str(code) != f"{tag}-{level}{letter}{revision}-{seed}-{check}":
        raise BadCode(
            f"“{shown}” has a wrong character somewhere. Compare it with the code you were given."
        )
    return code
