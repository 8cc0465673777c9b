"""The list of a class as it travels with a set: a mark for each id, from which no id can be read.

So a mistyped id is caught where it is typed. The marks are short hashes, salted with the set's code;
whoever guesses an id can check the guess, and nothing more. In a link they are shorter still.
"""

from collections.abc import Iterable
from hashlib import sha256
from pathlib import Path

__all__ = ["CLASS_LIST", "SHORT", "keep_class_list", "keep_marks", "mark_of", "may_be_listed"]

CLASS_LIST = "class-list.txt"
HEAD = "# A mark for each id on the trainer's list. It tells when an id was typed wrong."
LENGTH = 12
SHORT = 6  # letters of a mark in a link
MOST = 2_000_000  # bytes that are read


def mark_of(code: str, person: str) -> str:
    """The mark of an id in the set of this code."""
    return sha256(f"{code}\n{person}".encode()).hexdigest()[:LENGTH]


def keep_class_list(folder: Path, code: str, people: Iterable[str]) -> None:
    """Write the marks of these ids beside the set of this code; without anybody, no file.

    Raises:
        OSError: it cannot be written.
    """
    keep_marks(folder, [mark_of(code, person) for person in people])


def keep_marks(folder: Path, marks: Iterable[str]) -> None:
    """Write these marks beside a set; without any, no file.

    Raises:
        OSError: it cannot be written.
    """
    path, found = folder / CLASS_LIST, sorted(marks)
    if not found:
        path.unlink(missing_ok=True)
        return
    text = "\n".join([HEAD, *found, ""])
    if not path.exists() or path.read_text(encoding="utf-8") != text:
        path.write_text(text, encoding="utf-8")


def may_be_listed(folder: Path, code: str, person: str) -> bool:
    """Whether this id may be on the list; so it is where there is no list, or one of another set."""
    try:
        with (folder / CLASS_LIST).open("rb") as file:
            head, *marks = file.read(MOST).decode().splitlines() or [""]
    except (OSError, UnicodeDecodeError):
        return True
    mark = mark_of(code, person)
    return head != HEAD or any(one and mark.startswith(one) for one in marks)
