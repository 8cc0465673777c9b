"""The sentences that say why text cannot be read as one number with a unit (for reading.py).

Each looks at text already refused, finds the likeliest reason, and says what to type. None of it
decides whether text is accepted.
"""

import re

from .show import with_unit
from .units import Unit, find_unit

__all__ = ["no_number", "no_unit", "one", "quoted", "two_numbers"]

VULGAR = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
_QUOTED = 24  # characters that a sentence repeats of what was typed

_SUM = re.compile(r"[*^+×÷/x] ?[*(]*[0-9.(]")
_SECOND = re.compile(rf"(?<![A-Za-z^])[0-9{VULGAR}]")
_SPACED = re.compile(r"[1-9][0-9]{0,2}( [0-9]{3})+(?![0-9])(\.[0-9]+)?")
_DECIMAL_COMMA = re.compile(r"([+-]?)\$? ?([0-9.]*),([0-9]+)(?![0-9.,])")


def no_number(plain: str, wanted: Unit) -> str:
    """Why no number stands at the front."""
    if re.fullmatch(r"[+-]?(nan|inf|infinity|∞)\b.*", plain, re.IGNORECASE):
        return f"{quoted(plain)} cannot be marked; type {one(wanted)}."
    if re.match(r"[+-]?,[0-9]", plain):
        return _comma(plain, wanted)
    if not re.search(rf"[0-9{VULGAR}]", plain):
        return f"{quoted(plain)} has no number in it; type {one(wanted)}."
    return f"{quoted(plain)} does not start with its number; type {one(wanted)}."


def no_unit(typed: str, rest: str, plain: str, wanted: Unit) -> str:
    """Why what stands after the number is not one unit."""
    if re.match(r",[0-9]", rest):
        return _comma(plain, wanted)
    if re.match(r"0[xob][0-9a-f]", plain, re.IGNORECASE) or rest[:1] == "_":
        return f"{quoted(plain)} is not a plain number; type {one(wanted)}."
    if _SUM.match(rest):
        return f"{quoted(plain)} is a sum to work out; type its result, {such(wanted)}."
    if spaced := _SPACED.match(plain):
        meant = _meant(spaced[0].replace(" ", ""), wanted)
        return f"{quoted(plain)} has a space inside its number; type {meant}."
    if _SECOND.search(rest):
        return two_numbers(plain, wanted)
    if len(typed.split()) > 1 and all(find_unit(word) for word in typed.split()):
        return f"{quoted(plain)} has more than one unit; type {one(wanted)}."
    return f"{quoted(rest)} is not a unit known here; type {one(wanted)}."


def two_numbers(plain: str, wanted: Unit) -> str:
    return f"{quoted(plain)} holds more than one number; type one, {such(wanted)}."


def _comma(plain: str, wanted: Unit) -> str:
    """A single comma may be a decimal one; how it would be typed is shown, not assumed."""
    meant = one(wanted)
    if found := _DECIMAL_COMMA.match(plain):
        sign, whole, part = found.groups()
        meant = _meant(f"{sign}{whole.replace('.', '') or 0}.{part}", wanted)
    return f"{quoted(plain)} has a comma that marks no thousands; type {meant}."


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
