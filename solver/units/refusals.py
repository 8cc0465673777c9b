"""The sentences that say why text cannot be read as one number with a unit (for reading.py).

Each looks at text already refused, finds the likeliest reason, and says what to type. None of it
decides whether text is accepted.
"""

import re

from .quantity import Quantity
from .show import with_unit
from .unit import Unit, find_unit

__all__ = ["another_quantity", "divides_by_zero", "one", "quoted", "two_numbers", "why_not"]

VULGAR = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
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
        return two_numbers(plain, wanted)
    typed = f"$ {rest}" if "$" in plain[:2] else rest
    if len(typed.split()) > 1 and all(find_unit(word) for word in typed.split()):
        return f"{quoted(plain)} has more than one unit. Type {one(wanted)}."
    return f"{quoted(rest)} isn't a unit that can be read here. Type {one(wanted)}."


def two_numbers(plain: str, wanted: Unit) -> str:
    return f"{quoted(plain)} has more than one number. Type just one, {such(wanted)}."


def divides_by_zero(plain: str, wanted: Unit) -> str:
    return f"{quoted(plain)} divides by zero. Type {one(wanted)}."


def another_quantity(name: str, named: Quantity, wanted: Unit, asked: Quantity | None) -> str:
    """The number goes by the name of a quantity that the one asked cannot be."""
    system = "us" if asked is None or wanted.name == asked.us else "si"
    label = asked.spoken(system) if asked else wanted.described
    return f"{quoted(name)} is {named.label(system)}. This asks for {label}. Type {one(wanted)}."


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
    return f"one number, {such(wanted)}"


def such(wanted: Unit) -> str:
    number = {"choice": "2", "$": "12.50", "$/kWh": "0.12"}.get(wanted.name, "12.5")
    return f"such as {with_unit(number, wanted.name)}"
