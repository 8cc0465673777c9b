"""Answers typed back from paper: a CSV file with the code of a sheet in each row, then its answers.

The first column is headed "sheet", the others by the number of their question. A column "person"
may stand between. The file may come from any spreadsheet: commas, semicolons or tabs between the
cells, decimal commas, a mark at its start, rows before the headings. No row is held back for a fault.
"""

import re
from collections.abc import Iterator, Sequence
from typing import BinaryIO, NamedTuple

from solver import SolverError
from workbook.trainer.marking.odd import plain, quoted
from workbook.ui.csv_rows import Lines, Row
from workbook.ui.spreadsheet import may_be_thousands, with_point

__all__ = ["NoSheets", "TypedFile", "TypedRow"]

SHEET = ("sheet", "code", "sheet code", "code of the sheet")
WHO = ("person", "id")
PASSED = ("name", "first name", "last name", "date", "points", "out of")  # read over, unsaid
QUESTION = re.compile(r"(?:q|question|answer|no\.?)? ?0*([1-9][0-9]?)(?:[.,]0*)?")
MONTH = "(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*"
DAMAGED = re.compile(
    rf"\d{{1,2}}[-. ]{MONTH}\.?([-. ]\d{{2,4}})?|{MONTH}[-. ]\d{{2,4}}|\d{{4}}-\d{{1,2}}-\d{{1,2}}.*"
    r"|\d{1,2}([/.-])\d{1,2}\2\d{2,4}( .*)?|#.*",
    re.IGNORECASE,
)
EITHER = "{} could have a decimal comma or a thousands comma. Type it without a comma."
SPOILT = "{} looks like an answer a spreadsheet changed. Type it again from the sheet, as text."
LONGEST = 400  # characters of a cell that are looked at; no answer that can be read has as many
WRITE = "Use the file made with the sheets, or name one column “sheet” and the others 1, 2, 3."


class NoSheets(SolverError, ValueError):
    """A file in which no headings can be found; the sentence says what to write."""


class TypedRow(NamedTuple):
    """One row: its number as a spreadsheet counts, the code and the person as typed, the answers.

    `odd` says by question why an answer cannot be read for certain; `faults` are of the whole row.
    `fits` tells whether each answer certainly stands under its own question.
    """

    row: int
    sheet: str
    who: str
    answers: dict[int, str]
    odd: dict[int, str]
    faults: tuple[str, ...] = ()
    fits: bool = True


class TypedFile:
    """A file of answers to a set of `count` questions; go through it once with `for row in file`.

    `stream` is a binary file that can be set back to its start. `messages` are of the whole file.

    Raises:
        NoSheets: it is empty, or no row near its top has a column for the code of a sheet.
    """

    def __init__(self, stream: BinaryIO, count: int):
        self.count = count
        self._lines = Lines(stream)
        head = self._lines.head(self._known)
        if head is None:
            raise NoSheets(f"No row near the top has the heading “sheet”. {WRITE}")
        self.separator, before = head
        *above, heads = (
            row for _, row in zip(range(before + 1), self._lines.rows(self.separator), strict=False)
        )
        self.messages = [*self._lines.faults, *heads.faults]
        for row in above:
            text = " ".join(filter(None, row.cells)).strip()
            if text and not text.casefold().startswith("sep="):
                self.messages.append(f"Row {row.number} comes before the headings: {quoted(text)}.")
        self._take(heads.cells)

    def _known(self, cells: Sequence[str]) -> int:
        keys = [_key(cell) for cell in cells]
        asked = sum(QUESTION.fullmatch(key) is not None for key in keys)
        return asked + 1 if set(SHEET) & set(keys) else 0

    def _take(self, heads: list[str]) -> None:
        """Which column is what."""
        self._width = len(heads)
        self._at: dict[str | int, int] = {}
        for at, cell in enumerate(heads):
            if (what := self._what(_key(cell))) is None:
                if _key(cell) and _key(cell) not in PASSED:
                    said = f"Column {quoted(cell)} isn't one of the {self.count} questions, so it isn't read."
                    self.messages.append(said)
            elif what in self._at:
                first = self._at[what] + 1
                said = (
                    f"Columns {first} and {at + 1} both are {quoted(cell)}; column {first} is read."
                )
                self.messages.append(said)
            else:
                self._at[what] = at
        lacking = [str(n) for n in range(1, self.count + 1) if n not in self._at]
        if lacking:
            noun = "question" if len(lacking) == 1 else "questions"
            self.messages.append(f"No column has the heading of {noun} {', '.join(lacking)}.")

    def _what(self, key: str) -> str | int | None:
        """ "sheet", "person" or the number of a question; None where it is neither."""
        if key in SHEET:
            return "sheet"
        if key in WHO:
            return "person"
        match = QUESTION.fullmatch(key)
        number = int(match[1]) if match else 0
        return number if 1 <= number <= self.count else None

    def __iter__(self) -> Iterator[TypedRow]:
        for row in self._lines.rows(self.separator, self._width):
            if not row.is_blank:
                yield self._row(row)

    def _row(self, row: Row) -> TypedRow:
        sheet, who = self._cell(row, "sheet"), self._cell(row, "person")
        answers: dict[int, str] = {}
        odd: dict[int, str] = {}
        for number in range(1, self.count + 1):
            text = self._cell(row, number)
            if not text:
                continue
            if self.separator != "," and may_be_thousands(text):
                odd[number] = EITHER.format(quoted(text))
            elif DAMAGED.fullmatch(text):
                odd[number] = SPOILT.format(quoted(text))
            elif self.separator != ",":
                text = with_point(text)
            answers[number] = text
        return TypedRow(row.number, sheet, who, answers, odd, self._faults(row), self._fits(row))

    def _cell(self, row: Row, what: str | int) -> str:
        """What stands in the column of this; "" where there is none."""
        at = self._at.get(what, len(row.cells))
        return row.cells[at][:LONGEST].strip() if at < len(row.cells) else ""

    def _faults(self, row: Row) -> tuple[str, ...]:
        """What is wrong with the row, but for letters in columns that are passed over."""
        read = self._at.values()
        return (*row.broken, *(said for at, said in row.letters.items() if at in read))

    def _fits(self, row: Row) -> bool:
        return not any(cell.strip() for cell in row.cells[self._width :])


def _key(cell: str) -> str:
    return " ".join(plain(cell, 80).replace("_", " ").split()).casefold()
