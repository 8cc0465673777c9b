"""What a problem comes to with given values: answer, accepted band, steps, mistakes; or Unfit.

The accepted band is every answer that honest work can give, and no more. Honest people differ in two
ways: they use another rounding of a constant, and they round a step to three figures before going on.
Rounding never swaps two values, so it is enough to follow the lowest and the highest value of each
step down the chain.
"""

from collections import ChainMap
from collections.abc import Iterable, Mapping
from functools import lru_cache
from math import fsum
from typing import NamedTuple, cast

from solver.algebra.expression import Known, Sum
from solver.algebra.tree import Compute, compiled, constants
from solver.errors import Unfit
from solver.units.show import figures, with_unit
from solver.vocabulary import quantity_named, spoken

from .changes import mistaken_changes
from .draw import Draw
from .family import Family, Judge, Judgement, Level, Orders
from .mistake import Mistake, can_be_told, stands_alone
from .order import Ordering, Pair, posed
from .plan import Plan, find_plan
from .steps import Step, worked_steps

__all__ = ["Solution", "accepted_band", "be_plausible", "judged", "worked_out"]

LAST_FIGURE = 0.005  # rounding an answer to three figures moves it by half a percent at most
LAST_DECIMAL = 0.05  # a percentage is asked to one decimal
TIE = 1e-9  # a value this near half way is rounded up by some and down by others


class Solution(NamedTuple):
    """What a problem comes to, in `unit`; its mistakes are those of one link.

    `pairs` are those of steps to put in order, one for each mistake. `asks` is what a judgement asks
    where each draw asks another thing, and `table` what its picture shows. All before these two are the
    last fields of a Case, in the same order.
    """

    known: Mapping[str, float]
    unit: str
    answer: float
    low: float
    high: float
    steps: tuple[Step, ...]
    mistakes: tuple[Mistake, ...]
    choices: tuple[str, ...] = ()
    pairs: tuple[Pair, ...] = ()
    asks: str = ""
    table: tuple[tuple[str, str], ...] = ()


def be_plausible(names: Iterable[str], values: Mapping[str, float], units: str) -> None:
    """Refuse a value, in its unit of the system, outside its plausible range.

    Raises:
        Unfit: no ordinary pump, motor, bill or reading shows it.
    """
    for name in names:
        quantity, value = quantity_named(name), values[name]
        low, high = quantity.usual(units)
        if not low <= value <= high:
            unit = quantity.unit(units)
            size, least, most = (with_unit(figures(v, unit), unit) for v in (value, low, high))
            raise Unfit(
                f"The {quantity.label(units)} is {size}. Problems have {least} to {most} "
                "(common practice, no source)."
            )


def worked_out(
    family: Family, level: Level, units: str, given: Mapping[str, float], widest: float
) -> Solution:
    """The answer by the chain of formulas; its band may be `widest` of it each way, as a share.

    Raises:
        NotSolvable: no chain leads from what is given to what is asked.
        Unfit: a value is not plausible, the band too wide, or a mistake near the answer.
    """
    plan = find_plan(level.given, family.asks(level), family.formulas, units)
    known = plan.run(given)
    answer = known[plan.asked]
    be_plausible((link.target for link in plan.links), known, units)
    low, high = accepted_band(plan, known)
    if max(high - answer, answer - low) > widest * answer:
        raise Unfit("Rounding on the way would move its answer too far.")
    steps, mistakes = worked_steps(plan, known), _mistakes(plan, known, low, high)
    unit = quantity_named(plan.asked).unit(units)
    return Solution(known, unit, answer, low, high, steps, mistakes)


def _mistakes(
    plan: Plan, known: Mapping[str, float], low: float, high: float
) -> tuple[Mistake, ...]:
    """The mistakes with these values, no two alike; Unfit when one comes near the accepted band."""
    answer = known[plan.asked]
    down, up = (answer - low) / answer, (high - answer) / answer
    bare_decimal = quantity_named(plan.asked).takes_decimal
    kept: list[Mistake] = []
    last = len(plan.links) - 1  # which gives what is asked
    for change in mistaken_changes(plan):
        try:
            value = change.compute(known)
            if change.at < last:
                value = plan.follow(known, change.at, value)[plan.asked]
        except (ArithmeticError, LookupError, ValueError):
            continue
        size = abs(value)
        bottom, top = value - down * size, value + up * size
        if bottom <= high and top >= low:
            raise Unfit("A common mistake would give nearly the right answer.")
        if not can_be_told(value, bare_decimal):
            continue
        if stands_alone(value, bottom, top, kept):
            of = plan.links[change.at].target
            told = change.did, change.why, change.expr, of, change.form
            kept.append(Mistake(change.id, value, bottom, top, *told))
    return tuple(kept)


def judged(
    judge: Judge | Orders,
    family: Family,
    level: Level,
    units: str,
    given: Mapping[str, float],
    values: Mapping[str, float],
    chance: Draw,
) -> Solution:
    """The choice or the order that is right; the judge may look at all the `values` of a scene.

    Raises:
        Unfit: a value is not plausible, or it is too close to a limit.
    """
    known = dict(given)
    steps: list[Step] = []
    for name in level.find:
        plan = find_plan(tuple(known), name, family.formulas, units)
        known = plan.run(known)
        steps += worked_steps(plan, known)
    be_plausible((step.name for step in steps), known, units)
    judgement = judge(ChainMap(known, cast(dict[str, float], values)), units, chance)
    if judgement is None:
        raise Unfit("It is too close to a limit to be judged fairly.")
    if isinstance(judgement, Ordering):
        found = posed(judgement, chance)
        at, told = found.answer, (found.steps, found.mistakes)
        return Solution(
            known, "order", at, at, at, *told, found.choices, found.pairs, judgement.asks
        )
    return _choice(judgement, known, steps, units, chance)


def _choice(
    judgement: Judgement, known: dict[str, float], steps: list[Step], units: str, chance: Draw
) -> Solution:
    options = chance.shuffled((judgement.right, *judgement.wrong))
    number = options.index(judgement.right) + 1.0
    why, rule, numbers = (
        spoken(text, units) for text in (judgement.right.says, judgement.rule, judgement.numbers)
    )
    last = Step("choice", number, "choice", why, None, rule, numbers)
    mistakes = tuple(
        Mistake(option.id, float(i), float(i), float(i), spoken(option.says, units))
        for i, option in enumerate(options, 1)
        if option is not judgement.right
    )
    choices = tuple(spoken(option.text, units) for option in options)
    at = (number, number, number)  # the answer, and its band
    shown = tuple((spoken(label, units), spoken(text, units)) for label, text in judgement.table)
    told = judgement.asks, shown
    return Solution(known, "choice", *at, (*steps, last), mistakes, choices, (), *told)


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
