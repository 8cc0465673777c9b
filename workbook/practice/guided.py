"""Guided practice: the next problem is what the log says should come next, and why.

There are no widgets here; wanted.py shows what this holds.
"""

import secrets
from collections.abc import Callable, Sequence
from datetime import UTC, datetime
from functools import partial

from solver import Case, Family
from workbook.log import Attempt
from workbook.study import Study, Suggestion

from .mixed import Mixed
from .practice import Practice, Try

__all__ = ["Focused", "Guided", "Missed"]

LOOKED = 200  # draws among which one has the mistake that is to be told apart


def _now() -> datetime:
    return datetime.now(UTC)


class Guided(Mixed):
    """Problems in the order in which a learner needs them, from the chapters that are wanted.

    `past` gives the attempts of the log, oldest first; it is asked anew each time, as other cards
    and pages add to the log. `now` gives the time, in UTC.
    """

    def __init__(
        self,
        families: Sequence[Family],
        pick: Callable[[int], int] = secrets.randbelow,
        on_try: Callable[[Try], str | None] | None = None,
        past: Callable[[], Sequence[Attempt]] = tuple,
        units: str = "us",
        now: Callable[[], datetime] = _now,
    ):
        self.past, self.study, self.now = past, Study(), now
        super().__init__(families, pick, on_try, units=units)

    @property
    def next(self) -> list[Suggestion]:
        """What to do next, most pressing first."""
        self.study.follow(self.past())
        wanted = [f for f in self.families if f.chapter in self.wanted.chapters]
        return self.study.next(wanted, self.now())

    def _drawn(self, before: Case | None = None) -> Case:
        order = self.next
        # Another kind next, so that the last problem does not show the way.
        others = [s for s in order if before is None or s.family != before.family]
        self.chosen = (others or order)[0]
        self.units, self.level = self.wanted.units, self.chosen.level
        fresh = partial(self._fresh, self.chosen.family)
        return _telling_apart(fresh, before, self.chosen.mistake)

    @property
    def why(self) -> str:
        """Why the present problem is shown, in one sentence."""
        if asked := super().why:
            return asked
        if self.case.family != self.chosen.family:
            return "You opened it by its code."
        return self.chosen.why


class Focused(Practice):
    """Problems of one kind at one level, and such that a mistake gives an answer of its own."""

    def __init__(
        self,
        family: Family,
        level: int,
        units: str,
        mistake: str = "",
        on_try: Callable[[Try], str | None] | None = None,
        pick: Callable[[int], int] = secrets.randbelow,
    ):
        self._mistake, self._wanted = mistake, (level, units)
        super().__init__([family], pick, on_try)

    def _drawn(self, before: Case | None = None) -> Case:
        if before is None:
            self.level, self.units = self._wanted
        return _telling_apart(partial(self._fresh, self.families[0]), before, self._mistake)


class Missed(Practice):
    """Problems of the kinds that went wrong somewhere, each in turn, as `Focused` has one of them.

    A kind, level or units that are chosen by hand hold from then on.
    """

    def __init__(
        self,
        missed: Sequence[Suggestion],
        units: str,
        on_try: Callable[[Try], str | None] | None = None,
        pick: Callable[[int], int] = secrets.randbelow,
    ):
        self._missed, self._units, self._turn = missed, units, -1
        self._by_hand = False
        families = dict.fromkeys(one.family for one in missed)
        super().__init__(list(families), pick, on_try)

    def choose(self, *, kind: str = "", level: int = 0, units: str = "") -> None:
        """Another kind, level or units, and a problem that fits; turns end."""
        self._by_hand = True
        super().choose(kind=kind, level=level, units=units)

    def _drawn(self, before: Case | None = None) -> Case:
        if self._by_hand:
            return super()._drawn(before)
        self._turn = (self._turn + 1) % len(self._missed)
        self.chosen = self._missed[self._turn]
        family = self.chosen.family
        self.kind, self.level, self.units = family.name, self.chosen.level, self._units
        return _telling_apart(partial(self._fresh, family), before, self.chosen.mistake)

    @property
    def why(self) -> str:
        """Why the present problem is shown, in one sentence; empty for one that was chosen."""
        of_turn = (self.chosen.family, self.chosen.level) == (self.case.family, self.case.level)
        return "" if self._by_hand or not of_turn else self.chosen.why


def _telling_apart(fresh: Callable[[Case | None], Case], before: Case | None, mistake: str) -> Case:
    """A problem in which a mistake that recurs gives an answer of its own, if there is one."""
    case = fresh(before)
    for _ in range(LOOKED):
        if not mistake or any(one.id == mistake for one in case.mistakes):
            break
        case = fresh(case)
    return case
