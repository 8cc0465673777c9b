"""How a study stands, as plain data: chapters, kinds, mistakes, what comes back today, days of work."""

from bisect import bisect_left
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import UTC, date, datetime, time, timedelta, tzinfo
from typing import NamedTuple

from solver import BadCode, Family, case_from_code
from workbook.log import Attempt

from .skills import Recurring, chance_now, moment
from .study import Study

__all__ = [
    "AHEAD",
    "Back",
    "Chapter",
    "Flaw",
    "Kind",
    "Progress",
    "days_of",
    "flaws",
    "kinds",
    "minutes_on",
    "progress",
]

AHEAD = 14  # days that what comes back is told for
LONGEST = 600.0  # seconds that a problem counts for; a page may be left open


class Chapter(NamedTuple):
    """How one chapter stands; `right` of the last `lately` problems were right without help.

    `sure` is how many kinds would go right, were each asked once now. `seconds` is the usual time to
    a right answer, None where there was none.
    """

    name: str
    kinds: int
    tried: int
    right: int
    lately: int
    sure: float
    back: int
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


class Back(NamedTuple):
    """A kind of problem that comes back today: when it was last done, how it went, from when on.

    `sure` is how likely it goes right, 0 to 1; `slips` how often one mistake was made in it lately.
    """

    family: Family
    last: datetime
    unaided: bool
    since: datetime
    sure: float
    slips: int


class Progress(NamedTuple):
    """All of it. `back` is what comes back today, the least sure kind first; `back_on`, for each day."""

    problems: int
    days: Counter[date]
    chapters: tuple[Chapter, ...]
    back: tuple[Back, ...]
    back_on: Counter[date]

    @property
    def kinds(self) -> int:
        """How many kinds of problems there are."""
        return sum(chapter.kinds for chapter in self.chapters)

    @property
    def tried(self) -> int:
        """How many of them were tried."""
        return sum(chapter.tried for chapter in self.chapters)

    @property
    def ready(self) -> float | None:
        """The share of right answers to expect, were each kind that was tried asked once now.

        From 0 to 1, or None before anything was tried.
        """
        sure = sum(chapter.sure for chapter in self.chapters)
        return sure / self.tried if self.tried else None


def progress(families: Sequence[Family], study: Study, now: datetime) -> Progress:
    """How a study stands at `now`, a time with its zone; days are told in that zone."""
    sure = {f.name: _chance(f, study, now) for f in families if f.name in study.cards}
    back_on = _back_on([family for family in families if family.name in sure], study, now)
    back = [_back(family, study, sure[family.name]) for family in back_on.pop(now.date(), ())]
    back.sort(key=lambda one: (-one.slips, one.sure))
    names = dict.fromkeys(family.chapter for family in families)
    counts = Counter({day: len(those) for day, those in back_on.items()})
    return Progress(
        len(study.times),
        days_of(study.times, now.tzinfo),
        tuple(_chapter(kinds(families, study, name), sure, back) for name in names),
        tuple(back),
        counts + Counter({now.date(): len(back)}),
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


def _chapter(ours: Sequence[Kind], sure: Mapping[str, float], back: Sequence[Back]) -> Chapter:
    times = sorted(kind.seconds for kind in ours if kind.seconds is not None)
    name = ours[0].family.chapter
    return Chapter(
        name,
        len(ours),
        sum(kind.lately > 0 for kind in ours),
        sum(kind.right for kind in ours),
        sum(kind.lately for kind in ours),
        sum(sure.get(kind.family.name, 0.0) for kind in ours),
        sum(one.family.chapter == name for one in back),
        times[len(times) // 2] if times else None,
    )


def flaws(families: Sequence[Family], study: Study) -> Iterator[Flaw]:
    """The mistakes that recur, the most frequent first; each draws its problem again for its words."""
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


def _back_on(known: Sequence[Family], study: Study, now: datetime) -> dict[date, list[Family]]:
    """Which kinds come back on each of the next days.

    All that is late comes back today, and so does a kind in which a mistake keeps being made.
    """
    today = now.date()
    found: defaultdict[date, list[Family]] = defaultdict(list)
    for family in known:
        day = max(study.cards[family.name].due.astimezone(now.tzinfo).date(), today)
        day = today if study.skills[family.name].recurring else day
        if day < today + timedelta(days=AHEAD):
            found[day].append(family)
    return dict(found)


def _back(family: Family, study: Study, sure: float) -> Back:
    skill, card = study.skills[family.name], study.cards[family.name]
    last = skill.firsts[-1]
    slips = max((one.times for one in skill.recurring), default=0)
    return Back(family, moment(last), last.unaided, card.due, sure, slips)


def minutes_on(attempts: Sequence[Attempt], day: date, zone: tzinfo | None) -> float:
    """How many minutes somebody worked at problems on a day, from attempts in order of time.

    The time of a problem runs from when it was shown to its last answer; ten minutes at most count.
    """
    spent: dict[str, float] = {}
    for attempt in reversed(attempts):
        on = moment(attempt).astimezone(zone).date()
        if on < day:
            break
        if on == day:
            known = spent.get(attempt.code, 0.0)
            spent[attempt.code] = max(known, min(attempt.seconds, LONGEST))
    return sum(spent.values()) / 60
