"""The reader's own folders: their pages, which are never overwritten, their answers and settings.

A copy of a page remembers, inside itself, the text it was copied from. A page whose text is still
that one is replaced by a newer version; a page the reader changed is kept beside it under another
name, and the page is put back.

In a home folder that cannot be written to, the usual places of answers and settings do not work.
All then goes to a folder of its own beside the pages, and into the usual log once that can be
written again.
"""

import json
import os
import shutil
import tempfile
from collections.abc import Iterable, Iterator
from contextlib import suppress
from pathlib import Path
from typing import Any

from platformdirs import user_config_path, user_documents_path

from workbook.log import KEPT, Log, NotKept, NotRead, default_path, parse
from workbook.ui.pages import MARK, fingerprint, read_page, shipped_pages

from .child import ROOT, Say

__all__ = [
    "CannotWrite",
    "bring_up_to_date",
    "can_write",
    "default_folders",
    "environment_of",
    "settings_of",
    "settle",
    "state_of",
    "write_page",
]

NAME = "Wire to Water"
COPIED_FROM = "copied_from"
BESIDE = ".kept"


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

    Raises:
        CannotWrite: the folder does not allow it.
    """
    try:
        _try_writing(folder)
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


def _try_writing(folder: Path) -> None:
    """Make a folder where it is not there, and a file in it.

    Raises:
        OSError: that is refused.
    """
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
        if edition == text:
            return None
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


def write_page(page: dict[str, Any], edition: str, own: Path) -> None:
    """Write a page that remembers the text it has now, by its fingerprint."""
    page["metadata"].setdefault(MARK, {})[COPIED_FROM] = edition
    half = own.with_name(own.name + ".part")
    half.write_text(json.dumps(page, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
    os.replace(half, own)


def can_write(folder: Path) -> bool:
    """Whether files can be made in a folder, which is made where it is not there."""
    try:
        _try_writing(folder)
    except OSError:
        return False
    return True


def settle(own: Path, say: Say) -> None:
    """See to it that answers given in the reader's folder `own` can be kept, and say where.

    Raises:
        OSError: not even that folder can be written to.
    """
    os.environ.pop(KEPT, None)
    usual, beside = default_path().parent, own / BESIDE
    if can_write(usual) and can_write(_usual_settings()):
        if (beside / "attempts.jsonl").exists():
            _bring_home(beside, say)
        return
    if not beside.exists() and usual.exists():
        with suppress(OSError):  # what cannot even be read is not there to be kept
            shutil.copytree(usual, beside)
    _try_writing(beside)
    os.environ[KEPT] = str(beside)
    say(
        f"The workbook can't write to your home folder, so your answers are kept with your pages, in {beside}"
    )


def _bring_home(beside: Path, say: Say) -> None:
    """Take into the usual log what was answered while it could not be written."""
    log, answers = Log(default_path()), beside / "attempts.jsonl"
    try:
        count = log.merge(parse(answers.read_bytes())[0])
        for kept in (*(beside / "exams").glob("*"), *(beside / "faults").glob("*")):
            if not (to := log.path.parent / kept.relative_to(beside)).exists():
                to.parent.mkdir(exist_ok=True)
                shutil.copy(kept, to)
        answers.rename(beside / "attempts-in-your-log.jsonl")
    except (OSError, NotKept, NotRead):
        return  # they stay where they are until the next start
    if count:
        answers_in_words = "1 answer" if count == 1 else f"{count} answers"
        say(
            f"The workbook can write to your home folder again. It added {answers_in_words} from {beside} to your log."
        )


def _usual_settings() -> Path:
    return user_config_path("wire-to-water", appauthor=False)


def settings_of() -> Path:
    """The folder for what a reader sets in JupyterLab, apart from any other JupyterLab."""
    kept = os.environ.get(KEPT)
    settings = Path(kept) / "settings" if kept else _usual_settings()
    settings.mkdir(parents=True, exist_ok=True)
    return settings


def environment_of() -> dict[str, str]:
    """Where other programs keep their own things, when a home folder does not let them."""
    if not (kept := os.environ.get(KEPT)):
        return {}
    names = {
        "IPYTHONDIR": "ipython",
        "JUPYTER_DATA_DIR": "jupyter",
        "JUPYTER_RUNTIME_DIR": "runtime",
        "MPLCONFIGDIR": "matplotlib",
    }
    return {name: str(Path(kept) / folder) for name, folder in names.items()}
