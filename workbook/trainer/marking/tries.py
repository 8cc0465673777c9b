"""What becomes of the answers to one question: which try counts, its points, and what is odd."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from solver import Case, Verdict, grade
from solver.engine.grading import MISTAKE, WRONG
from solver.fault.case import FaultCase
from solver.fault.way import Way
from solver.sets.credit import share_of
from solver.topics.catalogue import Refused
from workbook.log import SHOWN, Attempt
from workbook.trainer.sets.set_file import Assigned

from .odd import plain, quoted, told

__all__ = ["QuestionMark", "by_plain_answer", "by_tries", "not_gradable", "unanswered"]

BLANK = "blank"
NO_ANSWER = "No answer was given."
SOLUTION_FIRST = "The worked solution was opened before an answer was given."
AFTER_SOLUTION = "Answers after the worked solution was opened were not counted."
MISSING = "An earlier try is missing from the sheet."
NOT_COUNTED = " were not counted."
NOT_READ = "The plain answer can't be read the way it is."
CALLED = "When it was answered, {} was called {}."
BY_HAND = "Give its points by hand."
KNOWN = {"mistake": "a known mistake"}
MOST_TRIES = 1000  # a sheet may say any number


class QuestionMark(NamedTuple):
    """The mark of one question.

    `status` is right, mistake, close, wrong, blank or unreadable. `typed` is the answer that
    counted, `read_as` how it was read, `says` what the solver says of it, and `tries` which try it
    was. `reason` says what was not counted or is odd; `needs_person`, that somebody must look.
    `case` is Refused where its problem is not here any more. `way` is what was done in a case of find the
    fault; None for a problem.
    """

    number: int
    points: float
    out_of: float
    status: str
    mistake: str
    typed: str
    says: str
    reason: str
    needs_person: bool
    case: Case | Refused | FaultCase
    tries: int = 0
    read_as: str = ""
    way: Way | None = None


class _Try(NamedTuple):
    """An answer as typed, its verdict, which try it was, and its share of the points."""

    typed: str
    verdict: Verdict
    number: int
    share: float


def unanswered(
    assigned: Assigned,
    number: int,
    case: Case,
    odd: Sequence[str],
    said: Sequence[str] = (),
    says: str = NO_ANSWER,
) -> QuestionMark:
    """The mark of a question without an answer that counts."""
    reason = told((*odd, *said))
    return QuestionMark(number, 0.0, assigned.points, BLANK, "", "", says, reason, bool(odd), case)


def not_gradable(
    assigned: Assigned,
    number: int,
    case: Refused,
    odd: Sequence[str],
    lines: Sequence[Attempt],
    typed: str,
) -> QuestionMark:
    """The mark of a question whose problem is not here any more: the trainer's to give.

    What the sheet says of it is told, as nothing else is left to go by.
    """
    answers = [line for line in lines if line.status != SHOWN]
    called = [
        CALLED.format(quoted(line.typed), KNOWN.get(line.status, line.status)) for line in answers
    ]
    typed = answers[-1].typed if answers else typed
    status = "unreadable" if typed else BLANK
    reason = told((*odd, *called, BY_HAND))
    return QuestionMark(
        number, 0.0, assigned.points, status, "", plain(typed), case.why, reason, True, case
    )


def by_plain_answer(
    assigned: Assigned, number: int, case: Case, text: str, odd: Sequence[str]
) -> QuestionMark:
    """The mark of a question by an answer in words, which is a first try."""
    verdict = grade(case, text)
    odd = odd if verdict.counts else [*odd, NOT_READ]
    return _marked(assigned, number, case, _tried(assigned, case, text, verdict, 1), odd, ())


def by_tries(
    assigned: Assigned,
    number: int,
    case: Case,
    lines: Sequence[Attempt],
    odd: Sequence[str],
    said: Sequence[str] = (),
) -> QuestionMark:
    """The mark of a question by its lines, in order of time; `odd` is what is odd besides, `said` what isn't."""
    odd, said = [*odd], [*said]
    tries, unread = _tries(assigned, case, lines, odd)
    if any(line.status != SHOWN for line in lines[len(tries) + len(unread) :]):
        said.append(AFTER_SOLUTION)
    limit = assigned.tries_for(case) or MOST_TRIES
    within = [each for each in tries if each.number <= limit]
    if len(within) < len(tries):
        said.append(f"Tries after the first {limit if limit > 1 else ''}".strip() + NOT_COUNTED)
    if within:
        return _marked(assigned, number, case, _counted(assigned, within), odd, said)
    if unread:
        return _marked(assigned, number, case, unread[-1], odd, said)
    says = SOLUTION_FIRST if lines[0].status == SHOWN else NO_ANSWER
    return unanswered(assigned, number, case, odd, said, says)


def _tries(
    assigned: Assigned, case: Case, lines: Iterable[Attempt], odd: list[str]
) -> tuple[list[_Try], list[_Try]]:
    """The tries before the worked solution was opened, and answers there that cannot be read."""
    tries: list[_Try] = []
    unread: list[_Try] = []
    for line in lines:
        if line.status == SHOWN:
            break
        verdict = grade(case, line.typed)
        if line.status not in _may_be_called(assigned, verdict):
            odd.append(_edited(line, verdict))
        if not verdict.counts:
            unread.append(_tried(assigned, case, line.typed, verdict, len(tries)))
            continue
        place = len(tries) + 1
        if line.tries > place:
            odd.append(MISSING)
        tries.append(_tried(assigned, case, line.typed, verdict, max(line.tries, place)))
    return tries, unread


def _may_be_called(assigned: Assigned, verdict: Verdict) -> tuple[str, ...]:
    """What a sheet may say of an answer: the version it was answered in may name more, or less.

    What it says earns nothing by itself. But a mistake with a share of its own is worth what its
    name is, so there somebody looks at one that had no name when it was made.
    """
    wrong = verdict.status == WRONG and verdict.mistake
    mistake = verdict.status == MISTAKE and not assigned.credit.by_mistake
    return (WRONG, MISTAKE) if wrong or mistake else (verdict.status,)


def _tried(assigned: Assigned, case: Case, typed: str, verdict: Verdict, number: int) -> _Try:
    number = min(number, MOST_TRIES + 1)
    return _Try(
        typed, verdict, number, share_of(assigned.credit, verdict, number, bool(case.choices))
    )


def _counted(assigned: Assigned, tries: Sequence[_Try]) -> _Try:
    """The try that counts; of those that are as good, the first."""
    if assigned.counts == "best":
        return max(tries, key=lambda each: each.share)
    return tries[0 if assigned.counts == "first" else -1]


def _marked(
    assigned: Assigned,
    number: int,
    case: Case,
    counted: _Try,
    odd: Sequence[str],
    said: Sequence[str],
) -> QuestionMark:
    verdict, out_of = counted.verdict, assigned.points
    return QuestionMark(
        number,
        min(round(counted.share * out_of, 6), out_of),
        out_of,
        verdict.status,
        verdict.mistake or "",
        plain(counted.typed),
        verdict.says,
        told((*odd, *said)),
        bool(odd),
        case,
        counted.number,
        verdict.echo,
    )


def _edited(line: Attempt, verdict: Verdict) -> str:
    kept, found = (KNOWN.get(status, status) for status in (line.status, verdict.status))
    instead = f"is {found}" if verdict.counts else "can't be read"
    return f"The sheet calls {quoted(line.typed)} {kept}; it {instead}."
