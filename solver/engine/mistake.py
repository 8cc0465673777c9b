"""A wrong answer with a name: what gives it, where it is recognised, and what a learner is told."""

from collections.abc import Iterable
from typing import NamedTuple

from solver.algebra.expression import Expr
from solver.units.reading import MOST

__all__ = ["THIS", "Mistake", "can_be_told", "stands_alone"]

THIS = "{this}"  # in a sentence: what the learner typed


class Mistake(NamedTuple):
    """A wrong answer that a known mistake gives; `low` to `high` is where it is recognised.

    `did` is what was done, `why` what is right and why. `wrong` is what was worked instead, for
    the quantity `of`; `form` tells how telling.py puts its numbers in front. `others` give the
    same number another way.
    """

    id: str
    value: float
    low: float
    high: float
    did: str
    why: str = ""
    wrong: Expr | None = None
    of: str = ""
    form: str = ""
    others: tuple["Mistake", ...] = ()

    @property
    def says(self) -> str:
        """What a learner is told, without the numbers."""
        return f"{self.did} {self.why}".strip().replace(THIS, "This")


def can_be_told(value: float, bare_decimal: bool) -> bool:
    """Whether somebody may type this wrong answer and be told of it.

    With `bare_decimal`, as where an efficiency is asked, a bare decimal is read as a percentage,
    so it cannot be told from a right answer. A value below zero has a sentence of its own, whatever gave it. Nobody types
    what is nearly nothing, or more than can be read.
    """
    return 1e-9 <= value <= MOST and not (bare_decimal and value <= 1)


def stands_alone(value: float, low: float, high: float, others: Iterable[Mistake]) -> bool:
    """Whether neither a wrong answer nor any of the others would be taken for the other one."""
    for other in others:
        if low <= other.value <= high or other.low <= value <= other.high:
            return False
    return True


def taken_for(one: Mistake, other: Mistake) -> bool:
    """Whether one of two wrong answers lies where the other is recognised."""
    return one.low <= other.value <= one.high or other.low <= one.value <= other.high
