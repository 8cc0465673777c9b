"""Drawing a problem: `draw(family, seed, units, level)` gives a Case with its whole solution.

A Case is drawn again, by the same chance and so the same everywhere, until the machine in it is
plausible and no mistake lands near the accepted band. `posed` makes one of given values instead,
or refuses them.
"""

from collections.abc import Mapping
from functools import lru_cache
from types import MappingProxyType
from typing import NamedTuple

from .code import MOST_SEED, Code
from .draw import Draw
from .errors import BadDefinition, SolverError, Unfit
from .expression import Expr
from .family import Family, Judgement, Level
from .mistakes import mistaken_changes
from .plan import Link, Plan, find_plan
from .reading import MOST
from .scenario import PEOPLE
from .show import exact, figures, with_unit
from .tolerance import accepted_band
from .vocabulary import quantity_named

__all__ = ["Case", "Mistake", "Step", "draw", "posed"]

ATTEMPTS = 400
WIDEST = 0.04  # a band wider than this, each way, would accept too much
# Real readings seldom have a round average, so that rounding on the way moves more.
WIDEST_GIVEN = 0.1


class Step(NamedTuple):
    """One worked step: `name` gets `value` from `expr`, or by a judgement's `rule`."""

    name: str
    value: float
    unit: str
    why: str
    expr: Expr | None = None
    rule: str = ""
    numbers: str = ""


class Mistake(NamedTuple):
    """A wrong answer that a known mistake gives; `low` to `high` is where it is recognised."""

    id: str
    value: float
    says: str
    low: float
    high: float


class Case(NamedTuple):
    """A problem with its answer. `known` holds every quantity of the worked chain.

    `seed` is None, and `code` empty, where the values were given and not drawn.
    """

    family: Family
    level: int
    units: str
    seed: int | None
    question: str
    given: Mapping[str, float]
    known: Mapping[str, float]
    unit: str
    answer: float
    low: float
    high: float
    steps: tuple[Step, ...]
    mistakes: tuple[Mistake, ...]
    choices: tuple[str, ...] = ()

    @property
    def asked(self) -> str:
        """The name of the quantity asked for, or "choice"."""
        return self.family.asked

    @property
    def code(self) -> str:
        """The short text that gives this same problem on any machine."""
        family = self.family
        if self.seed is None:
            return ""
        return str(Code(family.tag, self.level, self.units, family.revision, self.seed))


def draw(family: Family, seed: int, units: str = "us", level: int = 1) -> Case:
    """The problem number `seed` of a family, in "us" or "si" units, at a level from 1.

    The same arguments give the same Case on any machine and Python version.
    """
    at = family.level(level)
    if units not in ("us", "si"):
        raise SolverError(f"Units are “us” or “si”; got “{units}”.")
    if not 0 <= seed <= MOST_SEED:
        raise SolverError(f"A seed is a whole number from 0 to {MOST_SEED:,}; got {seed}.")
    for attempt in range(ATTEMPTS):
        chance = Draw(f"{family.tag} {family.revision} {level} {units} {seed} {attempt}")
        values = (at.scene or family.scene)(chance, units)
        try:
            return _case(family, level, units, seed, values, chance)
        except Unfit:
            continue
    raise BadDefinition(
        f"family {family.name!r}, level {level}, {units}: no draw in {ATTEMPTS} keeps every "
        "mistake apart from the answer; widen its scene"
    )


def posed(
    family: Family, level: int, units: str, values: Mapping[str, float], told: Mapping[str, str]
) -> Case:
    """The problem of a family with these very values, in the units of the system.

    `values` has all that is given at the level, and may have more, which a judge may use; `told`
    may say another {place}, {station} or {person}. The same arguments give the same Case. It has
    no code.

    Raises:
        Unfit: no fair problem can be made of these values; the sentence says why.
    """
    given = {name: values[name] for name in family.level(level).given}
    chance = Draw(f"{family.tag} {family.revision} {level} {units} {given}")
    try:
        return _case(family, level, units, None, values, chance, told)
    except Unfit:
        raise
    except (ArithmeticError, LookupError, ValueError) as fault:
        why = f": {fault}" if isinstance(fault, SolverError) else " with these values"
        raise Unfit(f"Its formula cannot be worked{why}.") from fault


def _case(
    family: Family,
    level: int,
    units: str,
    seed: int | None,
    values: Mapping[str, float],
    chance: Draw,
    told: Mapping[str, str] = MappingProxyType({}),
) -> Case:
    """The problem with these values; Unfit where it would not be a fair one."""
    at = family.level(level)
    given = {name: values[name] for name in at.given}
    _be_plausible(given, units)
    if family.judge is None:
        fields = _numeric(family, at, units, given, WIDEST_GIVEN if seed is None else WIDEST)
    else:
        fields = _judged(family, at, units, given, values, chance)
    asks = fields.pop("asks", "")
    setting = {**_setting(family, fields["unit"], chance), **told}
    question = _worded(at, asks, given, units, setting)
    return Case(family, level, units, seed, question, given, **fields)


def _be_plausible(values: Mapping[str, float], units: str) -> None:
    for name, value in values.items():
        quantity = quantity_named(name)
        low, high = quantity.usual(units)
        if not low <= value <= high:
            unit = quantity.unit(units)
            size, least, most = (with_unit(figures(v, unit), unit) for v in (value, low, high))
            raise Unfit(
                f"The {quantity.label} is {size}. Problems have {least} to {most} "
                "(common practice, no source)."
            )


def _setting(family: Family, unit: str, chance: Draw) -> dict[str, str]:
    """Where a problem plays, with whom, and in what unit it asks."""
    place = chance.pick(family.places)
    return {
        "place": f"{place.name} at {place.station}",
        "station": place.station,
        "person": chance.pick(PEOPLE),
        "unit": with_unit("", unit).strip(),
    }


def _worded(
    level: Level, asks: str, given: Mapping[str, float], units: str, setting: Mapping[str, str]
) -> str:
    shown = {
        n: with_unit(exact(v, u := quantity_named(n).unit(units)), u) for n, v in given.items()
    }
    slots = {**shown, **setting}
    return level.question.format(asks=asks.format(**slots), **slots)


def _numeric(family: Family, level: Level, units: str, given: dict, widest: float) -> dict:
    plan = find_plan(level.given, family.asked, family.formulas, units)
    known = plan.run(given)
    answer = known[family.asked]
    _be_plausible({link.target: known[link.target] for link in plan.links}, units)
    low, high = accepted_band(plan, known)
    if max(high - answer, answer - low) > widest * answer:
        raise Unfit("Rounding on the way would move its answer too far.")
    return {
        "known": known,
        "unit": quantity_named(family.asked).unit(units),
        "answer": answer,
        "low": low,
        "high": high,
        "steps": worked_steps(plan, known),
        "mistakes": _mistakes(plan, known, low, high),
    }


def worked_steps(plan: Plan, known: Mapping[str, float]) -> tuple[Step, ...]:
    """The links of a plan as steps with their values."""
    return tuple(
        Step(link.target, known[link.target], unit, why, link.expr)
        for link, unit, why in _step_frames(plan)
    )


@lru_cache(maxsize=1024)
def _step_frames(plan: Plan) -> tuple[tuple[Link, str, str], ...]:
    return tuple(
        (link, quantity_named(link.target).unit(plan.units), _why(link)) for link in plan.links
    )


def _why(link: Link) -> str:
    quantity = quantity_named(link.target)
    if link.as_defined:
        return link.formula.why
    if quantity.name.endswith("efficiency"):
        return "Efficiency is what comes out over what goes in, as a percentage."
    return f"{link.formula.why} Here it is turned round for the {quantity.label}."


def _mistakes(
    plan: Plan, known: Mapping[str, float], low: float, high: float
) -> tuple[Mistake, ...]:
    """The mistakes with these values, no two alike; Unfit when one comes near the accepted band."""
    answer = known[plan.asked]
    down, up = (answer - low) / answer, (high - answer) / answer
    bare_decimal = quantity_named(plan.asked).is_efficiency
    kept: list[Mistake] = []
    for change in mistaken_changes(plan):
        try:
            value = plan.follow(known, change.at, change.compute(known))[plan.asked]
        except (ArithmeticError, LookupError, ValueError):
            continue
        size = abs(value)
        bottom, top = value - down * size, value + up * size
        if bottom <= high and top >= low:
            raise Unfit("A common mistake would give nearly the right answer.")
        # A bare decimal is read as a percentage there, so it cannot be told from a right answer.
        # A value below zero has a sentence of its own, whatever gave it.
        # Nobody types what is nearly nothing, or more than can be read.
        if not 1e-9 <= value <= MOST or (bare_decimal and value <= 1):
            continue
        if all(
            (top < m.value and value < m.low) or (bottom > m.value and value > m.high) for m in kept
        ):
            kept.append(Mistake(change.id, value, change.says, bottom, top))
    return tuple(kept)


def _judged(
    family: Family,
    level: Level,
    units: str,
    given: dict,
    values: Mapping[str, float],
    chance: Draw,
) -> dict:
    known, steps = dict(given), []
    for name in level.find:
        plan = find_plan(tuple(known), name, family.formulas, units)
        known = plan.run(known)
        steps += worked_steps(plan, known)
    _be_plausible({step.name: step.value for step in steps}, units)
    judgement = (level.judge or family.judge)({**values, **known}, units, chance)
    if judgement is None:
        raise Unfit("It is too close to a limit to be judged fairly.")
    return _choice(judgement, known, steps, chance)


def _choice(judgement: Judgement, known: dict, steps: list[Step], chance: Draw) -> dict:
    options = chance.shuffled((judgement.right, *judgement.wrong))
    number = options.index(judgement.right) + 1.0
    last = Step(
        "choice", number, "choice", judgement.right.says, None, judgement.rule, judgement.numbers
    )
    mistakes = tuple(
        Mistake(option.id, float(i), option.says, float(i), float(i))
        for i, option in enumerate(options, 1)
        if option is not judgement.right
    )
    return {
        "known": known,
        "unit": "choice",
        "answer": number,
        "low": number,
        "high": number,
        "steps": (*steps, last),
        "mistakes": mistakes,
        "choices": tuple(option.text for option in options),
        "asks": judgement.asks,
    }
