"""Learners whose skills are known, to measure how many problems a way of study takes.

The model is not the scheduler's own. A skill is answered right with the chance `known`. It fades
with a half-life of days toward what a guess gives, and each problem makes it stronger and slower
to fade, less so after an error, more so where it had faded a little: common findings on practice
and forgetting; the numbers are chosen for this simulation, no source.
"""

from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from itertools import cycle
from random import Random

from solver import FAMILIES
from workbook.log import Attempt
from workbook.study import Study

__all__ = ["Learner", "at_random", "by_schedule", "in_turn", "needed", "problems_to_mastery"]

SKILLS = 24  # families: those of the first chapters
EVENING = 8  # problems: twenty minutes
MASTERY = 0.8  # mean chance over all skills of a right answer
MOST_EVENINGS = 200
GUESS = 0.05
START = datetime(2026, 1, 5, 19, tzinfo=UTC)


@dataclass
class Memory:
    """One skill: how it stood at the last problem, when that was, how fast it fades."""

    known: float
    at: datetime
    half_life: float

    def chance(self, now: datetime) -> float:
        days = (now - self.at) / timedelta(days=1)
        return GUESS + (self.known - GUESS) * 0.5 ** (days / self.half_life)

    def practiced(self, right: bool, now: datetime, speed: float) -> "Memory":
        before = self.chance(now)
        known = before + (0.97 - before) * speed * (1.0 if right else 0.7)
        faded = 1 - before / max(self.known, GUESS)
        growth = (1.6 if right else 1.1) + 1.5 * max(faded, 0)
        return replace(self, known=known, at=now, half_life=min(self.half_life * growth, 200))


class Learner:
    """A person: some skills are known from work, the others are new."""

    def __init__(self, seed: int, skills: int = SKILLS):
        self.chance = Random(f"learner {seed}").random
        self.speed = 0.3 + 0.3 * self.chance()
        self.families = FAMILIES[:skills]
        self.skills = {family.name: self._memory() for family in self.families}

    def _memory(self) -> Memory:
        if self.chance() < 0.35:
            return Memory(0.85 + 0.1 * self.chance(), START, 60 + 100 * self.chance())
        return Memory(GUESS + 0.3 * self.chance(), START, 2 + 4 * self.chance())

    def mastery(self, now: datetime) -> float:
        return sum(memory.chance(now) for memory in self.skills.values()) / len(self.skills)

    def answer(self, family: str, level: int, now: datetime) -> Attempt:
        memory = self.skills[family]
        right = self.chance() < memory.chance(now)
        self.skills[family] = memory.practiced(right, now, self.speed)
        fields = {"typed": "", "status": "right" if right else "wrong", "seconds": 60.0}
        return Attempt("", now.isoformat(), "", family, level, **fields)


def by_schedule(learner: Learner):
    """What the workbook suggests, not the same kind twice in a row where there is another."""
    study, last = Study(), ""

    def choose(now: datetime):
        nonlocal last
        wanted = study.next(learner.families, now)
        chosen = next((s for s in wanted if s.family.name != last), wanted[0])
        last = chosen.family.name
        return last, chosen.level

    return choose, study.add


def at_random(learner: Learner):
    """Any kind, each as likely as another."""
    names = list(learner.skills)
    return (lambda now: (names[int(learner.chance() * len(names))], 1)), lambda made: None


def in_turn(learner: Learner):
    """Every kind once, then every kind again."""
    names = cycle(learner.skills)
    return (lambda now: (next(names), 1)), lambda made: None


def needed(learners: int, way, **aim) -> list[int]:
    """How many problems each of so many learners needs in one way."""
    return [problems_to_mastery(seed, way, **aim) for seed in range(learners)]


def problems_to_mastery(seed: int, way, skills: int = SKILLS, mastery: float = MASTERY) -> int:
    """How many problems a learner needs until, on an evening's start, the set mastery is there.

    One who has not got there after `MOST_EVENINGS` counts with the problems done until then.
    """
    learner = Learner(seed, skills)
    choose, tell = way(learner)
    for evening in range(MOST_EVENINGS):
        now = START + timedelta(days=evening)
        if learner.mastery(now) >= mastery:
            return evening * EVENING
        for number in range(EVENING):
            at = now + timedelta(minutes=2.5 * number)
            tell(learner.answer(*choose(at), at))
    return MOST_EVENINGS * EVENING
