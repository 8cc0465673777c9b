"""What a class's marks say, as plain data: its people, its questions, its mistakes.

Of a question it says too how well it tells those who know the work from those who do not yet.
"""

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from statistics import correlation, fmean
from types import MappingProxyType
from typing import TYPE_CHECKING, NamedTuple

from solver import Family
from workbook.ui.flaws import Flaw, Flaws

from .ways import WayFacts, way_facts

if TYPE_CHECKING:
    from workbook.trainer.marking.marked import Marked

__all__ = [
    "BINS",
    "ENOUGH",
    "STATUSES",
    "ClassFacts",
    "PersonFacts",
    "Question",
    "Telling",
    "facts",
    "telling",
]

ENOUGH = 10  # people; with fewer, one of them alone turns the number round
ALIKE = 9  # decimals; shares that differ by less differ only in the way they were added up
STATUSES = ("right", "mistake", "close", "wrong", "unreadable", "blank")
BINS = 10  # of a tenth of the points each


class Telling(NamedTuple):
    """How the points here go with those of the other questions.

    `value` is the point-biserial correlation, -1 to 1, of the share of the points here with that
    of all other questions; None where it says nothing. `best` and `lowest` are the mean shares
    here, 0 to 1, of the third that did best in the other questions and of the third that did least.
    """

    value: float | None = None
    best: float | None = None
    lowest: float | None = None


def telling(here: Sequence[float], others: Sequence[float]) -> Telling:
    """What a question tells, from each person's share of its points and of all the others.

    The question itself stays out of `others`, or it would agree with itself. There is none of it
    under ten people, nor where all did alike.

    >>> told = telling([0] * 5 + [1] * 5, range(10))
    >>> round(told.value, 2), told.best, told.lowest
    (0.87, 1.0, 0.0)
    """
    here, others = ([round(share, ALIKE) for share in shares] for shares in (here, others))
    if len(here) < ENOUGH or len(set(here)) == 1 or len(set(others)) == 1:
        return Telling()
    ranked = _ranked(here, others)
    third = len(ranked) // 3
    return Telling(correlation(here, others), fmean(ranked[-third:]), fmean(ranked[:third]))


def _ranked(here: Sequence[float], others: Sequence[float]) -> list[float]:
    """The shares here, least first by the others; those alike there share what they have here.

    So no chance decides who of them belongs to a third.
    """
    alike = defaultdict(list)
    for share, other in zip(here, others, strict=True):
        alike[other].append(share)
    return [mean for other in sorted(alike) for mean in [fmean(alike[other])] * len(alike[other])]


class PersonFacts(NamedTuple):
    """How one person did. `needs` tells that somebody must look at the sheet; `reasons` say why."""

    person: str
    points: float
    out_of: float
    asked: int
    blank: int
    needs: bool
    reasons: tuple[str, ...]
    by_question: tuple[float, ...]

    @property
    def share(self) -> float:
        """The share of the points, 0 to 1."""
        return self.points / self.out_of if self.out_of else 0.0

    @property
    def handed_in(self) -> bool:
        """Whether anything at all was answered."""
        return self.blank < self.asked


class Question(NamedTuple):
    """How a question went, over those who answered anything at all. `share` is of its points."""

    number: int
    family: Family
    level: int
    share: float
    counts: Mapping[str, int]
    telling: Telling

    @property
    def missed(self) -> int:
        """How many gave an answer that was wrong."""
        return self.counts["mistake"] + self.counts["wrong"]


class ClassFacts(NamedTuple):
    """All of it. People stand in the order of their ids, mistakes with the commonest first.

    `called` has the names of those on the list, by id, as a trainer reads them.
    """

    code: str
    people: tuple[PersonFacts, ...]
    questions: tuple[Question, ...]
    flaws: tuple[Flaw, ...]
    ways: tuple[WayFacts, ...] = ()
    called: Mapping[str, str] = MappingProxyType({})

    @property
    def there(self) -> list[PersonFacts]:
        """Those who answered anything at all."""
        return [person for person in self.people if person.handed_in]

    @property
    def spread(self) -> list[int]:
        """How many of them have each tenth of the points; all of them count to the last."""
        bins = [0] * BINS
        for person in self.there:
            # A share of 0.3 may be a little under 3 / 10 as a computer adds it up.
            bins[min(int(person.share * BINS + 1e-9), BINS - 1)] += 1
        return bins

    @property
    def hardest(self) -> list[Question]:
        """The questions, least share of the points first, then most wrong answers."""
        return sorted(self.questions, key=lambda one: (one.share, -one.missed, one.number))


def facts(marks: Iterable["Marked"], absent: Iterable[str] = ()) -> ClassFacts:
    """What the marks of one set say. They are gone through once, and none is kept.

    `absent` are the ids of those who handed in nothing and so have no marks.
    """
    gathered = _Gathered()
    for mark in marks:
        gathered.take(mark)
    return gathered.facts(absent)


class _Column:
    """What is gathered of one question."""

    def __init__(self, family: Family, level: int):
        self.family, self.level = family, level
        self.counts: Counter[str] = Counter()
        self.shares: list[float] = []
        self.others: list[float] = []


class _Gathered:
    """What has been gathered of the marks so far."""

    def __init__(self) -> None:
        self.code = ""
        self.people: list[PersonFacts] = []
        self.columns: dict[int, _Column] = {}
        self.flaws = Flaws()
        self.ways: list[WayFacts] = []

    def take(self, mark: "Marked") -> None:
        person = _person(mark)
        self.code = self.code or mark.code
        self.people.append(person)
        if not person.handed_in:
            return
        for one in mark.questions:
            self._count(one, person)
            self.flaws.take(one, mark.person)
            if way := way_facts(one, mark.person):
                self.ways.append(way)

    def _count(self, one, person: PersonFacts) -> None:
        column = self.columns.get(one.number)
        if column is None:
            column = self.columns[one.number] = _Column(one.case.family, one.case.level)
        column.counts[one.status] += 1
        column.shares.append(_part(one.points, one.out_of))
        column.others.append(_part(person.points - one.points, person.out_of - one.out_of))

    def facts(self, absent: Iterable[str]) -> ClassFacts:
        questions = tuple(
            _question(number, self.columns[number]) for number in sorted(self.columns)
        )
        first = self.people[0] if self.people else PersonFacts("", 0.0, 0.0, 0, 0, False, (), ())
        zeros = (0.0,) * len(first.by_question)
        nothing = first._replace(
            points=0.0, blank=first.asked, needs=False, reasons=(), by_question=zeros
        )
        gone = [nothing._replace(person=one) for one in absent]
        people = tuple(sorted([*self.people, *gone], key=lambda person: person.person))
        return ClassFacts(self.code, people, questions, self.flaws.ranked, tuple(self.ways))


def _part(points: float, out_of: float) -> float:
    return points / out_of if out_of > 0 else 0.0


def _question(number: int, column: _Column) -> Question:
    shares = column.shares
    return Question(
        number,
        column.family,
        column.level,
        sum(shares) / len(shares),
        column.counts,
        telling(shares, column.others),
    )


def _person(mark: "Marked") -> PersonFacts:
    own = [mark.reason] if mark.reason else []
    reasons = [f"Question {one.number}: {one.reason}" for one in mark.questions if one.needs_person]
    if mark.needs_person and not (own or reasons):
        own = ["A person must look at this sheet."]
    return PersonFacts(
        mark.person,
        mark.points,
        mark.out_of,
        len(mark.questions),
        sum(one.status == "blank" for one in mark.questions),
        mark.needs_person,
        (*own, *reasons),
        tuple(one.points for one in mark.questions),
    )
