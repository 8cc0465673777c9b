"""Guided practice: the next problem is what the log says should come next, and why.

There are no widgets here; guided_card.py shows what this holds.
"""

import secrets
from collections.abc import Callable, Iterable, Sequence
from datetime import UTC, datetime

from solver import Case, Family

from .keeper import attempt_of
from .log import Attempt
from .mixed import Mixed
from .practice import Try
from .study import Study, Suggestion

__all__ = ["Guided"]

LOOKED = 200  # draws among which one has the mistake that is to be told apart


def _now() -> datetime:
    return datetime.now(UTC)


class Guided(Mixed):
    """Problems in the order in which a learner needs them, from the chapters that are wanted.

    `past` are the attempts of the log, oldest first. `now` gives the time, in UTC.
    """

    def __init__(
        self,
        families: Sequence[Family],
        pick: Callable[[int], int] = secrets.randbelow,
        on_try: Callable[[Try], str | None] | None = None,
        past: Iterable[Attempt] = (),
        units: str = "us",
        now: Callable[[], datetime] = _now,
    ):
        past = list(past)
        self.study, self.now = Study(past), now
        super().__init__(families, pick, on_try, past, units)

    @property
    def next(self) -> list[Suggestion]:
        """What to do next, most pressing first."""
        wanted = [f for f in self.families if f.chapter in self.wanted.chapters]
        return self.study.next(wanted, self.now())

    def _drawn(self, before: Case | None = None) -> Case:
        order = self.next
        # Another kind next, so that the last problem does not show the way.
        others = [s for s in order if before is None or s.family != before.family]
        self.chosen = (others or order)[0]
        self.units, self.level = self.wanted.units, self.chosen.level
        return self._telling_apart(self._fresh(self.chosen.family, before))

    @property
    def why(self) -> str:
        """Why the present problem is shown, in one sentence."""
        if self.case.family != self.chosen.family:
            return "You opened it by its code."
        return self.chosen.why

    def _telling_apart(self, case: Case) -> Case:
        """A problem in which the mistake that recurs gives an answer of its own."""
        for _ in range(LOOKED):
            if not self.chosen.mistake or any(m.id == self.chosen.mistake for m in case.mistakes):
                break
            case = self._fresh(self.chosen.family, case)
        return case

    def _heard(self, told: Try) -> str | None:
        self.study.add(attempt_of(told))
        return super()._heard(told)
