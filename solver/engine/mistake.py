"""A wrong answer with a name: where it is recognized, what is told of it, and all those of a problem.

Where two slips give nearly the same number, the likelier has the other beside it, and both are
told. Two that give the same whatever the numbers are one slip, and are told once.
"""

from bisect import bisect_left, insort
from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import NamedTuple

from solver.algebra.expression import Expr, Lookup
from solver.algebra.tree import walk
from solver.units.reading import MOST
from solver.vocabulary import quantity_named

from .common_slips import common_slips
from .plan import Plan
from .slips_together import CommonSlip

__all__ = ["CLOSE", "THIS", "Mistake", "can_be_told", "named_mistakes", "stands_alone"]

THIS = "{this}"  # in a sentence: what the learner typed
CLOSE = 0.03  # an answer this near the right one is told that it is close
TIE = 1e-9
SAME = 0.004  # 0.746 and 0.7457 are one slip
# The givens of another problem: by how much the first is larger, and each one more than that.
OTHER_GIVENS = 1.031, 0.017


class Mistake(NamedTuple):
    """A wrong answer that a known mistake gives; `low` to `high` is where it is recognized.

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


def _meet(one: Mistake, other: Mistake) -> bool:
    """Whether one of two wrong answers lies where the other is recognized."""
    return one.low <= other.value <= one.high or other.low <= one.value <= other.high


def named_mistakes(
    plan: Plan,
    known: Mapping[str, float],
    low: float,
    high: float,
    single: tuple[Mistake, ...],
) -> tuple[Mistake, ...]:
    """The mistakes of one link first, as a draw found them; then the rest, the likelier first."""
    answer = known[plan.asked]
    down, up = (answer - low) / answer, (high - answer) / answer
    kept = {mistake.id: mistake for mistake in single}
    slips = common_slips(plan)
    bare_decimal = quantity_named(plan.asked).takes_decimal
    near = _Neighbors(kept.values(), down, up)
    other_problem = None
    for slip in slips.values():
        value = _answer(slip, known)
        if slip.id in kept or not can_be_told(value, bare_decimal):
            continue
        bottom, top = _apart_from(answer, value, value * (1 - down), value * (1 + up))
        if not bottom <= value <= top or (bottom <= high and top >= low):
            continue
        mistake = Mistake(
            slip.id, value, bottom, top, slip.did, slip.why, slip.expr, slip.of, slip.form
        )
        other = kept.get(near.of(mistake))
        if other is None:
            kept[mistake.id] = mistake
            near.add(mistake)
            continue
        other_problem = other_problem or _other_problem(plan, known)
        if _reads_a_table(plan) or not _are_one(slip, slips[other.id], other_problem):
            kept[other.id] = other._replace(others=(*other.others, mistake))
    return tuple(kept.values())


class _Neighbors:
    """The mistakes kept so far by their values, to find one that another would be taken for."""

    def __init__(self, kept: Iterable[Mistake], down: float, up: float):
        self.shrink, self.grow = 1 - max(down, up), 1 / (1 - max(down, up))
        self.sorted: list[tuple[float, int, Mistake]] = []
        for mistake in kept:
            self.add(mistake)

    def add(self, mistake: Mistake) -> None:
        insort(self.sorted, (mistake.value, len(self.sorted), mistake))

    def of(self, mistake: Mistake) -> str:
        """The id of the likeliest mistake that it would be taken for, or that for it; or ""."""
        start = bisect_left(self.sorted, (mistake.value * self.shrink,))
        best = len(self.sorted), ""
        for value, place, other in self.sorted[start:]:
            if value > mistake.value * self.grow:
                break
            if place < best[0] and _meet(mistake, other):
                best = place, other.id
        return best[1]


def _apart_from(answer: float, value: float, low: float, high: float) -> tuple[float, float]:
    """Where a wrong answer is recognized: nowhere that is close to the right one."""
    if value > answer:
        return max(low, answer / (1 - CLOSE) * (1 + TIE)), high
    return low, min(high, answer * (1 - CLOSE) * (1 - TIE))


def _answer(slip: CommonSlip, known: Mapping[str, float]) -> float:
    """What a slip gives; below zero where it cannot be worked."""
    try:
        return slip.answer(known)
    except (ArithmeticError, LookupError, ValueError, TypeError):
        return -1.0


def _other_problem(plan: Plan, known: Mapping[str, float]) -> Mapping[str, float]:
    """The same problem with other numbers; without any where it cannot be worked."""
    first, more = OTHER_GIVENS
    given = {name: known[name] * (first + more * i) for i, name in enumerate(plan.given)}
    try:
        return plan.run(given)
    except (ArithmeticError, LookupError, ValueError):
        return {}


def _are_one(slip: CommonSlip, other: CommonSlip, known: Mapping[str, float]) -> bool:
    """Whether two slips that give the same number here do so in another problem too."""
    if not known:
        return False
    one, two = _answer(slip, known), _answer(other, known)
    return abs(one - two) <= SAME * abs(two)


@lru_cache(maxsize=1024)
def _reads_a_table(plan: Plan) -> bool:
    """Whether the answer jumps from row to row, so that many a number gives the same."""
    return any(isinstance(node, Lookup) for node in walk(plan.links[-1].expr))
