"""What is looked up beside the formulas: constants, published tables, published limits."""

from collections.abc import Iterable
from html import escape

from solver.algebra.expression import Constant
from solver.algebra.formula import Formula
from solver.algebra.tree import constants, is_one
from solver.topics import limits
from solver.topics.formulas import FORMULAS
from solver.topics.limits import Limits
from solver.topics.tables import table_as_printed, table_names, table_source
from solver.units.show import exact, with_unit
from solver.units.unit import units as known_units
from solver.vocabulary import Quantity, quantity_named

from .entry import Entry, Part, folded, long, plain, with_source

__all__ = ["CONSTANTS", "LIMITS", "TABLES", "constants_in", "value_said"]


def constants_in(formulas: Iterable[Formula], units: str) -> tuple[Constant, ...]:
    """The constants of some formulas in one system, each once."""
    found = dict.fromkeys(c for f in formulas if units in f.systems for c in constants(f.expr))
    return tuple(one for one in found if not is_one(one, units))


def value_said(constant: Constant, units: str) -> str:
    """A constant as the trade rounds it, with its unit: "3,960 gpm·ft per hp"."""
    value, unit = constant.figure(units)[:2]
    if unit in known_units():
        return with_unit(long(value), unit)
    above, below = (_joined(side) for side in f" {unit} ".split(" / ", maxsplit=1))
    return " ".join(filter(None, (long(value), above, f"per {below}")))


def _joined(factors: str) -> str:
    return "·".join(with_unit("", name).strip() for name in factors.split())


def _constants(units: str) -> list[Entry]:
    return [_constant(one, units) for one in constants_in(FORMULAS, units)]


def _constant(one: Constant, units: str) -> Entry:
    figure = one.figure(units)
    true = "none; it was measured" if figure.exact is None else long(figure.exact)
    lines = [f"Exact value: {true}."]
    if figure.also:
        lines += [f"Also in use: {'; '.join(map(long, figure.also))}."]
    return _lines(f"{one.label}: {value_said(one, units)}", lines, one.source)


def _limits(units: str) -> list[Entry]:
    found = (value for value in vars(limits).values() if isinstance(value, Limits))
    return [_limit(one, units) for one in found]


def _limit(one: Limits, units: str) -> Entry:
    quantity = quantity_named(one.quantity)
    low, high = (_end(end, quantity, units) for end in (one.low, one.high))
    said = f"Limit: {low}." if low == high else f"Limits: {low}; {high}."
    return _lines(
        quantity.spoken(units), [said, f"{one.rule[:1].upper()}{one.rule[1:]}."], one.source
    )


def _end(end: str | float, quantity: Quantity, units: str) -> str:
    if isinstance(end, str):
        return quantity_named(end).spoken(units)
    unit = quantity.unit(units)
    return with_unit(exact(end, unit), unit)


def _lines(head: str, lines: list[str], source: str) -> Entry:
    under = "".join(f'<div class="w2w-why">{escape(line)}</div>' for line in lines)
    html = f'<div class="w2w-want">{escape(head)}</div>{under}{with_source(source)}'
    return Entry(plain(" ".join((head, *lines, source))), lambda opened: html)


def _tables(units: str) -> list[Entry]:
    other = {"us": "_si", "si": "_us"}[units]
    return [_table(name) for name in table_names() if not name.endswith(other)]


def _table(name: str) -> Entry:
    heads, *rows = table_as_printed(name)
    about, _, source = table_source(name).partition(". ")
    top = "".join(f'<th scope="col">{escape(head.replace("_", " "))}</th>' for head in heads)
    body = "".join(f"<tr>{_row(row)}</tr>" for row in rows)
    table = (
        f'<table class="w2w-givens w2w-printed"><thead><tr>{top}</tr></thead>'
        f"<tbody>{body}</tbody></table>{with_source(source)}"
    )
    words = plain(" ".join((about, source, *heads, *(cell for row in rows for cell in row))))
    return Entry(words, lambda opened: folded(escape(about), table, opened))


def _row(cells: tuple[str, ...]) -> str:
    first, *others = map(escape, cells)
    return f'<th scope="row">{first}</th>' + "".join(f"<td>{cell}</td>" for cell in others)


CONSTANTS = Part("Constants", "constant", _constants, "Rounded as the trade does, and exact.")
TABLES = Part("Published tables", "table", _tables)
LIMITS = Part(
    "Published limits", "limit", _limits, "Your local code and the nameplate come before these."
)
