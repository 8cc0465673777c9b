"""Codes: how any is typed, written and checked, and the code of a problem.

A problem, an exam, a set of work and a printed sheet have codes. Each is groups of digits and
capital letters with hyphens between them, and ends in three check letters. These are the remainder
of the whole text, its hyphens too, read as one number in a base above every sign's value, by a
prime: so one sign in another's place, or two neighbors swapped, always gives other letters, and any
other slip does but for one chance in twelve thousand.

Letters may be small, and a space may stand for a hyphen. No other sign is left out or put in, for
that would make one slip out of another. O counts as 0, and I and L as 1, where a
digit belongs; none of the three is a check letter. Version 0.1.0 wrote two check digits instead
(ISO 7064, MOD 97-10), which are read too; no slip in a code of one kind gives one of the other.

`BP-2U1-4821-NTS` is family BP, level 2, US units, revision 1, number 4821 and three check letters.
The hyphens of a problem's code may be left out, all of them.
"""

import re
from functools import lru_cache
from string import ascii_uppercase, digits
from typing import NamedTuple

from solver.errors import BadCode

__all__ = [
    "CHECK",
    "DIGIT",
    "MOST_SEED",
    "UNITS_BY_LETTER",
    "UNIT_LETTERS",
    "WRONG",
    "Code",
    "as_written_now",
    "check_digits",
    "check_letters",
    "dashed",
    "folded",
    "number",
    "opened",
    "read_code",
    "sealed",
    "sealed_as_first",
    "shown",
    "written",
]

UNIT_LETTERS = {"us": "U", "si": "M"}
UNITS_BY_LETTER = {letter: units for units, letter in UNIT_LETTERS.items()}
DIGIT = "[0-9OIL]"  # a digit, or a letter that looks like one
_ALIKE = str.maketrans("OIL", "011")
_LETTERS = "".join(letter for letter in ascii_uppercase if letter not in "OIL")
CHECK = f"([{_LETTERS}]{{3}}|{DIGIT}{{2}})"  # at the end of a code: as it is, or as it was first
_SIGNS = {sign: value for value, sign in enumerate(f"-{digits}{ascii_uppercase}", 1)}
_BASE, _PRIME = 59, 12_163  # a primitive root, and the greatest prime below 23 ** 3
_AS_NUMBERS = str.maketrans({letter: f"{int(letter, 36)}" for letter in ascii_uppercase})
WRONG = "has a wrong character somewhere. Compare it with the original."
_LONGEST = 1000  # signs; the code of a set of work may name many families
MOST_SEED = 999_999_999
_SHAPE = re.compile(  # with all its hyphens, or with none
    rf"([A-Z]{{2,4}})(-?)([1-9IL])([UM])([1-9IL])\2({DIGIT}{{1,9}})\2{CHECK}"
)
_WRONG = "has a wrong character somewhere. Compare it with the code you were given."


def check_letters(text: str) -> str:
    """The check letters of digits, capital letters and hyphens.

    >>> check_letters("BP-2U1-4821"), check_letters("BP-2U1-4812")
    ('NTS', 'NRD')
    """
    rest = 0
    for sign in text:
        rest = (rest * _BASE + _SIGNS[sign]) % _PRIME
    first, rest = divmod(rest, len(_LETTERS) ** 2)
    return "".join(_LETTERS[at] for at in (first, *divmod(rest, len(_LETTERS))))


def check_digits(text: str) -> str:
    """The check digits of version 0.1.0, of digits and capital letters.

    >>> check_digits("794")
    '44'
    """
    return f"{98 - int(text.translate(_AS_NUMBERS)) * 100 % 97:02}"


def sealed(*parts: object) -> str:
    """Parts as one code.

    >>> sealed("BP", "2U1", 4821)
    'BP-2U1-4821-NTS'
    """
    body = "-".join(map(str, parts))
    return f"{body}-{check_letters(body)}"


def sealed_as_first(*parts: object, hyphen: str = "Z") -> str:
    """Parts as one code of version 0.1.0, in whose check digits a hyphen counted as this.

    >>> sealed_as_first("EXAM", 33, "2U", 20, 60, "C", 1, 48213)
    'EXAM-33-2U-20-60-C-1-48213-92'
    """
    body = "-".join(map(str, parts))
    return f"{body}-{check_digits(body.replace('-', hyphen))}"


def dashed(text: str) -> str:
    """What was typed, in capitals and with a hyphen for each space or dash.

    >>> dashed(" bp–2u1 4821 - nts ")
    'BP-2U1-4821-NTS'
    """
    if len(text) > _LONGEST:
        return ""
    single = re.sub(r"\s([-\u2010-\u2015\u2212])\s", r"\1", text.strip())
    return re.sub(r"[\s\-\u2010-\u2015\u2212]", "-", single).upper()


def folded(text: str) -> str:
    """Text with the digits that its letters look like.

    >>> folded("48ZI")
    '48Z1'
    """
    return text.translate(_ALIKE)


def number(text: str) -> int:
    """The number in digits, or in letters that look like some."""
    return int(folded(text))


def shown(text: str) -> str:
    """The start of what was typed, for a sentence."""
    return " ".join(text[:40].split())


def opened(text: str, shape: re.Pattern[str], kind: str) -> re.Match[str]:
    """What was typed, held against the shape of a code, whose seal is whole.

    `kind` is what the code is of, with its article.

    Raises:
        BadCode: the sentence says what is wrong.
    """
    match = shape.fullmatch(dashed(text))
    start = shape.pattern.partition("-")[0]
    if not match:
        raise BadCode(
            f"“{shown(text)}” isn't the code of {kind}. That begins with {start}; copy it whole."
        )
    body, _, check = written(match).rpartition("-")
    if check not in (check_letters(body), check_digits(body.replace("-", "Z"))):
        raise BadCode(f"“{shown(text)}” {WRONG}")
    return match


def written(match: re.Match[str]) -> str:
    """What was typed, as it is written: with digits, but in the group `tags` and at the start."""
    whole = match[0]
    if "tags" not in match.re.groupindex or not match["tags"]:
        return _folded_after_start(whole)
    first, last = match.span("tags")
    return _folded_after_start(whole[:first]) + whole[first:last] + folded(whole[last:])


def _folded_after_start(text: str) -> str:
    start, hyphen, rest = text.partition("-")
    return f"{start}{hyphen}{folded(rest)}"


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
    """The code in a text.

    Raises:
        BadCode: it cannot be read, or its check letters do not fit; the sentence says which.

    >>> read_code("wp lui 7 60") == read_code("WP-1U1-7-60") == Code("WP", 1, "us", 1, 7)
    True
    """
    match = _SHAPE.fullmatch(dashed(text))
    if not match:
        raise BadCode(
            f"“{shown(text)}” isn't a problem code. A code looks like "
            f"{Code('WP', 1, 'us', 2, 7)}; copy it whole."
        )
    tag, _, level, units, revision, seed, check = match.groups()
    code = Code(tag, number(level), UNITS_BY_LETTER[units], number(revision), number(seed))
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
