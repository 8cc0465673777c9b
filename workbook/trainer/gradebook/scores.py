"""Marks as nbgrader's gradebook holds them: by grade cell a score, a sentence, and whether to look.

Both ways of marking go through here, so that they cannot differ.
"""

from typing import NamedTuple

from workbook.trainer.feedback import comment_of
from workbook.trainer.marking import Marked, QuestionMark

__all__ = ["Score", "grade_id", "score_of", "scores_of"]


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
