"""A set as one text, for a link, a QR code or a message: its file, and the marks of its class list.

    W2WSET:eNpdkE1uwzAMhPc6heC1….

Between the colon and the period is a zip stream in the letters of an address, which has a check of its
own. A message may break it into lines. It has no name and no id in it: see learner/class_list.py.
"""

import re
import zlib
from base64 import urlsafe_b64decode, urlsafe_b64encode
from collections.abc import Iterable
from typing import NamedTuple

from solver import SolverError
from workbook.trainer.learner.class_list import SHORT, mark_of

from .as_toml import toml_of
from .set_file import Assigned, parse_set_file

__all__ = ["MOST_LISTED", "BadText", "SentSet", "read_text", "text_of"]

START = "W2WSET:"
SHAPE = re.compile(rf"{START}([\w\-=\s]{{1,20000}})\.", re.ASCII)
NAME = re.compile(r"\w[\w.\-]{0,99}")
MOST = 300_000  # bytes of what is packed
MOST_LISTED = 100  # people; more would make the text too long for a QR code by far
NO_SET = "There is no set in this text. Copy the whole message, or open your trainer's link."
CUT = "Part of the set is missing. Copy the whole message, up to the period at its end."


class BadText(SolverError):
    """A text that holds no set that can be opened; the sentence says what to do."""


class SentSet(NamedTuple):
    """A set as it was sent: it, its text, the text of its file, and the marks of the class list."""

    assigned: Assigned
    text: str
    file: str
    marks: tuple[str, ...]


def text_of(assigned: Assigned, people: Iterable[str] = ()) -> str:
    """The text of a set; with marks of these ids, where they are not too many."""
    listed = sorted({mark_of(assigned.work.code, person)[:SHORT] for person in people})
    marks = " ".join(listed) if len(listed) <= MOST_LISTED else ""
    held = "\n".join((assigned.name, marks, toml_of(assigned))).encode()
    return f"{START}{urlsafe_b64encode(zlib.compress(held, 9)).decode().rstrip('=')}."


def read_text(text: str) -> SentSet:
    """The set in a text, whatever is around it.

    Raises:
        BadText: it holds none, or only part of one.
        SetFault: this workbook can't use the set; the sentence says why.
    """
    if not (found := SHAPE.search(text)):
        raise BadText(CUT if START in text else NO_SET)
    packed = re.sub(r"[\s=]", "", found[1])
    try:
        name, marks, file = _unpacked(packed).decode().split("\n", 2)
    except (ValueError, zlib.error):
        raise BadText(CUT) from None
    if not NAME.fullmatch(name):
        raise BadText(NO_SET)
    return SentSet(parse_set_file(file, name), f"{START}{packed}.", file, tuple(marks.split()))


def _unpacked(packed: str) -> bytes:
    """What was packed, never more than a set may be, however much the stream claims to hold."""
    stream = zlib.decompressobj()
    data = stream.decompress(urlsafe_b64decode(packed + "=" * (-len(packed) % 4)), MOST)
    if not stream.eof:
        raise ValueError("it is cut, or far too long")
    return data
