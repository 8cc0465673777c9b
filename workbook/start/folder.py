"""The reader's own folder: the pages are copied there, and theirs are never overwritten.

A copy remembers, inside itself, the text it was copied from. A page whose text is still that one
is replaced by a newer edition; a page the reader changed is kept beside it under another name.
"""

import json
import os
import tempfile
from collections.abc import Iterable, Iterator
from pathlib import Path

from platformdirs import user_documents_path

from workbook.ui.pages import MARK, fingerprint, read_page, shipped_pages

from .child import ROOT

__all__ = [
    "CannotWrite",
    "bring_up_to_date",
    "default_folders",
    "state_of",
    "try_writing",
    "write_page",
]

NAME = "Wire to Water"
COPIED_FROM = "copied_from"


class CannotWrite(OSError):
    """The folder cannot be made or written to."""


def default_folders() -> list[Path]:
    """List the places for the reader's folder, the best one first.

    The last ones are for a home that cannot be written to: beside the project, then where the
    computer keeps what it may throw away.
    """
    places = [user_documents_path(), Path.home(), ROOT.parent, Path(tempfile.gettempdir())]
    return [place / NAME for place in places]


def bring_up_to_date(folder: Path, pages: Iterable[Path] | None = None) -> list[str]:
    """Copy these pages, or else the chapters, to `folder`; say in a sentence what became of old ones.

    Raises CannotWrite when the folder does not allow it.
    """
    try:
        try_writing(folder)
        wanted = shipped_pages() if pages is None else pages
        done = [_bring(page, folder / page.name) for page in wanted]
    except OSError as error:
        raise CannotWrite(f"{folder}: {error.strerror}") from error
    kept = [pair for pair in done if pair and pair[1]]
    return list(_said(len([pair for pair in done if pair]), kept))


def _said(newer: int, kept: list[tuple[str, str]]) -> Iterator[str]:
    """One sentence where pages of an earlier version were there."""
    news = "Your pages are now those of this version, and nothing you did is lost"
    if len(kept) == 1:
        [(page, aside)] = kept
        yield f'{news}. You had changed "{page}". Your copy is now "{aside}", next to the new one.'
    elif kept:
        asides = ", ".join(f'"{aside}"' for _, aside in kept)
        yield f"{news}. You had changed {len(kept)} pages. Your copies are next to the new ones: {asides}."
    elif newer:
        yield f"{news}."


def try_writing(folder: Path) -> None:
    """Make a folder where it is not there, and a file in it; OSError where that is refused."""
    folder.mkdir(parents=True, exist_ok=True)
    trial = folder / ".wire-to-water"
    trial.touch()
    trial.unlink()


def _bring(shipped: Path, own: Path) -> tuple[str, str] | None:
    """Copy a page; its name, and the one the reader's own has now, where an older one was there."""
    page = read_page(shipped)
    edition = fingerprint(page)
    there, aside = own.exists(), ""
    if there:
        text, copied_from = state_of(own)
        if edition in (text, copied_from):
            return None  # the newest edition already, as it came or with the reader's changes
        if text is None or text != copied_from:
            aside = _free_name(own)
            own.rename(own.with_name(aside))
    write_page(page, edition, own)
    return (own.name, aside) if there else None


def state_of(own: Path) -> tuple[str | None, str | None]:
    """Return the page's text now and the one it was copied from, as fingerprints."""
    try:
        page = read_page(own)
        return fingerprint(page), page["metadata"].get(MARK, {}).get(COPIED_FROM)
    except (ValueError, KeyError, TypeError, AttributeError):
        return None, None  # not a notebook any more: whatever it is, it is the reader's


def _free_name(own: Path) -> str:
    numbers = ["", *(f" {number}" for number in range(2, 1000))]
    names = (f"{own.stem} (yours{number}){own.suffix}" for number in numbers)
    return next(name for name in names if not own.with_name(name).exists())


def write_page(page: dict, edition: str, own: Path) -> None:
    """Write a page that remembers the text it has now, by its fingerprint."""
    page["metadata"].setdefault(MARK, {})[COPIED_FROM] = edition
    half = own.with_name(own.name + ".part")
    half.write_text(json.dumps(page, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
    os.replace(half, own)
