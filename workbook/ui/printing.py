"""What printed pages share: their paper, and a question and its worked solution as plain data.

`printed.typ` sets them.
"""

from collections.abc import Sequence
from typing import Any

from solver import Case
from solver.render.text import one_line_text, question_rows, step_lines
from solver.units.show import capital

__all__ = ["PAPER", "UNITS", "asked", "solved"]

PAPER = {"us": "us-letter", "si": "a4"}
UNITS = {"us": "US units", "si": "metric units"}
ROOM, LITTLE = 1.3, 0.25  # inches to write in: where there are readings to work with, and where not


def asked(
    case: Case, choices: Sequence[str], *, asks: str = "Answer", table: bool = True
) -> dict[str, Any]:
    """A question. `asks` stands before the line for its answer; `table` repeats what is given.

    The rows of a long question are there in any case.
    """
    rows = question_rows(case) if table else case.table
    return {
        "text": case.lead,
        "given": [[capital(label), value] for label, value in rows],
        "choices": list(choices),
        "asks": asks,
        "room": ROOM if case.given else LITTLE,
    }


def solved(case: Case, answer: str) -> dict[str, Any]:
    """The answer in words, the code, each step, and all of them in one line where that is short."""
    return {
        "answer": answer,
        "code": case.code,
        "steps": [
            list(step_lines(step, case.known, case.given, case.units)) for step in case.steps
        ],
        "one_line": one_line_text(case),
    }
