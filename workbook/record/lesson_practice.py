"""Practice with what a record knows: problems with its own numbers, or fresh ones like them.

There are no widgets here; lesson_card.py shows what this holds.
"""

import secrets
from collections.abc import Callable

from solver import Case, case_from_code
from solver.own.record import Exercise, Lesson, like
from workbook.practice import ENOUGH, MIXED, SEEDS, Practice, Try, alike

__all__ = ["LessonPractice"]

ONE_ALONE = "These readings make just this one problem. Fresh numbers make more."
DRAWN = 12  # of which the nearest in size is taken


class LessonPractice(Practice):
    """The exercises of a lesson, one after another, those on what presses most first.

    `own` has problems with the record's own numbers, which have no code; otherwise they are fresh.
    """

    def __init__(
        self,
        lesson: Lesson,
        own: bool,
        pick: Callable[[int], int] = secrets.randbelow,
        on_try: Callable[[Try], None] | None = None,
    ):
        self.lesson, self.own, self._at = lesson, own, -1
        self.exercises = lesson.own if own else lesson.exercises
        super().__init__([one.family for one in self.exercises], pick, on_try)
        self.kind = MIXED

    @property
    def kinds(self) -> list[tuple[str, str]]:
        """Every exercise to choose, after all of them in a row."""
        return [
            ("All of them, most urgent first", MIXED),
            *((e.title, _key(e)) for e in self.exercises),
        ]

    @property
    def stuck(self) -> str:
        """Its own numbers may make one problem alone, which is there already."""
        return ONE_ALONE if self.own and len(self.exercises) == 1 else ""

    @property
    def repeats(self) -> bool:
        """A record's own numbers make no second problem of one kind."""
        return not self.own

    @property
    def called(self) -> str:
        """Its title, where it has no code."""
        return f"“{self.case.family.title}”" if self.own else super().called

    @property
    def levels(self) -> range:
        """The one level of the exercise shown: it goes with the kind here."""
        return range(self.level, self.level + 1)

    def choose(self, *, kind: str = "", level: int = 0, units: str = "") -> None:
        """Another exercise, or all in a row. Level and units are those of the record."""
        self.kind = kind or self.kind
        self.new()

    def open(self, code: str) -> None:
        """Show the problem of a code; what is chosen stays.

        Raises:
            BadCode: it is no code of a problem; all stays as it is.
        """
        case = case_from_code(code)
        if case != self.case:
            self._take(case)
            self._show(case)

    def _drawn(self, before: Case | None = None) -> Case:
        wanted = [at for at, one in enumerate(self.exercises) if self.kind in (MIXED, _key(one))]
        wanted = wanted or list(range(len(self.exercises)))
        self._at = next((at for at in wanted if at > self._at), wanted[0])
        one = self.exercises[self._at]
        case = (one.case if self.own else None) or self._like(one, before)
        self._take(case)
        return case

    def _like(self, one: Exercise, before: Case | None) -> Case:
        """Numbers of chance near those of the record, but not those of the problem before."""
        for _ in range(ENOUGH):
            case = like(one, self.lesson.units, [self.pick(SEEDS) for _ in range(DRAWN)])
            if before is None or not alike(case, before):
                break
        return case

    def _take(self, case: Case) -> None:
        self.level, self.units = case.level, case.units


def _key(one: Exercise) -> str:
    return f"{one.family.name} {one.level}"
