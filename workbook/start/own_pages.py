"""Which of the files that a server gives out are the workbook's own pages, and what may run in them.

Two places count: the root of the server, which is the reader's own folder or a trainer's course, and
those where the pages ship, if they lie under the root, as they do in a checkout served whole.
"""

import posixpath
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

from workbook.ui.bar import bar_of
from workbook.ui.pages import (
    CHAPTERS,
    OPENING,
    TRAINERS,
    TRAINERS_OPENING,
    code_cells,
    shipped_pages,
)

__all__ = ["bars_under", "is_page", "opening_of", "pages_under"]

SHIPPED = {CHAPTERS: OPENING, TRAINERS: TRAINERS_OPENING}  # each place with the page that opens it


@cache
def pages_under(root: str) -> dict[str, list[str]]:
    """Map each page the server shows, by its path under `root`, to the code that ships in it."""
    return {
        posixpath.join(place, path.name): code_cells(path)
        for folder in SHIPPED
        for place in ("", *_below(folder, root))
        for path in shipped_pages(folder)
    }


def _below(folder: Path, root: str) -> Iterator[str]:
    top = Path(root).resolve()
    if folder.is_relative_to(top):
        yield folder.relative_to(top).as_posix()


def is_page(path: str, root: str) -> bool:
    """Whether the file at this path under `root` is a page that ships."""
    return path.strip("/") in pages_under(root)


def bars_under(root: str) -> dict[str, dict[str, Any]]:
    """The bar over the pages of each place under `root`, by the path of the place.

    A trainer's course has its own pages beside the chapters, so they come last in one bar.
    """
    bars = {place: bar_of(folder) for folder in SHIPPED for place in _below(folder, root)}
    here = [bar_of(folder) for folder, page in SHIPPED.items() if Path(root, page).exists()]
    if here:
        bars[""] = {**here[0], "places": [place for bar in here for place in bar["places"]]}
    return bars


def opening_of(root: str) -> str | None:
    """The page that opens what is at `root` itself; None where neither place is."""
    return next((page for page in SHIPPED.values() if Path(root, page).exists()), None)
