"""What came of a pump as plain data for JSON, and as one flat row for CSV."""

from collections.abc import Sequence
from typing import Any

from solver.own.record import CHECKS, FIELDS, Examined, Finding
from solver.render.text import given_json, steps_json
from solver.vocabulary import quantity_named

from .headings import KEPT, MADE, STATE, WORKED, heading_of
from .reading import Pump

__all__ = ["flat_headings", "flat_row", "pump_json"]


def pump_json(pump: Pump, examined: Examined) -> dict[str, Any]:
    """Everything about one record, at full precision."""
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


def flat_headings(units: str, kept: Sequence[str]) -> list[str]:
    """The headings of the CSV: the fields as in the template, each check, then what was kept."""
    checks = []
    for check in CHECKS:
        unit = quantity_named(check.find).unit(units)
        worked = f"{WORKED}{check.label(units)}" + f" ({unit})" * bool(unit)
        checks += [worked, f"{STATE}{check.label(units)}"]
    fields = [heading_of(field, units) for field in FIELDS]
    return [MADE[0], *fields, *checks, *MADE[1:], KEPT, *kept]


def flat_row(pump: Pump, examined: Examined, kept: Sequence[str]) -> list[str]:
    """One record under `flat_headings`; what could not be read stands as it was typed."""
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
