"""What a problem comes to with given values: answer, accepted band, steps, mistakes; or Unfit."""

from collections import ChainMap
from collections.abc import Iterable, Mapping
from typing import NamedTuple, cast

from solver.errors import Unfit
from solver.units.show import figures, with_unit
from solver.vocabulary import quantity_named, spoken

from .band import accepted_band
from .changes import mistaken_changes
from .draw import Draw
from .family import Family, Level
from .judgement import Judge, Judgement, Orders
from .mistake import Mistake, can_be_told, stands_alone
from .order import Ordering, Pair, posed
from .plan import Plan, find_plan
from .steps import Step, worked_steps

__all__ = ["Solution", "be_plausible", "judged", "worked_out"]


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
