"""Pumps from a CSV file, one at a time: each row a record, with a message for each fault in it."""

from collections.abc import Iterator
from dataclasses import replace
from typing import BinaryIO, NamedTuple

from solver import SolverError
from solver.own.record import Field, Record, read_entries
from solver.units.typed import quoted
from workbook.ui.csv_rows import LOOKED_AT, Lines, Row
from workbook.ui.spreadsheet import may_be_thousands, with_point

from .headings import KEPT, Column, columns, known_headings

__all__ = ["Message", "NoHeadings", "Pump", "PumpFile"]

NAMES = {"pump", "station"}
TEMPLATE = "For a file with every heading, type python3 -m workbook record --template."


class NoHeadings(SolverError, ValueError):
    """A file in which no row of headings can be found."""


class Message(NamedTuple):
    """What is to be known of one place in a file; no row means the whole file."""

    says: str
    row: int | None = None
    column: str = ""

    def __str__(self):
        where = f"Row {self.row}" if self.row else ""
        if self.column:
            where += f"{', c' if where else 'C'}olumn “{self.column}”"
        return f"{where}: {self.says}" if where else self.says


class Pump(NamedTuple):
    """One row of the file: the record in it, and what is to be said of it."""

    row: int
    record: Record
    messages: tuple[Message, ...]


class PumpFile:
    """A CSV file of pumps, open for reading; go through it once with `for pump in file`.

    `stream` is a binary file that can be set back to its start. `messages` are those of the whole
    file: its coding, its headings. `columns` are its columns, `kept` names the columns that are no field here.

    Raises:
        NoHeadings: it is empty, or no row near its top has a heading known here.
    """

    def __init__(self, stream: BinaryIO, units: str = "us"):
        self.units = units
        self._lines = Lines(stream)
        self.separator, before = self._find_headings()
        self.messages: list[Message] = []
        for _, row in zip(range(before), self._lines.rows(self.separator, 0), strict=False):
            self._say_before(row)
        head = next(self._lines.rows(self.separator))
        self.columns = columns(head.cells, units)
        self._say_of_columns(head)
        self._comma_said = False
        self._rows = self._lines.rows(self.separator, len(head.cells))

    @property
    def kept(self) -> list[str]:
        """The names of columns that are kept as they stand."""
        plain = (column for column in self.columns if not (column.field or column.made))
        return [column.name for column in plain if column.heading and column.name != KEPT]

    @property
    def assumed(self) -> str:
        """What unit bare numbers count in where no heading says it and the systems differ."""
        silent = [
            f"{field.label} in {column.unit}"
            for column in self.columns
            if column.assumed and (field := column.field) and field.unit("us") != field.unit("si")
        ]
        system = {"us": "US", "si": "metric"}[self.units]
        said = f"Numbers without a unit are read in {system} units: {', '.join(silent)}."
        return said if silent else ""

    def __iter__(self) -> Iterator[Pump]:
        for row in self._rows:
            if not row.is_blank:
                yield self._pump(row)

    def _find_headings(self) -> tuple[str, int]:
        """The separator, and how many rows stand before the headings."""
        if found := self._lines.head(known_headings):
            return found
        first = "".join(self._lines.peek(LOOKED_AT)).strip().partition("\n")[0].strip()
        if not first:
            raise NoHeadings(f"The file is empty. {TEMPLATE}")
        raise NoHeadings(
            f"None of the first rows has a heading this record knows. The file begins with {quoted(first)}. {TEMPLATE}"
        )

    def _say_before(self, row: Row) -> None:
        text = " ".join(filter(None, row.cells)).strip()
        if text and not text.casefold().startswith("sep="):
            says = f"This row comes before the headings and isn't used: {quoted(text)}."
            self.messages.append(Message(says, row.number))

    def _say_of_columns(self, head: Row) -> None:
        self.messages[:0] = [Message(fault) for fault in self._lines.faults]
        self.messages += [Message(fault, head.number) for fault in head.faults]
        for column in self.columns:
            if column.fault:
                self.messages.append(Message(column.fault, head.number, column.name))
        if any(column.made for column in self.columns):
            self.messages.append(
                Message(
                    "The result columns in this file are skipped and calculated again.", head.number
                )
            )
        self._named = bool(NAMES & {c.field.name for c in self.columns if c.field})
        if not self._named:
            self.messages.append(Message("No column gives the pump or its station.", head.number))

    def _pump(self, row: Row) -> Pump:
        """What one row holds: its entries read, all else kept, and what is to be said."""
        messages = [Message(fault, row.number) for fault in row.faults]
        entries: dict[str, str] = {}
        held: dict[str, str] = {}  # by field: what cannot be read, as it may be two numbers
        others: dict[str, str] = {}
        for at, cell in enumerate(row.cells):
            column = (
                self.columns[at] if at < len(self.columns) else Column(at, "", f"column {at + 1}")
            )
            if field := column.field:
                entries[field.name], says = self._plain(cell, field)
                if says:
                    messages.append(Message(says, row.number, column.name))
                    if not entries[field.name]:
                        held[field.name] = cell
            elif cell.strip() and not column.made:
                others[column.name] = cell
                if not column.heading:
                    says = f"This cell has no heading. {quoted(cell)} is kept but not used."
                    messages.append(Message(says, row.number, column.name))
        lacking = sum(bool(c.heading) and not c.made for c in self.columns[len(row.cells) :])
        if lacking:
            says = f"This row ends early: {lacking} of its cells count as not measured."
            messages.append(Message(says, row.number))
        record, more = self._read(entries, row)
        messages += more
        unread = {**record.unread, **held}
        return Pump(row.number, replace(record, unread=unread, others=others), tuple(messages))

    def _read(self, entries: dict[str, str], row: Row) -> tuple[Record, list[Message]]:
        fields = {column.field.name: column for column in self.columns if column.field}
        written_in = {name: column.unit for name, column in fields.items() if column.unit}
        record, faults = read_entries(entries, self.units, written_in)
        messages = [Message(fault.says, row.number, fields[fault.field].name) for fault in faults]
        if self._named and not NAMES & record.texts.keys():
            messages.append(Message("This row doesn't name a pump.", row.number))
        return record, messages

    def _plain(self, cell: str, field: Field) -> tuple[str, str]:
        """A number with a decimal comma, where commas do not part the cells; else as it stands.

        With it, what is to be said. Nothing is left of one that may be thousands as well.
        """
        if self.separator != ";" or field.is_text or "," not in cell:
            return cell, ""
        if may_be_thousands(cell):
            says = f"{quoted(cell)} could have a decimal comma or a thousands comma. Type it without a comma."
            return "", says
        plain = with_point(cell)
        if plain == cell or self._comma_said:
            return plain, ""
        self._comma_said = True
        return plain, f"Commas are decimal points here: {quoted(cell)} is read as {quoted(plain)}."
