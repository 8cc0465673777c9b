"""The code of a printed sheet: which set of work, which sheet, and whose; short enough to type.

    SH-4821-017-35051-NVR

holds a mark of the set, the number of the sheet, a mark of the set and the person together, and
three check letters (engine/code.py). The marks are drawn from the text of the set's code and the person's
id, so the sheet of another person fits by one chance in a hundred thousand. A code begins with
letters, and none of them are those of a month, so that spreadsheets leave it as it is.

It is read with or without its hyphens, and with or without the SH.
"""

import hashlib
import re
from typing import NamedTuple

from solver.engine.code import CHECK, DIGIT, dashed, folded, number, sealed, sealed_as_first, shown
from solver.errors import BadCode, SolverError

__all__ = ["MOST_SHEETS", "SheetCode", "read_sheet_code", "sheet_code"]

MOST_SHEETS = 99_999
_SETS, _PEOPLE = 9_000, 100_000  # a set's mark never begins with 0, which a spreadsheet drops
# Everything but the number has its width, so that the digits alone can be told apart.
_SHAPE = re.compile(  # with all its hyphens, or with none
    rf"(?:SH(?P<hyphen>-?))?(?P<set>[1-9IL]{DIGIT}{{3}})(?P<between>-?)(?P<sheet>{DIGIT}{{3,5}})"
    rf"(?P=between)(?P<person>{DIGIT}{{5}})(?P=between){CHECK}"
)
_DAMAGED = re.compile(
    r"[0-9][0-9.,]*E\+?[0-9]+|[0-9]+[.,]0*|[0-9]{1,4}[/.-][0-9]{1,2}[/.-][0-9]{1,4}( .*)?"
    r"|[0-9]{1,2}-[A-Z]{3}(-[0-9]+)?|[A-Z]{3}-[0-9]+|#.*"
)


class SheetCode(NamedTuple):
    """What a code holds; `str` writes it."""

    of_set: int
    number: int
    of_person: int

    @property
    def _parts(self) -> tuple[str, int, str, str]:
        return "SH", self.of_set, f"{self.number:03}", f"{self.of_person:05}"

    def __str__(self) -> str:
        return sealed(*self._parts)

    @property
    def as_first(self) -> str:
        """The code as version 0.1.0 wrote it."""
        return sealed_as_first(*self._parts, hyphen="")

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
    'SH-3434-017-77220-BQZ'
    """
    if not 1 <= number <= MOST_SHEETS:
        raise SolverError(f"Sheets are numbered 1 to {MOST_SHEETS:,}; you asked for {number:,}.")
    return SheetCode(_set_mark(work), number, _person_mark(work, person))


def read_sheet_code(text: str) -> SheetCode:
    """The code in a text.

    >>> read_sheet_code("sh 3434 o17 7722o 54").number
    17

    Raises:
        BadCode: the sentence says what is wrong with it.
    """
    match = _SHAPE.fullmatch(dashed(text))
    if not match or match["hyphen"] not in (None, match["between"]):
        raise BadCode(_no_code(shown(text)))
    _, of_set, _, sheet, of_person, check = match.groups()
    code = SheetCode(number(of_set), number(sheet), number(of_person))
    form = code.as_first if len(check) == 2 else str(code)
    typed = f"SH{folded(of_set + sheet + of_person + check)}"
    if not code.number or form.replace("-", "") != typed:
        raise BadCode(
            f"“{shown(text)}” has a wrong character somewhere. Compare it with the sheet."
        )
    return code


def _no_code(typed: str) -> str:
    if not typed:
        return "There is no sheet code here. Type the one at the top of the sheet."
    if _DAMAGED.fullmatch(typed.upper()):
        return (
            f"“{typed}” looks like a code that a spreadsheet made a date or a number. "
            "Make the column text, then type the code again from the sheet."
        )
    return (
        f"“{typed}” isn't the code of a sheet. A code looks like {SheetCode(4821, 17, 35051)}; "
        "type it from the top of the sheet."
    )


def _set_mark(work: str) -> int:
    return 10_000 - _SETS + _drawn(work) % _SETS


def _person_mark(work: str, person: str) -> int:
    return _drawn(f"{work} {person}") % _PEOPLE


def _drawn(text: str) -> int:
    """A number that is the same for a text on any machine."""
    return int.from_bytes(hashlib.sha256(text.encode()).digest()[:8], "big")
