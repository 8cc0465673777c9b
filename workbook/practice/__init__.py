"""Practice on cards: one problem at a time, answered, helped with, followed by the next.

What other rooms take is named here; what shows anything is loaded when it is asked for.
"""

from .keeper import attempt_of, keep, own_log, past, units_of
from .practice import ENOUGH, MIXED, SEEDS, Practice, Reply, Try, alike
from .view import (
    after_state,
    answer_label,
    chain_html,
    problem_html,
    question_html,
    said_of,
    worked_html,
)

__all__ = [
    "ENOUGH",
    "MIXED",
    "SEEDS",
    "Practice",
    "Reply",
    "Try",
    "after_state",
    "alike",
    "answer_label",
    "attempt_of",
    "chain_html",
    "keep",
    "own_log",
    "past",
    "problem_html",
    "question_html",
    "said_of",
    "units_of",
    "worked_html",
]
