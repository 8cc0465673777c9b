"""A file of many pumps, read whole within bounds: which pumps, which days, what is to be known.

There are no widgets here; files.py shows what this holds.
"""

from collections.abc import Sequence
from io import BytesIO
from itertools import islice

from solver import SolverError, Unreadable
from solver.own.record import Record, by_pump
from solver.own.record.days import day_of
from solver.units.show import capital

from .reading import Message, Pump, PumpFile

__all__ = ["MOST_BYTES", "MOST_ROWS", "BadFile", "Fleet", "when"]

MOST_BYTES = 2_000_000
MOST_ROWS = 5_000
MB = 1_000_000
ELSEWHERE = "For a larger one, type python3 -m workbook record and the file's name."
Key = tuple[str, str]


class BadFile(SolverError, ValueError):
    """A file that is not read at all, and why."""


class Fleet:
    """The pumps of a CSV file, by pump and day. `messages` are of the file and of its rows.

    Raises:
        BadFile: it is too large, or has no row.
        NoHeadings: no row near its top has a heading known here.
    """

    def __init__(self, data: bytes, units: str = "us"):
        if len(data) > MOST_BYTES:
            size = f"{len(data) / MB:.1f} MB, and this page takes up to {MOST_BYTES / MB:.0f} MB"
            raise BadFile(f"The file is {size}. {ELSEWHERE}")
        file = PumpFile(BytesIO(data), units)
        pumps = list(islice(file, MOST_ROWS + 1))
        if not pumps:
            raise BadFile(
                "The file has headings but no rows under them. Add one row for each pump and day."
            )
        self.messages = [*file.messages, *[Message(file.assumed)] * bool(file.assumed)]
        if len(pumps) > MOST_ROWS:
            pumps.pop()
            self.messages.append(
                Message(f"Only the first {MOST_ROWS:,} rows were read. {ELSEWHERE}")
            )
        self.messages += [message for pump in pumps for message in pump.messages]
        self.rows = len(pumps)
        self._by_pump = _grouped(pumps)

    @property
    def pumps(self) -> list[tuple[str, Key]]:
        """Every pump: what it is called, and its key; in the order of the file."""
        return [(_called(days[0].record), key) for key, days in self._by_pump.items()]

    def years(self, key: Key) -> Sequence[Pump]:
        """Every day of one pump, in the order of the file; KeyError for another key."""
        return self._by_pump[key]

    def days(self, key: Key) -> list[tuple[str, int]]:
        """The days of one pump, the newest first: the date, and the row in the file."""
        days = sorted(self._by_pump[key], key=lambda pump: when(pump.record), reverse=True)
        return [(_dated(pump, days), pump.row) for pump in days]

    def day(self, key: Key, row: int) -> Pump:
        """One day of one pump.

        Raises:
            KeyError: there is no such pump.
            StopIteration: this row is no day of it.
        """
        return next(pump for pump in self._by_pump[key] if pump.row == row)


def _grouped(pumps: Sequence[Pump]) -> dict[Key, list[Pump]]:
    of = {id(pump.record): pump for pump in pumps}
    groups = by_pump([pump.record for pump in pumps])
    return {key: [of[id(record)] for record in records] for key, records in groups.items()}


def _called(record: Record) -> str:
    return capital(record.name)


def when(record: Record) -> float:
    """The date in years, such as 2024.5; a day without a clear date is before all others."""
    try:
        return day_of(record.texts.get("date", "")).years
    except Unreadable:
        return float("-inf")


def _dated(pump: Pump, among: Sequence[Pump]) -> str:
    """The date, and the row where that is needed to tell two apart."""
    date = pump.record.texts.get("date", "no date")
    alike = sum(other.record.texts.get("date", "no date") == date for other in among)
    return date if alike == 1 else f"{date}, row {pump.row}"
