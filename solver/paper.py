"""A paper: questions drawn together, the same for anyone who has its code.

    EXAM-33-2U-20-60-C-1-48213-92

holds, in this order: the chapters, the level and the units, how many questions, how many minutes,
C for choices or T for typed answers, the edition, the number drawn from, and two check digits.
"""

import re
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from .case import Case
from .case import draw as draw_case
from .coded import SYSTEMS, UNIT_LETTERS, coded, opened
from .draw import Draw
from .errors import BadCode, SolverError
from .families import FAMILIES
from .family import Family

__all__ = [
    "CHAPTERS",
    "EDITION",
    "MOST",
    "SEEDS",
    "Paper",
    "cases_of",
    "chapters_in",
    "level_at",
    "mask_of",
    "read_paper",
]

# Raised by one when a family comes, goes, or changes its levels or revision: an old code would
# then give other questions, so it is refused. A test tells when.
EDITION = 1
CHAPTERS = tuple(dict.fromkeys(family.chapter for family in FAMILIES))
MOST = 200  # questions
LONGEST = 600  # minutes
ANY_LEVEL = 0
SEEDS = 100_000
TRIED = 50  # draws among which a question is not one that stands on the paper already
_PATTERN = re.compile(
    r"EXAM-([0-9OIL]{1,6})-([0-9OIL][UM])-([0-9OIL]{1,3})-([0-9OIL]{1,3})-([CT])"
    r"-(?P<edition>[0-9OIL]{1,3})-([0-9OIL]{1,9})-([0-9OIL]{2})"
)


class Paper(NamedTuple):
    """What a paper is drawn from. `level` 0 is any; `choices` False is typed answers."""

    chapters: tuple[str, ...]
    level: int
    units: str
    count: int
    minutes: int
    choices: bool
    seed: int

    @property
    def code(self) -> str:
        """The text that gives this same paper on any machine with this edition.

        >>> Paper(("horsepower", "head"), 2, "us", 20, 60, True, 48213).code
        'EXAM-33-2U-20-60-C-1-48213-92'
        """
        return coded(
            "EXAM",
            mask_of(self.chapters),
            f"{self.level}{UNIT_LETTERS[self.units]}",
            self.count,
            self.minutes,
            "C" if self.choices else "T",
            EDITION,
            self.seed,
        )


def mask_of(chapters: Iterable[str]) -> int:
    """Which chapters, as a number with a bit for each."""
    return sum(1 << CHAPTERS.index(chapter) for chapter in chapters)


def chapters_in(mask: int) -> tuple[str, ...]:
    """The chapters of such a number, in their order.

    >>> chapters_in(mask_of(["head", "horsepower"]))
    ('horsepower', 'head')
    """
    return tuple(name for bit, name in enumerate(CHAPTERS) if mask >> bit & 1)


def checked(paper: Paper) -> Paper:
    """The paper, if there can be one like it.

    Raises:
        SolverError: the sentence says what to choose instead.
    """
    if not paper.chapters:
        raise SolverError("Choose at least one chapter.")
    if unknown := set(paper.chapters) - set(CHAPTERS):
        raise SolverError(f"There is no chapter “{min(unknown)}”.")
    if not 1 <= paper.count <= MOST:
        raise SolverError(f"A paper has 1 to {MOST} questions; you asked for {paper.count}.")
    if not 1 <= paper.minutes <= LONGEST:
        raise SolverError(f"A paper takes 1 to {LONGEST} minutes; you asked for {paper.minutes}.")
    return paper


def read_paper(text: str) -> Paper:
    """The paper of a code; BadCode says what is wrong with one that cannot be read.

    >>> read_paper("exam-33-2u-20-60-c-1-48213-92").chapters
    ('horsepower', 'head')
    """
    shown, parts = opened(text, _PATTERN, "an exam", EDITION)
    mask, (level, units), count, minutes, way, _, seed = parts
    paper = Paper(
        chapters_in(int(mask)),
        int(level),
        SYSTEMS[units],
        int(count),
        int(minutes),
        way == "C",
        int(seed),
    )
    try:
        return checked(paper)
    except SolverError as fault:
        raise BadCode(f"“{shown}” cannot be used. {fault}") from None


def cases_of(paper: Paper) -> tuple[Case, ...]:
    """The questions, in order: the chapters in turn, and no family again before all have been."""
    chance = Draw(f"paper {EDITION} {paper.code}")
    chapters = [name for name in CHAPTERS if name in paper.chapters]  # as the code has them
    heaps = [_heap(chapter, chance) for chapter in chance.shuffled(chapters)]
    cases: list[Case] = []
    while len(cases) < paper.count:
        heap = heaps[len(cases) % len(heaps)]
        cases.append(_question(next(heap), paper, chance, cases))
    return tuple(cases)


def _heap(chapter: str, chance: Draw):
    """The families of a chapter for ever, each time round in another order."""
    families = [family for family in FAMILIES if family.chapter == chapter]
    while True:
        yield from chance.shuffled(families)


def _question(family: Family, paper: Paper, chance: Draw, before: Sequence[Case]) -> Case:
    level = level_at(family, paper.level, chance)
    for _ in range(TRIED):
        case = draw_case(family, int(chance.between(0, SEEDS)), paper.units, level)
        if not _stands_in(case, before):
            break
    return case


def level_at(family: Family, level: int, chance: Draw) -> int:
    """The level asked for, or the family's highest below it; 0 asks for any."""
    top = len(family.levels)
    return min(level, top) if level else chance.pick(range(1, top + 1))


def _stands_in(case: Case, others: Sequence[Case]) -> bool:
    """Whether one of the others is this problem, in its numbers and its words."""
    return any(case.given == other.given and case.question == other.question for other in others)
