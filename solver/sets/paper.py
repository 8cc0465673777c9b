"""A paper: questions drawn together, the same for anyone who has its code.

    EXAM-33-2U-20-60-C-2-48213-TJK

holds, in this order: the chapters, their shares where they are not equal (shares.py), the level and the units, how many questions, how many minutes,
C for choices or T for typed answers, the catalogue it is drawn from (catalogue.py), the number drawn
from, the cases of find the fault where there are any (fault_part.py), and three check letters.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace

from solver.engine.code import (
    CHECK,
    DIGIT,
    UNIT_LETTERS,
    UNITS_BY_LETTER,
    WRONG,
    number,
    opened,
    sealed,
    sealed_as_first,
    shown,
    written,
)
from solver.engine.draw import Draw
from solver.errors import BadCode, SolverError
from solver.topics.catalogue import BITS, CATALOGUE, CHAPTERS, FIRST, chapters_at, check_known

from .fault_part import IN_CODE, FaultPart, part_in_code
from .shares import IN_CODE as SHARES_IN_CODE
from .shares import MOST_SHARE, in_code, shares_in

__all__ = [
    "CHAPTERS",
    "MOST",
    "SEEDS",
    "Paper",
    "any_seed",
    "chapters_in",
    "checked",
    "mask_of",
    "read_paper",
]

MOST = 200  # questions
LONGEST = 600  # minutes
ANY_LEVEL = 0
SEEDS = 100_000  # numbers that problems are drawn from
_SHAPE = re.compile(
    rf"EXAM-({DIGIT}{{1,6}}){SHARES_IN_CODE}-({DIGIT})([UM])-({DIGIT}{{1,3}})-({DIGIT}{{1,3}})-([CT])"
    rf"-({DIGIT}{{1,3}})-({DIGIT}{{1,9}}){IN_CODE}-{CHECK}"
)


@dataclass(frozen=True)
class Paper:
    """What a paper is drawn from. `level` 0 is any; `choices` False is typed answers.

    `count` is of problems; `faults` are the cases of find the fault after them. `shares` has a share for
    each chapter in the order of the catalogue's; without any, all have the same.
    """

    chapters: tuple[str, ...]
    level: int
    units: str
    count: int
    minutes: int
    choices: bool
    seed: int
    catalogue: int = CATALOGUE
    faults: FaultPart | None = None
    shares: tuple[int, ...] = ()

    @property
    def by_share(self) -> dict[str, int]:
        """The share of each chapter, by its name; empty where all have the same."""
        chapters = [name for name in BITS if name in self.chapters]
        return dict(zip(chapters, self.shares, strict=True)) if self.shares else {}

    @property
    def asked(self) -> int:
        """How many questions there are: problems, then cases."""
        return self.count + (self.faults.count if self.faults else 0)

    @property
    def drawn_from(self) -> str:
        """The text that its questions are drawn from: those of the same paper without cases."""
        return replace(self, faults=None).code if self.faults else self.code

    @property
    def code(self) -> str:
        """The text that gives this same paper on any machine, with this version or a later one.

        >>> Paper(("horsepower", "head"), 2, "us", 20, 60, True, 48213, 2).code
        'EXAM-33-2U-20-60-C-2-48213-TJK'
        """
        seal = sealed_as_first if self.catalogue == FIRST else sealed
        return seal(
            "EXAM",
            mask_of(self.chapters),
            *([in_code(self.shares)] if self.shares else []),
            f"{self.level}{UNIT_LETTERS[self.units]}",
            self.count,
            self.minutes,
            "C" if self.choices else "T",
            self.catalogue,
            self.seed,
            *([self.faults.in_code] if self.faults else []),
        )


def any_seed(chance: Draw) -> int:
    """The number of a problem, by chance: 0 to one below SEEDS."""
    return int(chance.between(0, SEEDS))


def mask_of(chapters: Iterable[str]) -> int:
    """Which chapters, as a number with a bit for each."""
    return sum(1 << BITS.index(chapter) for chapter in chapters)


def chapters_in(mask: int) -> tuple[str, ...]:
    """The chapters of such a number, in their order.

    >>> chapters_in(mask_of(["head", "horsepower"]))
    ('horsepower', 'head')
    """
    return tuple(name for bit, name in enumerate(BITS) if mask >> bit & 1)


def checked(paper: Paper) -> Paper:
    """The paper, if there can be one like it.

    Raises:
        SolverError: the sentence says what to choose instead.
    """
    if not paper.chapters:
        raise SolverError("Choose at least one chapter.")
    if unknown := set(paper.chapters) - set(chapters_at(paper.catalogue)):
        raise SolverError(f"There is no chapter “{min(unknown)}”.")
    _check_shares(paper)
    if not 1 <= paper.count <= MOST:
        raise SolverError(f"A paper has 1 to {MOST} questions; you asked for {paper.count}.")
    if not 1 <= paper.minutes <= LONGEST:
        raise SolverError(f"A paper takes 1 to {LONGEST} minutes; you asked for {paper.minutes}.")
    return paper


def _check_shares(paper: Paper) -> None:
    if not paper.shares:
        return
    each = len(paper.shares) == len(paper.chapters) and paper.catalogue != FIRST
    if not each or not all(1 <= share <= MOST_SHARE for share in paper.shares):
        raise SolverError(f"Give each chapter a share from 1 to {MOST_SHARE}.")


def read_paper(text: str) -> Paper:
    """The paper of a code.

    >>> read_paper("exam-33-2u-20-60-c-1-48213-92").chapters
    ('horsepower', 'head')

    Raises:
        BadCode: the sentence says what is wrong with it.
    """
    match = opened(text, _SHAPE, "an exam")
    mask, shares, level, units, count, minutes, way, catalogue, seed, *_ = match.groups()
    check_known(number(catalogue), text)
    try:
        paper = Paper(
            chapters_in(number(mask)),
            number(level),
            UNITS_BY_LETTER[units],
            number(count),
            number(minutes),
            way == "C",
            number(seed),
            number(catalogue),
            part_in_code(match),
            shares_in(shares),
        )
        if paper.code != written(match):
            raise BadCode(f"“{shown(text)}” {WRONG}")
        return checked(paper)
    except BadCode:
        raise
    except SolverError as fault:
        raise BadCode(f"“{shown(text)}” can't be used. {fault}") from None
