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

`why_not` finds the likeliest reason why text already refused is not one number with a unit, and says
what to type. It decides nothing on whether text is accepted.
"""

import re
import unicodedata
from typing import NamedTuple

from solver.errors import Unreadable

from .show import with_unit
from .unit import Unit, convert, find_unit, unit

__all__ = [
    "MOST",
    "NUMBER",
    "PER_THOUSAND",
    "Typed",
    "divides_by_zero",
    "one",
    "ordinary",
    "quoted",
    "sized",
    "why_not",
]

VULGAR = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
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
_QUOTED = 24  # characters that a sentence repeats of what was typed
_FRONT = re.compile(
    rf"[+-]? ?\$? ?(?:[0-9]+ ?[{VULGAR}]|[{VULGAR}]|[0-9][0-9,]*\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?"
)
_SUM = re.compile(r"[*^+×÷/x] ?[-*(]*[0-9.(]")
_OPERATOR = re.compile(r"[0-9)] ?[a-z]* ?[*×÷^+] ?\(*[0-9.]", re.IGNORECASE)
_SECOND = re.compile(rf"(?<![A-Za-z^])[0-9{VULGAR}]")
_SPACED = re.compile(
    r"([+-]?\$? ?)([1-9][0-9]{0,2}(?:[ '][0-9]{3})+)(?![0-9])(?:[.,]([0-9]+)(?![0-9.,]))?"
)
_DECIMAL_COMMA = re.compile(r"([+-]?)\$? ?([0-9.]*),([0-9]+)(?![0-9.,])")
_DATE = re.compile(r"[0-9]{1,4}([-/])[0-9]{1,2}\1[0-9]{1,4}(?![0-9.])")
_RANGE = re.compile(r"[0-9.,]+ ?- ?[0-9.,]+(?: ?[a-z%]+)?$", re.IGNORECASE)
_BOUND = re.compile(r"[<>≤≥]|(?:over|under|above|below|less|more|at least|up to)\b", re.IGNORECASE)


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
            raise Unreadable(_two_numbers(plain, wanted))
        size = whole + over / under
    return sized(-size if match["sign"] == "-" else size, plain, wanted)


def sized(value: float, plain: str, wanted: Unit) -> float:
    """The value, if it is one that a pump, a motor or a bill could have.

    Raises:
        Unreadable: it is too large.
    """
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
    found = rise or find_unit(typed)
    if found and found.name == "ft-lb" and wanted.kind == "torque":
        return unit("lb-ft")  # mechanics say a torque in foot-pounds
    return found


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


def why_not(plain: str, wanted: Unit) -> str:
    """Why the text is not one number with one unit, and what to type."""
    if re.fullmatch(r"[+-]?(nan|inf|infinity|∞)\b.*", plain, re.IGNORECASE):
        return f"{quoted(plain)} can't be graded. Type {one(wanted)}."
    if re.match(r"[+-]?\$?,[0-9]", plain):
        return _comma(plain, wanted)
    if not re.search(rf"[0-9{VULGAR}]", plain):
        return f"{quoted(plain)} has no number in it. Type {one(wanted)}."
    if _BOUND.match(plain):
        return f"{quoted(plain)} is a limit. Type {one(wanted)}."
    front = _FRONT.match(plain)
    if not front:
        return f"{quoted(plain)} doesn't start with its number. Type {one(wanted)}."
    return _after_number(plain[front.end() :].strip().removesuffix("."), plain, wanted)


def _after_number(rest: str, plain: str, wanted: Unit) -> str:
    """Why what is left after the number is not one unit."""
    if re.match(r"0[xob][0-9a-f]", plain, re.IGNORECASE) or rest[:1] == "_":
        return f"{quoted(plain)} isn't a plain number. Type {one(wanted)}."
    if spaced := _SPACED.match(plain):
        sign, whole, part = spaced.groups()
        number = sign.replace(" ", "") + re.sub("[ ']", "", whole) + (f".{part}" if part else "")
        mark = "a space" if " " in whole else "an apostrophe"
        return f"{quoted(plain)} has {mark} inside its number. Type {_meant(number, wanted)}."
    if re.match(r"[+-]?\$? ?[0-9.]* ?,", plain) and not re.match(
        r"[+-]?\$? ?[1-9][0-9]{0,2}(,[0-9]{3})+(?![0-9,])", plain
    ):
        return _comma(plain, wanted)
    if _DATE.match(plain):
        return f"{quoted(plain)} looks like a date. Type {one(wanted)}."
    if _RANGE.match(plain):
        return f"{quoted(plain)} could be a range or a subtraction. Type {one(wanted)}."
    if _SUM.match(rest) or _OPERATOR.search(plain):
        return (
            f"{quoted(plain)} can't be worked out here. Type it in plain numbers, "
            f"such as 150*66/3960, or type its result."
        )
    if _SECOND.search(rest):
        return _two_numbers(plain, wanted)
    typed = f"$ {rest}" if "$" in plain[:2] else rest
    if len(typed.split()) > 1 and all(find_unit(word) for word in typed.split()):
        return f"{quoted(plain)} has more than one unit. Type {one(wanted)}."
    return f"{quoted(rest)} isn't a unit that can be read here. Type {one(wanted)}."


def _two_numbers(plain: str, wanted: Unit) -> str:
    return f"{quoted(plain)} has more than one number. Type just one, {_such(wanted)}."


def divides_by_zero(plain: str, wanted: Unit) -> str:
    """The sentence for a division by zero."""
    return f"{quoted(plain)} divides by zero. Type {one(wanted)}."


def _comma(plain: str, wanted: Unit) -> str:
    """A single comma may be a decimal one; how it would be typed is shown, not assumed."""
    meant = one(wanted)
    if found := _DECIMAL_COMMA.match(plain):
        sign, whole, part = found.groups()
        meant = _meant(f"{sign}{whole.replace('.', '') or 0}.{part}", wanted)
    return f"{quoted(plain)} has a comma that doesn't mark thousands. Type {meant}."


def _meant(number: str, wanted: Unit) -> str:
    return f"{number} if you mean that" if len(number) <= _QUOTED else one(wanted)


def quoted(text: str) -> str:
    """A short, printable piece of what was typed."""
    piece = text if len(text) <= _QUOTED else text[: _QUOTED - 1] + "…"
    return '"' + "".join(mark if mark.isprintable() else "?" for mark in piece) + '"'


def one(wanted: Unit) -> str:
    """What to type, with an example in the unit asked: "one number, such as 12.5 hp"."""
    return f"one number, {_such(wanted)}"


def _such(wanted: Unit) -> str:
    number = {"choice": "2", "$": "12.50", "$/kWh": "0.12"}.get(wanted.name, "12.5")
    return f"such as {with_unit(number, wanted.name)}"
