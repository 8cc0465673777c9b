"""A set that came as a link or a text: opened in a folder of the workbook's own, and kept there.

Which sets were opened, and by whom, is a file of lines beside the reader's log, so it comes back on the
static site too. Each person has an answer sheet of their own: two may share a telephone.
"""

import contextlib
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

from workbook.log import NotALine, NotRead, add_lines, checked_line, default_path, fields_of
from workbook.trainer.sets.as_text import SentSet, read_text
from workbook.trainer.sets.set_file import SET_FILE

from .answer_sheet import MOST, SHEET
from .class_list import keep_marks
from .own_set import NothingToShow, OwnSet, Packed
from .who import Learner, keep_person

__all__ = ["KIND", "OpenedSet", "opened_before", "sent_set"]

VERSION = 1
KIND = "application/jsonl"


class OpenedSet(NamedTuple):
    """A set that was opened here, as its text, and who works at it; "" as long as nobody said.

    `key` is of its name and its code: with another list of people it is the same set.
    """

    key: str
    text: str
    who: str = ""


def _sets() -> Path:
    return default_path().with_name("sets")


def opened_before() -> dict[str, OpenedSet]:
    """The sets that were opened here by their keys, the last one first, each as it was last."""
    try:
        data = (_sets() / "opened.jsonl").read_bytes()[:MOST]
    except OSError:
        return {}
    found: dict[str, OpenedSet] = {}
    for line in data.splitlines():
        with contextlib.suppress(NotALine, KeyError):
            fields = fields_of(line, VERSION)
            one = OpenedSet(*(str(fields[name]) for name in OpenedSet._fields))
            found.pop(one.key, None)
            found[one.key] = one
    return dict(reversed(found.items()))


def _key(sent: SentSet) -> str:
    return sha256(f"{sent.assigned.name}\n{sent.assigned.work.code}".encode()).hexdigest()[:12]


class _Sent(OwnSet):
    """The same as a set in a trainer's folder, but for where its parts are kept."""

    by_file = "Press the button below, and send the file to your trainer."

    def __init__(self, sent: SentSet, person: str):
        self.text, self.title = sent.text, sent.assigned.title
        self.key = _key(sent)
        folder = _sets() / self.key / sent.assigned.name
        folder.mkdir(parents=True, exist_ok=True)
        (folder / SET_FILE).write_text(sent.file, encoding="utf-8")
        keep_marks(folder, sent.marks)
        if person:
            keep_person(folder, person)
        super().__init__(folder)

    def sheet_at(self, person: str) -> Path:
        return self.folder / person / SHEET

    def begin_as(self, text: str, sure: bool = False) -> None:
        super().begin_as(text, sure)
        self.note()

    def note(self) -> None:
        """This is the set that is open now.

        Raises:
            NotKept: that can't be written; the sentence says why.
        """
        opened = OpenedSet(self.key, self.text, self.person.id)
        if next(iter(opened_before().values()), None) != opened:
            add_lines(_sets() / "opened.jsonl", [checked_line(VERSION, opened._asdict())])

    def ask_again(self) -> None:
        """Ask anew; what was answered under this name stays on its own sheet."""
        self._belongs_to(self._set(), Learner(""))
        self._changed()

    def packed(self) -> Packed:
        """The answer sheet alone: a plain text, which a telephone can share."""
        path = self.sheet_at(self.person.id)
        try:
            lines = path.read_bytes()
        except FileNotFoundError:
            raise NothingToShow("There is nothing to send yet. Answer a question first.") from None
        except OSError as error:
            raise NotRead(f"{path} couldn't be read: {error.strerror or error}.") from error
        return Packed(f"{self.folder.name}-{self.person.id}.jsonl", KIND, lines)


@cache
def _made(text: str) -> _Sent:
    sent = read_text(text)
    before = opened_before().get(_key(sent))
    return _Sent(sent, before.who if before else "")


def sent_set(text: str) -> _Sent:
    """The set in a text; one for all parts of a page.

    Raises:
        SolverError: it can't be opened; the sentence says why.
        OSError: it can't be written here.
    """
    return _made(read_text(text).text)
