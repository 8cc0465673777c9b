"""Reading what a person typed: one number, and a unit that fits or none at all.

The text is never evaluated and never reaches pint. A strict grammar takes the number off the
front (typed.py); what is left must be one spelling of the table of units, or the whole one of the
forms in other_forms.py, or a number with the name of a quantity. Anything else is refused with a
sentence that says what was got and what to type; nothing is guessed, and everything read is said back.

- A number without a unit is in the unit asked.
- Where the question says per what, the first half of the unit is enough: $0.12 for $/kWh,
  8 h for h/day.
- "About", ~, = in front and a question mark behind change nothing.
- The number may go by a name: 9.03 mhp, .85 pf, TDH = 62 ft; or hp 12.5. The name of another
  quantity of the same kind is read and told; of another kind, it is refused. A unit inside the name
  counts: 9.03 mhp is in hp, 62 feet of water in ft, whatever is asked.
"""

import re
from functools import cache
from typing import NamedTuple

from solver.errors import Unreadable
from solver.vocabulary import quantity_called

from .other_forms import other_form, without_hedge
from .quantity import Quantity
from .show import exact, figures, with_unit
from .typed import MOST, NUMBER, Typed, one, ordinary, quoted, sized, why_not
from .unit import Unit, convert, find_unit, mismatch, unit

__all__ = ["MOST", "Reading", "read"]

_EFFICIENCY = ("eff", "efficiency", "efficient")
_NAME_FIRST = re.compile(
    r"(?:the )?([a-z][^0-9=:]*?) ?(?:=|:|\b(?:is|of|was)\b)? ?"
    r"(?=(?:about |around |approx(?:imately|\.)? |roughly )?[-+$.~≈0-9½])(.+)",
    re.IGNORECASE,
)
_LONGEST = 120  # characters; longer text is not looked at
_FIRST_HALVES = ("$", "cents", "h", "kWh")
_CHOICE = re.compile(
    r"(?:(?:answer |choice |option |no\.? ?|number |#)?\(?([0-9]{1,3})\)?[.)]?)", re.I
)
# Signs, marks and spaces that a keyboard, an autocorrector or a copied page puts for plain ones.
_PLAIN = str.maketrans("−–⁄∶’′‘”″“", "--/:'''\"\"\"", "\u200b\ufeff")


class Reading(NamedTuple):
    """What was read: the value in the unit asked, and what was typed to say it.

    `echo` says all of it back; `said` is the number alone, as a sentence can call it. `plain` is
    whether the text was simply a number, with its unit or without.
    """

    value: float
    unit: str
    typed_value: float
    typed_unit: str | None
    echo: str
    said: str
    plain: bool = True


def read(
    text: str, asked: str, *, bare_fraction: bool = False, quantity: Quantity | None = None
) -> Reading:
    """Read one number in the unit `asked`, or in another of the same kind.

    With `bare_fraction`, a number above 0 and up to 1 that has no unit is a decimal fraction of
    the percentage asked: .82 is 82 %. `quantity` is the one asked for, where that is known: the
    name of another one behind the number is told.

    Raises:
        Unreadable: the text is not one number with a fitting unit.

    >>> read("12.5 kW", "hp").echo
    '12.5 kW, which is 16.76 hp'
    >>> read(".82", "%", bare_fraction=True).echo
    '0.82, which is 82%'
    >>> read("about 62 ft 6 in", "ft").echo, read("150*66/3960", "hp").echo
    ('62 ft 6 in, which is 62.5 ft', '150 × 66 / 3,960 = 2.5 hp')
    >>> read("12.5 psi", "hp")
    Traceback (most recent call last):
    solver.errors.Unreadable: psi is a pressure; this asks for a power in hp.
    """
    wanted = unit(asked)
    plain = _plain(text, wanted)
    if asked == "choice":
        return _read_choice(without_hedge(plain))
    typed = ordinary(plain, wanted)
    if typed is None:
        plain = without_hedge(plain) or plain
        typed = other_form(plain, wanted) or _by_name(plain, wanted, quantity)
    elif typed.unit is not None and typed.unit.name == "hp":
        typed = _horsepower(typed, plain, wanted, quantity)
    if typed is None:
        raise Unreadable(why_not(plain, wanted))
    return _reading(typed, wanted, bare_fraction)


def _plain(text: str, wanted: Unit) -> str:
    """The text with plain signs and single spaces, if it can be looked at."""
    if len(text) > _LONGEST:
        raise Unreadable(f"That is {len(text):,} characters long. Type {one(wanted)}.")
    plain = " ".join((text if text.isascii() else text.translate(_PLAIN)).split())
    if not plain:
        raise Unreadable(f"Nothing is typed yet. Type {one(wanted)}.")
    if not plain.isascii() and any(mark.isdecimal() and not mark.isascii() for mark in plain):
        raise Unreadable(f"{quoted(plain)} has digits other than 0 to 9. Type 0 to 9.")
    return plain


def _horsepower(typed: Typed, plain: str, wanted: Unit, quantity: Quantity | None) -> Typed:
    """Horsepower may be said as that of another quantity: bhp where mhp is asked."""
    name = plain.lstrip("+-0123456789., /").removesuffix(".")
    note = _told_of_name(name, typed.unit, wanted, quantity)
    return typed._replace(note=note) if note else typed


def _reading(typed: Typed, wanted: Unit, bare_fraction: bool) -> Reading:
    number, given = typed.value, typed.unit
    if given is None:
        fraction = bare_fraction and 0 < number <= 1
        given = unit("") if fraction else wanted
    target = wanted if given.kind == wanted.kind else _first_half(given, wanted)
    said = typed.said or _typed(number, given, bool(typed.work))
    value = sized(convert(number, given, target), said, wanted)
    echo = f"{typed.work} = {said}" if typed.work else said
    if typed.said or given is not wanted:
        echo += f", which is {with_unit(figures(value, wanted.name), wanted.name)}"
    if typed.note:
        echo += f". {typed.note}"
    unit_typed = typed.unit.name if typed.unit else None
    plain = not (typed.said or typed.work or typed.note)
    return Reading(value, wanted.name, number, unit_typed, echo, said, plain)


def _first_half(typed: Unit, wanted: Unit) -> Unit:
    """The half of the unit asked that was typed, such as $ for $/kWh."""
    half = wanted.name.partition("/")[0]
    if half not in _FIRST_HALVES or unit(half).kind != typed.kind:
        raise Unreadable(mismatch(typed, wanted))
    return unit(half)


def _read_choice(plain: str) -> Reading:
    match = _CHOICE.fullmatch(plain)
    if not match:
        raise Unreadable(f"{quoted(plain)} isn't the number of a choice. Type one, such as 2.")
    said = f"choice {int(match[1])}"
    return Reading(float(match[1]), "choice", float(match[1]), None, said, said)


def _typed(number: float, typed: Unit, worked: bool) -> str:
    written = figures(number, typed.name) if worked else exact(number, typed.name)
    return with_unit(written, typed.name)


def _by_name(plain: str, wanted: Unit, quantity: Quantity | None) -> Typed | None:
    """The name of a quantity before or behind the number, or a unit before it."""
    if match := _NAME_FIRST.fullmatch(plain):
        return _with_name(match[1], match[2], wanted, quantity, first=True)
    match = NUMBER.match(plain)
    if not match:
        return None
    ends = [match.end(), *(at.end() for at in re.finditer(" (?:of )?", plain))]
    for end in ends:
        name = plain[end:].removesuffix(".")
        head = plain[:end].strip().removesuffix(" of")
        if end >= match.end() and (found := _with_name(name, head, wanted, quantity)):
            return found
    return None


def _with_name(
    name: str, number: str, wanted: Unit, quantity: Quantity | None, first: bool = False
) -> Typed | None:
    named = quantity_called(name)
    said = find_unit(name) if first else None
    efficiency = wanted.name == "%" and (quantity is None or quantity.takes_decimal)
    general = efficiency and name.casefold() in _EFFICIENCY
    typed = other_form(without_hedge(number), wanted) if named or said or general else None
    if typed is None or (said and typed.unit):
        return None
    if said:
        return typed._replace(unit=said, note=_told_of_name(name, said, wanted, quantity))
    if general or named is None:
        return typed
    return _of_quantity(typed, name, named, wanted, quantity)


def _of_quantity(
    typed: Typed, name: str, named: Quantity, wanted: Unit, quantity: Quantity | None
) -> Typed | None:
    """The number of a quantity called by its name, which may not be the one that is asked."""
    other = quantity is not None and named is not quantity
    if unit(named.us).kind != wanted.kind or (other and wanted.kind == "ratio"):
        raise Unreadable(_another_quantity(name, named, wanted, quantity))
    if typed.unit is None:
        typed = typed._replace(unit=_unit_said(name.casefold(), wanted.kind))
    if typed.unit is None and wanted.name not in (named.us, named.si):
        raise Unreadable(f"{quoted(name)} doesn't say its unit. Type {one(wanted)}.")
    return typed._replace(note=_told_of_name(name, None, wanted, quantity))


@cache
def _unit_said(name: str, kind: str) -> Unit | None:
    """The unit inside a name: feet of water, mhp, million gallons pumped."""
    words = name.split()
    spans = [(i, j) for i in range(len(words)) for j in range(i + 1, len(words) + 1)]
    for i, j in sorted(spans, key=lambda span: span[0] - span[1]):
        text = " ".join(words[i:j])
        found = find_unit(text) if len(text) > 1 else None
        if found and found.kind == kind:
            return found
    return unit("hp") if kind == "power" and name.endswith("hp") else None


def _told_of_name(name: str, said: Unit | None, wanted: Unit, quantity: Quantity | None) -> str:
    """What is told when the number was called by the name of another quantity than is asked."""
    if quantity is None or (said is not None and said.name != "hp"):
        return ""
    named = quantity_called(name)
    if named is None or named is quantity:
        return ""
    system = "us" if wanted.name == quantity.us else "si"
    return f"You wrote {quoted(name)}, but this asks for {quantity.spoken(system)}"


def _another_quantity(name: str, named: Quantity, wanted: Unit, asked: Quantity | None) -> str:
    """The number goes by the name of a quantity that the one asked cannot be."""
    system = "us" if asked is None or wanted.name == asked.us else "si"
    label = asked.spoken(system) if asked else wanted.described
    return f"{quoted(name)} is {named.label(system)}. This asks for {label}. Type {one(wanted)}."
