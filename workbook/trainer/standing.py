"""How a set of work stands, in sentences: what is answered, what is not, and until when.

Points are not told before the work is marked.
"""

from collections.abc import Sequence
from datetime import UTC, datetime

from solver.units.show import counted
from workbook.exam.desk import listed

from .own_set import OwnSet
from .set_file import Assigned

__all__ = ["due_in_words", "standing"]


def standing(own: OwnSet, now: datetime | None = None) -> Sequence[str]:
    """The sentences, for a set whose person is known; raises NotRead as a sheet does."""
    if own.sheet is None:
        return []
    assigned = own.sheet.assigned
    count, left = assigned.work.count, own.unanswered()
    said = [_answered(count, left)]
    if left and len(left) < count:
        said.append(f"Not answered yet: {listed(left)}.")
    if unchecked := own.unchecked():
        said.append(f"Typed but not checked: {listed(unchecked)}. Press Check there.")
    return [*said, *due_in_words(assigned, now or datetime.now(UTC))]


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
