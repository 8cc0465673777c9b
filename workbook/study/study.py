"""A person's study as it stands: every skill, kept up to date with each attempt."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from datetime import datetime

from fsrs import Card

from solver import Family
from workbook.log import Attempt

from .schedule import reviewed
from .skills import Skill, is_first, level_of, skill_of
from .suggest import Suggestion, suggestions

__all__ = ["Study"]


class Study:
    """What is known of each skill. Attempts come in order of time; `add` takes the newest.

    `since_new` counts the problems since a kind was tried for the first time.
    """

    def __init__(self, attempts: Iterable[Attempt] = ()):
        self._made: defaultdict[str, list[Attempt]] = defaultdict(list)
        self.since_new = 0
        for attempt in attempts:
            self._take(attempt)
        self.skills: dict[str, Skill] = {}
        self.cards: dict[str, Card] = {}
        for family in self._made:
            self._see(family)

    def add(self, attempt: Attempt) -> None:
        """One more attempt, made after all the others."""
        self._take(attempt)
        self._see(attempt.family)

    def _take(self, attempt: Attempt) -> None:
        if attempt.family not in self._made:
            self.since_new = 0
        elif is_first(attempt):
            self.since_new += 1
        self._made[attempt.family].append(attempt)

    def _see(self, family: str) -> None:
        skill = self.skills[family] = skill_of(family, self._made[family])
        if skill.firsts:
            self.cards[family] = reviewed(skill.firsts)

    def level(self, family: Family) -> int:
        """The level to practise a family at."""
        skill = self.skills.get(family.name)
        return level_of(skill.firsts if skill else (), len(family.levels))

    def next(self, families: Sequence[Family], now: datetime) -> list[Suggestion]:
        """What to do next of these families, most pressing first."""
        return suggestions(families, self.skills, self.cards, now, self.since_new)
