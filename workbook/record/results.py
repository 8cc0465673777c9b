"""What came of pumps, to keep: one pump as JSON and as a row of CSV; many written one after another.

A file of many appears under its name only when it is whole. To write another form of a record,
make a `Write` and add it to `_writers` in command.py, with its option in workbook/commands.py.
"""

import contextlib
import json
import re
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Any

from solver import SolverError
from solver.own.record import ALWAYS, CHECKS, FIELDS, Examined, Finding
from solver.render.text import given_json, steps_json
from solver.vocabulary import quantity_named
from workbook.ui.saving import whole_text
from workbook.ui.spreadsheet import CODING, csv_of, row_writer

from .findings import page_text
from .headings import KEPT, MADE, STATE, WORKED, heading_of
from .reading import Pump, PumpFile

__all__ = [
    "CannotWrite",
    "Write",
    "as_csv",
    "as_json",
    "csv_writer",
    "flat_row",
    "json_writer",
    "page_name",
    "pages_writer",
    "pump_json",
    "template",
]

Write = Callable[[Pump, Examined], None]
UNSAFE = re.compile(r"[^\w.-]+")
LONGEST_NAME = 80


class CannotWrite(SolverError):
    """Why a result cannot be written, and what to do."""


def pump_json(pump: Pump, examined: Examined) -> dict[str, Any]:
    """Everything about one record, at full precision, each value beside its unit."""
    record = examined.record
    return {
        "row": pump.row,
        "name": record.name,
        "units": record.units,
        "texts": dict(record.texts),
        "readings": given_json(record.values, record.units),
        "at_top_of_range": sorted(record.over),
        "unread": dict(record.unread),
        "kept": dict(record.others),
        "messages": [str(message) for message in pump.messages],
        "state": examined.state,
        "findings": [_finding_json(one, record.units) for one in examined.findings],
        "contradictions": list(examined.contradictions),
        "unusual": list(examined.notices),
        "check_next": list(examined.next_checks),
        "cautions": list(examined.cautions),
        "not_measured": list(examined.not_measured),
        "always": examined.always,
    }


def _finding_json(found: Finding, units: str) -> dict[str, Any]:
    verdict = found.verdict
    return {
        "name": found.name,
        "topic": found.check.topic,
        "label": found.check.label(units),
        "quantity": found.check.find,
        "value": found.value,
        "unit": found.unit,
        "state": verdict.state,
        "says": verdict.says,
        "limit": verdict.limit,
        "source": verdict.source,
        "check_next": verdict.then,
        "steps": steps_json(found.steps, found.known, found.given, units),
        "missing": [list(way) for way in found.missing],
    }


def _headings(units: str, kept: Sequence[str]) -> list[str]:
    """The headings of the CSV: the fields as in the template, each check, then what was kept."""
    checks = []
    for check in CHECKS:
        unit = quantity_named(check.find).unit(units)
        worked = f"{WORKED}{check.label(units)}" + f" ({unit})" * bool(unit)
        checks += [worked, f"{STATE}{check.label(units)}"]
    fields = [heading_of(field, units) for field in FIELDS]
    return [MADE[0], *fields, *checks, *MADE[1:], KEPT, *kept]


def flat_row(pump: Pump, examined: Examined, kept: Sequence[str]) -> list[str]:
    """One record under `_headings`; what could not be read stands as it was typed."""
    record, cells = examined.record, [str(pump.row)]
    for field in FIELDS:
        if field.name in record.unread:
            cells.append(record.unread[field.name])
        elif field.is_text:
            cells.append(record.texts.get(field.name, ""))
        else:
            cells.append(_number(record.values.get(field.name), field.name in record.over))
    found = {one.name: one for one in examined.findings}
    for check in CHECKS:
        one = found.get(check.name)
        cells += [_number(one.value), one.state] if one else ["", ""]
    rest = {name: text for name, text in record.others.items() if name not in kept}
    return [
        *cells,
        examined.state,
        " ".join(examined.next_checks),
        " ".join(examined.contradictions),
        " ".join(examined.notices),
        "; ".join(examined.not_measured),
        " ".join(str(message) for message in pump.messages),
        examined.always,
        "; ".join(f"{name}: {text}" for name, text in rest.items()),
        *(record.others.get(name, "") for name in kept),
    ]


def _number(value: float | None, over: bool = False) -> str:
    """A number with all its figures and no thousands parted, so that it reads in again."""
    return "" if value is None else ">" * over + repr(value).removesuffix(".0")


def as_csv(pump: Pump, examined: Examined) -> bytes:
    """The record in one row, with all that was worked; it can be read in again."""
    kept = list(examined.record.others)
    return csv_of([_headings(examined.record.units, kept), flat_row(pump, examined, kept)])


def as_json(pump: Pump, examined: Examined) -> bytes:
    """Everything about the record at full precision, in the form of the command's file."""
    head = {"units": examined.record.units, "always": ALWAYS, "messages": []}
    whole = {**head, "records": [pump_json(pump, examined)]}
    return json.dumps(whole, ensure_ascii=False, indent=1).encode()


def template(units: str) -> bytes:
    """A CSV with every heading and no row, to be filled in; units of the system "us" or "si"."""
    return csv_of([[heading_of(field, units) for field in FIELDS]])


@contextlib.contextmanager
def csv_writer(path: Path, units: str, kept: Sequence[str]) -> Iterator[Write]:
    """One row for each pump: all its readings, what was worked, and the state of each.

    It can be read in again. `kept` are the names of columns that are passed on as they are.

    Raises:
        OSError: it cannot be written there.
    """
    with whole_text(path, CODING, newline="") as file:
        write = row_writer(file)
        write(_headings(units, kept))
        yield lambda pump, examined: write(flat_row(pump, examined, kept))


@contextlib.contextmanager
def json_writer(path: Path, pumps: PumpFile) -> Iterator[Write]:
    """Everything about each pump at full precision, one pump a line in one list.

    Raises:
        OSError: it cannot be written there.
    """
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
    """A page of text for each pump, in a folder that is made where it is not there.

    Raises:
        OSError: the folder cannot be made; a page that cannot be written raises it later.
    """
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
