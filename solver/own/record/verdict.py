"""How a finding is judged: six states in words, and the ways to set a value against a limit."""

from collections.abc import Mapping
from typing import NamedTuple

from solver.own import doubts
from solver.topics.zones import Limits
from solver.vocabulary import quantity_named

from .entries import Record

__all__ = [
    "BEYOND",
    "COARSE",
    "LOOK",
    "NOT_MEASURED",
    "NO_LIMIT",
    "STATES",
    "WITHIN",
    "Seen",
    "Verdict",
    "above",
    "at_least",
    "at_most",
    "no_limit",
    "shown",
]

WITHIN = "within limit"
LOOK = "look into it"
BEYOND = "beyond limit"
COARSE = "too coarse to judge"
NO_LIMIT = "no limit known"
NOT_MEASURED = "not measured"
STATES = (BEYOND, LOOK, COARSE, WITHIN, NO_LIMIT, NOT_MEASURED)  # the most pressing first

FLOAT_NOISE = 1e-9  # 5 % of a sum of readings is 5 %, whatever a float's last digit says


class Verdict(NamedTuple):
    """A state, why in a sentence, the limit in words, where it is from, what to check next.

    `bound` is the limit in a column of a table: "up to 5%", "460 V ± 10%".
    """

    state: str
    says: str
    limit: str = ""
    source: str = ""
    then: str = ""
    bound: str = ""


class Seen(NamedTuple):
    """What a judge sees: the record, and all that is known by now, readings and worked values."""

    record: Record
    known: Mapping[str, float]

    @property
    def units(self) -> str:
        """The system of units, "us" or "si"."""
        return self.record.units

    def shown(self, name: str) -> str:
        """A known value as it is written, with its unit."""
        return shown(name, self.known[name], self.units)

    def limit(self, at: str | float) -> float:
        """A limit as a number; it may be the name of another quantity."""
        return self.known[at] if isinstance(at, str) else at


def shown(name: str, value: float, units: str) -> str:
    """A value of the quantity `name` as it is written, with its unit."""
    return doubts.shown(value, quantity_named(name), units)


def above(value: float, limit: float) -> bool:
    """Whether a value is over its limit; a reading right at the limit is not."""
    return value > limit + FLOAT_NOISE * abs(limit)


def at_most(seen: Seen, limits: Limits, *thens: str) -> Verdict:
    """Up to the low limit: within. Over the high one: beyond. Between: look into it.

    `thens` says what to check next in each of these three.
    """
    value = seen.known[limits.quantity]
    over = above(value, seen.limit(limits.low)) + above(value, seen.limit(limits.high))
    return _placed(seen, limits, over, ("not over", "over", "up to"), thens)


def at_least(seen: Seen, limits: Limits, *thens: str) -> Verdict:
    """From the high limit up: within. Under the low one: beyond. Between: look into it."""
    value = seen.known[limits.quantity]
    under = above(seen.limit(limits.high), value) + above(seen.limit(limits.low), value)
    turned = limits._replace(low=limits.high, high=limits.low)
    return _placed(seen, turned, under, ("not under", "under", "at least"), thens)


def _placed(
    seen: Seen, limits: Limits, place: int, words: tuple[str, str, str], thens: tuple[str, ...]
) -> Verdict:
    """The verdict at one of three places: before the first limit, past it, past the second.

    `words` are for a limit kept, for one broken, and before it in a table.
    """
    at = limits.high if place == 2 else limits.low
    state = (WITHIN, LOOK, BEYOND)[place]
    quantity = quantity_named(limits.quantity)
    name = f"the {quantity_named(at).label(seen.units)} of " if isinstance(at, str) else ""
    limit = shown(limits.quantity, seen.limit(at), seen.units)
    kept, broken, before = words
    relation = broken if place else kept
    first = shown(limits.quantity, seen.limit(limits.low), seen.units)
    said = f"{seen.shown(limits.quantity)}, {relation} {name}{limit}"
    says = f"The {quantity.label(seen.units)} {quantity.be(seen.units)} {said}."
    then = thens[place] if thens else ""
    return Verdict(state, says, limits.rule, limits.source, then, f"{before} {first}")


def no_limit(seen: Seen, name: str, then: str = "") -> Verdict:
    """A value for which no limit is known here."""
    quantity = quantity_named(name)
    says = f"The {quantity.label(seen.units)} {quantity.be(seen.units)} {seen.shown(name)}."
    return Verdict(NO_LIMIT, says, then=then)
