"""A problem as somebody gets it: its question in words, its answer and the whole of its solution."""

import re
from collections.abc import Mapping
from functools import cached_property
from typing import NamedTuple

from solver.algebra.expression import Expr
from solver.scenario import Place
from solver.units.quantity import in_system
from solver.units.show import capital, exact, with_unit
from solver.vocabulary import quantity_named, spoken

from .code import Code
from .family import Family, Row
from .mistake import Mistake, named_mistakes
from .order import Pair
from .plan import Plan, find_plan, in_one_line
from .steps import Step

__all__ = ["Case", "Wording"]


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
