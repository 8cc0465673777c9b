"""The rules of both ways of marking, so that they cannot differ: scores, whom to look at, being late.

Marks stand in nbgrader's gradebook by grade cell: a score, a sentence, and whether to look. All
times are in UTC without an offset, as nbgrader keeps them.
"""

from datetime import datetime, timedelta
from typing import NamedTuple

from workbook.trainer.marking.feedback import comment_of
from workbook.trainer.marking.marked import Marked, QuestionMark
from workbook.trainer.sets.set_file import Assigned

__all__ = [
    "NEW",
    "Kept",
    "Score",
    "grade_id",
    "must_look",
    "penalty",
    "score_of",
    "scores_of",
    "seconds_late",
]


class Score(NamedTuple):
    """The points of one question, its sentence, and whether a person must look at it."""

    points: float
    said: str
    needs_person: bool


def grade_id(number: int) -> str:
    """The name of the grade cell of a question.

    >>> grade_id(3)
    'question-03'
    """
    return f"question-{number:02}"


def score_of(question: QuestionMark) -> float:
    """The points as nbgrader takes them from a cell: a plain float, never above the most."""
    return float(min(question.points, question.out_of))


def scores_of(marked: Marked) -> dict[str, Score]:
    """The scores of one person's work, by grade cell.

    The gradebook has no place for what is odd about the work as a whole. It stands at the first
    question to look at, or else at the first of all, so that somebody looks.
    """
    scores = {
        grade_id(each.number): Score(score_of(each), comment_of(each), each.needs_person)
        for each in marked.questions
    }
    if marked.needs_person:
        first = next((name for name, each in scores.items() if each.needs_person), grade_id(1))
        points, said, _ = scores[first]
        scores[first] = Score(points, f"{said} {marked.reason}", True)
    return scores


class Kept(NamedTuple):
    """What the gradebook has of one question: nbgrader's columns `auto_score`, `manual_score`,
    `needs_manual_grade` and `auto_comment`."""

    score: float | None
    by_hand: float | None
    to_look_at: bool
    said: str | None


NEW = Kept(None, None, True, None)


def must_look(needs_person: bool, score: float, said: str, kept: Kept) -> bool:
    """Whether a person must look, now that a question has this score and this sentence.

    What somebody has looked at stays so while score and sentence are the same. A score given by
    hand is looked at again once they differ.

    >>> must_look(True, 0.5, "An earlier try is missing.", NEW)
    True
    >>> must_look(True, 0.5, "An earlier try is missing.", Kept(0.5, 1.0, False, "An earlier try is missing."))
    False
    >>> must_look(False, 1.0, "Right.", Kept(0.5, 0.75, False, "Close."))
    True
    """
    seen = not kept.to_look_at and (kept.score, kept.said) == (score, said)
    return (needs_person or kept.by_hand is not None) and not seen


def seconds_late(
    when: datetime | None, due: datetime | None, extension: timedelta | None = None
) -> float:
    """How long after its time work came, in seconds; 0 where it was in time or no time is set.

    All times are in UTC without an offset, as nbgrader keeps them.
    """
    if when is None or due is None:
        return 0.0
    return max(0.0, (when - due - (extension or timedelta())).total_seconds())


def penalty(assigned: Assigned, score: float) -> float | None:
    """The points that are taken off a score for being late; None where it costs nothing.

    >>> from workbook.trainer.sets.set_file import parse_set_file
    >>> week = parse_set_file('draw = 1\\nchapters = ["head"]\\nlate = 0.1', "week-3")
    >>> penalty(week, 8.5)
    0.85
    """
    return round(assigned.late * score, 4) if assigned.late else None
