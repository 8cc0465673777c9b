"""A set of work: its code, and the kind of each of its questions, the same for everybody."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import NamedTuple

from solver.engine.code import UNIT_LETTERS, sealed, sealed_as_first
from solver.engine.draw import Draw
from solver.topics.catalogue import CATALOGUE, FIRST, Kind, chapters_at, kinds_at, level_at

from .fault_part import FaultPart
from .own_plant import Plant
from .paper import mask_of
from .paper_questions import around
from .shares import counts_of, in_code

__all__ = ["Asked", "WorkSet", "plan_of"]


class Asked(NamedTuple):
    """The kind of one question."""

    kind: Kind
    level: int


@dataclass(frozen=True)
class WorkSet:
    """What people are set; `set_of` makes one, and says what cannot be.

    `families` are names, in the order of the catalogue; `level` 0 is any; `count` is of problems;
    without `each` everybody has the same numbers. `faults` are the cases of find the fault after them.
    `shares` has a share for each chapter, in the order of the catalogue; without any, chapters take turns.
    """

    families: tuple[str, ...]
    level: int
    units: str
    count: int
    each: bool
    seed: int
    plant: Plant | None = None
    catalogue: int = CATALOGUE
    faults: FaultPart | None = None
    shares: tuple[int, ...] = ()

    @property
    def by_share(self) -> dict[str, int]:
        """The share of each chapter, by its name; empty where chapters take turns."""
        chapters = dict.fromkeys(kind.chapter for kind in _chosen(self))
        return dict(zip(chapters, self.shares, strict=True)) if self.shares else {}

    @property
    def asked(self) -> int:
        """How many questions there are: problems, then cases."""
        return self.count + (self.faults.count if self.faults else 0)

    @property
    def code(self) -> str:
        """The text that gives this same set on any machine, with this version or a later one.

        >>> from solver.sets.work_set import set_of
        >>> set_of(chapters=["horsepower", "head"], level=2, seed=48213, catalogue=2).code
        'SET-33-2U-10-E-2-48213-VNE'
        """
        return _code(self)

    @property
    def drawn_from(self) -> str:
        """The text that its problems are drawn from: those of the same set without cases."""
        return _code(replace(self, faults=None)) if self.faults else self.code


@lru_cache(maxsize=64)
def _code(work: WorkSet) -> str:
    kinds, chosen = kinds_at(work.catalogue), set(work.families)
    left = {kind.chapter for kind in kinds if kind.name not in chosen}
    whole = [chapter for chapter in chapters_at(work.catalogue) if chapter not in left]
    seal = sealed_as_first if work.catalogue == FIRST else sealed
    return seal(
        "SET",
        mask_of(whole),
        *([in_code(work.shares)] if work.shares else []),
        *(kind.tag for kind in _chosen(work) if kind.chapter not in whole),
        f"{work.level}{UNIT_LETTERS[work.units]}",
        work.count,
        "E" if work.each else "S",
        work.catalogue,
        work.seed,
        *([work.faults.in_code] if work.faults else []),
        *([work.plant.fingerprint] if work.plant else []),
    )


def _chosen(work: WorkSet) -> list[Kind]:
    chosen = set(work.families)
    return [kind for kind in kinds_at(work.catalogue) if kind.name in chosen]


@lru_cache(maxsize=64)
def plan_of(work: WorkSet) -> tuple[Asked, ...]:
    """The kind of each question, the same for everybody: chapters in turn, or by their shares.

    No kind comes again before all (by shares: all of its chapter) have been asked.
    """
    chance = Draw(f"plan {work.drawn_from}")
    turns = _by_share(work, chance) if work.shares else _in_turn(_chosen(work), chance)
    asked = []
    for number in range(1, work.count + 1):
        kind = next(turns)
        own = chance if work.catalogue == FIRST else Draw(f"{work.drawn_from} {number}")
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


def _by_share(work: WorkSet, chance: Draw) -> Iterator[Kind]:
    """As many of each chapter as its share gives, in an order of chance."""
    each = counts_of(work.count, work.shares)
    kinds = _chosen(work)
    heaps = {chapter: around(kinds, chapter, chance) for chapter in work.by_share}
    turns = [chapter for chapter, many in zip(heaps, each, strict=True) for _ in range(many)]
    for chapter in chance.shuffled(turns):
        yield next(heaps[chapter])
