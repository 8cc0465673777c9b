"""Where a reader is in a sitting: at which question, and what was typed that cannot be read.

There are no widgets here; sit.py shows what this holds.
"""

from typing import NamedTuple

from solver import Unreadable
from workbook.log import NotKept
from workbook.ui.pieces import listed

from .question import Question, said_of
from .sitting import HandedIn, Sitting

__all__ = ["Desk", "Told"]


class Told(NamedTuple):
    """What became of something: a state for controls.say, and sentences."""

    state: str
    sentences: tuple[str, ...] = ()

    @property
    def taken(self) -> bool:
        """Whether all is well, so that the next question may come."""
        return self.state == "note"


class Desk:
    """One question at a time. `unread`, by number, are texts that do not count as answers."""

    def __init__(self, sitting: Sitting):
        self.sitting = sitting
        self.count = sitting.paper.asked
        self.unread: dict[int, str] = {}
        self.go(next(iter(self._empty()), 1))

    def _empty(self) -> list[int]:
        """The numbers of the questions that can be answered and are not."""
        asked, answers = self.sitting.questions, self.sitting.answers
        return [each.number for each in asked if not each.why and each.number not in answers]

    @property
    def asked(self) -> Question:
        """The question the reader is at."""
        return self.sitting.questions[self.number - 1]

    @property
    def text(self) -> str:
        """What stands in the answer box of this question."""
        kept = self.sitting.answers.get(self.number)
        return self.unread.get(self.number) or (kept.typed if kept else "")

    @property
    def kept_as(self) -> str:
        """What the answer to this question was read as; empty where there is none."""
        kept = self.sitting.answers.get(self.number)
        if kept and self.asked.why:
            return f"“{kept.typed}”"
        return said_of(self.asked, kept.typed) if kept else ""

    def opened(self) -> Told:
        """What is to be said when it is opened: whether all of its file could be read."""
        if not self.sitting.strange:
            return Told("note")
        lines = "lines" if len(self.sitting.strange) > 1 else "line"
        where = f"This exam's file has damage in {lines} {listed(self.sitting.strange)}."
        return Told("notice", (where, "Check that the answers you gave are all here."))

    def go(self, number: int) -> str:
        """To a question; a sentence where there is none of that number."""
        self.number = min(max(number, 1), self.count)
        self._since = self.sitting.elapsed
        if number == self.number:
            return ""
        return f"This is the {'first' if number < 1 else 'last'} question."

    def take(self, text: str, leaving: bool = False) -> Told:
        """Take what is in the box as the answer, unless nothing is new in it.

        A box that is left empty is no fault; where Enter sends it, it is.
        """
        kept = self.sitting.answers.get(self.number)
        blank = not text.strip()
        if (kept and text == kept.typed) or (blank and (kept or leaving)):
            self.unread.pop(self.number, None)
            return Told("note")
        named = f"Question {self.number}"
        try:
            read = self.sitting.answer(self.number, text, self.sitting.elapsed - self._since)
        except Unreadable as refusal:
            if not blank:
                self.unread[self.number] = text
            what = "keeps the answer it had" if kept else "has no answer yet"
            return Told("unreadable", (f"{named} {what}.", str(refusal)))
        except (NotKept, HandedIn) as fault:
            return Told("fault", (str(fault),))
        finally:
            self._since = self.sitting.elapsed
        self.unread.pop(self.number, None)
        return Told("note", (f"{named} is saved: {read}.",))

    def flag(self, on: bool) -> Told:
        """Mark this question to come back to, or not."""
        try:
            self.sitting.flag(self.number, on)
        except (NotKept, HandedIn) as fault:
            return Told("fault", (str(fault),))
        return Told("note")

    def state(self, number: int) -> str:
        """How a question stands, as a mark and a word."""
        if self.sitting.questions[number - 1].why:
            return "– left out"
        if number in self.unread:
            return "? not read"
        if number in self.sitting.answers:
            return "✓ answered"
        return "… begun" if number in self.sitting.ways else "– empty"

    def unfinished(self) -> tuple[str, ...]:
        """What there is to do yet, in sentences."""
        sitting = self.sitting
        kinds = (
            ("question has", "questions have", "no answer", self._empty()),
            ("question is", "questions are", "marked to come back to", sorted(sitting.flagged)),
            ("question has", "questions have", "text that can't be read", sorted(self.unread)),
        )
        return tuple(
            f"{len(numbers)} {one if len(numbers) == 1 else many} {what}: {listed(numbers)}."
            for one, many, what, numbers in kinds
            if numbers
        )
