"""How a study stands, as plain data: chapters, kinds, mistakes, what is due, days of work."""

from bisect import bisect_left
from collections import Counter
from collections.abc import Iterable, Sequence
from datetime import UTC, date, datetime, time, timedelta, tzinfo
from typing import NamedTuple

from solver import BadCode, Family, case_from_code

from .skills import Recurring, chance_now, due
from .study import Study

__all__ = ["AHEAD", "Chapter", "Flaw", "Kind", "Progress", "days_of", "kinds", "progress"]

AHEAD = 14  # days that what is due is told for


class Chapter(NamedTuple):
    """How one chapter stands; `right` of the last `lately` problems were right without help.

    `seconds` is the usual time to a right answer, None where there was none.
    """

    name: str
    kinds: int
    tried: int
    right: int
    lately: int
    due: int
    seconds: float | None


class Kind(NamedTuple):
    """How one kind of problem stands; `due` is when it should come back, None if never tried."""

    family: Family
    right: int
    lately: int
    level: int
    due: datetime | None
    seconds: float | None


class Flaw(NamedTuple):
    """A mistake that recurs, the kind of problem it is made in, and what it is, in words."""

    recurring: Recurring
    family: Family
    level: int
    says: str


class Progress(NamedTuple):
    """All of it. `ready` is the share, 0 to 1, of right answers to expect, were every kind asked."""

    problems: int
    days: Counter[date]
    ready: float
    chapters: tuple[Chapter, ...]
    flaws: tuple[Flaw, ...]
    due_now: tuple[Family, ...]
    due_on: Counter[date]


def progress(families: Sequence[Family], study: Study, now: datetime) -> Progress:
    """How a study stands at `now`, a time with its zone; days are told in that zone."""
    known = [family for family in families if family.name in study.cards]
    late = [family for family in known if due(study.cards[family.name], now)]
    late.sort(key=lambda family: chance_now(study.cards[family.name], now))
    names = dict.fromkeys(family.chapter for family in families)
    return Progress(
        len(study.times),
        days_of(study.times, now.tzinfo),
        sum(_chance(family, study, now) for family in known) / len(families),
        tuple(_chapter(kinds(families, study, name), late) for name in names),
        tuple(_flaws(families, study)),
        tuple(late),
        _due_on(known, study, now),
    )


def days_of(times: Sequence[str], zone: tzinfo | None) -> Counter[date]:
    """How many of these times, as a log writes them and in order, fall on each day of a zone.

    >>> sorted(days_of(["2026-11-25T18:04:31Z", "2026-11-26T00:30:00Z"], UTC).values())
    [1, 1]
    """
    days: Counter[date] = Counter()
    start = 0
    while start < len(times):  # a step a day, however many there are in it
        day = datetime.fromisoformat(times[start]).astimezone(zone).date()
        end = max(bisect_left(times, _midnight_after(day, zone), start), start + 1)
        days[day] += end - start
        start = end
    return days


def _midnight_after(day: date, zone: tzinfo | None) -> str:
    midnight = datetime.combine(day + timedelta(days=1), time(), zone)
    return midnight.astimezone(UTC).isoformat()[:19]


def _chance(family: Family, study: Study, now: datetime) -> float:
    """How likely the next problem of a kind is right at once: lately, and if it is still there."""
    skill = study.skills[family.name]
    return skill.unaided / len(skill.lately) * chance_now(study.cards[family.name], now)


def kinds(families: Sequence[Family], study: Study, chapter: str) -> list[Kind]:
    """How each kind of problem of a chapter stands, in the order of the chapter."""
    return [_kind(family, study) for family in families if family.chapter == chapter]


def _kind(family: Family, study: Study) -> Kind:
    level, card = study.level(family), study.cards.get(family.name)
    if card is None:
        return Kind(family, 0, 0, level, None, None)
    skill = study.skills[family.name]
    return Kind(family, skill.unaided, len(skill.lately), level, card.due, skill.seconds)


def _chapter(ours: Sequence[Kind], late: Sequence[Family]) -> Chapter:
    times = sorted(kind.seconds for kind in ours if kind.seconds is not None)
    name = ours[0].family.chapter
    return Chapter(
        name,
        len(ours),
        sum(kind.lately > 0 for kind in ours),
        sum(kind.right for kind in ours),
        sum(kind.lately for kind in ours),
        sum(family.chapter == name for family in late),
        times[len(times) // 2] if times else None,
    )


def _flaws(families: Sequence[Family], study: Study) -> Iterable[Flaw]:
    by_name = {family.name: family for family in families}
    found = [one for skill in study.skills.values() for one in skill.recurring]
    for one in sorted(found, key=lambda one: -one.times):
        if (family := by_name.get(one.family)) and (says := _says(one)):
            yield Flaw(one, family, min(one.level, len(family.levels)), says)


def _says(one: Recurring) -> str:
    """What the mistake is, in the words of the problem where it was made last."""
    try:
        case = case_from_code(one.code)
    except BadCode:  # an older edition of the problem: its words are gone
        return ""
    return next((m.says for m in case.mistakes if m.id == one.mistake), "")


def _due_on(known: Sequence[Family], study: Study, now: datetime) -> Counter[date]:
    """How many kinds come due on each of the next days; all that is late counts today."""
    today = now.date()
    days = (study.cards[family.name].due.astimezone(now.tzinfo).date() for family in known)
    coming = Counter(max(day, today) for day in days)
    return Counter({d: n for d, n in coming.items() if d < today + timedelta(days=AHEAD)})
