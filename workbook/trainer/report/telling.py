"""How well a question tells those who know the work from those who do not yet."""

from collections import defaultdict
from collections.abc import Sequence
from statistics import correlation, fmean
from typing import NamedTuple

__all__ = ["ENOUGH", "Telling", "telling"]

ENOUGH = 10  # people; with fewer, one of them alone turns the number round
ALIKE = 9  # decimals; shares that differ by less differ only in the way they were added up


class Telling(NamedTuple):
    """How the points here go with those of the other questions.

    `value` is the point-biserial correlation, -1 to 1, of the share of the points here with that
    of all other questions; None where it says nothing. `best` and `lowest` are the mean shares
    here, 0 to 1, of the third that did best in the other questions and of the third that did least.
    """

    value: float | None = None
    best: float | None = None
    lowest: float | None = None


def telling(here: Sequence[float], others: Sequence[float]) -> Telling:
    """What a question tells, from each person's share of its points and of all the others.

    The question itself stays out of `others`, or it would agree with itself. There is none of it
    under ten people, nor where all did alike.

    >>> told = telling([0] * 5 + [1] * 5, range(10))
    >>> round(told.value, 2), told.best, told.lowest
    (0.87, 1.0, 0.0)
    """
    here, others = ([round(share, ALIKE) for share in shares] for shares in (here, others))
    if len(here) < ENOUGH or len(set(here)) == 1 or len(set(others)) == 1:
        return Telling()
    ranked = _ranked(here, others)
    third = len(ranked) // 3
    return Telling(correlation(here, others), fmean(ranked[-third:]), fmean(ranked[:third]))


def _ranked(here: Sequence[float], others: Sequence[float]) -> list[float]:
    """The shares here, least first by the others; those alike there share what they have here.

    So no chance decides who of them belongs to a third.
    """
    alike = defaultdict(list)
    for share, other in zip(here, others, strict=True):
        alike[other].append(share)
    return [mean for other in sorted(alike) for mean in [fmean(alike[other])] * len(alike[other])]
