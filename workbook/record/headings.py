"""The headings of a CSV file: which field each column is, and in which unit its numbers are."""

import re
from collections.abc import Sequence
from difflib import get_close_matches
from functools import cache
from typing import NamedTuple

from solver.own.record import FIELDS, Field
from solver.own.record.entries import key
from solver.units.typed import quoted
from solver.units.unit import Unit, find_unit, unit

__all__ = ["KEPT", "MADE", "STATE", "WORKED", "Column", "columns", "heading_of", "known_headings"]

# The headings of what is worked here: a file that was written here is read without them.
WORKED, STATE = "worked: ", "state: "
MADE = (
    "row",
    "state of the record",
    "check next",
    "contradictions",
    "unusual",
    "not measured",
    "to be known of this row",
    "always",
)
KEPT = "kept besides"

# Where the unit may stand: in brackets at the end; or after a comma, or as the last words, if it
# is a unit that is known. In brackets an unknown one is told; else the heading is another one.
IN_BRACKETS = re.compile(r"(?P<name>.+?)\s*[(\[{](?P<unit>[^()\[\]{}]*)[)\]}]\s*")
AT_END = tuple(
    re.compile(rf"(?P<name>.+?)[,;:\s_]+(?P<unit>\S+(?: \S+){{{more}}})") for more in range(3)
)
LONGEST = 200  # characters of a heading that are looked at
MONEY = {"$": "$/kWh", "cents": "cents/kWh"}


class Column(NamedTuple):
    """One column: its place, its heading as it stands, the field it is, the unit of bare numbers.

    `field` is None where it is no field here, or its unit cannot be; then the cells are kept.
    `name` is what its cells are kept by: its heading, or one of its own where two are alike.
    `made` marks a result that was written here; it is worked anew. `assumed` marks a unit that
    the heading does not say.
    """

    at: int
    heading: str
    name: str
    field: Field | None = None
    unit: str = ""
    fault: str = ""
    made: bool = False
    assumed: bool = False


@cache
def _keys() -> dict[str, Field]:
    """Every way to write a heading without its unit."""
    found: dict[str, Field] = {}
    for field in FIELDS:
        for said in (field.label, field.name, *field.also):
            if found.setdefault(key(said), field) is not field:
                raise AssertionError(f"{said} is a heading of two fields")
    return found


def heading_of(field: Field, units: str) -> str:
    """The heading of a field in the template: its label, with the unit in brackets."""
    of = field.unit(units)
    return f"{field.label} ({of})" if of else field.label


def known_headings(cells: Sequence[str]) -> int:
    """How many of the cells are headings of a field."""
    return sum(_matched(cell)[0] is not None for cell in cells)


def columns(cells: Sequence[str], units: str) -> list[Column]:
    """The columns under these headings, each with what is to be said of it.

    Bare numbers are in the unit that a heading says, or that its field has in the system `units`.
    """
    found: list[Column] = []
    taken: dict[str, Column] = {}
    names: set[str] = set()
    ours = any(cell.startswith(WORKED) for cell in cells)
    for at, cell in enumerate(cells):
        heading = " ".join(cell.split())
        name = heading or f"column {at + 1}"
        if name in names:
            name = f"{name} (column {at + 1})"
        names.add(name)
        if ours and (heading in MADE or heading.startswith((WORKED, STATE))):
            found.append(Column(at, heading, name, made=True))
            continue
        column = _column(Column(at, heading, name), units)
        if column.field and (first := taken.setdefault(column.field.name, column)) is not column:
            fault = f"Column {first.at + 1} is also {column.field.label}. That one is read; this one is kept as it is."
            column = Column(at, heading, name, fault=fault)
        found.append(column)
    return found


def _column(plain: Column, units: str) -> Column:
    if not plain.heading:
        return plain
    field, said = _matched(plain.heading)
    if field is None:
        return plain._replace(fault=_unknown(plain.heading))
    if field.is_text:
        return plain._replace(field=field)
    wanted = unit(field.unit(units))
    if said is None:
        return plain._replace(field=field, unit=wanted.name, assumed=True)
    meant, fault = _unit_of(said, wanted)
    if meant is None:
        return plain._replace(fault=f"{fault} The column is kept but not used.")
    return plain._replace(field=field, unit=meant)


def _unit_of(said: str, wanted: Unit) -> tuple[str | None, str]:
    """The unit a heading names, or why it cannot be."""
    of = f"give it in {wanted.name}" if wanted.name else "give it without a unit"
    found = find_unit(said)
    if found is None:
        return None, f"{quoted(said)} isn't a unit this record knows; {of}."
    if found.name in MONEY and wanted.name == "$/kWh":
        return MONEY[found.name], ""
    if found.kind != wanted.kind:
        return None, f"{found.name or quoted(said)} is {found.described}; {of}."
    return found.name, ""


@cache
def _matched(heading: str) -> tuple[Field | None, str | None]:
    """The field of a heading, and the unit it says, where it says one."""
    heading = " ".join(heading[:LONGEST].split())
    if field := _keys().get(key(heading)):
        return field, None
    match = IN_BRACKETS.fullmatch(heading)
    if match and (field := _keys().get(key(match["name"]))):
        return field, match["unit"].strip() or None
    for match in filter(None, (pattern.fullmatch(heading) for pattern in AT_END)):
        field = _keys().get(key(match["name"]))
        if field and not field.is_text and find_unit(match["unit"]):
            return field, match["unit"]
    return None, None


def _unknown(heading: str) -> str:
    near = get_close_matches(key(heading[:LONGEST]), _keys(), n=1, cutoff=0.75)
    hint = f" Did you mean “{_keys()[near[0]].label}”?" if near else ""
    return f"This record has no reading called {quoted(heading)}.{hint} The column is kept but not used."
