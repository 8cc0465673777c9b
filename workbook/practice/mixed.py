"""Mixed practice: problems of chosen chapters and levels, what went wrong more often.

There are no widgets here; wanted.py shows what this holds.
"""

import secrets
from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from typing import Any, NamedTuple

from solver import Case, Family

from .practice import Practice, Try

__all__ = ["PROMISE", "Kind", "Mixed", "Outcome", "Wanted", "chances", "owed"]

PROMISE = "Mixed practice brings back more often what you missed."
RETURNING = 1 / 3  # of all problems, while any kind is owed
MOST_OWED = 3  # times that a kind must go right before it is as any other again
WENT_WRONG = ("mistake", "wrong")  # an answer that is close only wants more figures
AT_FIRST = (1, 2)  # the levels ticked when the page opens
FINE = 1_000_000  # steps of chance


class Outcome(NamedTuple):
    """One counted try, as far as it matters here; an attempt of the log has the same names."""

    family: str
    level: int
    status: str


class Kind(NamedTuple):
    """A family at one level."""

    family: Family
    level: int


class Wanted(NamedTuple):
    """What a reader wants to be asked, by the names of the chapters."""

    chapters: tuple[str, ...]
    levels: tuple[int, ...]
    units: str


def owed(past: Iterable[Outcome]) -> Counter[tuple[str, int]]:
    """How often each family and level is to go right before it is as any other again.

    Each try that went wrong adds one, up to three; each right one takes one away.

    >>> owed([Outcome("brake_power", 2, "mistake"), Outcome("brake_power", 2, "wrong")])
    Counter({('brake_power', 2): 2})
    """
    count: Counter[tuple[str, int]] = Counter()
    for made in past:
        _owe(count, made)
    return +count


def _owe(debts: Counter[tuple[str, int]], made: Outcome) -> None:
    kind = made.family, made.level
    if made.status in WENT_WRONG:
        debts[kind] = min(debts[kind] + 1, MOST_OWED)
    elif made.status == "right":
        debts[kind] = max(debts[kind] - 1, 0)


def chances(kinds: Sequence[Kind], debts: Counter[tuple[str, int]]) -> list[float]:
    """How likely each kind is to come next; together they are 1.

    Each chapter has an equal share, and so has each kind within it. While some kinds are owed,
    a third of all problems are of those, by how often they are owed.
    """
    due = [debts[kind.family.name, kind.level] for kind in kinds]
    sizes = Counter(kind.family.chapter for kind in kinds)
    even = [1 / len(sizes) / sizes[kind.family.chapter] for kind in kinds]
    if not any(due):
        return even
    return [
        (1 - RETURNING) * share + RETURNING * owing / sum(due)
        for share, owing in zip(even, due, strict=True)
    ]


class Mixed(Practice):
    """Problems drawn across chapters. What is wanted holds from the next problem on.

    `past` are earlier tries, oldest first; `debts`, by family and level, follows each new one.
    """

    def __init__(
        self,
        families: Sequence[Family],
        pick: Callable[[int], int] = secrets.randbelow,
        on_try: Callable[[Try], str | None] | None = None,
        past: Iterable[Outcome] = (),
        units: str = "us",
    ):
        self.debts, self._hears = owed(past), on_try
        chapters = tuple(dict.fromkeys(family.chapter for family in families))
        self.every = Wanted(chapters, tuple(range(1, _most_levels(families) + 1)), units)
        self.wanted = self.every._replace(levels=AT_FIRST)
        super().__init__(families, pick, self._heard)

    def want(self, **changes: Any) -> None:
        """Other `chapters`, `levels` or `units`, from the next problem on."""
        self.wanted = self.wanted._replace(**changes)

    @property
    def pool(self) -> list[Kind]:
        """Every kind of problem that fits what is wanted."""
        return [
            Kind(family, level)
            for family in self.families
            if family.chapter in self.wanted.chapters
            for level in sorted(self.wanted.levels)
            if level <= len(family.levels)
        ]

    @property
    def stuck(self) -> str:
        """What to tick before there can be a next problem; empty where there can be one."""
        wanted = self.wanted
        if wanted.chapters and wanted.levels:
            return (
                ""
                if self.pool
                else "None of the chapters you checked has this level. Check another level."
            )
        what = [
            name for name, ticked in zip(("chapter", "level"), wanted, strict=False) if not ticked
        ]
        return f"Check at least one {' and one '.join(what)} first."

    @property
    def returning(self) -> list[Kind]:
        """The kinds of the pool that come back more often, the most owed first."""
        debts = self.debts
        kinds = [kind for kind in self.pool if debts[kind.family.name, kind.level]]
        return sorted(kinds, key=lambda kind: -debts[kind.family.name, kind.level])

    def _drawn(self, before: Case | None = None) -> Case:
        pool = self.pool
        likely = list(zip(pool, chances(pool, self.debts), strict=True))
        # Another family next, so that the last problem does not show the way.
        others = [(k, c) for k, c in likely if before is None or k.family != before.family]
        kind = self._by_chance(others or likely)
        self.units, self.level = self.wanted.units, kind.level
        return self._fresh(kind.family, before)

    def _by_chance(self, likely: list[tuple[Kind, float]]) -> Kind:
        left = self.pick(FINE) / FINE * sum(chance for _, chance in likely)
        for kind, chance in likely:
            left -= chance
            if left < 0:
                return kind
        return likely[-1][0]

    def _heard(self, made: Try) -> str | None:
        if made.verdict:
            case = made.case
            _owe(self.debts, Outcome(case.family.name, case.level, made.verdict.status))
        return self._hears(made) if self._hears else None


def _most_levels(families: Sequence[Family]) -> int:
    return max(len(family.levels) for family in families)
