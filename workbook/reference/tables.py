"""What is looked up beside the formulas: constants, units, published tables, published limits."""

from collections import Counter
from collections.abc import Iterable
from functools import cache

from solver.algebra.expression import Constant
from solver.algebra.formula import Formula
from solver.algebra.tree import constants, is_one
from solver.topics import limits
from solver.topics.formulas import FORMULAS
from solver.topics.tables import table_as_printed, table_names, table_source
from solver.topics.zones import Limits
from solver.units.show import exact, with_unit
from solver.units.unit import Unit, convert
from solver.units.unit import units as known_units
from solver.vocabulary import QUANTITIES, Quantity, quantity_named
from workbook.ui.markup import joined, tag
from workbook.ui.pieces import table

from .entry import RAISED, Entry, Part, folded, long, plain, with_source

__all__ = ["CONSTANTS", "LIMITS", "TABLES", "UNITS", "constants_in", "value_said"]

BASES = ("m", "kg", "s", "A", "K", "$")
SEVEN = 7  # figures of a scale, as NIST SP 811 gives its factors


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
    html = joined(
        tag("div", head, cls="w2w-want"),
        (tag("div", line, cls="w2w-why") for line in lines),
        with_source(source),
    )
    return Entry(plain(" ".join((head, *lines, source))), lambda opened: html)


def _tables(units: str) -> list[Entry]:
    other = {"us": "_si", "si": "_us"}[units]
    return [_table(name) for name in table_names() if not name.endswith(other)]


def _table(name: str) -> Entry:
    heads, *rows = table_as_printed(name)
    about, _, source = table_source(name).partition(". ")
    named = [head.replace("_", " ") for head in heads]
    body = table(rows, heads=named, cls="w2w-givens w2w-printed") + with_source(source)
    words = plain(" ".join((about, source, *heads, *(cell for row in rows for cell in row))))
    return Entry(words, lambda opened: folded(about, body, opened))


def _unit_shown(one: Unit) -> str:
    """A unit as it is written."""
    return with_unit("", one.name).strip() or "a plain number"


@cache
def _usual(system: str) -> dict[str, Unit]:
    """The unit of each kind that most quantities are in."""
    used = Counter(q.unit(system) for q in QUANTITIES.values())
    every = known_units()
    return {every[name].kind: every[name] for name, _ in reversed(used.most_common())}


def _kinds(system: str) -> list[Entry]:
    kinds: dict[str, list[Unit]] = {}
    for one in known_units().values():
        kinds.setdefault(one.kind, []).append(one)
    return [_kind(kind, of_kind, system) for kind, of_kind in kinds.items()]


def _kind(kind: str, of_kind: list[Unit], system: str) -> Entry:
    head = f"{kind[:1].upper()}{kind[1:]}: {', '.join(map(_unit_shown, of_kind))}"
    lines = [(_unit_shown(one), _size_said(one, of_kind, system)) for one in of_kind]
    items = (tag("li", tag("b", name), f" {said}") for name, said in lines)
    body = tag("ul", items, cls="w2w-entries")
    words = plain(" ".join((head, *(f"{name} {said}" for name, said in lines))))
    return Entry(words, lambda opened: folded(head, body, opened))


def _size_said(one: Unit, of_kind: list[Unit], system: str) -> str:
    """Its size in the usual unit and in base units, and its other spellings."""
    usual = _usual(system).get(one.kind, one)
    also = [text for text in one.spellings if text != _unit_shown(one)]
    typed = f"Also typed: {', '.join(also)}." if also else ""
    if one.offset or usual.offset:
        kelvin = f"times {long(one.scale, SEVEN)}, plus {long(one.offset, SEVEN)}, is K."
        return f"{kelvin} {typed}".strip()
    sizes = [] if usual is one else [with_unit(long(convert(1, one, usual), SEVEN), usual.name)]
    base = _base(one, of_kind)
    if base not in ("", _unit_shown(one), _unit_shown(usual)):
        sizes += [f"{long(one.scale, SEVEN)} {base}"]
    return f"{'= ' * bool(sizes)}{' = '.join(sizes)}{'.' * bool(sizes)} {typed}".strip()


def _base(one: Unit, of_kind: list[Unit]) -> str:
    """The unit of its kind that is one in base units, such as Pa; or its dimension in those."""
    for other in of_kind:
        if (other.scale, other.offset) == (1.0, 0.0):
            return _unit_shown(other)
    powers = zip(BASES, one.dimension, strict=True)
    return "·".join(
        base + (str(power).translate(RAISED) if power != 1 else "")
        for base, power in powers
        if power
    )


CONSTANTS = Part("Constants", "constant", _constants, "Rounded as the trade does, and exact.")
TABLES = Part("Published tables", "table", _tables)
LIMITS = Part(
    "Published limits", "limit", _limits, "Your local code and the nameplate come before these."
)
UNITS = Part("Units", "kind", _kinds, "Capitals, periods and hyphens don't matter.")
