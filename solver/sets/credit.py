"""What an answer earns: a share of a question's points, by its verdict and the tries before it."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from solver.engine.grading import MISTAKE, NEAR, RIGHT, Verdict

__all__ = ["Credit", "share_of"]


class Credit(NamedTuple):
    """Shares of the points, 0 to 1. A wrong answer, and one that cannot be read, earn nothing.

    `by_mistake` has another share for the mistakes named there, by their id; `each_try` is taken
    off for each try before.
    """

    right: float = 1.0
    close: float = 0.8
    mistake: float = 0.5
    by_mistake: Mapping[str, float] = MappingProxyType({})
    each_try: float = 0.0


def share_of(credit: Credit, verdict: Verdict, tries: int) -> float:
    """The share of the points that an answer earns, 0 to 1; `tries` counts this one too.

    >>> from solver import draw, grade
    >>> case = draw("water_power", 7)
    >>> share_of(Credit(each_try=0.1), grade(case, f"{case.answer:.4g} hp"), tries=3)
    0.8
    """
    shares = {
        RIGHT: credit.right,
        NEAR: credit.close,
        MISTAKE: credit.by_mistake.get(verdict.mistake or "", credit.mistake),
    }
    share = shares.get(verdict.status, 0.0) - credit.each_try * max(0, tries - 1)
    return round(min(1.0, max(0.0, share)), 9)  # without the dust of binary fractions
