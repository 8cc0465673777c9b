"""A sum typed as an answer, worked and shown: 150*66/3960 is "150 × 66 / 3,960 = 2.5".

The text is never evaluated. The grammar is that of plain arithmetic:

    sum      a product, then + or - and another, as often as wanted; a minus has spaces around it
    product  a power, then * × x / ÷ and another
    power    a number, or a sum in parentheses; then ^2, ², ³, or a small whole exponent
    after it "= 2.5", the result as the reader worked it, and a unit, or neither

What could be a date, a range, a mixed number or a size such as 6 x 8 in is left alone.
"""

import re
from math import isclose
from typing import NamedTuple

from solver.errors import Unreadable

from .show import exact, figures
from .typed import PER_THOUSAND, Typed, divides_by_zero, ordinary, quoted, sized
from .unit import Unit, find_unit

__all__ = ["worked_sum"]

_LONGEST = 60  # characters
_DEEPEST = 5  # parentheses in parentheses
_AGREES = 0.01  # share by which a result typed behind a sum may be rounded
_TOKEN = re.compile(
    r"""\ ?(?:(?P<number>(?:(?:[1-9][0-9]{0,2}(?:,[0-9]{3})+(?![0-9])|[0-9]+)(?:\.[0-9]*)?|\.[0-9]+)
              (?![0-9.,]))
        |(?P<minus>(?<=\ )-(?=\ ))|(?P<power>\^\ ?-?[0-9]{1,2}(?![0-9.,^])|[²³])|(?P<mark>[-+*×xX/÷()]))""",
    re.VERBOSE,
)
_SIGNS = {"*": "×", "x": "×", "X": "×", "÷": "/"}
_NO_SUM = re.compile(
    rf"[0-9]{{1,4}}/[0-9]{{1,2}}/[0-9]{{1,4}}(?![0-9.]).*"  # a date
    rf"|[0-9]+ - [0-9]+/[0-9]+[^*×/+(]*"  # 3 - 1/2 may be three and a half
    rf"|0[xX].*|.*/ ?{PER_THOUSAND}.*|[^*×xX/÷+^²³-]*"
)


class _Part(NamedTuple):
    """A part of a sum: what it comes to, and how it is shown."""

    value: float
    shown: str


class _Fault(Exception):
    """The text is no sum."""


def worked_sum(plain: str, wanted: Unit) -> Typed | None:
    """The sum at the front of the text, worked; None where the text is no sum.

    Raises:
        Unreadable: it divides by zero, may be a range, or does not come to the result behind it.

    >>> from solver.units.unit import unit
    >>> worked_sum("150*66/3960", unit("hp"))[:1], worked_sum("150*66/3960", unit("hp")).work
    ((2.5,), '150 × 66 / 3,960')
    """
    if len(plain) >= _LONGEST or _NO_SUM.fullmatch(plain):
        return None
    parser = _Parser(plain)
    try:
        found = parser.sum()
    except _Fault:
        return None
    except ZeroDivisionError:
        raise Unreadable(divides_by_zero(plain, wanted)) from None
    if parser.signs == 0 or (set(parser.used) == {"-"} and found.value < 0):
        return None  # one number, or a range such as 10 - 12
    return _finished(found, parser, wanted)


def _finished(found: _Part, parser: "_Parser", wanted: Unit) -> Typed | None:
    plain, rest = parser.text, parser.rest
    value = sized(found.value, plain, wanted)
    if rest.startswith("="):
        result = ordinary(rest[1:].strip(), wanted)
        if result is None:
            return None
        if not isclose(result.value, value, rel_tol=_AGREES):
            raise Unreadable(
                f"{quoted(plain)} doesn't agree: {found.shown} is {figures(value)}. "
                "Type just the number you mean."
            )
        return Typed(result.value, result.unit, work=found.shown)
    unit = find_unit(rest) if rest else None
    size = unit and unit.kind == "length" and re.search("[xX×]", plain)  # 6 x 8 in
    if (rest and unit is None) or size:
        return None
    return Typed(value, unit, work=found.shown)


class _Parser:
    """One pass over the text; `rest` is what is left after the sum, `used` the signs in it."""

    def __init__(self, text: str):
        self.text, self.at, self.depth = text, 0, 0
        self.used: list[str] = []
        self.token: re.Match[str] | None = None
        self._step()

    @property
    def rest(self) -> str:
        return self.text[self.at :].strip()

    @property
    def signs(self) -> int:
        return len(self.used)

    def _step(self) -> None:
        """Look at the next token."""
        if self.token:
            self.at = self.token.end()
        self.token = _TOKEN.match(self.text, self.at)

    def _is(self, marks: str) -> str:
        """The sign that comes next, if it is one of these."""
        if not self.token:
            return ""
        sign = self.token["minus"] or self.token["mark"] or ""
        if sign == "-" and not self.token["minus"]:
            raise _Fault  # 104-42 may be a range
        return sign if sign and sign in marks else ""

    def sum(self) -> _Part:
        whole = self._product()
        while sign := self._is("+-"):
            self._take(sign)
            part = self._product()
            value = whole.value + part.value if sign == "+" else whole.value - part.value
            whole = _Part(value, f"{whole.shown} {sign} {part.shown}")
        return whole

    def _product(self) -> _Part:
        whole = self._power()
        while sign := self._is("*×xX/÷"):
            self._take(sign)
            part, sign = self._power(), _SIGNS.get(sign, sign)
            value = whole.value * part.value if sign == "×" else whole.value / part.value
            whole = _Part(value, f"{whole.shown} {sign} {part.shown}")
        return whole

    def _power(self) -> _Part:
        base, raised = self._atom(), self.token and self.token["power"]
        if not raised:
            return base
        exponent = {"²": 2, "³": 3}.get(raised) or int(raised[1:])
        fits = abs(exponent) <= 15 if base.value == 10 else 1 <= exponent <= 5
        if not fits or re.search("[²³^]", base.shown):
            raise _Fault
        self._take("^")
        if self.token and (self.token["power"] or self.token["number"]):
            raise _Fault
        return _Part(base.value**exponent, f"{base.shown}^{exponent}")

    def _atom(self) -> _Part:
        if self.token and self.token["number"]:
            value = float(self.token["number"].replace(",", ""))
            self._step()
            if self.token and (self.token["number"] or self.token["mark"] == "("):
                raise _Fault  # two numbers, or 2(3)
            return _Part(value, exact(value))
        if not self._is("(") or self.depth == _DEEPEST:
            raise _Fault
        self.depth += 1
        self._step()
        inside = self.sum()
        if not self._is(")"):
            raise _Fault
        self.depth -= 1
        self._step()
        return _Part(inside.value, f"({inside.shown})")

    def _take(self, sign: str) -> None:
        self.used.append(sign)
        self._step()
