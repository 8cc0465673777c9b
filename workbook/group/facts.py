"""What the results of a group say: who got what, at which try, and which mistakes were made."""

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from solver import Case, grade
from solver.engine.telling import hints_of
from workbook.log import SHOWN, Attempt, merged
from workbook.trainer.report.flaws import Flaw, Flaws

from .posed import Question
from .result import Result

__all__ = [
    "AT_ONCE",
    "LATER",
    "NOT_YET",
    "STATES",
    "UNTRIED",
    "Cell",
    "GroupFacts",
    "Member",
    "facts",
]

AT_ONCE, LATER, NOT_YET, UNTRIED = STATES = ("first try", "later", "not yet", "not tried")
MOST_TRIES = 20  # of one member at one question; more are not looked at


class Member(NamedTuple):
    """One member, known by `key`; `name` is empty where none was given."""

    key: str
    name: str
    attempts: Sequence[Attempt]


class Cell(NamedTuple):
    """How one member stands with one question; `mistakes` are ids, in the order they were made."""

    state: str
    tries: int = 0
    hints: int = 0
    shown: bool = False
    mistakes: tuple[str, ...] = ()


class Made(NamedTuple):
    """A mistake that was made, for `Flaws`."""

    case: Case
    mistake: str
    number: int


class GroupFacts(NamedTuple):
    """All of it. `cells` has a row for each question, and in it one for each member, in order."""

    members: Sequence[Member]
    questions: Sequence[Question]
    cells: Sequence[Sequence[Cell]]
    flaws: Sequence[Flaw]


def facts(questions: Iterable[Question], results: Iterable[Result]) -> GroupFacts:
    """What these results say. Any order, and one twice, gives the same.

    Each answer is graded here again: what a file says of itself is not believed.
    """
    members = members_of(results)
    tried = [_by_code(member.attempts) for member in members]
    asked: list[Question] = []
    rows: list[list[Cell]] = []
    flaws = Flaws()
    for question in questions:
        if (case := question.case) is None:
            continue
        row = [_cell(case, made.get(question.code, ())) for made in tried]
        for member, cell in zip(members, row, strict=True):
            for mistake in cell.mistakes:
                flaws.take(Made(case, mistake, question.number), member.key)
        asked.append(question)
        rows.append(row)
    return GroupFacts(members, asked, rows, flaws.ranked)


def _by_code(attempts: Iterable[Attempt]) -> dict[str, list[Attempt]]:
    found: dict[str, list[Attempt]] = {}
    for each in attempts:
        found.setdefault(each.code, []).append(each)
    return found


def members_of(results: Iterable[Result]) -> list[Member]:
    """One member for each name, however it is written, and for each result without one.

    A result without a name that has an answer of one with a name was saved before that was given.
    """
    results = list(results)
    owner = {each.id: _fold(one.who) for one in results if one.who for each in one.attempts}
    held: dict[str, list[Result]] = {}
    for one in results:
        held.setdefault(_fold(one.who) or _whose(one, owner), []).append(one)
    found = [_member(key, some) for key, some in held.items()]
    return sorted(found, key=lambda member: (not member.name, member.key))


def _member(key: str, some: Sequence[Result]) -> Member:
    name = min((one.who for one in some if one.who), default="")
    return Member(key, name, merged(*(one.attempts for one in some)))


def _fold(name: str) -> str:
    return name.casefold()


def _whose(one: Result, owner: dict[str, str]) -> str:
    """The name of whoever has one of these answers; else the oldest of them tells the member."""
    known = (owner[each.id] for each in one.attempts if each.id in owner)
    oldest = min(one.attempts, key=lambda each: (each.when, each.id))
    return next(known, f"{oldest.when} {oldest.id}")


def _cell(case: Case, made: Iterable[Attempt]) -> Cell:
    """Answers after the right one, or after the solution was opened, do not count."""
    tries = hints = 0
    mistakes: dict[str, None] = {}
    for each, status, mistake in _graded(case, made):
        hints = max(hints, min(each.hints, len(hints_of(case))))
        if status == SHOWN:
            return Cell(NOT_YET, tries, hints, True, tuple(mistakes))
        tries += 1
        mistakes |= {mistake: None} if mistake else {}
        if status == "right":
            unaided = tries == 1 and not hints
            return Cell(AT_ONCE if unaided else LATER, tries, hints, False, tuple(mistakes))
    return Cell(NOT_YET if tries else UNTRIED, tries, hints, False, tuple(mistakes))


def _graded(case: Case, made: Iterable[Attempt]) -> Iterator[tuple[Attempt, str, str | None]]:
    for each in list(made)[:MOST_TRIES]:
        if each.status == SHOWN:
            yield each, SHOWN, None
        elif (verdict := grade(case, each.typed)).counts:
            yield each, verdict.status, verdict.mistake
