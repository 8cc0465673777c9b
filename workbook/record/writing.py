"""Writing what came of many pumps, one after another: CSV, JSON, and a page of text for each.

A file appears under its name only when it is whole.
"""

import contextlib
import json
import re
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

from solver import SolverError
from solver.own.record import ALWAYS, FIELDS, Examined
from workbook.ui.saving import whole_text
from workbook.ui.spreadsheet import CODING, csv_of, row_writer

from .data import flat_headings, flat_row, pump_json
from .headings import heading_of
from .page import page_text
from .reading import Pump, PumpFile

__all__ = [
    "CannotWrite",
    "Write",
    "csv_writer",
    "json_writer",
    "page_name",
    "pages_writer",
    "template",
]

Write = Callable[[Pump, Examined], None]
UNSAFE = re.compile(r"[^\w.-]+")
LONGEST_NAME = 80


class CannotWrite(SolverError):
    """Why a result cannot be written, and what to do."""


def template(units: str) -> bytes:
    """A CSV with every heading and no row, to be filled in."""
    return csv_of([[heading_of(field, units) for field in FIELDS]])


@contextlib.contextmanager
def csv_writer(path: Path, units: str, kept: Sequence[str]) -> Iterator[Write]:
    """One row for each pump: all its readings, what was worked, and the state of each.

    It can be read in again. `kept` are the names of columns that are passed on as they stand.
    """
    with whole_text(path, CODING, newline="") as file:
        write = row_writer(file)
        write(flat_headings(units, kept))
        yield lambda pump, examined: write(flat_row(pump, examined, kept))


@contextlib.contextmanager
def json_writer(path: Path, pumps: PumpFile) -> Iterator[Write]:
    """Everything about each pump at full precision, one pump a line in one list."""
    with whole_text(path) as file:
        said = [*map(str, pumps.messages), *filter(None, [pumps.assumed])]
        head = {"units": pumps.units, "always": ALWAYS, "messages": said}
        file.write(json.dumps(head, ensure_ascii=False)[:-1] + ', "records": [')
        before = "\n"

        def write(pump: Pump, examined: Examined) -> None:
            nonlocal before
            file.write(before + json.dumps(pump_json(pump, examined), ensure_ascii=False))
            before = ",\n"

        yield write
        file.write("\n]}\n")


def pages_writer(folder: Path) -> Write:
    """A page of text for each pump, in a folder that is made where it is not there."""
    folder.mkdir(parents=True, exist_ok=True)

    def write(pump: Pump, examined: Examined) -> None:
        path = folder / page_name(pump, "txt")
        with whole_text(path) as file:
            file.write(page_text(examined, pump.messages))

    return write


def page_name(pump: Pump, ending: str) -> str:
    """A name for a page, which no other row has: row, station, pump and date."""
    texts = pump.record.texts
    said = "-".join(filter(None, (texts.get(name) for name in ("station", "pump", "date"))))
    plain = UNSAFE.sub("-", said)[:LONGEST_NAME].strip("-.") or "pump"
    return f"{pump.row:05d}-{plain}.{ending}"
