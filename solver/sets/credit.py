"""What an answer earns: a share of a question's points, by its verdict and the tries before it."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from solver.engine.grading import MISTAKE, NEAR, RIGHT, Verdict
from solver.fault.remedies import RIGHT as RIGHT_CALLS
from solver.fault.way import Way
from solver.units.show import exact

__all__ = ["Credit", "in_points", "share_of", "share_of_way"]


class Credit(NamedTuple):
    """Shares of the points, 0 to 1. A wrong answer, and one that cannot be read, earn nothing.

    `by_mistake` has another share for the mistakes named there, by their id; `each_try` is taken
    off for each try before. `wrong_choice` is for a wrong one of several choices that has a name; None
    takes it as any other mistake.
    """

    right: float = 1.0
    close: float = 0.8
    mistake: float = 0.5
    by_mistake: Mapping[str, float] = MappingProxyType({})
    each_try: float = 0.0
    wrong_choice: float | None = None


def in_points(points: float) -> str:
    """A number of points as it is said.

    >>> in_points(1.0), in_points(0.5), in_points(0)
    ('1 point', '0.5 points', '0 points')
    """
    return f"{exact(points)} point{'' if points == 1 else 's'}"


def share_of(credit: Credit, verdict: Verdict, tries: int, choice: bool = False) -> float:
    """The share of the points that an answer earns, 0 to 1; `tries` counts this one too.

    `choice` tells that it was one of several choices.

    >>> from solver import draw, grade
    >>> case = draw("water_power", 7)
    >>> share_of(Credit(each_try=0.1), grade(case, f"{case.answer:.4g} hp"), tries=3)
    0.8
    """
    mistake = credit.mistake
    if choice and credit.wrong_choice is not None:
        mistake = credit.wrong_choice
    shares = {
        RIGHT: credit.right,
        NEAR: credit.close,
        MISTAKE: credit.by_mistake.get(verdict.mistake or "", mistake),
    }
    return _within(shares.get(verdict.status, 0.0) - credit.each_try * max(0, tries - 1))


def share_of_way(credit: Credit, way: Way, tries: int, unsafe: float) -> float:
    """The share of the points that a way through a case of find the fault earns, 0 to 1.

    The fault named and the right call made earns what a right answer does; named alone, what a close one
    does. Of the names the first `tries` count; 0 is no limit. Each wrong name takes `each_try` off, and each
    step that a safety rule stopped takes off `unsafe`.
    """
    names = list(dict.fromkeys(way.names))[: tries or None]
    if way.case.fault not in names:
        return 0.0
    share = credit.right if way.action in RIGHT_CALLS[way.case.fault][0] else credit.close
    off = credit.each_try * names.index(way.case.fault) + unsafe * len(way.unsafe)
    return _within(share - off)


def _within(share: float) -> float:
    return round(min(1.0, max(0.0, share)), 9)  # without the dust of binary fractions
