"""What the log says of each skill, and when it is due. A skill is one kind of problem: a family.

Only the first answer to a problem says what somebody can do unaided, so that is what counts here;
later tries at it are kept in the log, and the mistakes in them are counted.

When a skill is due is said by a kept library of spaced review, FSRS, fed from the log. It takes one
of four ratings at each review and says how likely the skill is still to be there on any day, and
when it should come back. Its parameters are its own published defaults.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from datetime import UTC, datetime, timedelta
from functools import cache
from typing import NamedTuple

from fsrs import Card, Rating, Scheduler

from workbook.log import SHOWN, Attempt

__all__ = [
    "LATELY",
    "Recurring",
    "Skill",
    "chance_now",
    "coming_back",
    "due",
    "firsts",
    "is_first",
    "level_of",
    "moment",
    "reviewed",
    "skill_of",
    "usual_intervals",
]

LATELY = 10  # problems of a skill that its present state is told from
KEPT = 40  # problems of a skill that decide when it is due; older ones no longer change that
TWICE = 2  # a mistake made so often lately is one that recurs
CLEARED = 2  # problems right without help after which it no longer does
STEP = 2  # problems in a row that move the level up, or down
WANTED = 0.9  # how likely a skill should still be there when it comes back; see tests/benchmarks
SOON = timedelta(minutes=10)  # after which a skill that went wrong comes back, the same evening
FORESEEN = 200  # days for which it is told when a skill comes back
LONGEST = 21  # days; so 175 kinds come back at the pace of twenty minutes an evening


class Recurring(NamedTuple):
    """A mistake that keeps being made: in which family, at which level, which, how often."""

    family: str
    level: int
    mistake: str
    times: int
    code: str


class Skill(NamedTuple):
    """The first answers to the problems of one family, oldest first, and what recurs in it."""

    family: str
    firsts: Sequence[Attempt]
    recurring: tuple[Recurring, ...]
    problems: int

    @property
    def lately(self) -> Sequence[Attempt]:
        """The first answers to the last few problems."""
        return self.firsts[-LATELY:]

    @property
    def unaided(self) -> int:
        """How many of the last few problems were right at once, without help."""
        return sum(attempt.unaided for attempt in self.lately)

    @property
    def seconds(self) -> float | None:
        """The median time to a first right answer, lately; None where there was none."""
        times = sorted(a.seconds for a in self.lately if a.status == "right" and a.seconds > 0)
        return times[len(times) // 2] if times else None


def moment(attempt: Attempt) -> datetime:
    """When an attempt was made.

    Raises:
        ValueError: its time is not one.
    """
    when = datetime.fromisoformat(attempt.when)
    return when.astimezone(UTC) if when.tzinfo else when.replace(tzinfo=UTC)


def is_first(attempt: Attempt) -> bool:
    """Whether this was the first that was done with its problem."""
    return attempt.tries == (0 if attempt.status == SHOWN else 1)


def firsts(attempts: Iterable[Attempt]) -> list[Attempt]:
    """The first answer to each problem, or the opening of its solution without one."""
    return [attempt for attempt in attempts if is_first(attempt)]


def skill_of(family: str, made: Sequence[Attempt]) -> Skill:
    """What the attempts at one family say, from attempts in order of time."""
    problems = sum(map(is_first, made))
    recent = _last_problems(made, KEPT)
    return Skill(family, firsts(recent), _recurring(recent), problems)


def _last_problems(made: Sequence[Attempt], wanted: int) -> Sequence[Attempt]:
    """The attempts at the last few problems."""
    for place in range(len(made) - 1, -1, -1):
        wanted -= is_first(made[place])
        if not wanted:
            return made[place:]
    return made


def _recurring(made: Sequence[Attempt]) -> tuple[Recurring, ...]:
    """The mistakes made twice or more in the last few problems and not cleared since."""
    times: Counter[str] = Counter()
    last: dict[str, Attempt] = {}
    right_since = 0
    for attempt in reversed(_last_problems(made, LATELY)):
        right_since += attempt.unaided
        if right_since == CLEARED:
            break
        if attempt.mistake:
            times[attempt.mistake] += 1
            last.setdefault(attempt.mistake, attempt)
    return tuple(
        Recurring(last[name].family, last[name].level, name, count, last[name].code)
        for name, count in times.most_common()
        if count >= TWICE
    )


def level_of(made: Iterable[Attempt], levels: int) -> int:
    """The level to practise a skill at, by the first answers to its problems, oldest first.

    Two problems in a row right without help lead a level up, two in a row wrong a level down.

    >>> level_of([], 3)
    1
    """
    level = 1
    run = 0
    for attempt in made:
        if attempt.level != level and not attempt.unaided:
            continue  # a harder problem that went wrong says nothing against this level
        step = 1 if attempt.unaided else -1 if attempt.went_wrong or attempt.solution else 0
        run = run + step if run * step > 0 else step
        if abs(run) == STEP:
            level, run = min(max(level + step, 1), levels), 0
    return level


@cache
def _scheduler() -> Scheduler:
    return Scheduler(
        desired_retention=WANTED,
        learning_steps=(SOON,),
        relearning_steps=(SOON,),
        maximum_interval=LONGEST,
        enable_fuzzing=False,  # the same log says the same on every machine
    )


def _rating(attempt: Attempt) -> Rating:
    """How well a first answer went, in the four grades of the library."""
    if attempt.unaided:
        return Rating.Good
    if attempt.status in ("right", "close"):
        return Rating.Hard
    return Rating.Again


def reviewed(made: Iterable[Attempt]) -> Card | None:
    """What the library makes of the first answers to a skill's problems; None without any."""
    card = None
    for attempt in made:
        when = moment(attempt)
        card, _ = _scheduler().review_card(
            card or Card(card_id=0, due=when), _rating(attempt), when
        )
    return card


def chance_now(card: Card, now: datetime) -> float:
    """How likely the skill is still there at `now`, a time with its zone: from 0 to 1."""
    return _scheduler().get_card_retrievability(card, now)


def coming_back(card: Card, now: datetime, days: int) -> list[int]:
    """In how many days a skill comes back, each time within so many days, if it is always right.

    What is late comes back now, so in 0 days. A day begins at midnight, in the zone of `now`.
    """
    found, when = [], max(card.due, now)
    while (after := (when.astimezone(now.tzinfo).date() - now.date()).days) < days:
        found.append(after)
        card, _ = _scheduler().review_card(card, Rating.Good, when.astimezone(UTC))
        when = max(card.due, when + timedelta(days=1))
    return found


@cache
def usual_intervals() -> tuple[int, ...]:
    """In how many days a skill comes back after it was tried first, if it is always right."""
    start = datetime(2026, 1, 1, tzinfo=UTC)
    card, _ = _scheduler().review_card(Card(card_id=0, due=start), Rating.Good, start)
    return tuple(coming_back(card, start, FORESEEN))


def due(card: Card, now: datetime) -> bool:
    """Whether the skill should come back by now."""
    return card.due <= now
