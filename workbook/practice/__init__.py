"""Practice: one problem at a time, answered, helped with, followed by the next.

    practice.py     a learner at one problem after another; mixed.py and guided.py draw the next one
    view.py         a problem, its hints and solution, what became of an answer, as HTML
    parts.py        picture, answer, help, steps, code, what to choose: the parts of a card in widgets
    card.py         the card made of them; wanted.py, mixed and guided practice as that card
    own_numbers.py  a reader's own readings worked
    keeper.py       tries kept in the reader's log; log_copies.py, the log taken along

What other rooms take is named here. What shows anything is loaded when it is asked for, so that a
class is marked without widgets.
"""

from importlib import import_module
from typing import TYPE_CHECKING

from .keeper import attempt_of, codes_today, keep, own_log, past, units_of
from .practice import ENOUGH, MIXED, SEEDS, Practice, Reply, Try, alike
from .view import (
    after_state,
    answer_label,
    chain_html,
    in_order,
    problem_html,
    question_html,
    right_answer,
    said_of,
    title_html,
    worked_html,
)

if TYPE_CHECKING:
    from .card import Card
    from .guided import Focused, Missed
    from .parts import Drawing, Help, answering, ask

__all__ = [
    "ENOUGH",
    "MIXED",
    "SEEDS",
    "Card",
    "Drawing",
    "Focused",
    "Help",
    "Missed",
    "Practice",
    "Reply",
    "Try",
    "after_state",
    "alike",
    "answer_label",
    "answering",
    "ask",
    "attempt_of",
    "chain_html",
    "codes_today",
    "in_order",
    "keep",
    "own_log",
    "past",
    "problem_html",
    "question_html",
    "right_answer",
    "said_of",
    "title_html",
    "units_of",
    "worked_html",
]

_SHOWN = {
    "Card": "card",
    **dict.fromkeys(("Focused", "Missed"), "guided"),
    **dict.fromkeys(("Drawing", "Help", "answering", "ask"), "parts"),
}


def __getattr__(name: str) -> object:
    if name not in _SHOWN:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(f".{_SHOWN[name]}", __name__), name)
