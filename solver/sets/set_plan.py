"""A set of work: its code, and the kind of each of its questions, the same for everybody."""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import NamedTuple

from solver.engine.code import UNIT_LETTERS, sealed, sealed_as_first
from solver.engine.draw import Draw
from solver.topics.catalogue import CATALOGUE, FIRST, Kind, chapters_at, kinds_at, level_at

from .own_plant import Plant
from .paper import mask_of

__all__ = ["Asked", "WorkSet", "plan_of"]


class Asked(NamedTuple):
    """The kind of one question."""

    kind: Kind
    level: int


class WorkSet(NamedTuple):
    """What people are set; `set_of` makes one, and says what cannot be.

    `families` are names, in the order of the catalogue; `level` 0 is any; `count` is of questions;
    without `each` everybody has the same numbers.
    """

    families: tuple[str, ...]
    level: int
    units: str
    count: int
    each: bool
    seed: int
    plant: Plant | None = None
    catalogue: int = CATALOGUE

    @property
    def code(self) -> str:
        """The text that gives this same set on any machine, with this version or a later one.

        >>> from solver.sets.work_set import set_of
        >>> set_of(chapters=["horsepower", "head"], level=2, seed=48213, catalogue=2).code
        'SET-33-2U-10-E-2-48213-VNE'
        """
        return _code(self)


@lru_cache(maxsize=64)
def _code(work: WorkSet) -> str:
    kinds, chosen = kinds_at(work.catalogue), set(work.families)
    left = {kind.chapter for kind in kinds if kind.name not in chosen}
    whole = [chapter for chapter in chapters_at(work.catalogue) if chapter not in left]
    seal = sealed_as_first if work.catalogue == FIRST else sealed
    return seal(
        "SET",
        mask_of(whole),
        *(kind.tag for kind in _chosen(work) if kind.chapter not in whole),
        f"{work.level}{UNIT_LETTERS[work.units]}",
        work.count,
        "E" if work.each else "S",
        work.catalogue,
        work.seed,
        *([work.plant.fingerprint] if work.plant else []),
    )


def _chosen(work: WorkSet) -> list[Kind]:
    chosen = set(work.families)
    return [kind for kind in kinds_at(work.catalogue) if kind.name in chosen]


@lru_cache(maxsize=64)
def plan_of(work: WorkSet) -> tuple[Asked, ...]:
    """The kind of each question, the same for everybody: chapters in turn.

    No kind comes again before all have been asked.
    """
    chance = Draw(f"plan {work.code}")
    turns = _in_turn(_chosen(work), chance)
    asked = []
    for number in range(1, work.count + 1):
        kind = next(turns)
        own = chance if work.catalogue == FIRST else Draw(f"{work.code} {number}")
        asked.append(Asked(kind, level_at(kind, work.level, own)))
    return tuple(asked)


def _in_turn(kinds: Sequence[Kind], chance: Draw) -> Iterator[Kind]:
    chapters = dict.fromkeys(kind.chapter for kind in kinds)
    while True:
        heaps = [
            chance.shuffled([kind for kind in kinds if kind.chapter == chapter])
            for chapter in chance.shuffled(tuple(chapters))
        ]
        while heaps := [heap for heap in heaps if heap]:
            yield from (heap.pop() for heap in heaps)
