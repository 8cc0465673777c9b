"""A set of work: its code, and the kind of each of its questions, the same for everybody."""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import NamedTuple

from .coded import UNIT_LETTERS, coded
from .draw import Draw
from .families import FAMILIES
from .family import Family
from .own_plant import Plant
from .paper import CHAPTERS, EDITION, level_at, mask_of

__all__ = ["Asked", "WorkSet", "plan_of"]

_BY_NAME = {family.name: family for family in FAMILIES}


class Asked(NamedTuple):
    """The kind of one question."""

    family: Family
    level: int


class WorkSet(NamedTuple):
    """What people are set; `set_of` makes one, and says what cannot be.

    `families` are names, in the order of the vocabulary of families; `level` 0 is any; `count` is
    of questions; without `each` everybody has the same numbers.
    """

    families: tuple[str, ...]
    level: int
    units: str
    count: int
    each: bool
    seed: int
    plant: Plant | None = None

    @property
    def code(self) -> str:
        """The text that gives this same set on any machine with this edition.

        >>> from solver.work_set import set_of
        >>> set_of(chapters=["horsepower", "head"], level=2, seed=48213).code
        'SET-33-2U-10-E-1-48213-46'
        """
        return _code(self)


@lru_cache(maxsize=64)
def _code(work: WorkSet) -> str:
    chosen = set(work.families)
    left = {family.chapter for family in FAMILIES if family.name not in chosen}
    whole = [chapter for chapter in CHAPTERS if chapter not in left]
    others = [_BY_NAME[n].tag for n in work.families if _BY_NAME[n].chapter not in whole]
    return coded(
        "SET",
        mask_of(whole),
        *others,
        f"{work.level}{UNIT_LETTERS[work.units]}",
        work.count,
        "E" if work.each else "S",
        EDITION,
        work.seed,
        *([work.plant.fingerprint] if work.plant else []),
    )


@lru_cache(maxsize=64)
def plan_of(work: WorkSet) -> tuple[Asked, ...]:
    """The kind of each question, the same for everybody: chapters in turn.

    No family comes again before all have been asked.
    """
    chance = Draw(f"plan {work.code}")
    turns = _in_turn([_BY_NAME[name] for name in work.families], chance)
    asked = (next(turns) for _ in range(work.count))
    return tuple(Asked(family, level_at(family, work.level, chance)) for family in asked)


def _in_turn(families: Sequence[Family], chance: Draw) -> Iterator[Family]:
    chapters = dict.fromkeys(family.chapter for family in families)
    while True:
        heaps = [
            chance.shuffled([family for family in families if family.chapter == chapter])
            for chapter in chance.shuffled(tuple(chapters))
        ]
        while heaps := [heap for heap in heaps if heap]:
            yield from (heap.pop() for heap in heaps)
