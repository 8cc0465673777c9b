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
    """What is known of each skill, from attempts in order of time.

    `since_new` counts the problems since a kind was tried for the first time; `times` says when
    each problem was, as the log writes it.
    """

    def __init__(self, attempts: Iterable[Attempt] = ()):
        self._forget()
        self._add(list(attempts))

    def _forget(self) -> None:
        self.skills: dict[str, Skill] = {}
        self.cards: dict[str, Card] = {}
        self.times: list[str] = []
        self.since_new = 0
        self._made: defaultdict[str, list[Attempt]] = defaultdict(list)
        self._taken = 0
        self._newest: Attempt | None = None

    def add(self, attempt: Attempt) -> None:
        """One more attempt, made after all the others."""
        self._add([attempt])

    def follow(self, attempts: Sequence[Attempt]) -> None:
        """Take in a log that has grown; all of it anew where it grew in the middle."""
        if self._taken and self._newest not in attempts[self._taken - 1 : self._taken]:
            self._forget()
        self._add(attempts[self._taken :])

    def _add(self, attempts: Sequence[Attempt]) -> None:
        for attempt in attempts:
            self._take(attempt)
        for family in dict.fromkeys(attempt.family for attempt in attempts):
            self._see(family)

    def _take(self, attempt: Attempt) -> None:
        first = is_first(attempt)
        if attempt.family not in self._made:
            self.since_new = 0
        elif first:
            self.since_new += 1
        if first:
            self.times.append(attempt.when)
        self._made[attempt.family].append(attempt)
        self._taken, self._newest = self._taken + 1, attempt

    def _see(self, family: str) -> None:
        skill = self.skills[family] = skill_of(family, self._made[family])
        if card := reviewed(skill.firsts):
            self.cards[family] = card

    def level(self, family: Family) -> int:
        """The level to practise a family at."""
        skill = self.skills.get(family.name)
        return level_of(skill.firsts if skill else (), len(family.levels))

    def next(self, families: Sequence[Family], now: datetime) -> list[Suggestion]:
        """What to do next of these families, most pressing first."""
        return suggestions(families, self.skills, self.cards, now, self.since_new)
