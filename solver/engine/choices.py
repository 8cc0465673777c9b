"""A problem with choices: the right answer among wrong ones that known mistakes give.

No two choices are near enough to be taken for each other, whatever rounding. Where the mistakes of
a problem give too few, the decimal point is moved in the answer, which is a mistake too.
"""

from collections.abc import Iterator
from typing import NamedTuple

from solver.units.show import figures, with_unit

from .case import Case
from .draw import Draw

__all__ = ["Choice", "choices_of"]

COUNT = 4
POINT = "The digits are right, but the decimal point is in the wrong place. Check the units."
SHIFTS = (10, 0.1, 100, 0.01)
NEAR = 12


class Choice(NamedTuple):
    """One choice: its text, and the mistake that leads to it; empty for the right one."""

    text: str
    mistake: str
    says: str
    value: float


class _Band(NamedTuple):
    low: float
    high: float
    choice: Choice


def choices_of(case: Case, count: int = COUNT) -> tuple[Choice, ...]:
    """The choices of a problem, in an order that its code fixes.

    A problem that is a choice by itself keeps its own; one of steps to put in order has none.

    >>> from solver import FAMILIES, case_from_code
    >>> [choice.text for choice in choices_of(case_from_code("BP-2U2-7-TBH"))]
    ['3.667 hp', '17.85 hp', '10.53 hp', '87.85 hp']
    """
    if case.choices:
        return () if case.ordered else tuple(_own(case))
    chance = Draw(f"choices {case.code_as_first}")
    kept = [_Band(case.low, case.high, _choice(case, case.answer, "", ""))]
    # Nobody believes an answer fifty times too large: those come only where others lack.
    mistaken = chance.shuffled([*_mistaken(case)])
    near = [band for band in mistaken if _is_near(case, band)]
    far = [band for band in mistaken if not _is_near(case, band)]
    for band in (*near, *_shifted(case), *far):
        if len(kept) < count and all(_apart(band, other) for other in kept):
            kept.append(band)
    return tuple(band.choice for band in chance.shuffled(kept))


def _own(case: Case) -> Iterator[Choice]:
    wrong = {mistake.value: mistake for mistake in case.single_mistakes}
    for number, text in enumerate(case.choices, 1):
        if number == case.answer:
            yield Choice(text, "", "", float(number))
        else:
            yield Choice(text, wrong[number].id, wrong[number].says, float(number))


def _choice(case: Case, value: float, mistake: str, says: str) -> Choice:
    return Choice(with_unit(figures(value, case.unit), case.unit), mistake, says, value)


def _mistaken(case: Case) -> Iterator[_Band]:
    """The mistakes of one link that somebody might believe: of the same sign as the right answer.

    The others are left out, so that an old code keeps its choices.
    """
    for m in case.single_mistakes:
        if m.value * case.answer > 0:
            yield _Band(m.low, m.high, _choice(case, m.value, m.id, m.says))


def _shifted(case: Case) -> Iterator[_Band]:
    for shift in SHIFTS:
        choice = _choice(case, case.answer * shift, "decimal_point", POINT)
        low, high = sorted((case.low * shift, case.high * shift))
        yield _Band(low, high, choice)


def _is_near(case: Case, band: _Band) -> bool:
    return 1 / NEAR <= band.choice.value / case.answer <= NEAR


def _apart(one: _Band, other: _Band) -> bool:
    """Two bands that do not meet, and two texts that differ."""
    meet = one.low <= other.high and other.low <= one.high
    return not meet and one.choice.text != other.choice.text
