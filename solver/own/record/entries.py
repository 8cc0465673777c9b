"""From what was typed, in a form or in a cell, to a record: each entry read, refused or left out.

Nothing is guessed and nothing is lost: an entry that cannot be read is kept as it was typed.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

from solver.errors import SolverError, Unreadable
from solver.units.reading import read
from solver.units.typed import quoted
from solver.units.unit import convert
from solver.vocabulary import quantity_named

from .days import day_of
from .fields import FIELDS, Field

__all__ = ["Fault", "Record", "key", "read_entries"]

NOT_MEASURED = frozenset(("", "-", "--", "—", "n/a", "na", "none", "not measured", "not taken"))
OVER = re.compile(r"\s*(?:>|≥|>=|over|above)\s*(?=[0-9.])", re.IGNORECASE)
ENDLESS = ("ol", "o.l.", "o.l", "over", "overload", "inf", "infinity", "infinite", "∞")
DECIMALS = re.compile(r"\.([0-9]+)")
LONGEST_TEXT = 2000


@dataclass(frozen=True, slots=True)
class Record:
    """One pump's day. `values` are in the units of the system `units`, by the name of a field.

    `texts` are who, where, when and words of the nameplate. `steps` has what the last digit of a
    reading counts for, in its unit, where it was written as one number. `over` names readings at the top of
    the meter's range. `unread` keeps what could not be read, `others` what has no field here.
    """

    units: str
    values: Mapping[str, float] = field(default_factory=dict)
    texts: Mapping[str, str] = field(default_factory=dict)
    steps: Mapping[str, float] = field(default_factory=dict)
    over: frozenset[str] = frozenset()
    unread: Mapping[str, str] = field(default_factory=dict)
    others: Mapping[str, str] = field(default_factory=dict)

    @property
    def name(self) -> str:
        """Which pump it is, in words: "Tannery Lane, pump 2"."""
        station, pump = self.texts.get("station"), self.texts.get("pump")
        if pump and not any(map(str.isalpha, pump)):
            pump = f"pump {pump}"
        return ", ".join(filter(None, (station, pump))) or "a pump without a name"


class Fault(NamedTuple):
    """What could not be read or is to be known about one field, and what to write instead."""

    field: str
    says: str


def key(text: str) -> str:
    """One form for every way to write a heading or a choice: Amps - L1 and amps l1 are ampsl1.

    >>> key("Amps on leg A, rolled once")
    'ampsonlegarolledonce'
    """
    return "".join(filter(str.isalnum, text.casefold()))


def read_entries(
    entries: Mapping[str, str], units: str = "us", written_in: Mapping[str, str] | None = None
) -> tuple[Record, tuple[Fault, ...]]:
    """A record from entries as typed, by the names of fields, and a fault for each not read.

    `written_in` has the unit of bare numbers where it is not the system's own: a heading may say.

    >>> record, faults = read_entries({"pump": "Pump 2", "flow": "450", "motor_size": "ten"})
    >>> record.values, record.unread
    ({'flow': 450.0}, {'motor_size': 'ten'})
    >>> faults[0].says
    '"ten" has no number in it. Type one number, such as 12.5 hp.'

    Raises:
        SolverError: the system of units is not "us" or "si".
    """
    if units not in ("us", "si"):
        raise SolverError(f"Units are “us” or “si”; you gave “{units}”.")
    found = _Found(units, dict(written_in or {}), {}, {}, {}, set(), {}, [])
    for one in FIELDS:
        typed = entries.get(one.name, "").strip()
        if typed.casefold() not in NOT_MEASURED:
            found.take(one, typed)
    over = frozenset(found.over)
    record = Record(units, found.values, found.texts, found.steps, over, found.unread)
    return record, tuple(found.faults)


class _Found(NamedTuple):
    """What has been read so far."""

    units: str
    written_in: dict[str, str]
    values: dict[str, float]
    texts: dict[str, str]
    steps: dict[str, float]
    over: set[str]
    unread: dict[str, str]
    faults: list[Fault]

    def take(self, one: Field, typed: str) -> None:
        """Read one field; what cannot be read is kept as typed, with a fault."""
        try:
            if one.is_text:
                self._text(one, typed)
            else:
                self._number(one, typed)
        except Unreadable as refusal:
            self.faults.append(Fault(one.name, str(refusal)))
            self.unread[one.name] = typed

    def _text(self, one: Field, typed: str) -> None:
        if one.choices:
            self.texts[one.name] = _choice(one, typed)
            return
        self.texts[one.name] = typed[:LONGEST_TEXT]
        if len(typed) > LONGEST_TEXT:
            raise Unreadable(
                f"The {one.label} is {len(typed):,} characters long. "
                f"The first {LONGEST_TEXT:,} are used."
            )
        if one.name == "date":
            self._date(typed)

    def _date(self, typed: str) -> None:
        """A date that is not clear stays as it is; only a trend cannot place it."""
        try:
            day_of(typed)
        except Unreadable as refusal:
            self.faults.append(Fault("date", f"{refusal} It is kept the way you typed it."))

    def _number(self, one: Field, typed: str) -> None:
        unit, plain = one.unit(self.units), typed
        if one.group == "insulation" and typed.casefold() in ENDLESS:
            raise Unreadable(
                f"{quoted(typed)} isn't a number. Type the top of the tester's range, such as >2000."
            )
        if one.group == "insulation" and OVER.match(typed):
            plain = OVER.sub("", typed, count=1)
        bare = self.written_in.get(one.name, unit)
        quantity = quantity_named(one.name)
        fraction = quantity.takes_decimal and bare == "%"
        got = read(plain, bare, bare_fraction=fraction, quantity=quantity)
        value = got.value if bare == unit else convert(got.value, bare, unit)
        if one.name == "suction_gauge" and (value < 0 or "inHg" in (got.typed_unit, bare)):
            self._vacuum(abs(value), unit, typed)
            return
        self.values[one.name] = value
        if got.plain and got.typed_value:
            self.steps[one.name] = abs(value / got.typed_value) * _last_digit(plain)
        if not got.plain:
            self.faults.append(Fault(one.name, f"{quoted(typed)} counts as {got.echo}."))
        if plain is not typed:
            self.over.add(one.name)
            says = f"{quoted(typed)} is the top of the tester's range. It counts as {got.echo}."
            self.faults.append(Fault(one.name, says))

    def _vacuum(self, value: float, unit: str, typed: str) -> None:
        """A suction gauge below zero, or in inches of mercury, shows a vacuum."""
        of = quantity_named("suction_vacuum").unit(self.units)
        self.values["suction_vacuum"] = convert(value, unit, of)
        says = f"{quoted(typed)} on a suction gauge is a vacuum, and counts as one."
        self.faults.append(Fault("suction_gauge", says))


def _last_digit(typed: str) -> float:
    """What the last digit after the point of a number counts for; 1 where there is none.

    >>> _last_digit("0.31 ohm"), _last_digit("462")
    (0.01, 1.0)
    """
    decimals = DECIMALS.search(typed)
    return 10.0 ** -len(decimals[1]) if decimals else 1.0


def _choice(one: Field, typed: str) -> str:
    wanted = key(typed)
    for words in one.choices:
        if wanted in map(key, words):
            return words[0]
    *rest, last = one.words
    raise Unreadable(
        f"{quoted(typed)} isn't a known {one.label}. Type {', '.join(rest)} or {last}."
    )
