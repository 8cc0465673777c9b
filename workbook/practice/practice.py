"""A learner at one problem after another: what is asked, what was tried, what is shown.

There are no widgets here; card.py shows what this holds.
"""

import secrets
from collections.abc import Callable, Sequence
from time import monotonic
from typing import NamedTuple

from solver import Case, Family, Verdict, case_from_code, draw, grade
from solver.engine.telling import Hint, hints_of

__all__ = ["MIXED", "Practice", "Reply", "Try", "alike"]

MIXED = "mixed"
SEEDS = 100_000  # five figures at most keep a code short enough to read out
AGAIN = "You asked for one more like the last."
ENOUGH = 50  # draws in which another problem turns up, even of a few questions in words


class Try(NamedTuple):
    """One counted try: the problem, what was typed, its verdict, and the help seen before it.

    A worked solution opened before the right answer was there is told too: it has no verdict, and
    `number` is how many tries came before it. `seconds` is the time since the problem was shown.
    """

    case: Case
    text: str
    verdict: Verdict | None
    number: int
    hints: int
    seconds: float


class Reply(NamedTuple):
    """The verdict on an answer, whether it was counted, in words too, and what went wrong then."""

    verdict: Verdict
    counted: bool
    note: str
    fault: str = ""


def alike(case: Case, other: Case) -> bool:
    """Whether two problems ask the same: the same numbers, or the same choices in any order."""
    return (case.family, case.given, set(case.choices)) == (
        other.family,
        other.given,
        set(other.choices),
    )


class Practice:
    """Problems of some families, one at a time.

    `pick(n)` gives a whole number from 0 to n - 1 by chance. `on_try` hears of each counted try,
    and may answer with a sentence for the reader, where the try could not be kept.
    """

    def __init__(
        self,
        families: Sequence[Family],
        pick: Callable[[int], int] = secrets.randbelow,
        on_try: Callable[[Try], str | None] | None = None,
        clock: Callable[[], float] = monotonic,
    ):
        self.families = tuple(families)
        self.opened: tuple[Family, ...] = ()
        self.pick, self.on_try, self.clock = pick, on_try, clock
        self.kind, self.level, self.units = self.families[0].name, 1, "us"
        self._show(self._drawn())

    @property
    def kinds(self) -> list[tuple[str, str]]:
        """Every kind of problem to choose from: what it is called, and its name."""
        mixed = [("All kinds, mixed", MIXED)] if len(self.families) > 1 else []
        return [(f.title, f.name) for f in (*self.families, *self.opened)] + mixed

    @property
    def levels(self) -> range:
        """The levels of the kind chosen."""
        return range(1, max(len(family.levels) for family in self._chosen()) + 1)

    @property
    def hinted(self) -> tuple[Hint, ...]:
        """The hints given so far."""
        return hints_of(self.case)[: self.hints]

    @property
    def stuck(self) -> str:
        """What keeps the next problem from coming, in a sentence; empty where nothing does."""
        return ""

    @property
    def repeats(self) -> bool:
        """Whether there is one more like the present problem."""
        return True

    @property
    def called(self) -> str:
        """How a reader finds the present problem again: its code."""
        return self.case.code

    @property
    def why(self) -> str:
        """Why the present problem is shown, in a sentence; empty where it was only chosen."""
        return AGAIN if self._repeated else ""

    def _chosen(self) -> list[Family]:
        if self.kind == MIXED:
            return list(self.families)
        return [f for f in (*self.families, *self.opened) if f.name == self.kind]

    def _drawn(self, before: Case | None = None) -> Case:
        """A problem as chosen, of another family than the one before where there is one."""
        able = [family for family in self._chosen() if len(family.levels) >= self.level]
        other = [family for family in able if before and family != before.family] or able
        return self._fresh(other[self.pick(len(other))], before)

    def _fresh(self, family: Family, before: Case | None) -> Case:
        """A problem of this family that does not ask again what the one before asked."""
        seed = self.pick(SEEDS)
        for step in range(ENOUGH):
            case = draw(family, (seed + step) % SEEDS, self.units, self.level)
            if before is None or not alike(case, before):
                break
        return case

    def _show(self, case: Case) -> None:
        self.case = case
        self.tries = self.hints = 0
        self.solved = self.solution = False
        self._repeated = self.peeked = False
        self._answers: set[float | None] = set()
        self._since = self.clock()

    def new(self) -> None:
        """Another problem of the same kind, level and units."""
        self._show(self._drawn(self.case))

    def again(self) -> None:
        """One more like the present problem: the same kind, level and units, other numbers."""
        self.level, self.units = self.case.level, self.case.units
        self._show(self._fresh(self.case.family, self.case))
        self._repeated = True

    def choose(self, *, kind: str = "", level: int = 0, units: str = "") -> None:
        """Another kind, level or units, and a problem that fits. The level stays where it can."""
        self.kind = kind or self.kind
        self.level = min(level or self.level, self.levels[-1])
        self.units = units or self.units
        self.new()

    def open(self, code: str) -> None:
        """Show the problem of a code.

        Raises:
            BadCode: it has none; the present problem stays as it is.
        """
        case = case_from_code(code)
        if case == self.case:
            return
        ours = case.family in self.families
        if not ours and case.family not in self.opened:
            self.opened = (*self.opened, case.family)
        if self.kind != MIXED or not ours:
            self.kind = case.family.name
        self.level, self.units = case.level, case.units
        self._show(case)

    def answer(self, text: str) -> Reply:
        """Grade an answer. What cannot be read, and what was answered before, does not count."""
        verdict = grade(self.case, text)
        note = self._why_uncounted(verdict)
        if note:
            return Reply(verdict, False, note)
        self._answers.add(verdict.value)
        self.tries += 1
        self.solved = verdict.status == "right"
        fault = self._tell(text, verdict)
        return Reply(verdict, True, f"Try {self.tries}.", fault)

    def _tell(self, text: str, verdict: Verdict | None) -> str:
        if not self.on_try:
            return ""
        seconds = self.clock() - self._since
        hints = len(hints_of(self.case)) if self.peeked else self.hints
        return self.on_try(Try(self.case, text, verdict, self.tries, hints, seconds)) or ""

    def _why_uncounted(self, verdict: Verdict) -> str:
        if not verdict.counts:
            return "This doesn't count as a try."
        if verdict.value in self._answers:
            return "You already gave this answer, so it doesn't count again."
        if self.solved:
            return "You already have the right answer, so this one doesn't count."
        if self.solution:
            return "You have seen the worked solution, so this one doesn't count."
        return ""

    def hint(self) -> bool:
        """Give one more hint; False when all are given already."""
        if self.hints == len(hints_of(self.case)):
            return False
        self.hints += 1
        return True

    def peek(self) -> None:
        """The first steps of the worked solution are shown, which tell as much as all hints."""
        self.peeked = True

    def reveal(self) -> str:
        """The whole worked solution is shown. A sentence, where that could not be kept."""
        if self.solved or self.solution:
            return ""
        self.solution = True
        return self._tell("", None)
