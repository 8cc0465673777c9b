"""What a progress page says, as plain data: chapters, mistakes, what is due, the days of work."""

from collections import Counter
from collections.abc import Iterable, Sequence
from datetime import date, datetime, timedelta
from typing import NamedTuple

from solver import BadCode, Family, case_from_code
from workbook.log import Attempt
from workbook.study import Recurring, Study, chance_now, due, firsts, moment

__all__ = ["Chapter", "Flaw", "Progress", "progress"]

AHEAD = 14  # days that what is due is told for


class Chapter(NamedTuple):
    """How one chapter stands; `right` of the last `lately` problems were right without help."""

    name: str
    kinds: int
    tried: int
    right: int
    lately: int
    due: int
    seconds: float | None


class Flaw(NamedTuple):
    """A mistake that recurs, the kind of problem it is made in, and what it is, in words."""

    recurring: Recurring
    family: Family
    says: str


class Progress(NamedTuple):
    """All of it. `ready` is the share of right answers to be expected, were every kind asked."""

    problems: int
    days: Counter[date]
    ready: float
    chapters: tuple[Chapter, ...]
    flaws: tuple[Flaw, ...]
    due_now: tuple[Family, ...]
    due_on: Counter[date]


def progress(
    families: Sequence[Family], study: Study, attempts: Iterable[Attempt], now: datetime
) -> Progress:
    """How a study stands at `now`, a time with its zone; days are told in that zone."""
    days = Counter(moment(one).astimezone(now.tzinfo).date() for one in firsts(attempts))
    known = [family for family in families if family.name in study.cards]
    late = [family for family in known if due(study.cards[family.name], now)]
    late.sort(key=lambda family: chance_now(study.cards[family.name], now))
    names = dict.fromkeys(family.chapter for family in families)
    return Progress(
        sum(days.values()),
        days,
        sum(_chance(family, study, now) for family in known) / len(families),
        tuple(_chapter(name, families, study, late) for name in names),
        tuple(_flaws(families, study)),
        tuple(late),
        _due_on(known, study, now),
    )


def _chance(family: Family, study: Study, now: datetime) -> float:
    """How likely the next problem of a kind is right at once: lately, and if it is still there."""
    skill = study.skills[family.name]
    return skill.unaided / len(skill.lately) * chance_now(study.cards[family.name], now)


def _chapter(
    name: str, families: Sequence[Family], study: Study, late: Sequence[Family]
) -> Chapter:
    ours = [family for family in families if family.chapter == name]
    skills = [study.skills[f.name] for f in ours if f.name in study.cards]
    times = sorted(skill.seconds for skill in skills if skill.seconds is not None)
    return Chapter(
        name,
        len(ours),
        len(skills),
        sum(skill.unaided for skill in skills),
        sum(len(skill.lately) for skill in skills),
        sum(family.chapter == name for family in late),
        times[len(times) // 2] if times else None,
    )


def _flaws(families: Sequence[Family], study: Study) -> Iterable[Flaw]:
    by_name = {family.name: family for family in families}
    found = [one for skill in study.skills.values() for one in skill.recurring]
    for one in sorted(found, key=lambda one: -one.times):
        if one.family in by_name and (says := _says(one)):
            yield Flaw(one, by_name[one.family], says)


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
