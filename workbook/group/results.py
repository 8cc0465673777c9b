"""What the members of a group got: each one's result as a file, and what several of them say.

A result is the lines that a log has of one set, read as data. Together they say who got what, at
which try, and which mistakes were made.
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from solver import Case, SolverError, grade
from solver.engine.telling import hints_of
from solver.units.show import counted
from workbook.log import SHOWN, Attempt, line_of, merged, parse
from workbook.ui.flaws import Flaw, Flaws

from .set_text import MOST_NAME, ProblemSet, Question, plain

__all__ = [
    "AT_ONCE",
    "LATER",
    "MOST_LINES",
    "NOT_YET",
    "STATES",
    "UNTRIED",
    "Cell",
    "GroupFacts",
    "Member",
    "NotAResult",
    "Result",
    "facts",
    "read_result",
    "result_file",
]

MOST_BYTES = 2_000_000
MOST_LINES = 5_000
KIND = "application/jsonl"
MADE = "Choose a file made by “Save my result”."
AT_ONCE, LATER, NOT_YET, UNTRIED = STATES = ("first try", "later", "not yet", "not tried")
MOST_TRIES = 20  # of one member at one question; more are not looked at


class NotAResult(SolverError, ValueError):
    """A file that is no result of this set; the sentence says why, and what to choose."""


class Result(NamedTuple):
    """What one member answered, oldest first; `who` may be empty. `strange` lines were left out."""

    who: str
    attempts: Sequence[Attempt]
    strange: int = 0


def result_file(problems: ProblemSet, name: str, made: Iterable[Attempt]) -> tuple[str, bytes]:
    """The file's name, and what is in it. What was answered before a name was given has it too."""
    lines = [line_of(each._replace(who=name)) for each in made]
    safe = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")
    parts = ["wire-to-water-group", problems.mark.lower(), *[safe] * bool(safe)]
    return f"{'-'.join(parts)}.jsonl", "".join(f"{line}\n" for line in lines).encode()


def read_result(data: bytes, problems: ProblemSet) -> Result:
    """The result in a file. Only what belongs to this set is taken.

    Raises:
        NotAResult: it is too large, no result, one of another set, or of several people.
    """
    if len(data) > MOST_BYTES:
        raise NotAResult(f"it is larger than {MOST_BYTES // 1_000_000} MB. {MADE}")
    if data.count(b"\n") > MOST_LINES:
        raise NotAResult(f"it has more than {MOST_LINES:,} lines. {MADE}")
    attempts, strange = parse(data)
    if not attempts:
        raise NotAResult(f"it doesn't hold any answers. {MADE}")
    codes = set(problems.codes)
    ours = [each for each in attempts if each.of == problems.key and each.code in codes]
    if not ours:
        raise NotAResult(
            "it has no answers to this set. Open the set it belongs to first, or leave it out."
        )
    names = {each.casefold(): each for each in (plain(a.who, MOST_NAME) for a in ours) if each}
    if len(names) > 1:
        raise NotAResult(f"it has answers of {counted(len(names), 'name')}. {MADE}")
    return Result(next(iter(names.values()), ""), ours, len(strange))


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
