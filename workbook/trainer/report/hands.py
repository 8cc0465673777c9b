"""Who needs a hand, and why: the sheet needs a look, nothing or little is there, the score is low."""

from collections.abc import Iterable
from typing import NamedTuple

from .facts import Person

__all__ = ["LOW", "Hand", "hands"]

LOW = 0.7  # share of the points; certification exams commonly ask for so much (common practice)
MANY_BLANK = 0.25  # share of the questions


class Hand(NamedTuple):
    """One person who needs a hand; `why` may have several, the one to act on first."""

    person: Person
    why: tuple[str, ...]


def hands(people: Iterable[Person], low: float = LOW) -> list[Hand]:
    """Those who need one: first whose work must be looked at, then the lowest share of points."""
    found = [Hand(person, why) for person in people if (why := _why(person, low))]
    return sorted(
        found, key=lambda one: (not one.person.needs, one.person.share, one.person.person)
    )


def _why(person: Person, low: float) -> tuple[str, ...]:
    look = (person.reasons or ("Look at the sheet.",)) if person.needs else ()
    if not person.handed_in:
        return (*look, "Nothing was answered.")
    why = [*look]
    if person.blank >= MANY_BLANK * person.asked:
        why.append(f"{person.blank} of {person.asked} are blank.")
    if person.share < low:
        why.append(f"Under {low:.0%} of the points.")
    return tuple(why)
