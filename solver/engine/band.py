"""The accepted band: every answer that honest work can give, and no more.

Honest people differ in two ways: they use another rounding of a constant, and they round a step to three
figures before going on. Rounding never swaps two values, so it is enough to follow the lowest and the highest
value of each step down the chain.
"""

from collections.abc import Mapping
from functools import lru_cache
from math import fsum

from solver.algebra.expression import Known, Sum
from solver.algebra.tree import Compute, compiled, constants
from solver.vocabulary import quantity_named

from .plan import Plan

__all__ = ["accepted_band"]

LAST_FIGURE = 0.005  # rounding an answer to three figures moves it by half a percent at most
LAST_DECIMAL = 0.05  # a percentage is asked to one decimal
TIE = 1e-9  # a value this near half way is rounded up by some and down by others


class _Spans:
    """How far each step can stray, as factors of its value: `low` and `high` by name."""

    def __init__(self, plan: Plan, known: Mapping[str, float]):
        self.plan, self.known = plan, known
        self.low = dict.fromkeys(known, 1.0)
        self.high = dict.fromkeys(known, 1.0)

    def widen(self, at: int, values: list[float]) -> None:
        """Let link `at` have any one of `values`, and all after it follow."""
        runs = [self.plan.follow(self.known, at, value) for value in values]
        for link in self.plan.links[at:]:
            name = link.target
            factors = [run[name] / self.known[name] for run in runs]
            self.low[name] *= min(1.0, *factors)
            self.high[name] *= max(1.0, *factors)

    def widen_by_rounding(self, at: int) -> None:
        """Let link `at` be rounded to three figures, wherever in its span it is."""
        name = self.plan.links[at].target
        value = self.known[name]
        lowest, highest = self._ends(at)
        down = min(1.0, _three_figures(lowest * (1 - TIE)) / lowest)
        up = max(1.0, _three_figures(highest * (1 + TIE)) / highest)
        if down < up:
            self.widen(at, [value * down, value * up])
        self.reach(at, [lowest * down, highest * up])

    def _ends(self, at: int) -> tuple[float, float]:
        """How low and how high link `at` can be before it is rounded itself.

        The factors of its terms multiply in its span; in a sum they add, which is a hair more.
        """
        name, expr, _ = self.plan.links[at]
        low, high = self.known[name] * self.low[name], self.known[name] * self.high[name]
        if isinstance(expr, Sum) and not expr.minus:
            terms = [term.name for term in expr.plus if isinstance(term, Known)]
            if len(terms) == len(expr.plus):
                low = min(low, fsum(self.known[term] * self.low[term] for term in terms))
                high = max(high, fsum(self.known[term] * self.high[term] for term in terms))
        return low, high

    def reach(self, at: int, ends: list[float]) -> None:
        """Let the steps after `at` follow its very ends, where a table may jump to the next row."""
        runs = [self.plan.follow(self.known, at, end) for end in ends]
        for link in self.plan.links[at + 1 :]:
            name = link.target
            factors = [run[name] / self.known[name] for run in runs]
            self.low[name] = min(self.low[name], *factors)
            self.high[name] = max(self.high[name], *factors)


def accepted_band(plan: Plan, known: Mapping[str, float]) -> tuple[float, float]:
    """The lowest and highest answer of an honest learner; every worked value is above zero."""
    spans = _Spans(plan, known)
    others = _other_roundings(plan)
    for at in range(len(plan.links)):
        for group in others[at]:
            spans.widen(at, [compute(known) for compute in group])
        if at < len(plan.links) - 1:
            spans.widen_by_rounding(at)
    asked = plan.asked
    low, high = known[asked] * spans.low[asked], known[asked] * spans.high[asked]
    margin = LAST_DECIMAL if quantity_named(asked).us == "%" else 0.0
    return low - max(margin, low * LAST_FIGURE), high + max(margin, high * LAST_FIGURE)


@lru_cache(maxsize=1024)
def _other_roundings(plan: Plan) -> tuple[tuple[tuple[Compute, ...], ...], ...]:
    """For each link, for each of its constants: the link computed with each other rounding."""
    return tuple(
        tuple(
            tuple(compiled(link.expr, plan.units, {constant: value}) for value in also)
            for constant in constants(link.expr)
            if (also := constant.figure(plan.units).also)
        )
        for link in plan.links
    )


def _three_figures(value: float) -> float:
    return float(f"{value:.3g}")
