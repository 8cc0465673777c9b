"""Each person's own problems of a set of work, the same wherever they are drawn."""

from collections.abc import Callable, Mapping
from typing import NamedTuple
from unicodedata import category, normalize

from solver.engine.case import Case
from solver.engine.draw import Draw
from solver.engine.posing import draw
from solver.errors import SolverError
from solver.fault.case import FaultCase
from solver.scenario import PEOPLE
from solver.topics.catalogue import FIRST, Refused

from .kept_ranges import keeping
from .own_plant import Plant, Pump, set_at
from .paper import SEEDS, any_seed
from .set_questions import Asked, WorkSet, plan_of

__all__ = ["case_for", "cases_for", "faults_for", "person_id"]

LONGEST_ID = 40
TRIED = 20  # seeds among which a question is not one that the person has already


def person_id(text: str) -> str:
    """A person's id as it is used everywhere: trimmed, in small letters, each letter in one form.

    >>> person_id(" Ana.R ")
    'ana.r'

    Raises:
        SolverError: the sentence says what an id may be.
    """
    name = text.strip()
    for _ in range(2):  # what folding makes may have another form again
        name = normalize("NFKC", normalize("NFKC", name).casefold()).strip()
    letters = all(
        sign in "._-@" or category(sign)[0] in "LM" or category(sign) == "Nd" for sign in name
    )
    if not (1 <= len(name) <= LONGEST_ID and letters and name[0].isalnum() and name[-1] != "."):
        wrote = " ".join(text[:LONGEST_ID].split())
        shown = "".join(sign if sign.isprintable() else "?" for sign in wrote)
        raise SolverError(
            f"An id has up to {LONGEST_ID} letters, digits and . _ - @, and begins with a letter "
            f"or a digit; you wrote “{shown}”."
        )
    return name


def cases_for(work: WorkSet, person: str) -> tuple[Case | Refused, ...]:
    """A person's problems, in order; `person` counts only where each has their own.

    The same set and person give the same problems on any machine.

    Raises:
        SolverError: `person` cannot be anybody's id.
    """
    drawn: dict[tuple[str, int], list[Case]] = {}
    return tuple(
        _drawn(work, begun, drawn.setdefault(begun.of, [])) for begun in _begun(work, person)
    )


def faults_for(work: WorkSet, person: str) -> tuple[FaultCase, ...]:
    """A person's cases of find the fault, which come after the problems; for anybody as `cases_for`.

    Raises:
        SolverError: `person` cannot be anybody's id.
    """
    if work.faults is None:
        return ()
    whose = person_id(person) if work.each else ""
    return work.faults.cases(f"{work.drawn_from} {whose}", work.units)


def case_for(work: WorkSet, person: str, number: int) -> Case | Refused:
    """A person's problem `number`, from 1; of the earlier ones only those of its kind are drawn.

    Raises:
        SolverError: `person` cannot be anybody's id, or the set has no such number.
    """
    if not 1 <= number <= work.count:
        raise SolverError(f"This set has questions 1 to {work.count}; there is no {number}.")
    *before, here = _begun(work, person)[:number]
    drawn: list[Case] = []
    for begun in before:
        if begun.of == here.of:
            _drawn(work, begun, drawn)
    return _drawn(work, here, drawn)


class _Begun(NamedTuple):
    """A question before it is drawn: its kind, its first seed and the next ones, its pump, its people."""

    asked: Asked
    seed: int
    following: Callable[[int], int]
    pump: Pump | None
    told: Mapping[str, str]

    @property
    def of(self) -> tuple[str, int]:
        """Its kind and level: what makes two questions alike."""
        return self.asked.kind.tag, self.asked.level


def _begun(work: WorkSet, person: str) -> list[_Begun]:
    """All questions of a person. Each has a stream of chance of its own.

    In the first catalogue all had one, from which each took as much, drawn or not.
    """
    whose = person_id(person) if work.each else ""
    if work.catalogue == FIRST:
        chance = Draw(f"set {work.code} {whose}")
        return [_first(work, asked, chance) for asked in plan_of(work)]
    return [
        _begin(work, asked, Draw(f"{work.drawn_from} {number} {whose}"))
        for number, asked in enumerate(plan_of(work), 1)
    ]


def _begin(work: WorkSet, asked: Asked, chance: Draw) -> _Begun:
    told = _told(work.plant, asked, chance)
    return _Begun(asked, any_seed(chance), lambda _: any_seed(chance), *told)


def _first(work: WorkSet, asked: Asked, chance: Draw) -> _Begun:
    seed = any_seed(chance)
    return _Begun(asked, seed, lambda last: (last + 1) % SEEDS, *_told(work.plant, asked, chance))


def _told(plant: Plant | None, asked: Asked, chance: Draw) -> tuple[Pump | None, dict[str, str]]:
    """The pump a problem is about, and the words for it."""
    if plant is None:
        return None, {}
    family = asked.kind.family
    pump = chance.pick(set_at(family, asked.level, plant) if family else plant.places)
    return pump, {
        "place": f"{pump.name} at {pump.station}",
        "station": pump.station,
        "person": chance.pick(plant.people or PEOPLE),
    }


def _drawn(work: WorkSet, begun: _Begun, before: list[Case]) -> Case | Refused:
    """A question, which joins those of its kind that came before; none comes twice, if it can be."""
    (kind, level), seed, following, pump, told = begun
    if kind.family is None:
        return Refused(kind, level, work.units, seed)
    for _ in range(TRIED):
        if pump:
            seed = keeping(kind.family, level, work.units, pump).seed_from(seed)
        case = draw(kind.family, seed, work.units, level, told)
        if not any(_same(case, other) for other in before):
            break
        seed = following(seed)
    before.append(case)
    return case


def _same(case: Case, other: Case) -> bool:
    """Whether two problems of a kind differ only in their names, or in the order of choices."""
    return (
        case.given == other.given
        and case.wording.asks == other.wording.asks
        and set(case.choices) == set(other.choices)
    )
