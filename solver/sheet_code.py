"""The code of a printed sheet: which set of work, which sheet, and whose; short enough to type.

    SH-4821-017-35051-92

holds a mark of the set, the number of the sheet, a mark of the set and the person together, and
two check digits. The marks are drawn from the text of the set's code and the person's id, so the
sheet of another person fits by one chance in a hundred thousand. A code begins with letters,
and none of them are those of a month, so that spreadsheets leave it as it is.

Small letters, spaces for hyphens and no hyphens at all are read too, with or without the SH.
"""

import hashlib
import re
from typing import NamedTuple

from .code import check_digits
from .errors import BadCode, SolverError

__all__ = ["MOST_SHEETS", "SheetCode", "read_sheet_code", "sheet_code"]

MOST_SHEETS = 99_999
_SETS, _PEOPLE = 9_000, 100_000  # a set's mark never begins with 0, which a spreadsheet drops
_LONGEST = 60
_DIGITS = str.maketrans("OIL", "011")
# Everything but the number has its width, so that the digits alone can be told apart.
_PATTERN = re.compile(r"(?:SH)?([1-9IL][0-9OIL]{3})([0-9OIL]{3,5})([0-9OIL]{5})([0-9OIL]{2})")
_DAMAGED = re.compile(
    r"[0-9][0-9.,]*E\+?[0-9]+|[0-9]+[.,]0*|[0-9]{1,4}[/.-][0-9]{1,2}[/.-][0-9]{1,4}( .*)?"
    r"|[0-9]{1,2}-[A-Z]{3}(-[0-9]+)?|[A-Z]{3}-[0-9]+|#.*"
)


class SheetCode(NamedTuple):
    """What a code holds; `str` writes it."""

    of_set: int
    number: int
    of_person: int

    def __str__(self) -> str:
        body = f"SH-{self.of_set}-{self.number:03}-{self.of_person:05}"
        return f"{body}-{check_digits(body.replace('-', ''))}"

    def is_of_set(self, work: str) -> bool:
        """Whether it is a sheet of the set with this code."""
        return self.of_set == _set_mark(work)

    def is_of(self, work: str, person: str) -> bool:
        """Whether it is this person's sheet of the set with this code."""
        return self.is_of_set(work) and self.of_person == _person_mark(work, person)


def sheet_code(work: str, number: int, person: str) -> SheetCode:
    """The code of sheet `number`, from 1, of the set with the code `work`, for a person's id.

    Raises:
        SolverError: there is no sheet with this number.

    >>> str(sheet_code("SET-1", 17, "ana.r"))
    'SH-3434-017-77220-54'
    """
    if not 1 <= number <= MOST_SHEETS:
        raise SolverError(f"Sheets are numbered 1 to {MOST_SHEETS:,}; got {number:,}.")
    return SheetCode(_set_mark(work), number, _person_mark(work, person))


def read_sheet_code(text: str) -> SheetCode:
    """The code in a text; BadCode says what is wrong with one that cannot be read.

    >>> read_sheet_code("sh 3434 o17 7722o 54").number
    17
    """
    shown = " ".join(text[:30].split())
    packed = re.sub(r"[\s\-\u2010-\u2015\u2212]", "", text[:_LONGEST]).upper()
    match = _PATTERN.fullmatch(packed)
    if not match or len(text) > _LONGEST:
        raise BadCode(_no_code(shown))
    of_set, number, of_person, check = (part.translate(_DIGITS) for part in match.groups())
    code = SheetCode(int(of_set), int(number), int(of_person))
    if (len(number) > 3 and number[0] == "0") or not code.number or str(code)[-2:] != check:
        raise BadCode(f"“{shown}” has a wrong character somewhere. Compare it with the sheet.")
    return code


def _no_code(shown: str) -> str:
    if not shown:
        return "No code of a sheet stands here. Type the one at the top of the sheet."
    if _DAMAGED.fullmatch(shown.upper()):
        return (
            f"“{shown}” looks like a code that a spreadsheet made a date or a number. "
            "Make the column text, then type the code again from the sheet."
        )
    return (
        f"“{shown}” is not the code of a sheet. One looks like {SheetCode(4821, 17, 35051)}; "
        "type it from the top of the sheet."
    )


def _set_mark(work: str) -> int:
    return 10_000 - _SETS + _drawn(work) % _SETS


def _person_mark(work: str, person: str) -> int:
    return _drawn(f"{work} {person}") % _PEOPLE


def _drawn(text: str) -> int:
    """A number that is the same for a text on any machine."""
    return int.from_bytes(hashlib.sha256(text.encode()).digest()[:8], "big")
