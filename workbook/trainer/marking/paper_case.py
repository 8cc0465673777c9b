"""A case of find the fault answered on paper: the number of what is behind it, and the letter of what to do.

On paper all readings are there to see. So it tells whether somebody can say what the readings mean; how they
would measure, and whether safely, only the case on the screen tells.
"""

import re
from collections.abc import Sequence
from typing import NamedTuple

from solver import SolverError
from solver.fault.case import FaultCase
from solver.fault.remedies import ACTIONS, RIGHT
from solver.fault.way import DO, NAME, Way
from solver.sets.credit import share_of_way
from solver.station.faults import FAULTS
from workbook.trainer.sets.set_file import Assigned

from .odd import plain, quoted, told
from .tries import QuestionMark

__all__ = ["LETTERS", "PaperAnswer", "answer_on_paper", "by_paper", "read_on_paper"]

LETTERS = dict(zip("ABCD", ACTIONS, strict=True))
SHAPE = re.compile(r"0*([1-9]\d?)(?:\.0*)?[\s,;:/.)-]*([A-Za-z])?[.)]?")
NOTHING = "No answer was given."
ONLY_NUMBER = "It has no letter for what to do."
CANNOT = "{} isn't a number from 1 to {} and a letter from A to D, such as 2B."


class PaperAnswer(NamedTuple):
    """A fault and an action, by name; the action is "" where no letter was written."""

    fault: str
    action: str

    @property
    def said(self) -> str:
        """Both in words."""
        call = f"; {ACTIONS[self.action].lower()}" if self.action else ""
        return f"{FAULTS[self.fault].label}{call}"


def answer_on_paper(case: FaultCase) -> str:
    """What to write for a case: the number of its fault and the letter of the best call."""
    best = RIGHT[case.fault][0][0]
    letter = next(letter for letter, action in LETTERS.items() if action == best)
    return f"{case.suspects.index(case.fault) + 1}{letter}"


def read_on_paper(case: FaultCase, text: str) -> PaperAnswer:
    """What was written.

    Raises:
        SolverError: it cannot be read; the sentence says what to write.
    """
    found = SHAPE.fullmatch(text.strip())
    number, letter = (int(found[1]), (found[2] or "").upper()) if found else (0, "")
    if not 1 <= number <= len(case.suspects) or (letter and letter not in LETTERS):
        raise SolverError(CANNOT.format(quoted(text), len(case.suspects)))
    return PaperAnswer(case.suspects[number - 1], LETTERS.get(letter, ""))


def by_paper(
    assigned: Assigned, number: int, case: FaultCase, text: str, odd: Sequence[str]
) -> QuestionMark:
    """The mark of a case by what was written on paper: a first name, and a call. It never raises."""
    blank = QuestionMark(
        number, 0.0, assigned.faults.points, "blank", "", "", NOTHING, told(odd), bool(odd), case
    )
    if not text:
        return blank
    typed = plain(text)
    try:
        answer = read_on_paper(case, text)
    except SolverError as why:
        odd = [*odd, str(why)]
        return blank._replace(
            status="unreadable", typed=typed, says=str(why), reason=told(odd), needs_person=True
        )
    way = Way(case).then(f"{NAME}{answer.fault}")
    if way.named and answer.action:
        way = way.then(f"{DO}{answer.action}")
    share = share_of_way(assigned.credit, way, 1, 0.0)
    good = way.action in RIGHT[case.fault][0]
    status = "wrong" if not way.named else "right" if good else "close"
    said = [] if answer.action else [ONLY_NUMBER]
    return blank._replace(
        points=min(round(share * assigned.faults.points, 6), assigned.faults.points),
        status=status, typed=typed, says=_says(case), reason=told((*odd, *said)), tries=1,
        read_as=answer.said,
    )  # fmt: skip


def _says(case: FaultCase) -> str:
    best, why = RIGHT[case.fault]
    return f"It was: {FAULTS[case.fault].label}. What to do: {ACTIONS[best[0]].lower()}. {why}"
