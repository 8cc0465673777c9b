"""Worked lines read back as a person would: the sum that is written is worked out again.

A line such as "(212 V + 212 V + 200 V) / 3" or "20.5 hp / 32.84 hp × 100%". The rules are those
of school: brackets, then powers, then × and / from left to right, then + and −.
"""

import re

from solver.algebra.tree import constants
from solver.topics.formulas import FORMULAS
from solver.units.show import constant_unit, with_unit
from solver.vocabulary import QUANTITIES

__all__ = ["figures_in", "worked_out"]

_UNITS = {
    with_unit(one_or_more, unit).partition(one_or_more)[2]
    for q in QUANTITIES.values()
    for unit in (q.us, q.si)
    for one_or_more in "12"
}
_UNITS |= {
    f" {constant_unit(constant.figure(units).unit)}"
    for formula in FORMULAS
    for constant in constants(formula.expr)
    for units in ("us", "si")
} - {" "}
_AFTER = "|".join(sorted(map(re.escape, filter(None, _UNITS)), key=len, reverse=True))
_NUMBER = re.compile(rf"\$?([0-9][0-9,]*\.?[0-9]*)(?:{_AFTER})?(?![A-Za-z])")
_TOKEN = re.compile(r"\s*([0-9.]+|largest of|smallest of|[-+×/^|(),√])")


def figures_in(line: str) -> list[float]:
    """The numbers of a line, without their units."""
    return [float(found[1].replace(",", "")) for found in _NUMBER.finditer(line)]


def worked_out(line: str) -> float:
    """The value of a line of numbers; ValueError where it is not a sum that can be worked."""
    plain = _NUMBER.sub(lambda found: found[1].replace(",", ""), line.replace("−", "-"))
    tokens, at = [], 0
    while at < len(plain):
        found = _TOKEN.match(plain, at)
        if not found:
            raise ValueError(f"{plain[at:]!r} of {line!r} is not arithmetic")
        tokens.append(found[1])
        at = found.end()
    value = _sum(tokens)
    if tokens:
        raise ValueError(f"{tokens} is left over of {line!r}")
    return value


def _sum(tokens: list[str]) -> float:
    value = _product(tokens)
    while tokens and tokens[0] in "+-":
        sign = 1 if tokens.pop(0) == "+" else -1
        value += sign * _product(tokens)
    return value


def _product(tokens: list[str]) -> float:
    value = _power(tokens)
    while tokens and tokens[0] in "×/":
        value = value * _power(tokens) if tokens.pop(0) == "×" else value / _power(tokens)
    return value


def _power(tokens: list[str]) -> float:
    value = _one(tokens)
    while tokens and tokens[0] == "^":
        tokens.pop(0)
        value **= _one(tokens)
    return value


def _one(tokens: list[str]) -> float:
    head = tokens.pop(0)
    if head in ("largest of", "smallest of"):
        values = _list(tokens)
        return max(values) if head == "largest of" else min(values)
    if head in "(|":
        value = _sum(tokens)
        if tokens.pop(0) != {"(": ")", "|": "|"}[head]:
            raise ValueError("a bracket is not closed")
        return abs(value) if head == "|" else value
    return _one(tokens) ** 0.5 if head == "√" else float(head)


def _list(tokens: list[str]) -> list[float]:
    if tokens.pop(0) != "(":
        raise ValueError("a list has no bracket")
    values = [_sum(tokens)]
    while tokens.pop(0) == ",":
        values.append(_sum(tokens))
    return values
