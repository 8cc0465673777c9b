"""Reading what a person typed: one number, and a unit that fits or none at all.

The text is never evaluated and never reaches pint. A strict grammar takes the number off the
front; what is left must be one spelling of the table of units. Anything else is refused with one
sentence that says what was got and what to type; nothing is guessed.

The rules where habits differ:

- A comma marks thousands only where every group after the first has exactly three digits and the
  first has one to three and does not begin with 0: 12,500 but not 12,5 or 0,125.
- A space never parts the digits of a number: 1 234 is two numbers.
- 3 1/2 and 3-1/2 are three and a half; the fraction must be smaller than one.
- $ in front means dollars; a number without a unit is in the unit asked.
- Where the question says per what, the first half of the unit is enough: $0.12 for $/kWh,
  8 h for h/day.
"""

import re
import unicodedata
from typing import NamedTuple

from .errors import Unreadable
from .refusals import VULGAR, no_number, no_unit, one, quoted, two_numbers
from .show import exact, figures, with_unit
from .units import Unit, convert, find_unit, mismatch, unit

__all__ = ["MOST", "Reading", "read"]

_LONGEST = 120  # characters; longer text is not looked at
MOST = 1e15  # far above any reading of a pump, a motor or a bill
_FIRST_HALVES = ("$", "cents", "h", "kWh")

# $20/1000 m3 is twenty dollars for each thousand, not a fiftieth.
_PER_THOUSAND = r"1000\ ?(?:m\^?3|m³|cubic|gal)"

_NUMBER = re.compile(
    rf"""(?P<sign>[+-]?)\ ?(?P<dollar>\$?)\ ?
    (?: (?:(?P<whole>[0-9]+)[ -])? (?P<over>[0-9]+)/(?!{_PER_THOUSAND})(?P<under>[0-9]+) (?![0-9.,/])
      | (?P<ones>[0-9]*)\ ?(?P<vulgar>[{VULGAR}])
      | (?P<decimal>
          (?: (?:[1-9][0-9]{{0,2}}(?:,[0-9]{{3}})+(?![0-9]) | [0-9]+) (?:\.[0-9]*)? | \.[0-9]+ )
          (?:[eE][+-]?[0-9]+)?
        )
    )\ ?(?:-(?=[A-Za-z]))?""",
    re.VERBOSE,
)
_CHOICE = re.compile(r"(?:(?:answer |choice |no\.? ?|number )?\(?([0-9]{1,3})\)?[.)]?)", re.I)

# Signs, marks and spaces that a keyboard, an autocorrector or a copied page puts for plain ones.
_PLAIN = str.maketrans({"−": "-", "–": "-", "⁄": "/", "\u200b": None, "\ufeff": None})


class Reading(NamedTuple):
    """What was read: the value in the unit asked, and what was typed to say it."""

    value: float
    unit: str
    typed_value: float
    typed_unit: str | None
    echo: str


def read(text: str, asked: str, *, bare_fraction: bool = False) -> Reading:
    """Read one number in the unit `asked`, or in another of the same kind.

    With `bare_fraction`, a number above 0 and up to 1 that has no unit is a decimal fraction of
    the percentage asked: .82 is 82 %.

    Raises:
        Unreadable: the text is not one number with a fitting unit.

    >>> read("12.5 kW", "hp").echo
    '12.5 kW, which is 16.76 hp'
    >>> read(".82", "%", bare_fraction=True).echo
    '0.82, which is 82%'
    >>> read("12.5 psi", "hp")
    Traceback (most recent call last):
    solver.errors.Unreadable: psi is a pressure; this asks for a power in hp.
    """
    wanted = unit(asked)
    plain = _plain(text, wanted)
    if asked == "choice":
        return _read_choice(plain)
    match = _NUMBER.match(plain)
    if not match:
        raise Unreadable(no_number(plain, wanted))
    number = _value(match, plain, wanted)
    rest = plain[match.end() :].removesuffix(".").strip()
    if rest or match["dollar"]:
        return _with_unit(number, _typed_unit(match["dollar"], rest, plain, wanted), wanted)
    if bare_fraction and 0 < number <= 1:
        value = convert(number, "", wanted)
        return Reading(value, asked, number, None, _echo(number, unit(""), value, wanted))
    return Reading(number, asked, number, None, _typed(number, wanted))


def _plain(text: str, wanted: Unit) -> str:
    """The text with plain signs and single spaces, if it can be looked at."""
    if len(text) > _LONGEST:
        raise Unreadable(f"That is {len(text):,} characters long; type {one(wanted)}.")
    plain = " ".join((text if text.isascii() else text.translate(_PLAIN)).split())
    if not plain:
        raise Unreadable(f"Nothing is typed yet; type {one(wanted)}.")
    if not plain.isascii() and any(mark.isdecimal() and not mark.isascii() for mark in plain):
        raise Unreadable(f"{quoted(plain)} has digits other than 0 to 9; type 0 to 9.")
    return plain


def _value(match: re.Match, plain: str, wanted: Unit) -> float:
    """The number, without its unit."""
    if match["vulgar"]:
        size = int(match["ones"] or 0) + unicodedata.numeric(match["vulgar"])
    elif match["decimal"]:
        size = float(match["decimal"].replace(",", ""))
    else:
        whole, over, under = (int(match[part] or 0) for part in ("whole", "over", "under"))
        if under == 0:
            raise Unreadable(f"{quoted(plain)} divides by zero; type {one(wanted)}.")
        if match["whole"] and over >= under:
            raise Unreadable(two_numbers(plain, wanted))
        size = whole + over / under
    return _sized(-size if match["sign"] == "-" else size, plain, wanted)


def _sized(value: float, plain: str, wanted: Unit) -> float:
    if abs(value) > MOST:
        raise Unreadable(f"{quoted(plain)} is too large; type {one(wanted)}.")
    return value + 0.0  # so that -0 is 0


def _typed_unit(dollar: str, rest: str, plain: str, wanted: Unit) -> Unit:
    """The unit that was typed; a leading $ is the first half of it."""
    typed = f"{dollar} {rest}".strip()
    rise = find_unit(f"{typed} rise") if wanted.kind == "temperature rise" else None
    found = rise or find_unit(typed)
    if found is None or rest[:1].isdigit():
        raise Unreadable(no_unit(typed, rest, plain, wanted))
    return found


def _with_unit(number: float, typed: Unit, wanted: Unit) -> Reading:
    target = wanted
    if typed.kind != wanted.kind:
        half = wanted.name.partition("/")[0]
        if half not in _FIRST_HALVES or unit(half).kind != typed.kind:
            raise Unreadable(mismatch(typed, wanted))
        target = unit(half)
    value = _sized(convert(number, typed, target), _typed(number, typed), wanted)
    return Reading(value, wanted.name, number, typed.name, _echo(number, typed, value, wanted))


def _read_choice(plain: str) -> Reading:
    match = _CHOICE.fullmatch(plain)
    if not match:
        raise Unreadable(f"{quoted(plain)} is not the number of a choice; type one, such as 2.")
    return Reading(float(match[1]), "choice", float(match[1]), None, f"choice {int(match[1])}")


def _typed(number: float, typed: Unit) -> str:
    return with_unit(exact(number, typed.name), typed.name)


def _echo(number: float, typed: Unit, value: float, wanted: Unit) -> str:
    if typed is wanted:
        return _typed(number, typed)
    converted = with_unit(figures(value, wanted.name), wanted.name)
    return f"{_typed(number, typed)}, which is {converted}"
