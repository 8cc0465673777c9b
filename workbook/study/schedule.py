"""When a skill is due: a kept library of spaced review, FSRS, fed from the log.

The library takes one of four ratings at each review and says how likely the skill is still to be
there on any day, and when it should come back. Its parameters are its own published defaults.
"""

from collections.abc import Iterable
from datetime import datetime, timedelta
from functools import cache

from fsrs import Card, Rating, Scheduler

from workbook.log import Attempt

from .skills import moment

__all__ = ["WANTED", "chance_now", "due", "rating", "reviewed"]

WANTED = 0.9  # how likely a skill should still be there when it comes back; see tests/benchmarks
SOON = timedelta(minutes=10)  # after which a skill that went wrong comes back, the same evening
LONGEST = 21  # days; so 175 kinds come back at the pace of twenty minutes an evening


@cache
def _scheduler() -> Scheduler:
    return Scheduler(
        desired_retention=WANTED,
        learning_steps=(SOON,),
        relearning_steps=(SOON,),
        maximum_interval=LONGEST,
        enable_fuzzing=False,  # the same log says the same on every machine
    )


def rating(attempt: Attempt) -> Rating:
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
        card, _ = _scheduler().review_card(card or Card(card_id=0, due=when), rating(attempt), when)
    return card


def chance_now(card: Card, now: datetime) -> float:
    """How likely the skill is still there, from 0 to 1."""
    return _scheduler().get_card_retrievability(card, now)


def due(card: Card, now: datetime) -> bool:
    """Whether the skill should come back by now."""
    return card.due <= now
