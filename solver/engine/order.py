"""Put in order: which steps must stand before which, and what a drawn one comes to.

The smallest design that is honest: an ordering is a list of steps, each with those that must come
`before` it and the reason for each. So it is a partial order, and every order that keeps all the pairs
is right, however many there are; one that breaks a pair has a named mistake, which is that pair.
Everything else is the machine of a judgment: the shuffled steps are the choices of the problem, a pair
that is broken is one of its mistakes, and an order of letters is its answer, kept as a number
(units/order.py). So a log, a mark, an exam and a sheet hold it as they hold any answer.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from typing import NamedTuple

from solver.errors import BadDefinition
from solver.units.order import LETTERS, MOST_STEPS, kept_as

from .draw import Draw
from .mistake import Mistake
from .steps import Step

__all__ = ["Ordering", "Pair", "Posed", "Stage", "broken", "posed", "right_orders"]

FEWEST = 4
TOO_EARLY = "You put “{}” before “{}”."
ONE_ORDER, ORDERS = (
    "No other order is right.",
    "{} orders are right, because some steps can trade places.",
)


class Pair(NamedTuple):
    """Two steps, by their places among the letters from 0: `first` must stand before `then`."""

    first: int
    then: int


@dataclass(frozen=True, slots=True)
class Stage:
    """One step: a short `id`, its text, and the source of its place.

    `after` has the id of each step that must come before it, with the reason; where there is none,
    `why` says why it may come first.
    """

    id: str
    text: str
    source: str
    after: Mapping[str, str] = field(default_factory=dict)
    why: str = ""

    @property
    def reason(self) -> str:
        """Why it stands where it does."""
        return " ".join(self.after.values()) or self.why


@dataclass(frozen=True, slots=True)
class Ordering:
    """Steps to put in order, written in one order that is right. `rule` is a hint, `note` closes the solution.

    `asks` is what the level's question has at {asks}.

    Raises:
        BadDefinition: a step comes after one that isn't above it, or they are too few or too many.
    """

    id: str
    asks: str
    rule: str
    stages: tuple[Stage, ...]
    note: str = ""

    def __post_init__(self) -> None:
        if not FEWEST <= len(self.stages) <= MOST_STEPS:
            raise BadDefinition(f"{self.id}: give it {FEWEST} to {MOST_STEPS} steps")
        if not self.pairs:
            raise BadDefinition(f"{self.id}: write what one of its steps comes after")
        above: set[str] = set()
        for stage in self.stages:
            if stage.id in above or stage.after.keys() - above or not stage.reason:
                raise BadDefinition(
                    f"{self.id}, step {stage.id!r}: give it an id of its own, only steps above it to come "
                    "after, and a reason"
                )
            above.add(stage.id)

    @property
    def pairs(self) -> tuple[Pair, ...]:
        """The pairs, by the places of the steps as they are written."""
        places = {stage.id: at for at, stage in enumerate(self.stages)}
        return tuple(
            Pair(first, at)
            for at, stage in enumerate(self.stages)
            for first in sorted(places[name] for name in stage.after if name in places)
        )


class Posed(NamedTuple):
    """An ordering with its steps shuffled: one right order, and a mistake for each of its pairs."""

    answer: float
    steps: tuple[Step, ...]
    mistakes: tuple[Mistake, ...]
    choices: tuple[str, ...]
    pairs: tuple[Pair, ...]


def broken(pairs: Sequence[Pair], order: Sequence[int]) -> list[int]:
    """Which of these pairs an order breaks, by their numbers: the step that is first too early comes first."""
    at = {step: place for place, step in enumerate(order)}
    wrong = [n for n, pair in enumerate(pairs) if at[pair.then] < at[pair.first]]
    return sorted(wrong, key=lambda n: (at[pairs[n].then], n))


@lru_cache(maxsize=256)
def right_orders(count: int, pairs: tuple[Pair, ...]) -> int:
    """How many orders of so many steps keep all of these pairs.

    >>> right_orders(4, (Pair(0, 1), Pair(1, 2))), right_orders(3, (Pair(0, 1), Pair(1, 2)))
    (4, 1)
    """
    before = [sum(1 << pair.first for pair in pairs if pair.then == step) for step in range(count)]
    ways = [1] + [0] * ((1 << count) - 1)
    for placed in range(1 << count):
        for step in range(count):
            if not placed >> step & 1 and before[step] & ~placed == 0:
                ways[placed | 1 << step] += ways[placed]
    return ways[-1]


def posed(ordering: Ordering, chance: Draw) -> Posed:
    """The steps in an order of chance that isn't right, lettered, with what follows from it."""
    stages, pairs = ordering.stages, ordering.pairs
    while True:
        shown = chance.shuffled(range(len(stages)))
        if broken(pairs, shown):
            break
    place = {stage: at for at, stage in enumerate(shown)}  # of each as written, its letter

    def lettered(order: Sequence[int]) -> float:
        return kept_as([place[at] for at in order])

    number = lettered(range(len(stages)))
    worked = [_worked(stage, place[at]) for at, stage in enumerate(stages)]
    many = right_orders(len(stages), pairs)
    says = f"{ONE_ORDER if many == 1 else ORDERS.format(many)} {ordering.note}".strip()
    last = Step("order", number, "order", says, None, ordering.rule)
    return Posed(
        number,
        (*worked, last),
        tuple(_mistake(ordering, pair, lettered(_swapped(pair, len(stages)))) for pair in pairs),
        tuple(stages[at].text for at in shown),
        tuple(Pair(place[pair.first], place[pair.then]) for pair in pairs),
    )


def _worked(stage: Stage, place: int) -> Step:
    """A step of the solution: which comes next, and why there."""
    why = f"{stage.reason} Source: {stage.source}."
    return Step("place", float(place + 1), "place", why, None, f"{LETTERS[place]}. {stage.text}")


def _swapped(pair: Pair, count: int) -> list[int]:
    """The order as written, but for one step that comes too early, right before the other."""
    order = [at for at in range(count) if at != pair.then]
    order.insert(pair.first, pair.then)
    return order


def _mistake(ordering: Ordering, pair: Pair, value: float) -> Mistake:
    first, then = ordering.stages[pair.first], ordering.stages[pair.then]
    did = TOO_EARLY.format(then.text, first.text)
    why = f"{then.after[first.id]} Source: {then.source}."
    return Mistake(f"{ordering.id}.{then.id}_before_{first.id}", value, value, value, did, why)
