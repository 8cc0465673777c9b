"""The list of a class as it travels with a set: a mark for each id, from which no id can be read.

So a mistyped id is caught where it is typed. The marks are short hashes, salted with the set's code;
whoever guesses an id can check the guess, and nothing more.
"""

from collections.abc import Iterable
from hashlib import sha256
from pathlib import Path

__all__ = ["CLASS_LIST", "keep_class_list", "may_be_listed"]

CLASS_LIST = "class-list.txt"
HEAD = "# A mark for each id on the trainer's list. It tells when an id was typed wrong."
LENGTH = 12
MOST = 2_000_000  # bytes that are read


def _mark(code: str, person: str) -> str:
    return sha256(f"{code}\n{person}".encode()).hexdigest()[:LENGTH]


def keep_class_list(folder: Path, code: str, people: Iterable[str]) -> None:
    """Write the marks of these ids beside the set of this code; without anybody, no file.

    Raises:
        OSError: it cannot be written.
    """
    path, marks = folder / CLASS_LIST, sorted(_mark(code, person) for person in people)
    if not marks:
        path.unlink(missing_ok=True)
        return
    text = "\n".join([HEAD, *marks, ""])
    if not path.exists() or path.read_text(encoding="utf-8") != text:
        path.write_text(text, encoding="utf-8")


def may_be_listed(folder: Path, code: str, person: str) -> bool:
    """Whether this id may be on the list; so it is where there is no list, or one of another set."""
    try:
        with (folder / CLASS_LIST).open("rb") as file:
            lines = file.read(MOST).decode().splitlines()
    except (OSError, UnicodeDecodeError):
        return True
    return not lines or lines[0] != HEAD or _mark(code, person) in lines
