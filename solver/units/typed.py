"""One number as it was typed, with its unit or without: the grammar of the ordinary case.

The other ways to write a number stand in other_forms.py. What is here refuses only what can be
nothing but a fault; for text that may still be another form it gives None.

The rules where habits differ:

- A comma marks thousands only where every group after the first has exactly three digits and the
  first has one to three and does not begin with 0: 12,500 but not 12,5 or 0,125.
- A space never parts the digits of a number: 1 234 is two numbers.
- 3 1/2 and 3-1/2 are three and a half; the fraction must be smaller than one.
- $ in front means dollars.
- mohm is a milliohm, unless that is next to nothing in the unit asked: then nobody can tell.
"""

import re
import unicodedata
from typing import NamedTuple

from solver.errors import Unreadable

from .refusals import VULGAR, divides_by_zero, one, quoted, two_numbers
from .unit import Unit, convert, find_unit

__all__ = ["MOST", "NUMBER", "PER_THOUSAND", "Typed", "ordinary", "sized"]

MOST = 1e15  # far above any reading of a pump, a motor or a bill

# $20/1000 m3 is twenty dollars for each thousand, not a fiftieth.
PER_THOUSAND = r"1000\ ?(?:m\^?3|m³|cubic|gal)"

NUMBER = re.compile(
    rf"""(?P<sign>[+-]?)\ ?(?P<dollar>\$?)\ ?
    (?: (?:(?P<whole>[0-9]+)[ -])? (?P<over>[0-9]+)/(?!{PER_THOUSAND})(?P<under>[0-9]+) (?![0-9.,/])
      | (?P<ones>[0-9]*)\ ?(?P<vulgar>[{VULGAR}])
      | (?P<decimal>
          (?: (?:[1-9][0-9]{{0,2}}(?:,[0-9]{{3}})+(?![0-9]) | [0-9]+) (?:\.[0-9]*)? | \.[0-9]+ )
          (?:[eE][+-]?[0-9]+)?
        )
    )\ ?(?:-(?=[A-Za-z]))?""",
    re.VERBOSE,
)
_OHMS, _WATTS = ("resistance", "milliohms", "megohms"), ("power", "milliwatts", "megawatts")
_TWINS = {"mohm": _OHMS, "mohms": _OHMS, "mω": _OHMS, "mw": _WATTS}
_TINY = 0.01  # of the unit asked: nobody means so few megohms


class Typed(NamedTuple):
    """A number as typed. `unit` is None where none was: then it is in the unit asked.

    `said` is how it is said back where number and unit would not do: "62 ft 6 in". `work` is the
    sum it came from: "150 × 66 / 3,960". `note` is a sentence that must be told with it.
    """

    value: float
    unit: Unit | None = None
    said: str = ""
    work: str = ""
    note: str = ""


def ordinary(plain: str, wanted: Unit) -> Typed | None:
    """One number, then one spelling of a unit or nothing; None for anything else.

    Raises:
        Unreadable: the number is too large, divides by zero, or may be two numbers or two units.
    """
    match = NUMBER.match(plain)
    if not match:
        return None
    number = _value(match, plain, wanted)
    rest = plain[match.end() :].removesuffix(".").strip()
    if not rest and not match["dollar"]:
        return Typed(number, work=_quotient(match))
    found = _unit(f"{match['dollar']} {rest}".strip(), wanted)
    _only_one_unit(number, found, rest, plain, wanted)
    if found is None or rest[:1].isdigit():
        return None
    if found.name == "K" and not wanted.kind.startswith("temperature"):
        return None  # 12K gal is twelve thousand
    return Typed(number, found, work=_quotient(match))


def _value(match: re.Match[str], plain: str, wanted: Unit) -> float:
    """The number, without its unit."""
    if match["vulgar"]:
        size = int(match["ones"] or 0) + unicodedata.numeric(match["vulgar"])
    elif match["decimal"]:
        size = float(match["decimal"].replace(",", ""))
    else:
        whole, over, under = (int(match[part] or 0) for part in ("whole", "over", "under"))
        if under == 0:
            raise Unreadable(divides_by_zero(plain, wanted))
        if match["whole"] and over >= under:
            raise Unreadable(two_numbers(plain, wanted))
        size = whole + over / under
    return sized(-size if match["sign"] == "-" else size, plain, wanted)


def sized(value: float, plain: str, wanted: Unit) -> float:
    """The value, if it is one that a pump, a motor or a bill could have."""
    if not abs(value) <= MOST:
        raise Unreadable(f"{quoted(plain)} is too large. Type {one(wanted)}.")
    return value + 0.0  # so that -0 is 0


def _quotient(match: re.Match[str]) -> str:
    """9900/3960 is worked and shown; 1/2 is a number."""
    if not match["over"] or match["whole"] or int(match["over"]) < int(match["under"]):
        return ""
    return f"{match['sign']}{int(match['over']):,} / {int(match['under']):,}"


def _unit(typed: str, wanted: Unit) -> Unit | None:
    rise = find_unit(f"{typed} rise") if wanted.kind == "temperature rise" else None
    return rise or find_unit(typed)


def _only_one_unit(number: float, found: Unit | None, rest: str, plain: str, wanted: Unit) -> None:
    """Refuse 500 mohm where megohms are asked: another case of the m is another unit."""
    kind, small, large = _TWINS.get(re.sub("[ -]", "", rest).casefold(), ("", "", ""))
    if kind != wanted.kind or (found and not found.name.startswith("m")) or rest[0] == "M":
        return
    if found is None or 0 < abs(convert(number, found, wanted)) < _TINY:
        typed = plain.removesuffix(".").removesuffix(rest).strip()[:24]
        raise Unreadable(
            f"{quoted(plain)} could be {small} or {large}. Type {typed} {large} or {typed} {small}."
        )
