"""Cases of find the fault in a set of work or an exam: how many, at which level, and which.

In the code of the set or the exam they are one piece, such as F112: F, the revision of cases, the level,
and how many. A code without the piece has none, as all codes had before there were any.
"""

import re
from dataclasses import dataclass

from solver.engine.code import DIGIT, folded
from solver.engine.draw import Draw
from solver.errors import SolverError
from solver.fault.case import LEVELS, REVISION, FaultCase, fault_case

__all__ = ["IN_CODE", "MOST_FAULTS", "FaultPart", "fault_part", "part_in_code"]

MOST_FAULTS = 9  # cases; each takes a person from ten minutes to an hour
IN_CODE = rf"(?:-(?P<faults>F{DIGIT}{{3}}))?"
SEEDS = 100_000  # numbers that cases are drawn from
TRIED = 20  # draws among which a case has another fault than those before it


@dataclass(frozen=True, slots=True)
class FaultPart:
    """So many cases, all at one level."""

    count: int
    level: int

    @property
    def in_code(self) -> str:
        """The piece of a code."""
        return f"F{REVISION}{self.level}{self.count}"

    def cases(self, whose: str, units: str) -> tuple[FaultCase, ...]:
        """The cases that `whose` gives: the text of a code, and of a person where each has their own."""
        found: list[FaultCase] = []
        for number in range(1, self.count + 1):
            chance, before = Draw(f"{whose} fault {number}"), {case.fault for case in found}
            for _ in range(TRIED):
                case = fault_case(self.level, units, int(chance.between(0, SEEDS)))
                if case.fault not in before:
                    break
            found.append(case)
        return tuple(found)


def fault_part(count: int, level: int) -> FaultPart | None:
    """The part with so many cases at a level; None for no cases.

    Raises:
        SolverError: there can be none like it; the sentence says what to choose.
    """
    if not 0 <= count <= MOST_FAULTS:
        raise SolverError(f"Choose 0 to {MOST_FAULTS} cases of find the fault; you chose {count}.")
    if level not in LEVELS:
        raise SolverError(f"Cases of find the fault have level 1, 2 or 3; you chose {level}.")
    return FaultPart(count, level) if count else None


def part_in_code(match: re.Match[str]) -> FaultPart | None:
    """The part in a code that was read with IN_CODE in its shape.

    Raises:
        SolverError: this version has no such cases.
    """
    if not (text := match["faults"]):
        return None
    revision, level, count = map(int, folded(text[1:]))
    if revision != REVISION or not count:
        raise SolverError(
            "Its cases of find the fault are of another version of the workbook. Use that version for it."
        )
    return fault_part(count, level)
