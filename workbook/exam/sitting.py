"""One sitting of an exam: what was answered, what is flagged, how much time is left.

Everything that happens is a line in a file of its own, through to the disk before the reader sees
that it was taken. So a closed browser or a killed program loses nothing: opening the file again
goes on from its last line. There are no widgets here.
"""

import contextlib
import uuid
from collections.abc import Callable
from functools import cached_property
from pathlib import Path
from time import monotonic
from typing import Any

from solver import BadCode, SolverError
from solver.fault.way import Way
from solver.sets.paper import Paper, read_paper
from workbook.log import Attempt, add_lines, now

from .lines import ANSWER, BEGIN, DID, END, FLAG, TICK, events, line
from .question import Answer, Marked, Question, attempt_of, marked, questions_of, said_of
from .time_used import TimeUsed
from .ways import Ways

__all__ = ["HandedIn", "Sitting", "begin"]

EVERY = 15  # seconds between two lines that only keep the time


class HandedIn(SolverError):
    """An answer to an exam that is handed in."""


def begin(paper: Paper, where: Path, clock: Callable[[], float] = monotonic) -> "Sitting":
    """A new sitting of a paper, in a file of its own.

    Raises:
        NotKept: it cannot be kept there, so it does not begin.
    """
    path = where / f"{paper.code}-{uuid.uuid4().hex[:12]}.jsonl"
    add_lines(path, [line(BEGIN, 0.0, code=paper.code)])
    return Sitting(path, clock)


class Sitting:
    """A sitting as its file has it. `answers`, `flagged` and `ways` are by the number of the question.

    A case of find the fault is answered once its way has ended.

    `strange` are the numbers of lines that cannot be read, as they are torn or changed.
    Time counts, in seconds, while it goes on and its page is open in a browser, which `pulse` tells.

    Raises:
        BadCode: this version cannot give the paper again, or the file holds none.
    """

    def __init__(self, path: Path, clock: Callable[[], float] = monotonic):
        self.path, self._used = path, TimeUsed(clock)
        self._paper: Paper | None = None
        self.answers: dict[int, Answer] = {}
        self.flagged: set[int] = set()
        self.ended = False
        self.recorded: tuple[str, ...] = ()
        self._kept = 0.0
        self._read_to = self._lines = 0
        self._waiting: list[str] = []
        self.strange: list[int] = []
        self._read()
        if self._paper is None:
            raise BadCode(f"The file {path.name} isn't an exam.")

    @property
    def paper(self) -> Paper:
        """What is sat; a file without one makes no sitting."""
        assert self._paper is not None
        return self._paper

    @cached_property
    def questions(self) -> tuple[Question, ...]:
        """The questions in order, numbered from 1."""
        return questions_of(self.paper)

    @cached_property
    def ways(self) -> Ways:
        """The ways through its cases of find the fault."""
        return Ways(self.paper)

    def _read(self) -> None:
        """Take in what is new in the file: another page may have the same exam open."""
        with self.path.open("rb") as file:
            file.seek(self._read_to)
            data = file.read()
        self._read_to += data.rfind(b"\n") + 1  # a line that is being written is read again
        first, self._lines = self._lines + 1, self._lines + data.count(b"\n")
        for number, event in events(data, first):
            if event is None:
                self.strange += [number] * (number <= self._lines)
                continue
            if self._paper is None:
                # Where its first line was damaged, the file's own name has the code.
                self._paper = read_paper(
                    str(event.get("code") or self.path.stem.rpartition("-")[0])
                )
            # A line that somebody spoilt by hand is as one that is torn.
            with contextlib.suppress(KeyError, TypeError, ValueError):
                self._take(**event)

    def _take(self, event: str, at: float, question: int = 0, **fields: Any) -> None:
        """What a line tells. Taking it twice does no harm; after the end nothing is taken."""
        at = float(at)
        if self.ended or (
            event in (ANSWER, FLAG, DID) and question not in range(1, self.paper.asked + 1)
        ):
            return
        if event == ANSWER:
            typed, when, seconds = fields["typed"], fields["when"], float(fields["seconds"])
            self.answers[question] = Answer(str(typed), str(when), at, seconds)
        elif event == FLAG:
            (self.flagged.add if fields["on"] else self.flagged.discard)(question)
        elif event == DID:
            after, words, when = int(fields["after"]), str(fields["words"]), str(fields["when"])
            if answer := self.ways.take(question, at, after, words, when):
                self.answers[question] = answer
        if event == END:
            self.ended, self.recorded = True, tuple(map(str, fields.get("marks", ())))
        self._used.was(at)

    def way(self, number: int) -> Way:
        """The way so far through the case that is question `number`."""
        return self.ways.way(number)

    def did(self, number: int, *words: str) -> None:
        """Do one thing more, or several at once, in the case that is question `number`.

        Raises:
            SolverError: it can't be done there; the sentence says what can.
            NotKept: nothing was done.
            HandedIn: nothing is taken any more.
        """
        self._read()
        before = self.way(number)
        before.then(*words)  # what can't be done is not written
        after = len(before.words)
        self._keep(DID, question=number, after=after, words=" ".join(words), when=now())

    @property
    def elapsed(self) -> float:
        """The seconds used so far."""
        return self._used.seconds

    @property
    def left(self) -> float:
        """The seconds left; below zero when the time is over."""
        return self.paper.minutes * 60 - self.elapsed

    @property
    def running(self) -> bool:
        """Whether the time counts."""
        return self._used.running

    def go_on(self) -> None:
        """The time counts from now."""
        if not self.ended:
            self._used.go_on()

    def pause(self) -> None:
        """The time stops, and how much was used is kept."""
        self._used.count()
        self._used.stop()
        self._keep(TICK)

    def pulse(self) -> None:
        """The page is open: the time up to now counts, and every so often it is kept.

        Raises:
            NotKept: a program that is killed now would forget some of the time, and no more.
        """
        self._used.count()
        if self.running and self.elapsed - self._kept >= EVERY:
            self._keep(TICK)

    def answer(self, number: int, text: str, seconds: float = 0.0) -> str:
        """Take an answer, in place of an earlier one; what it was read as.

        `seconds` were spent on it now; those of earlier answers to this question are added.

        Raises:
            Unreadable: the earlier answer stands; the sentence says what to type.
            NotKept: it is held, and kept with the next one.
            HandedIn: no answer is taken any more.
        """
        said = said_of(self.questions[number - 1], text)
        earlier = self.answers.get(number)
        spent = round(seconds + (earlier.seconds if earlier else 0), 1)
        self._keep(ANSWER, question=number, typed=text, seconds=spent, when=now())
        return said

    def flag(self, number: int, on: bool) -> None:
        """Mark a question to come back to, or take the mark away; raises as `answer` does."""
        self._keep(FLAG, question=number, on=on)

    def end(self) -> None:
        """Hand it in; no answer is taken after that.

        What each question was graded is kept with it, for a later version may not be able to.
        """
        marks = [mark.verdict.status if mark.verdict else "" for mark in self.marks()]
        self._keep(END, marks=marks)
        self._used.stop()

    def _keep(self, kind: str, **fields: Any) -> None:
        self._used.count()
        self._read()
        if self.ended:
            if kind in (ANSWER, FLAG, DID):
                raise HandedIn("You already turned this exam in, so its answers can't change.")
            return
        at = self._kept = round(self.elapsed, 1)
        held = [*self._waiting, line(kind, at, **fields)]
        if kind in (ANSWER, FLAG):
            self._take(kind, at, **fields)
            self._waiting = held
        add_lines(self.path, held)
        self._waiting = []
        self._read()

    def marks(self) -> list[Marked]:
        """Each question with its verdict; one without an answer is not right."""
        recorded = dict(enumerate(self.recorded, 1))
        return [
            marked(each, self.answers.get(each.number), recorded.get(each.number, ""))
            for each in self.questions
        ]

    def in_time(self, answer: Answer | None) -> bool:
        """Whether an answer came before the time was over."""
        return answer is not None and answer.at <= self.paper.minutes * 60

    def attempts(self) -> list[Attempt]:
        """The answers for the log. The same sitting gives the same ids, so none counts twice."""
        space = uuid.uuid5(uuid.NAMESPACE_URL, self.path.stem)
        keyed = ((mark, uuid.uuid5(space, str(mark.question.number)).hex) for mark in self.marks())
        made = (attempt_of(mark, key, self.paper.code) for mark, key in keyed)
        return [attempt for attempt in made if attempt]
