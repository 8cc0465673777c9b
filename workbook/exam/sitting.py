"""One sitting of an exam: what was answered, what is flagged, how much time is left.

Everything that happens is a line in a file of its own, through to the disk before the reader sees
that it was taken. So a closed browser or a killed program loses nothing: opening the file again
goes on from its last line. There are no widgets here.
"""

import json
import uuid
from collections.abc import Callable, Iterator
from functools import cached_property
from pathlib import Path
from time import monotonic

from solver import BadCode
from solver.paper import Paper, read_paper
from workbook.log import Attempt, add_lines, default_path, now

from .question import Answer, Marked, Question, attempt_of, marked, questions_of, said_of

__all__ = ["Sitting", "begin", "folder", "sittings"]

VERSION = 1
BEGIN, ANSWER, FLAG, TICK, END = "begin", "answer", "flag", "tick", "end"


def folder() -> Path:
    """Where sittings are kept: beside the log."""
    return default_path().parent / "exams"


def begin(paper: Paper, where: Path, clock: Callable[[], float] = monotonic) -> "Sitting":
    """A new sitting of a paper, in a file of its own.

    Raises:
        NotKept: it cannot be kept there, so it does not begin.
    """
    path = where / f"{paper.code}-{uuid.uuid4().hex[:12]}.jsonl"
    add_lines(path, [json.dumps({"v": VERSION, "event": BEGIN, "code": paper.code, "at": 0.0})])
    return Sitting(path, clock)


def sittings(where: Path) -> list[Path]:
    """The files of all sittings, the newest first."""
    return sorted(where.glob("EXAM-*.jsonl"), key=lambda path: path.stat().st_mtime, reverse=True)


class Sitting:
    """A sitting as its file has it. `answers` and `flagged` are by the number of the question.

    Time counts while it is open and not paused: `elapsed` is in seconds.

    Raises:
        BadCode: this edition cannot give the paper again, or the file holds none.
    """

    def __init__(self, path: Path, clock: Callable[[], float] = monotonic):
        self.path, self._clock = path, clock
        self.answers: dict[int, Answer] = {}
        self.flagged: set[int] = set()
        self.ended = False
        self._before, self._since = 0.0, None
        self._waiting: list[str] = []
        code = ""
        for event in _events(path):
            code = code or event.get("code", "")
            self._take(event)
        if not code:
            raise BadCode(f"The file {path.name} does not hold an exam.")
        self.paper = read_paper(code)

    @cached_property
    def questions(self) -> tuple[Question, ...]:
        """The questions in order, numbered from 1."""
        return questions_of(self.paper)

    def _take(self, event: dict) -> None:
        self._before = max(self._before, float(event.get("at", 0)))
        number = event.get("question", 0)
        match event.get("event"):
            case "answer":
                seconds = float(event.get("seconds", 0))
                earlier = self.answers.get(number)
                spent = seconds + (earlier.seconds if earlier else 0)
                when, at = event["when"], float(event["at"])
                self.answers[number] = Answer(event["typed"], when, at, spent)
            case "flag":
                (self.flagged.add if event["on"] else self.flagged.discard)(number)
            case "end":
                self.ended = True

    @property
    def elapsed(self) -> float:
        """The seconds used so far."""
        running = 0 if self._since is None else self._clock() - self._since
        return self._before + running

    @property
    def left(self) -> float:
        """The seconds left; below zero when the time is over."""
        return self.paper.minutes * 60 - self.elapsed

    @property
    def running(self) -> bool:
        """Whether the time counts."""
        return self._since is not None

    def go_on(self) -> None:
        """The time counts from now."""
        if self._since is None and not self.ended:
            self._since = self._clock()

    def pause(self) -> None:
        """The time stops, and how much was used is kept."""
        self._before, self._since = self.elapsed, None
        self.tick()

    def tick(self) -> None:
        """Keep how much time was used: a program may be killed at any moment."""
        self._keep(TICK)

    def answer(self, number: int, text: str, seconds: float = 0.0) -> str:
        """Take an answer, in place of an earlier one; what it was read as.

        Raises:
            Unreadable: the earlier answer stands; the sentence says what to type.
            NotKept: it is held, and kept with the next one.
        """
        said = said_of(self.questions[number - 1], text)
        self._keep(ANSWER, question=number, typed=text, seconds=round(seconds, 1), when=now())
        return said

    def flag(self, number: int, on: bool) -> None:
        """Mark a question to come back to, or take the mark away."""
        self._keep(FLAG, question=number, on=on)

    def end(self) -> None:
        """Hand it in; no answer is taken after that."""
        self.pause()
        self._keep(END)

    def _keep(self, kind: str, **fields) -> None:
        event = {"v": VERSION, "event": kind, "at": round(self.elapsed, 1), **fields}
        if self.ended:
            return
        self._since = None if self._since is None else self._clock()
        self._take(event)
        self._waiting.append(json.dumps(event, ensure_ascii=False))
        add_lines(self.path, self._waiting)
        self._waiting = []

    def marks(self) -> list[Marked]:
        """Each question with its verdict; one without an answer is not right."""
        return [marked(question, self.answers.get(question.number)) for question in self.questions]

    def in_time(self, answer: Answer | None) -> bool:
        """Whether an answer came before the time was over."""
        return answer is not None and answer.at <= self.paper.minutes * 60

    def attempts(self) -> list[Attempt]:
        """The answers for the log. The same sitting gives the same ids, so none counts twice."""
        space = uuid.uuid5(uuid.NAMESPACE_URL, self.path.stem)
        return [
            attempt_of(mark, uuid.uuid5(space, str(mark.question.number)).hex, self.paper.code)
            for mark in self.marks()
            if mark.answer
        ]


def _events(path: Path) -> Iterator[dict]:
    """What can be read of the file; a line torn by an accident was never acknowledged."""
    for line in path.read_bytes().split(b"\n"):
        try:
            event = json.loads(line)
        except ValueError:
            continue
        if isinstance(event, dict) and event.get("v") == VERSION:
            yield event
