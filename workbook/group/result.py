"""A member's result: the lines that the log has of one set, as a file; and such files read as data."""

import re
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from solver import SolverError
from solver.units.show import counted
from workbook.log import Attempt, line_of, parse

from .set_text import MOST_NAME, ProblemSet, plain

__all__ = ["MOST_BYTES", "MOST_LINES", "NotAResult", "Result", "read_result", "result_file"]

MOST_BYTES = 2_000_000
MOST_LINES = 5_000
KIND = "application/jsonl"
MADE = "Choose a file made by “Save my result”."


class NotAResult(SolverError, ValueError):
    """A file that is no result of this set; the sentence says why, and what to choose."""


class Result(NamedTuple):
    """What one member answered, oldest first; `who` may be empty. `strange` lines were left out."""

    who: str
    attempts: Sequence[Attempt]
    strange: int = 0


def result_file(problems: ProblemSet, name: str, made: Iterable[Attempt]) -> tuple[str, bytes]:
    """The file's name, and what is in it. What was answered before a name was given has it too."""
    lines = [line_of(each._replace(who=name)) for each in made]
    safe = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")
    parts = ["wire-to-water-group", problems.mark.lower(), *[safe] * bool(safe)]
    return f"{'-'.join(parts)}.jsonl", "".join(f"{line}\n" for line in lines).encode()


def read_result(data: bytes, problems: ProblemSet) -> Result:
    """The result in a file. Only what belongs to this set is taken.

    Raises:
        NotAResult: it is too large, no result, one of another set, or of several people.
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
    names = {each.casefold(): each for each in (plain(a.who, MOST_NAME) for a in ours) if each}
    if len(names) > 1:
        raise NotAResult(f"it has answers of {counted(len(names), 'name')}. {MADE}")
    return Result(next(iter(names.values()), ""), ours, len(strange))
