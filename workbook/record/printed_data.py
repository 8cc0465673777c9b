"""What stands in a printed record, as the data that record.typ sets: pump by pump, its days and its trends."""

from collections.abc import Iterator, Sequence
from typing import Any, NamedTuple

from solver import SolverError
from solver.own.record import (
    ALWAYS,
    BEYOND,
    FOLLOWED,
    GROUPS,
    LOOK,
    NOT_MEASURED,
    STATES,
    Examined,
    Finding,
    Followed,
    by_pump,
    examine,
)
from solver.own.record.days import Day, day_of
from solver.own.record.trend import RULE
from solver.render.text import ROUNDING, step_lines
from solver.units.show import capital
from solver.vocabulary import quantity_named
from workbook.ui.cautions import caution_lines
from workbook.ui.printing import PAPER

from .findings import pressing_first, read_rows, summary, value_said
from .reading import Pump
from .trends import Plot, plots_of, print_svg, table_of

__all__ = ["Sheet", "in_full", "of_each_pump", "printed"]


class Sheet(NamedTuple):
    """One record to print, and what is to be known of it in sentences."""

    examined: Examined
    messages: tuple[str, ...] = ()

    @classmethod
    def of(cls, pump: Pump) -> "Sheet":
        """A row of a file, worked and judged."""
        return cls(examine(pump.record), tuple(map(str, pump.messages)))

    @property
    def text(self) -> dict[str, str]:
        """Who, where and when, as typed."""
        return dict(self.examined.record.texts)

    @property
    def day(self) -> Day | None:
        """Its day; None where the date is not clear."""
        try:
            return day_of(self.text.get("date", ""))
        except SolverError:
            return None


def printed(sheets: Sequence[Sheet]) -> dict[str, Any]:
    """All that stands in one PDF, pump by pump in the order of their first rows."""
    return {
        "always": ALWAYS,
        "rounding": ROUNDING,
        "paper": PAPER[sheets[0].examined.record.units if sheets else "us"],
        "pumps": [_pump(of_one) for of_one in of_each_pump(sheets)],
    }


def of_each_pump(sheets: Sequence[Sheet]) -> list[list[Sheet]]:
    """The sheets by pump, in the order of their first rows."""
    of_record = {id(sheet.examined.record): sheet for sheet in sheets}
    pumps = by_pump([sheet.examined.record for sheet in sheets])
    return [[of_record[id(one)] for one in records] for records in pumps.values()]


def in_full(sheets: list[Sheet]) -> list[Sheet]:
    """Of one pump, the newest day, and each record without a clear date."""
    newest = max((sheet.day for sheet in sheets if sheet.day), default=None)
    return [sheet for sheet in sheets if sheet.day in (None, newest)]


def _pump(sheets: list[Sheet]) -> dict[str, Any]:
    full = in_full(sheets)
    return {
        "name": capital(sheets[0].examined.record.name),
        "sheets": [_sheet(sheet) for sheet in full],
        "years": _years(sheets, full) if len(sheets) > 1 else None,
    }


def _sheet(sheet: Sheet) -> dict[str, Any]:
    """One record in full."""
    examined = sheet.examined
    record = examined.record
    by = f"Read by {sheet.text['person']}." if "person" in record.texts else ""
    work = [_finding(one, record.units) for one in examined.findings if one.state != NOT_MEASURED]
    return {
        "date": sheet.text.get("date", "no date"),
        "by": by,
        "short": f"{summary(examined)}.",
        "results": [_result(one, record.units) for one in pressing_first(examined)],
        "next": list(examined.next_checks),
        "cautions": caution_lines(*examined.cautions),
        "lists": [
            ["These readings contradict each other", list(examined.contradictions)],
            ["Notes on this record", list(sheet.messages)],
            ["Unusual", list(examined.notices)],
        ],
        "read": list(_read(examined)),
        "found": work,
        "missing": ", ".join(examined.not_measured),
        "kept": [f"{name}: {text}" for name, text in record.others.items()],
    }


def _read(examined: Examined) -> Iterator[list]:
    """Each group of readings, with a label and a value for each."""
    rows = list(read_rows(examined.record))
    for group in GROUPS:
        pairs = [[label, value] for of, label, value in rows if of == group]
        if pairs:
            yield [group, pairs]


def _finding(found: Finding, units: str) -> dict[str, Any]:
    verdict = found.verdict
    steps = [step_lines(step, found.known, found.given, units) for step in found.steps]
    return {
        "label": found.check.label(units),
        "value": value_said(found),
        "state": found.state,
        "says": verdict.says,
        "limit": f"Limit: {verdict.limit}. Source: {verdict.source}." if verdict.limit else "",
        "then": verdict.then,
        "steps": [list(step) for step in steps],
    }


def _result(found: Finding, units: str) -> list[str]:
    """A row of the table on the first page: the check, the result, its limit and its state."""
    label = capital(found.check.label(units))
    return [label, value_said(found), found.verdict.bound, found.state]


def _years(sheets: list[Sheet], full: list[Sheet]) -> dict[str, Any]:
    """The trends, a line for each day, and what is to be known of days not printed in full."""
    plots = plots_of([sheet.examined for sheet in sheets])
    columns, rows = table_of(plots)
    units = sheets[0].examined.record.units if sheets else "us"
    shown = {sheet.day for sheet in full}
    in_order = sorted(sheets, key=lambda sheet: sheet.day or Day(9999))
    return {
        "pictures": [_picture(plot) for plot in plots],
        "columns": columns,
        "rows": rows,
        "rule": RULE.format(share=", ".join(_share(one, units) for one in FOLLOWED))
        if plots
        else "",
        "days": [_line(sheet) for sheet in in_order],
        "said": [said for sheet in in_order if sheet.day not in shown for said in sheet.messages],
    }


def _share(followed: Followed, units: str) -> str:
    return f"{followed.share} ({quantity_named(followed.name).label(units)})"


def _picture(plot: Plot) -> dict[str, str]:
    try:
        svg = print_svg(plot)
    except ImportError:
        svg = ""
    return {"svg": svg, "alt": plot.view.alt, "says": plot.view.headline}


def _line(sheet: Sheet) -> list[str]:
    """A day in one line: its state, what was not within its limit, its notes."""
    examined = sheet.examined
    pressing = sorted(
        (one for one in examined.findings if one.state in (BEYOND, LOOK)),
        key=lambda one: STATES.index(one.state),
    )
    said = [one.verdict.says for one in pressing]
    said += examined.contradictions
    notes = sheet.text.get("notes")
    said += [f"Notes: {notes}"] if notes else []
    return [sheet.text.get("date", "no date"), examined.state, " ".join(said)]
