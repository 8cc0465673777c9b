"""How work on a set stands, in sentences; points are not told before it is marked."""

from collections.abc import Sequence
from datetime import UTC, datetime
from functools import lru_cache
from pathlib import Path

from solver.units.show import counted
from workbook.trainer.sets.set_file import Assigned
from workbook.ui.changed import Stamp, stamp_of
from workbook.ui.pieces import listed

from .answer_sheet import AnswerSheet
from .own_set import OwnSet
from .timing import time_end

__all__ = ["due_in_words", "set_in", "standing"]

MOST_SETS = 50  # that are remembered


def set_in(folder: Path) -> OwnSet:
    """The set of a folder that another page tells of; read again once a file in it has changed."""
    return _as_stamped(folder, tuple(stamp_of(path) for path in sorted(folder.iterdir())))


@lru_cache(maxsize=MOST_SETS)
def _as_stamped(folder: Path, stamps: tuple[Stamp, ...]) -> OwnSet:
    return OwnSet(folder)


def standing(own: OwnSet, now: datetime | None = None) -> Sequence[str]:
    """The sentences, for a set whose person is known; times are told in the time of this computer.

    Raises:
        NotRead: the sheet is there and cannot be read; the sentence says why.
    """
    if own.sheet is None:
        return []
    assigned = own.sheet.assigned
    count, left = assigned.work.asked, own.unanswered()
    said = [_answered(count, left)]
    if left and len(left) < count:
        said.append(f"Not answered yet: {listed(left)}.")
    if unchecked := own.unchecked():
        said.append(f"Typed but not checked: {listed(unchecked)}. Press Check there.")
    now = now or datetime.now(UTC)
    return [*said, *_time_in_words(own.sheet, now), *due_in_words(assigned, now)]


def _time_in_words(sheet: AnswerSheet, now: datetime) -> Sequence[str]:
    """When the time of a timed set ends, for whoever is far from its clock or has hidden it."""
    opened = sheet.opened() if sheet.assigned.minutes else None
    if opened is None:
        return []
    end = time_end(sheet.assigned, opened)
    return [f"Your time {'ended' if end < now else 'ends'} at {end.astimezone():%H:%M}."]


def _answered(count: int, left: Sequence[int]) -> str:
    if not left:
        return "You have answered every question."
    return f"You have answered {count - len(left)} of {counted(count, 'question')}."


def due_in_words(assigned: Assigned, now: datetime) -> Sequence[str]:
    """Until when the work is wanted, in the time of this computer, and what being late costs."""
    if assigned.due is None:
        return []
    due = assigned.due.astimezone()
    said = f"It is due {due:%A}, {due:%B} {due.day}, {due.year}, at {due:%H:%M} {due:%Z}."
    if now <= assigned.due:
        return [said]
    share = f"{assigned.late:.0%} of the score is" if assigned.late else "Nothing is"
    return [said, f"That time has passed. {share} taken off work turned in now."]
