"""A record as a file to keep: links that hold the whole file."""

import json

from solver.own.record import ALWAYS, Examined
from workbook.ui.saving import link
from workbook.ui.spreadsheet import csv_of

from .data import flat_headings, flat_row, pump_json
from .reading import Pump
from .writing import page_name, template

__all__ = ["as_csv", "as_json", "file_name", "saves_html", "template_link"]


def file_name(pump: Pump, ending: str) -> str:
    """A plain name: pump-day-Tannery-Lane-Pump-2-2024-05-31.csv."""
    return f"pump-day-{page_name(pump, ending).partition('-')[2]}"


def as_csv(pump: Pump, examined: Examined) -> bytes:
    """The record in one row, with all that was worked; it can be read in again."""
    kept = list(examined.record.others)
    return csv_of([flat_headings(examined.record.units, kept), flat_row(pump, examined, kept)])


def as_json(pump: Pump, examined: Examined) -> bytes:
    """Everything about the record at full precision, in the form of the command's file."""
    head = {"units": examined.record.units, "always": ALWAYS, "messages": []}
    whole = {**head, "records": [pump_json(pump, examined)]}
    return json.dumps(whole, ensure_ascii=False, indent=1).encode()


def saves_html(pump: Pump, examined: Examined) -> str:
    """Links to keep one record, each with the name of its file."""
    kinds = (
        ("Save as CSV, for a spreadsheet", "csv", "text/csv", as_csv),
        ("Save as JSON, for programs", "json", "application/json", as_json),
    )
    items = "".join(
        f"<li>{link(says, file_name(pump, ending), kind, made(pump, examined))}</li>"
        for says, ending, kind, made in kinds
    )
    return f'<h4>Keep this record</h4><ul class="w2w-saves">{items}</ul>'


def template_link(units: str) -> str:
    """A link to an empty file with every heading."""
    says = "Save an empty CSV with every heading"
    return f"<p>{link(says, 'pumps.csv', 'text/csv', template(units))}</p>"
