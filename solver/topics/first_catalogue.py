"""How version 0.1.0 drew, so that what it handed out stays what it is. Nothing new is drawn so."""

from collections.abc import Iterator

from solver.engine.case import Case
from solver.engine.draw import Draw
from solver.engine.family import Family
from solver.engine.posing import draw as draw_case

from .catalogue import FIRST, Kind, Refused, kinds_at, level_at

__all__ = ["questions"]

SEEDS = 100_000
TRIED = 50
UNSURE = (
    "An earlier question of this exam is of a kind that has changed since, so nobody can tell "
    "for sure which question was here."
)


def questions(
    code: str, chapters: list[str], level: int, units: str, count: int
) -> list[Case | Refused]:
    """The questions of an exam of version 0.1.0: all that is left to chance is one stream.

    Whether a question of a kind came twice moved that stream, which cannot be known once the kind
    has changed. So from its second question on the rest are refused.
    """
    chance = Draw(f"paper 1 {code}")
    heaps = [_heap(chapter, chance) for chapter in chance.shuffled(chapters)]
    found: list[Case | Refused] = []
    lost: set[tuple[str, int]] = set()
    sure = True
    while len(found) < count:
        kind = next(heaps[len(found) % len(heaps)])
        at = level_at(kind, level, chance)
        sure = sure and (kind.tag, at) not in lost
        if sure and kind.family:
            found.append(_question(kind.family, units, at, chance, found))
            continue
        lost.add((kind.tag, at))
        seed = int(chance.between(0, SEEDS))
        found.append(Refused(kind, at, units, seed, "" if sure else UNSURE))
    return found


def _heap(chapter: str, chance: Draw) -> Iterator[Kind]:
    """The kinds of a chapter for ever, each time round in another order."""
    kinds = [kind for kind in kinds_at(FIRST) if kind.chapter == chapter]
    while True:
        yield from chance.shuffled(kinds)


def _question(
    family: Family, units: str, level: int, chance: Draw, before: list[Case | Refused]
) -> Case:
    for _ in range(TRIED):
        case = draw_case(family, int(chance.between(0, SEEDS)), units, level)
        if not any(_same(case, other) for other in before if isinstance(other, Case)):
            break
    return case


def _same(case: Case, other: Case) -> bool:
    return case.given == other.given and case.question == other.question
