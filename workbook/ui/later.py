"""What a page of the static site fetches once it is ready: matplotlib, for its pictures.

It is as large as the rest and takes seconds to start, so no card waits for it. The page says when
it is ready (see labextension); panels that lack a picture have asked for it by then.
"""

import asyncio
import importlib
from collections.abc import Callable

from .in_browser import in_browser

__all__ = ["begin", "no_picture"]

TABLE = "The table has every number."
MISSING = f"The picture needs matplotlib, which isn't installed here. {TABLE}"
COMING = f"The picture comes in a moment. {TABLE}"
FAILED = f"The picture needs matplotlib, which couldn't be loaded here. {TABLE}"
PARTS = ("numpy", "matplotlib", "matplotlib.figure", "matplotlib.backends.backend_svg")
BREATH = 0.05  # seconds between two parts, for an answer that was typed meanwhile

_ready: list[bool] = []
_waiting: dict[Callable[[], None], None] = {}
_fetching: list[asyncio.Task] = []
_failed: list[Exception] = []


def no_picture(redraw: Callable[[], None] | None = None) -> str:
    """What stands in place of a picture; in the static site, `redraw` is called once it can be had.

    >>> no_picture()
    "The picture needs matplotlib, which isn't installed here. The table has every number."
    """
    if not in_browser():
        return MISSING
    if _failed:
        return FAILED
    if redraw is None:
        return FAILED
    _waiting[redraw] = None
    _fetch_if_wanted()
    return COMING


def begin() -> None:
    """The page is ready: fetch what panels wait for, beside whatever else the page does."""
    _ready.append(True)
    _fetch_if_wanted()


def _fetch_if_wanted() -> None:
    if _ready and _waiting and not _fetching:
        _fetching.append(asyncio.ensure_future(_fetch()))


async def _fetch() -> None:
    try:
        await _load()
        for part in PARTS:
            importlib.import_module(part)
            await asyncio.sleep(BREATH)
    except Exception as error:  # of the network, of the list of packages, of a package itself
        _failed.append(error)
    while _waiting:
        redraw, _ = _waiting.popitem()
        redraw()
        await asyncio.sleep(BREATH)
    _fetching.clear()


async def _load() -> None:
    import pyodide_js

    await pyodide_js.loadPackage("matplotlib", messageCallback=print, errorCallback=print)
