"""Work that is set to a class, as its file says it."""

from datetime import datetime
from typing import NamedTuple

from solver.sets.credit import Credit
from solver.sets.work_set import WorkSet

__all__ = ["Assigned"]


class Assigned(NamedTuple):
    """Work set to a class. `name` is that of its folder; `points` are for each question.

    `tries` 0 is no limit. `counts` says which try does: "best", "last" or "first". `due` is in
    UTC. `late` is the share of the score that is taken off after that, 0 to 1.
    """

    name: str
    title: str
    work: WorkSet
    points: float = 1.0
    tries: int = 0
    counts: str = "best"
    due: datetime | None = None
    late: float = 0.0
    credit: Credit = Credit()
