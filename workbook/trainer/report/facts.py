"""What a class's marks say, as plain data: its people, its questions, its mistakes."""

from collections import Counter
from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, NamedTuple

from solver import Family

from .flaws import Flaw, Flaws
from .telling import Telling, telling

if TYPE_CHECKING:
    from workbook.trainer.marking import Marked

__all__ = ["BINS", "STATUSES", "ClassFacts", "Person", "Question", "facts"]

STATUSES = ("right", "mistake", "close", "wrong", "unreadable", "blank")
BINS = 10  # of a tenth of the points each


class Person(NamedTuple):
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
    """All of it. People stand in the order of their ids, mistakes with the commonest first."""

    code: str
    people: tuple[Person, ...]
    questions: tuple[Question, ...]
    flaws: tuple[Flaw, ...]

    @property
    def there(self) -> list[Person]:
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
        self.people: list[Person] = []
        self.columns: dict[int, _Column] = {}
        self.flaws = Flaws()

    def take(self, mark: "Marked") -> None:
        person = _person(mark)
        self.code = self.code or mark.code
        self.people.append(person)
        if not person.handed_in:
            return
        for one in mark.questions:
            self._count(one, person)
            self.flaws.take(one, mark.person)

    def _count(self, one, person: Person) -> None:
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
        first = self.people[0] if self.people else Person("", 0.0, 0.0, 0, 0, False, (), ())
        zeros = (0.0,) * len(first.by_question)
        nothing = first._replace(
            points=0.0, blank=first.asked, needs=False, reasons=(), by_question=zeros
        )
        gone = [nothing._replace(person=one) for one in absent]
        people = tuple(sorted([*self.people, *gone], key=lambda person: person.person))
        return ClassFacts(self.code, people, questions, self.flaws.ranked)


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


def _person(mark: "Marked") -> Person:
    own = [mark.reason] if mark.reason else []
    reasons = [f"Question {one.number}: {one.reason}" for one in mark.questions if one.needs_person]
    if mark.needs_person and not (own or reasons):
        own = ["A person must look at this sheet."]
    return Person(
        mark.person,
        mark.points,
        mark.out_of,
        len(mark.questions),
        sum(one.status == "blank" for one in mark.questions),
        mark.needs_person,
        (*own, *reasons),
        tuple(one.points for one in mark.questions),
    )
