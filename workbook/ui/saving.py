"""Something to keep as a file: a link that holds all of it, or a file that is there only when whole.

A link needs no server: it works in JupyterLab, and in a page that stands alone. A file that is
being written has ".part" behind its name until it is whole.
"""

from base64 import b64encode
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO, TextIO

from .markup import Markup, joined, tag
from .static_site import in_browser

__all__ = ["PART", "link", "whole_file", "whole_text"]

PART = ".part"


def link(says: str, name: str, kind: str, data: bytes) -> Markup:
    """A link that saves a file, and its name; in the static site also a button that shares it.

    The button shows where the browser can share files (see online/labextension).

    >>> link("Save it", "a.txt", "text/plain", b"A")[:65]
    Markup('<a class="w2w-save" download="a.txt" href="data:text/plain;base64')
    """
    held = f"data:{kind};base64,{b64encode(data).decode()}"
    saves = tag("a", says, cls="w2w-save", download=name, href=held)
    shares = tag("button", "Share", type="button", cls="w2w-button w2w-share")
    named = tag("span", name, cls="w2w-about")
    return joined(saves, " ", named, shares if in_browser() else None)


@contextmanager
def whole_file(path: Path) -> Iterator[BinaryIO]:
    """A file to write bytes to, which takes its name only when nothing went wrong.

    Raises:
        OSError: it cannot be written there; its `filename` may end with `PART`.
    """
    with _named_when_whole(path) as part, part.open("wb") as file:
        yield file


@contextmanager
def whole_text(path: Path, coding: str = "utf-8", newline: str | None = None) -> Iterator[TextIO]:
    """The same for text; `newline` as `open` takes it, so "" for CSV.

    Raises:
        OSError: as `whole_file` does.
    """
    with (
        _named_when_whole(path) as part,
        part.open("w", encoding=coding, newline=newline) as file,
    ):
        yield file


@contextmanager
def _named_when_whole(path: Path) -> Iterator[Path]:
    part = path.with_name(path.name + PART)
    try:
        yield part
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)
