"""The code of a problem: a short text that gives the same problem on any machine.

`BP-2U1-4821-K` is family BP, level 2, US units, edition 1, number 4821 and a check character
(ISO 7064, MOD 37,36), which catches a mistyped or swapped character. Letters may be small, the
hyphens may be left out or be spaces, and O and 0, I, L and 1 are taken for each other.
"""

import re

from .case import Case, draw
from .errors import BadCode
from .families import FAMILIES
from .family import Family

__all__ = ["case_from_code", "code_of"]

LETTERS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"
MOST = 10**9
_UNITS = {"us": "U", "si": "M"}
_ALIKE = str.maketrans("OIL", "011")
_PATTERN = re.compile(r"([A-Z]{2,4})([1-9])([UM])([1-9])([0-9OIL]{1,9})([0-9A-Z])")
_TAGS = {family.tag: family for family in FAMILIES}


def check_character(text: str) -> str:
    """The ISO 7064 MOD 37,36 check character of letters and digits.

    >>> check_character("A12425GABC1234002")
    'M'
    """
    total = 36
    for letter in text:
        total = (total + LETTERS.index(letter)) % 36 or 36
        total = total * 2 % 37
    return LETTERS[(37 - total) % 36]


def code_of(case: Case) -> str:
    """The code of a case, with hyphens."""
    family = case.family
    middle = f"{case.level}{_UNITS[case.units]}{family.revision}"
    check = check_character(f"{family.tag}{middle}{case.seed}")
    return f"{family.tag}-{middle}-{case.seed}-{check}"


def case_from_code(text: str) -> Case:
    """The problem a code stands for; BadCode says what is wrong with one that has none."""
    packed = re.sub(r"[\s\-\u2010-\u2015\u2212]", "", text[:60]).upper()
    match = _PATTERN.fullmatch(packed)
    if not match:
        shown = text.strip()[:30]
        raise BadCode(
            f"“{shown}” is not a problem code. A code looks like {example_code()}; copy it whole."
        )
    tag, level, units, revision, seed, check = match.groups()
    seed = seed.translate(_ALIKE)
    wanted = check_character(f"{tag}{level}{units}{revision}{seed}")
    if wanted.translate(_ALIKE) != check.translate(_ALIKE):
        raise BadCode(
            f"“{text.strip()[:30]}” has a wrong character somewhere. "
            "Compare it with the code you were given."
        )
    family = _known_family(tag, int(revision), int(level))
    return draw(family, int(seed), {"U": "us", "M": "si"}[units], int(level))


def _known_family(tag: str, revision: int, level: int) -> Family:
    family = _TAGS.get(tag)
    if family is None or level > len(family.levels):
        raise BadCode(
            f"This workbook has no problem {tag} at level {level}. A newer edition may have it."
        )
    if revision != family.revision:
        raise BadCode(
            f"This code is from edition {revision} of “{family.title}”; this is edition "
            f"{family.revision}. Ask for new numbers, or for a new code."
        )
    return family


def example_code() -> str:
    """A code that works, for messages."""
    return draw(FAMILIES[0], 7).code
