"""The rows of a CSV file, one at a time, from any file that a spreadsheet or a logger may have made.

A row is never held back for a fault: it comes with what is wrong with it. Memory stays bounded,
whatever the file is. An apostrophe that keeps a cell from being a formula is none of its text.
"""

import csv
import io
from collections import deque
from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import islice
from types import MappingProxyType
from typing import BinaryIO, NamedTuple

from solver.units.typed import quoted

from .spreadsheet import as_typed

__all__ = ["LOOKED_AT", "Lines", "Row"]

SEPARATORS = ",;\t|"
LONGEST = 50_000  # characters of a line; what is beyond is not read
MOST_JOINED = 20  # lines that one quoted cell may run over
PEEKED = 4096
LOOKED_AT = 10  # rows at the top, one of which must be the headings
BOMS = ((b"\xef\xbb\xbf", "utf-8-sig"), (b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16"))


class Row(NamedTuple):
    """One row: its number as a spreadsheet counts, its cells, and what is wrong with it.

    `letters` says by column, from 0, which cells have letters that may be others.
    """

    number: int
    cells: list[str]
    broken: tuple[str, ...] = ()
    letters: Mapping[int, str] = MappingProxyType({})

    @property
    def faults(self) -> tuple[str, ...]:
        """All that is wrong with it."""
        return (*self.broken, *self.letters.values())

    @property
    def is_blank(self) -> bool:
        """Whether nothing stands in any cell."""
        return not any(cell.strip() for cell in self.cells)


class _LeftOpen(io.BufferedIOBase):
    """The bytes of a stream that is its owner's to close."""

    name = ""

    def __init__(self, stream: BinaryIO):
        self._stream = stream

    def readable(self) -> bool:
        return True

    def read(self, size: int | None = -1, /) -> bytes:
        return self._stream.read(-1 if size is None else size)

    read1 = read


class Lines:
    """The lines of a file as text, with a look ahead; then its rows, once the separator is known.

    `faults` are those of the whole file.
    """

    def __init__(self, stream: BinaryIO):
        self.faults: list[str] = []
        coding, errors = self._coding(stream)
        self._text = io.TextIOWrapper(_LeftOpen(stream), coding, errors, newline="")
        self._ahead: deque[tuple[str, str]] = deque()
        self._number = 0

    def _coding(self, stream: BinaryIO) -> tuple[str, str]:
        """How the bytes are letters, and what to do with a wrong one.

        By the mark at the start, or by zeros between the letters.
        """
        start = stream.read(PEEKED)
        stream.seek(0)
        for mark, coding in BOMS:
            if start.startswith(mark):
                # In UTF-8 a wrong letter is repaired later, cell by cell.
                kind = "surrogateescape" if coding == "utf-8-sig" else "replace"
                return coding, kind
        for first, coding in ((0, "utf-16-be"), (1, "utf-16-le")):
            if len(start) > 3 and start[first::2].count(0) > 0.4 * len(start):
                self.faults.append(
                    "The file doesn't say how its text is encoded. It was read as UTF-16. "
                    "Save it as CSV UTF-8."
                )
                return coding, "replace"
        return "utf-8", "surrogateescape"

    def peek(self, count: int) -> list[str]:
        """The next lines, which stay to be read."""
        while len(self._ahead) < count and (got := self._read()):
            self._ahead.append(got)
        return [line for line, _ in islice(self._ahead, count)]

    def head(self, known: Callable[[Sequence[str]], int]) -> tuple[str, int] | None:
        """The separator, and how many rows stand before that with most `known` headings, if any."""
        found = [
            (known(_cells_of(line, separator)[0]), -at, -SEPARATORS.index(separator))
            for at, line in enumerate(self.peek(LOOKED_AT))
            for separator in SEPARATORS
        ]
        most, at, which = max(found, default=(0, 0, 0))
        return (SEPARATORS[-which], -at) if most else None

    def _read(self) -> tuple[str, str] | None:
        """The next line, and its fault; what is beyond the longest line is passed over."""
        line = self._text.readline(LONGEST)
        if not line:
            return None
        over = 0
        while len(line) == LONGEST and line[-1] not in "\r\n":
            more = self._text.readline(LONGEST)
            over += len(more.rstrip("\r\n"))
            if not more or more[-1] in "\r\n":
                break
        if not over:
            return line, ""
        fault = f"This row is {len(line) + over:,} characters long. Only the first {LONGEST:,} are read."
        return line, fault

    def rows(self, separator: str, width: int | None = None) -> Iterator[Row]:
        """Every row that is left. `width` is how many cells the headings have.

        A cell in quotation marks may run over several lines where the row then has its width.
        """
        while got := self._ahead.popleft() if self._ahead else self._read():
            line, fault = got
            faults: tuple[str, ...] = (fault,) if fault else ()
            cells, is_open = _cells_of(line, separator)
            if is_open:
                cells, more = self._joined(line, separator, width)
                faults += more
            self._number += 1
            letters = _repaired(cells)
            yield Row(self._number, [*map(as_typed, cells)], faults, letters)

    def _joined(
        self, line: str, separator: str, width: int | None
    ) -> tuple[list[str], tuple[str, ...]]:
        """A row whose quotation mark is open at the end of its line."""
        text = line
        for used, after in enumerate(self.peek(MOST_JOINED), 1):
            text += after
            if len(text) > LONGEST:
                break
            cells, is_open = _cells_of(text, separator, strict=True)
            if not is_open:
                if width in (None, len(cells)):
                    for _ in range(used):
                        self._ahead.popleft()
                    return cells, ()
                break
        plain = csv.reader([line], delimiter=separator, quoting=csv.QUOTE_NONE)
        fault = "A quotation mark was opened and never closed. The row is read without it."
        return next(plain, []), (fault,)


class _Once:
    """Gives the csv module one line, and tells whether it asked for another: a quote is open."""

    def __init__(self, line: str):
        self.line, self.asked = line, 0

    def __iter__(self):
        return self

    def __next__(self) -> str:
        self.asked += 1
        if self.asked > 1:
            raise StopIteration
        return self.line


def _cells_of(line: str, separator: str, *, strict: bool = False) -> tuple[list[str], bool]:
    """The cells of a line, and whether a quotation mark is still open at its end.

    With `strict`, also where text follows a closing mark: then it closed nothing.

    >>> _cells_of('Pump 2,"8 in, new",12', ",")
    (['Pump 2', '8 in, new', '12'], False)
    """
    once = _Once(line)
    try:
        found = next(csv.reader(once, delimiter=separator, strict=strict), [])
    except csv.Error:
        return [], True
    return found, once.asked > 1


def _repaired(cells: list[str]) -> dict[int, str]:
    """Put letters that are not UTF-8 as older western spreadsheets write them; say where."""
    faults = {}
    for at, cell in enumerate(cells):
        if cell.isascii():
            continue
        if any("\udc80" <= mark <= "\udcff" for mark in cell):
            raw = cell.encode("utf-8", "surrogateescape")
            cells[at] = raw.decode("cp1252", "replace")
            faults[at] = (
                f"A character in column {at + 1} isn't UTF-8. It was read as {quoted(cells[at])}."
            )
        elif "\ufffd" in cell:
            faults[at] = f"A character in column {at + 1} can't be read: {quoted(cell)}."
    return faults
