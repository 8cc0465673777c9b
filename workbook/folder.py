"""The reader's own folder: the pages are copied there, and theirs are never overwritten.

A copy remembers, inside itself, the text it was copied from. A page whose text is still that one
is replaced by a newer edition; a page the reader changed is kept beside it under another name.
"""

import json
import os
from collections.abc import Iterable, Iterator
from pathlib import Path

from platformdirs import user_documents_path

from workbook.pages import MARK, fingerprint, read_page, shipped_pages

__all__ = ["CannotWrite", "bring_up_to_date", "default_folders", "state_of", "write_page"]

NAME = "Wire to Water"
COPIED_FROM = "copied_from"


class CannotWrite(OSError):
    """The folder cannot be made or written to."""


def default_folders() -> list[Path]:
    """List the places for the reader's folder, the best one first."""
    return [user_documents_path() / NAME, Path.home() / NAME]


def bring_up_to_date(folder: Path, pages: Iterable[Path] | None = None) -> list[str]:
    """Copy these pages, or else the chapters, to `folder`; a sentence for each page kept aside.

    Raises CannotWrite when the folder does not allow it.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
        _try_writing(folder)
        wanted = shipped_pages() if pages is None else pages
        return [said for page in wanted for said in _bring(page, folder / page.name)]
    except OSError as error:
        raise CannotWrite(f"{folder}: {error.strerror}") from error


def _try_writing(folder: Path) -> None:
    trial = folder / ".wire-to-water"
    trial.touch()
    trial.unlink()


def _bring(shipped: Path, own: Path) -> Iterator[str]:
    page = read_page(shipped)
    edition = fingerprint(page)
    if own.exists():
        text, copied_from = state_of(own)
        if edition in (text, copied_from):
            return  # the newest edition already, as it came or with the reader's changes
        if text is None or text != copied_from:
            aside = _free_name(own)
            own.rename(aside)
            yield f'You had changed "{own.name}". Yours is now "{aside.name}", beside the new one.'
    write_page(page, edition, own)


def state_of(own: Path) -> tuple[str | None, str | None]:
    """Return the page's text now and the one it was copied from, as fingerprints."""
    try:
        page = read_page(own)
        return fingerprint(page), page["metadata"].get(MARK, {}).get(COPIED_FROM)
    except (ValueError, KeyError, TypeError, AttributeError):
        return None, None  # not a notebook any more: whatever it is, it is the reader's


def _free_name(own: Path) -> Path:
    numbers = ["", *(f" {number}" for number in range(2, 1000))]
    names = (f"{own.stem} (yours{number}){own.suffix}" for number in numbers)
    return next(path for name in names if not (path := own.with_name(name)).exists())


def write_page(page: dict, edition: str, own: Path) -> None:
    """Write a page that remembers the text it has now, by its fingerprint."""
    page["metadata"].setdefault(MARK, {})[COPIED_FROM] = edition
    half = own.with_name(own.name + ".part")
    half.write_text(json.dumps(page, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
    os.replace(half, own)
