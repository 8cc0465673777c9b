"""The problems of one person in a set of work: the same ones wherever they are drawn."""

from collections.abc import Mapping
from typing import NamedTuple

from .case import Case
from .case import draw as draw_case
from .draw import Draw
from .errors import SolverError
from .family import Family
from .kept_ranges import keeping
from .own_plant import Plant, Pump, set_at
from .person import person_id
from .scenario import PEOPLE
from .set_plan import Asked, WorkSet, plan_of

__all__ = ["case_for", "cases_for"]

SEEDS = 100_000
TRIED = 20  # seeds among which a question is not one that the person has already


def cases_for(work: WorkSet, person: str) -> tuple[Case, ...]:
    """A person's problems, in order; `person` counts only where each has their own.

    The same set and person give the same problems on any machine.

    Raises:
        SolverError: `person` cannot be anybody's id.
    """
    drawn: dict[tuple[str, int], list[Case]] = {}
    return tuple(
        _drawn(work, begun, drawn.setdefault(begun.kind, [])) for begun in _begun(work, person)
    )


def case_for(work: WorkSet, person: str, number: int) -> Case:
    """A person's problem `number`, from 1; of the earlier ones only those of its kind are drawn.

    Raises:
        SolverError: `person` cannot be anybody's id, or the set has no such number.
    """
    if not 1 <= number <= work.count:
        raise SolverError(f"This set has questions 1 to {work.count}; there is no {number}.")
    *before, here = _begun(work, person)[:number]
    drawn: list[Case] = []
    for begun in (*(begun for begun in before if begun.kind == here.kind), here):
        _drawn(work, begun, drawn)
    return drawn[-1]


class _Begun(NamedTuple):
    """A question before it is drawn: its kind, where seeds are looked for, its pump and people."""

    asked: Asked
    seed: int
    pump: Pump | None
    told: Mapping[str, str]

    @property
    def kind(self) -> tuple[str, int]:
        return self.asked.family.tag, self.asked.level


def _begun(work: WorkSet, person: str) -> list[_Begun]:
    """All questions of a person; each takes the same number of chances, drawn or not."""
    chance = Draw(f"set {work.code} {person_id(person) if work.each else ''}")
    return [
        _Begun(asked, int(chance.between(0, SEEDS)), *_told(work.plant, asked.family, chance))
        for asked in plan_of(work)
    ]


def _told(plant: Plant | None, family: Family, chance: Draw) -> tuple[Pump | None, dict[str, str]]:
    """The pump a problem is about, and the words for it."""
    if plant is None:
        return None, {}
    pump = chance.pick(set_at(family, plant))
    return pump, {
        "place": f"{pump.name} at {pump.station}",
        "station": pump.station,
        "person": chance.pick(plant.people or PEOPLE),
    }


def _drawn(work: WorkSet, begun: _Begun, before: list[Case]) -> Case:
    """A question, which joins those of its kind that came before; none comes twice, if it can be."""
    (family, level), seed, pump, told = begun
    for _ in range(TRIED):
        if pump and pump.ranges:
            seed = keeping(family, level, work.units, pump).seed_from(seed)
        case = draw_case(family, seed, work.units, level, told)
        if not any(_same(case, other) for other in before):
            break
        seed = (seed + 1) % SEEDS
    before.append(case)
    return case


def _same(case: Case, other: Case) -> bool:
    """Whether two problems of a kind differ only in their names, or in the order of choices."""
    return (
        case.given == other.given
        and case.wording.asks == other.wording.asks
        and set(case.choices) == set(other.choices)
    )
