"""What the members of a group got: each one's result as a file, and what several of them say.

A result is the lines that a log has of one set, read as data. Together they say who got what, at
which try, and which mistakes were made.
"""

import re
from collections.abc import Collection, Iterable, Iterator, Sequence
from contextlib import suppress
from typing import NamedTuple

from solver import Case, SolverError, grade
from solver.engine.telling import hints_of
from solver.fault.case import FaultCase
from solver.fault.way import Way
from solver.units.show import counted
from workbook.fault import way_in
from workbook.log import SHOWN, Attempt, line_of, parse
from workbook.ui.flaws import Flaw, Flaws

from .members import Member, Result, fold, members_of
from .set_text import MOST_NAME, ProblemSet, Question, plain, questions_of

__all__ = [
    "AT_ONCE",
    "LATER",
    "MOST_LINES",
    "NOT_YET",
    "STATES",
    "UNTRIED",
    "Cell",
    "GroupFacts",
    "NotAResult",
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


def result_file(problems: ProblemSet, name: str, made: Iterable[Attempt]) -> tuple[str, bytes]:
    """The file's name, and what is in it. What was answered before a name was given has it too."""
    lines = [line_of(each._replace(who=name)) for each in made]
    safe = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")
    parts = ["wire-to-water-group", problems.mark.lower(), *[safe] * bool(safe)]
    return f"{'-'.join(parts)}.jsonl", "".join(f"{line}\n" for line in lines).encode()


def read_result(data: bytes, problems: ProblemSet) -> Result:
    """The result in a file. Only what belongs to this set is taken.

    Raises:
        NotAResult: it is too large, no result, one of another set, of several people, or has
            nothing that counts as an answer.
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
    names = {fold(each): each for each in (plain(a.who, MOST_NAME) for a in ours) if each}
    if len(names) > 1:
        raise NotAResult(f"it has answers of {counted(len(names), 'name')}. {MADE}")
    if not _counts(ours, problems):
        raise NotAResult(
            "none of its answers can be read as a number or a choice, so there is nothing to count. "
            "Ask whoever sent it to answer a question and save the result again."
        )
    return Result(next(iter(names.values()), ""), ours, len(strange))


def _counts(attempts: Iterable[Attempt], problems: ProblemSet) -> bool:
    """Whether anything there is to be graded here; a set that cannot be opened here is not junk."""
    made = _by_code(attempts)
    asked = [(each.case, made[each.code]) for each in questions_of(problems) if each.code in made]
    return any(case is None or _any_counts(case, tries) for case, tries in asked)


def _any_counts(case: Case | FaultCase, tries: Sequence[Attempt]) -> bool:
    if isinstance(case, FaultCase):
        return _way_cell(tries).state != UNTRIED
    return any(_graded(case, tries))


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


def facts(
    questions: Iterable[Question], results: Iterable[Result], one: Collection[str] = ()
) -> GroupFacts:
    """What these results say. Any order, and one twice, gives the same.

    `one` are the names under which all results are one person's, as `members_of` takes them. Each answer is graded here again: what a file says of itself is not believed.
    """
    members = members_of(results, one)
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
                if isinstance(case, Case):  # a case of find the fault has none
                    flaws.take(Made(case, mistake, question.number), member.key)
        asked.append(question)
        rows.append(row)
    return GroupFacts(members, asked, rows, flaws.ranked)


def _by_code(attempts: Iterable[Attempt]) -> dict[str, list[Attempt]]:
    found: dict[str, list[Attempt]] = {}
    for each in attempts:
        found.setdefault(each.code, []).append(each)
    return found


def _cell(case: Case | FaultCase, made: Iterable[Attempt]) -> Cell:
    """Answers after the right one, or after the solution was opened, do not count."""
    if isinstance(case, FaultCase):
        return _way_cell(made)
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


def _way_cell(made: Iterable[Attempt]) -> Cell:
    """How one member stands with a case of find the fault: by the longest way that can be gone through again.

    A name given after something unsafe was tried is not found at the first try.
    """
    way: Way | None = None
    for each in list(made)[:MOST_TRIES]:
        with suppress(SolverError):
            found = way_in(each)
            if way is None or len(found.words) > len(way.words):
                way = found
    if way is None or not (way.names or way.ended):
        return Cell(UNTRIED)
    tries = len(way.names)
    if way.named:
        return Cell(AT_ONCE if tries == 1 and not way.unsafe else LATER, tries)
    return Cell(NOT_YET, tries, shown=way.ended)
