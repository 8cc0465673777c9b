"""Drawing a problem: `draw(family, seed, units, level)` gives a Case with its whole solution.

A Case is drawn again, by the same chance and so the same everywhere, until the machine in it is
plausible and no mistake lands near the accepted band. `posed` makes one of given values instead,
or refuses them.
"""

import re
from collections.abc import Mapping
from functools import cached_property
from types import MappingProxyType
from typing import NamedTuple

from solver.algebra.expression import Expr
from solver.errors import BadDefinition, NotSolvable, SolverError, Unfit
from solver.scenario import PEOPLE, Place
from solver.units.quantity import in_system
from solver.units.show import capital, exact, with_unit
from solver.vocabulary import quantity_named, spoken

from .code import MOST_SEED, Code
from .draw import Draw
from .family import Drawn, Family, Row
from .mistake import Mistake, named_mistakes
from .order import Pair
from .plan import Plan, find_plan, in_one_line
from .solution import be_plausible, judged, worked_out
from .steps import Step

__all__ = ["Case", "draw", "drawn_again", "drawn_values", "posed", "tried"]

ATTEMPTS = 400
WIDEST = 0.04  # a band wider than this, each way, would accept too much
# Real readings seldom have a round average, so that rounding on the way moves more.
WIDEST_GIVEN = 0.1
NOTHING_TOLD: Mapping[str, str] = MappingProxyType({})


class Wording(NamedTuple):
    """What a question says besides its numbers; `told` stands in for the place and the person.

    `pictured` is what its picture shows, as rows.
    """

    asks: str
    pictured: tuple[tuple[str, str], ...]
    place: Place
    person: str
    told: Mapping[str, str]


class _Case(NamedTuple):
    """What a Case is made of."""

    family: Family
    level: int
    units: str
    seed: int | None
    wording: Wording
    given: Mapping[str, float]
    known: Mapping[str, float]
    unit: str
    answer: float
    low: float
    high: float
    steps: tuple[Step, ...]
    single_mistakes: tuple[Mistake, ...]
    choices: tuple[str, ...] = ()
    pairs: tuple[Pair, ...] = ()


class Case(_Case):
    """A problem with its answer. `known` holds every quantity of the worked chain.

    `seed` is None, and `code` empty, where the values were given and not drawn. `single_mistakes`
    are those that a draw keeps apart from the answer: a choice not taken, one link of the chain worked
    wrong, or one of the `pairs` of an order broken. `mistakes` are all that have a name.
    """

    @cached_property
    def mistakes(self) -> tuple[Mistake, ...]:
        """Every named mistake; found when somebody asks, which a right answer never does."""
        if self.choices:
            return self.single_mistakes
        return named_mistakes(self._plan, self.known, self.low, self.high, self.single_mistakes)

    @property
    def one_line(self) -> Expr | None:
        """The whole chain as one expression of what is given, where that is short."""
        return None if self.choices else in_one_line(self._plan)

    @property
    def _plan(self) -> Plan:
        given, formulas = self.family.level(self.level).given, self.family.formulas
        return find_plan(given, self.asked, formulas, self.units)

    @cached_property
    def worked_wrong(self) -> dict[str, str]:
        """The numbers of mistakes that were told once, by their ids (telling.py)."""
        return {}

    @property
    def ordered(self) -> bool:
        """Whether its choices are steps to put in order."""
        return bool(self.pairs)

    @property
    def question(self) -> str:
        """The whole question in words; written when it is asked for, which marking never does."""
        read = "; ".join(f"{label}: {text}" for label, text in self.table)
        return f"{self.lead} {capital(read)}." if read else self.lead

    @property
    def lead(self) -> str:
        """The question without its table."""
        return _worded(self, self.family.level(self.level).question)

    @property
    def table(self) -> tuple[tuple[str, str], ...]:
        """What a long question says in a table: a label and a text in each row."""
        rows = tuple(_row(self, row) for row in self.family.level(self.level).table)
        return (*rows, *self.pictured)

    @property
    def pictured(self) -> tuple[tuple[str, str], ...]:
        """What only the picture shows, as rows for somebody who cannot see it; none where all is given."""
        return self.wording.pictured

    @property
    def asked(self) -> str:
        """The name of the quantity asked for, or "choice" or "order"."""
        return self.family.asks(self.family.level(self.level))

    @property
    def code(self) -> str:
        """The short text that gives this same problem on any machine."""
        return str(self._code or "")

    @property
    def code_as_first(self) -> str:
        """The code in the form of version 0.1.0, from which the order of choices is drawn."""
        return self._code.as_first if self._code else ""

    @property
    def _code(self) -> Code | None:
        family = self.family
        if self.seed is None:
            return None
        return Code(family.tag, self.level, self.units, family.revision, self.seed)


def draw(
    family: Family,
    seed: int,
    units: str = "us",
    level: int = 1,
    told: Mapping[str, str] = NOTHING_TOLD,
) -> Case:
    """The problem number `seed` of a family, in "us" or "si" units, at a level from 1.

    `told` may say another {place}, {station} or {person}, which changes nothing else. The same
    arguments give the same Case on any machine and Python version.

    Raises:
        SolverError: there is no such system of units, or no such seed.
        BadDefinition: there is no such level, or its scene draws no fair problem.
        NotSolvable: no chain of formulas leads from what is given to what is asked.
    """
    if units not in ("us", "si"):
        raise SolverError(f"Units are “us” or “si”; got “{units}”.")
    if not 0 <= seed <= MOST_SEED:
        raise SolverError(f"A seed is a whole number from 0 to {MOST_SEED:,}; you typed {seed}.")
    why: SolverError | None = None
    for attempt in range(ATTEMPTS):
        try:
            return tried(family, level, units, seed, attempt, told)
        except Unfit as fault:
            why = fault
        except NotSolvable as fault:
            raise NotSolvable(
                f"family {family.name!r}, level {level}, {units}: {fault}. Give what a formula "
                "of the chapter needs, or add the formula"
            ) from None
    raise BadDefinition(
        f"family {family.name!r}, level {level}, {units}: no draw in {ATTEMPTS} makes a fair "
        f"problem. The last one: {why} Change what its scene draws"
    )


def tried(
    family: Family,
    level: int,
    units: str,
    seed: int,
    attempt: int = 0,
    told: Mapping[str, str] = NOTHING_TOLD,
) -> Case:
    """One attempt at a problem; Unfit where what was drawn makes no fair one."""
    drawn, chance = drawn_values(family, level, units, seed, attempt)
    return _case(family, level, units, seed, drawn, chance, told)


def drawn_values(
    family: Family, level: int, units: str, seed: int, attempt: int = 0
) -> tuple[Drawn, Draw]:
    """One attempt at a problem's numbers, fair or not, and the chance that goes on from them.

    Raises:
        BadDefinition: its scene leaves out a value that the level gives.
        Unfit: what was drawn has no such reading.
    """
    at = family.level(level)
    chance = Draw(f"{family.tag} {family.revision} {level} {units} {seed} {attempt}")
    drawn = family.scene_at(level)(chance, units)
    if left_out := [name for name in at.given if name not in drawn.values]:
        raise BadDefinition(
            f"family {family.name!r}, level {level}, {units}: its scene draws no "
            f"{' and no '.join(left_out)}, and the level gives it. Add it to what the scene returns"
        )
    return drawn, chance


def drawn_again(case: Case) -> Drawn | None:
    """What a problem's numbers were taken from; none where they were given and not drawn."""
    if case.seed is None:
        return None
    for attempt in range(ATTEMPTS):
        try:
            drawn, chance = drawn_values(case.family, case.level, case.units, case.seed, attempt)
            _case(case.family, case.level, case.units, case.seed, drawn, chance, NOTHING_TOLD)
            return drawn
        except Unfit:
            continue
    return None


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
        return _case(family, level, units, None, Drawn(values), chance, told)
    except Unfit:
        raise
    except (ArithmeticError, LookupError, ValueError) as fault:
        why = f": {fault}" if isinstance(fault, SolverError) else " with these values"
        raise Unfit(f"Its formula can't be calculated{why}.") from fault


def _case(
    family: Family,
    level: int,
    units: str,
    seed: int | None,
    drawn: Drawn,
    chance: Draw,
    told: Mapping[str, str],
) -> Case:
    """The problem with these values; Unfit where it would not be a fair one."""
    at, values = family.level(level), drawn.values
    given = {name: values[name] for name in at.given}
    be_plausible(at.given, given, units)
    judge = at.judge or family.judge
    if judge is None:
        found = worked_out(family, at, units, given, WIDEST_GIVEN if seed is None else WIDEST)
    else:
        found = judged(judge, family, at, units, given, values, chance)
    place = drawn.place or chance.pick(family.places)
    wording = Wording(found.asks, found.table, place, chance.pick(PEOPLE), dict(told))
    return Case(family, level, units, seed, wording, given, *found[:-2])


def _row(case: Case, row: Row) -> tuple[str, str]:
    if isinstance(row, str):
        return quantity_named(row).spoken(case.units), _shown(row, case.given[row], case.units)
    label, text = (in_system(one, case.units) for one in row)
    return _worded(case, label), _worded(case, text)


def _worded(case: Case, text: str) -> str:
    asks, _, place, person, told = case.wording
    slots = {
        **{name: _shown(name, value, case.units) for name, value in case.given.items()},
        "place": f"{place.name} at {place.station}",
        "station": place.station,
        "person": person,
        "unit": with_unit("", case.unit).strip(),
        **told,
    }
    form = spoken(text, case.units)
    asked = spoken(asks, case.units).format(**slots)
    return _begun(form.format(asks=asked, **slots), told)


def _shown(name: str, value: float, units: str) -> str:
    unit = quantity_named(name).unit(units)
    return with_unit(exact(value, unit), unit)


def _begun(question: str, told: Mapping[str, str]) -> str:
    """The question with a capital letter where one of these names begins a sentence."""
    for name in told.values():
        start = re.compile(rf"(?:^|(?<=[.?:] )){re.escape(name)}")
        question = start.sub(lambda found: found[0][:1].upper() + found[0][1:], question)
    return question
