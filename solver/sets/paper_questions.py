"""The questions of a paper: problems by its chapters or their shares, then cases of find the fault."""

from collections.abc import Iterable, Iterator, Sequence

from solver.engine.case import Case
from solver.engine.draw import Draw
from solver.engine.posing import draw
from solver.fault.case import FaultCase
from solver.topics.catalogue import BITS, FIRST, Kind, Refused, kinds_at, level_at
from solver.topics.first_catalogue import questions as questions_of_the_first

from .paper import Paper, any_seed, checked
from .shares import counts_of

__all__ = ["around", "cases_of", "counts_by_chapter", "faults_of"]

TRIED = 50  # draws among which a question is not one that stands on the paper already


def counts_by_chapter(paper: Paper) -> dict[str, int]:
    """How many questions each chapter gives, where the paper has shares."""
    return dict(zip(paper.by_share, counts_of(paper.count, paper.shares), strict=True))


def faults_of(paper: Paper) -> tuple[FaultCase, ...]:
    """The cases of find the fault, which come after the problems."""
    return paper.faults.cases(paper.drawn_from, paper.units) if paper.faults else ()


def cases_of(paper: Paper) -> tuple[Case | Refused, ...]:
    """The questions, in order: the chapters in turn, or by their shares in an order of chance.

    No kind of a chapter comes again before all have been.

    Each has a stream of chance of its own, so that none is moved by what becomes of another.

    Raises:
        SolverError: there can be no such paper.
    """
    checked(paper)
    chapters = [name for name in BITS if name in paper.chapters]  # as the code has them
    if paper.catalogue == FIRST:
        drawn = questions_of_the_first(
            paper.drawn_from, chapters, paper.level, paper.units, paper.count
        )
        return tuple(drawn)
    chance = Draw(f"plan {paper.drawn_from}")
    turns = chance.shuffled(chapters)
    kinds = kinds_at(paper.catalogue)
    heaps = {chapter: around(kinds, chapter, chance) for chapter in turns}
    if paper.shares:
        each = counts_by_chapter(paper).items()
        turns = chance.shuffled([name for name, count in each for _ in range(count)])
    cases: list[Case | Refused] = []
    for at in range(paper.count):
        cases.append(_question(next(heaps[turns[at % len(turns)]]), paper, at + 1, cases))
    return tuple(cases)


def around(kinds: Sequence[Kind], chapter: str, chance: Draw) -> Iterator[Kind]:
    """Those of a chapter among these kinds for ever, each time round in another order."""
    kinds = [kind for kind in kinds if kind.chapter == chapter]
    while True:
        yield from chance.shuffled(kinds)


def _question(
    kind: Kind, paper: Paper, at: int, before: Iterable[Case | Refused]
) -> Case | Refused:
    chance = Draw(f"{paper.drawn_from} {at}")
    level = level_at(kind, paper.level, chance)
    if kind.family is None:
        return Refused(kind, level, paper.units, any_seed(chance))
    of_kind = [one for one in before if isinstance(one, Case) and one.family is kind.family]
    for _ in range(TRIED):
        case = draw(kind.family, any_seed(chance), paper.units, level)
        if not any(_same(case, other) for other in of_kind):
            break
    return case


def _same(case: Case, other: Case) -> bool:
    """Whether two are one problem, in their numbers and their words."""
    return case.given == other.given and case.question == other.question
