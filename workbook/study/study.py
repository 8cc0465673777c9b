"""A person's study as it stands: every skill, kept up to date with each attempt; what to do next, and why.

What comes next is, in this order: a mistake that recurs; a skill that is due, the least sure one
first; a skill not yet tried, in the order of the chapters; and when there is nothing of these, the
least sure skill. Every third problem is of a skill not yet tried, or what is due would never let
new ones in.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import datetime
from typing import NamedTuple

from fsrs import Card

from solver import Family
from workbook.log import Attempt

from .skills import Skill, chance_now, due, is_first, level_of, reviewed, skill_of

__all__ = ["NEW_AFTER", "Study", "Suggestion", "suggestions"]

NEW = ("new", "You haven't tried this kind of problem yet.")
NEW_AFTER = 2  # problems of skills that were tried before


class Suggestion(NamedTuple):
    """A kind of problem to do at a level, why, and the mistake it should tell apart, if any.

    `why` is a sentence, and `short` the same in a word or two.
    """

    family: Family
    level: int
    short: str
    why: str
    mistake: str = ""


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


def suggestions(
    families: Sequence[Family],
    known: Mapping[str, Skill],
    cards: Mapping[str, Card],
    now: datetime,
    since_new: int = 0,
) -> list[Suggestion]:
    """What to do next, most pressing first, with each family at most once.

    >>> from solver import FAMILIES
    >>> suggestions(FAMILIES, {}, {}, datetime(2026, 11, 25))[0].why
    "You haven't tried this kind of problem yet."
    """
    found: dict[str, Suggestion] = {}
    for suggestion in (
        *_recurring(families, known),
        *_by_memory(families, known, cards, now, since_new),
    ):
        found.setdefault(suggestion.family.name, suggestion)
    return list(found.values())


def _recurring(families: Sequence[Family], known: Mapping[str, Skill]) -> Iterator[Suggestion]:
    by_name = {family.name: family for family in families}
    recurring = [one for skill in known.values() for one in skill.recurring]
    for one in sorted(recurring, key=lambda one: -one.times):
        if family := by_name.get(one.family):
            why = f"You made the same mistake here {_times(one.times)} lately."
            level = min(one.level, len(family.levels))
            yield Suggestion(family, level, "recurring mistake", why, one.mistake)


def _by_memory(
    families: Sequence[Family],
    known: Mapping[str, Skill],
    cards: Mapping[str, Card],
    now: datetime,
    since_new: int,
) -> list[Suggestion]:
    late: list[tuple[float, Suggestion]] = []
    rest: list[tuple[float, Suggestion]] = []
    fresh: list[Suggestion] = []
    for family in families:
        if (card := cards.get(family.name)) is None:
            fresh.append(Suggestion(family, 1, *NEW))
            continue
        skill = known[family.name]
        level = level_of(skill.firsts, len(family.levels))
        sure = chance_now(card, now)
        why, pile = (_why_due(skill), late) if due(card, now) else (_why_least(sure), rest)
        pile.append((sure, Suggestion(family, level, *why)))
    first = fresh[:1] if since_new >= NEW_AFTER else []
    return [*first, *_least_sure_first(late), *fresh, *_least_sure_first(rest)]


def _least_sure_first(pile: list[tuple[float, Suggestion]]) -> list[Suggestion]:
    return [suggestion for _, suggestion in sorted(pile, key=lambda one: one[0])]


def _why_due(skill: Skill) -> tuple[str, str]:
    last = skill.firsts[-1]
    if last.unaided:
        return "coming back", "You got this right before. See whether you still have it."
    if last.solution:
        return "solution seen", "Last time you opened the solution. Try it without."
    if last.status == "right":
        return "with help", "Last time you got it with help. Try it without."
    if last.status == "close":
        return "close", "You were close last time. Try again and keep more figures."
    return "went wrong", "You missed this last time, so it comes back soon."


def _why_least(sure: float) -> tuple[str, str]:
    share = round(100 * sure)
    return (
        "least sure",
        f"You're caught up for now. Of the kinds you know, you're least sure of this one (about {share}%).",
    )


def _times(number: int) -> str:
    return {2: "twice", 3: "three times", 4: "four times"}.get(number, f"{number} times")
