"""Sittings that were begun before: found in their folder, and how each stands in words."""

from collections.abc import Callable
from functools import lru_cache
from pathlib import Path
from time import monotonic

from solver import SolverError
from workbook.ui.changed import Stamp, stamp_of
from workbook.ui.time_left import duration

from .lines import sittings
from .sitting import Sitting

__all__ = ["begun_in", "found_in", "stands"]

LOOKED_AT = 40  # files that are read


def found_in(where: Path, clock: Callable[[], float] = monotonic) -> tuple[list[Sitting], int]:
    """The newest sittings in a folder, and how many files of it cannot be opened here."""
    found, strange = [], 0
    for path in sittings(where)[:LOOKED_AT]:
        try:
            found.append(Sitting(path, clock))
        except (SolverError, OSError):
            strange += 1
    return found, strange


def begun_in(where: Path) -> list[str]:
    """How each of the newest sittings that has not ended stands; a file is read once for each change of it."""
    told = (_begun(stamp_of(path)) for path in sittings(where)[:LOOKED_AT])
    return [said for said in told if said]


@lru_cache(maxsize=2 * LOOKED_AT)
def _begun(stamp: Stamp) -> str:
    """Nothing for one that has ended, or that cannot be opened here."""
    try:
        sitting = Sitting(stamp.path)
    except (SolverError, OSError):
        return ""
    return "" if sitting.ended else stands(sitting)


def stands(sitting: Sitting) -> str:
    """How far a sitting is: what is answered, and the time left."""
    left = max(sitting.left, 0)
    time = f"{duration(left)} left" if left else "time is up"
    return f"{sitting.paper.asked} questions, {len(sitting.answers)} answered, {time}"
