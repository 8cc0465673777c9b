"""The lines of a sheet, each where it belongs, and what is odd about them."""

from collections.abc import Iterable
from typing import NamedTuple

from workbook.log import Attempt, Strange, merged
from workbook.trainer.learner.answer_sheet import Sheet
from workbook.trainer.learner.timing import is_opening

from .odd import plain, quoted

__all__ = ["Sorted", "sorted_lines"]

TWICE = "Two lines with the same id say different things; one of them counted."


class Sorted(NamedTuple):
    """The lines that count, by problem, and what is odd: at a problem, or at the whole sheet."""

    lines: dict[str, list[Attempt]]
    odd: dict[str, list[str]]
    odd_whole: list[str]
    opening: list[Attempt]


def sorted_lines(sheet: Sheet, codes: Iterable[str], of: str, person: str) -> Sorted:
    """Every line where it belongs; those of one id count once."""
    found = Sorted({code: [] for code in codes}, {}, [], [])
    lines = merged(sheet.lines)
    for line in lines:
        if why := _why_not(line, of, person):
            _odd(found, line.code, why)
        elif is_opening(line):
            found.opening.append(line)
        elif line.code in found.lines:
            found.lines[line.code].append(line)
        else:
            found.odd_whole.append(
                f"The problem {quoted(line.code)} was answered, but this person didn't get that problem."
            )
    if len(lines) < len(sheet.lines):
        _tell_of_twins(found, sheet.lines, lines)
    _tell_of_strange(found, sheet.strange)
    return found


def _tell_of_twins(found: Sorted, lines: Iterable[Attempt], counted: Iterable[Attempt]) -> None:
    """A line that is there twice is one; two of one id that differ are not."""
    by_id = {line.id: line for line in counted}
    for line in lines:
        if line != by_id[line.id]:
            _odd(found, line.code, TWICE)


def _tell_of_strange(found: Sorted, strange: Iterable[Strange]) -> None:
    """A torn line may still show which problem it is of."""
    for number, why, text in strange:
        code = next((code for code in found.lines if code.encode() in text), "")
        _odd(found, code, f"Line {number} of the sheet was not counted: {plain(why, 100)}.")


def _odd(found: Sorted, code: str, why: str) -> None:
    if code in found.lines:
        found.odd.setdefault(code, []).append(why)
    else:
        found.odd_whole.append(why)


def _why_not(line: Attempt, of: str, person: str) -> str:
    """Why a line is not of this set or not of this person; empty where it is."""
    if line.of != of:
        other = f"the set {quoted(line.of)}" if line.of else "no set"
        return f"Answers to {other} were not counted; this set is {of}."
    if line.who != person:
        return f"Answers of {quoted(line.who)} were not counted; this is the work of {person}."
    return ""
