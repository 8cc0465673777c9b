"""The set that is open on a page, and the name its answers are kept under.

All parts of the page share one. There are no widgets here; `parts` are what shows it, and each has
a `redraw`.
"""

from collections.abc import Callable, Sequence
from contextlib import suppress
from functools import cache
from hashlib import sha256
from pathlib import Path
from time import monotonic
from typing import Protocol

from solver.fault.way import Way
from workbook.fault import attempt_of_way
from workbook.log import SHOWN, Attempt, Log, NotKept, NotRead
from workbook.practice import Try, keep, own_log
from workbook.ui.static_site import words_of_address

from .members import Result
from .set_link import WORD
from .set_text import MOST_NAME, BadSet, ProblemSet, Question, plain, questions_of, read_set

__all__ = ["OwnGroup", "own_group"]


class Part(Protocol):
    """Something that shows the set as it stands."""

    def redraw(self) -> None:
        """Show it as it is now."""


class OwnGroup:
    """The set open here, if there is one; `name` may be empty, as for somebody alone.

    `results` are those brought in for it, and `one_person` the names under which they are all one
    person's (see `members.py`). They stay while Python runs, whatever page is shown.
    """

    def __init__(self, kept: Log, clock: Callable[[], float] = monotonic):
        self.kept, self.clock = kept, clock
        self.problems: ProblemSet | None = None
        self.questions: Sequence[Question] = ()
        self.results: list[Result] = []
        self.one_person: set[str] = set()
        self.name = ""
        self.parts: dict[str, Part] = {}
        self._from_address, self._since = "", clock()

    def open(self, problems: ProblemSet) -> None:
        """Work at this set, under the name that was used for it last.

        Results that were brought in belong to their set, whatever its title; they go with it.
        """
        if self.problems and problems.key != self.problems.key:
            self.results = []
            self.one_person.clear()
        self.problems, self.questions = problems, questions_of(problems)
        self.name = next((each.who for each in reversed(self._all()) if each.who), self.name)
        self._since = self.clock()
        self._changed()

    def open_address(self) -> Sequence[str]:
        """Open the set in the address of the page, unless that was done; what is wrong with it."""
        text = (words_of_address() or {}).get(WORD, "")
        if not text or text == self._from_address:
            return ()
        self._from_address = text
        try:
            self.open(read_set(text))
        except BadSet as refusal:
            return refusal.sentences
        return ()

    def call(self, text: str) -> None:
        """Keep answers under this name from now on, and show what is kept under it."""
        self.name = plain(text, MOST_NAME)
        self._changed()

    def _changed(self) -> None:
        for part in list(self.parts.values()):
            part.redraw()

    def _all(self) -> Sequence[Attempt]:
        """What the log has of this set, under any name, oldest first."""
        if self.problems is None:
            return []
        with suppress(NotRead):
            self.kept.read()
        key = self.problems.key
        return [each for each in self.kept.attempts if each.of == key]

    def made(self) -> Sequence[Attempt]:
        """What the log has of this set under this name; what has no name counts for any."""
        return [each for each in self._all() if each.who in ("", self.name)]

    def others(self) -> Sequence[str]:
        """Other names that the log has answers of this set under."""
        names = dict.fromkeys(each.who for each in self._all())
        return [name for name in names if name not in ("", self.name)]

    def unanswered(self) -> Sequence[int]:
        """The numbers of the questions without an answer."""
        done = {each.code for each in self.made() if each.status != SHOWN}
        return [each.number for each in self.questions if each.case and each.code not in done]

    def keep(self, told: Try) -> str:
        """Keep a try in the log; a sentence where that is not possible.

        All questions show at once, so the time for one begins at the answer before it.
        """
        now = self.clock()
        told = told._replace(seconds=min(told.seconds, now - self._since))
        self._since = now
        return keep(told, self.kept, self.problems.key if self.problems else "", self.name)

    def keep_way(self, way: Way) -> str:
        """Keep a way through a case as it stands in the log; a sentence where that is not possible."""
        key = self.problems.key if self.problems else ""
        try:
            self.kept.keep(attempt_of_way(way, key, self.name))
        except NotKept as fault:
            return str(fault)
        return ""

    def stories(self) -> Sequence[Path]:
        """Where cases of this set are kept under this name, and after it where without one."""
        key = self.problems.key if self.problems else ""
        names = dict.fromkeys((self.name, ""))
        return [
            self.kept.path.parent
            / "faults"
            / "group"
            / key
            / (sha256(name.encode()).hexdigest()[:12] if name else "none")
            for name in names
        ]


@cache
def own_group() -> OwnGroup:
    """The set open here; one for all parts of a page."""
    return OwnGroup(own_log())
