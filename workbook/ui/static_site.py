"""What the static site alone has: Python in the reader's browser, the page's address, late pictures.

Its page tells the address when it starts (see online/labextension): a browser's Python runs beside
the page and cannot see it. matplotlib, which only trends and reports need, is as large as the rest and takes
seconds to start, so no page waits for it: the page says when it is ready, and panels that lack a picture
have asked for it by then.
"""

import asyncio
import importlib
import sys
from collections.abc import Callable
from urllib.parse import parse_qsl, unquote, urlencode

__all__ = [
    "fetch_pictures",
    "in_browser",
    "link_to_page",
    "no_picture",
    "site",
    "tell",
    "words_of_address",
]

MOST_WORDS = 50
TABLE = "The table has every number."
MISSING = f"The picture needs matplotlib, which isn't installed here. {TABLE}"
COMING = f"The picture comes in a moment. {TABLE}"
FAILED = f"The picture needs matplotlib, which couldn't be loaded here. {TABLE}"
PARTS = ("numpy", "matplotlib", "matplotlib.figure", "matplotlib.backends.backend_svg")
BREATH = 0.05  # seconds between two parts, for an answer that was typed meanwhile

_told: dict[str, str] = {}
_ready: list[bool] = []
_waiting: dict[Callable[[], None], None] = {}
_fetching: list[asyncio.Future[None]] = []
_failed: list[Exception] = []


def in_browser() -> bool:
    """Whether this is the Python of a page of the static site."""
    return sys.platform == "emscripten"


def tell(base: str, query: str) -> None:
    """Take the site's own address and what stands after the question mark, both percent-encoded.

    Outside the static site `base` is empty, for nobody else could follow a link to there.
    """
    _told.update(base=unquote(base), query=unquote(query))


def site() -> str | None:
    """The site's own address, which ends in a slash; None outside the static site."""
    return _told.get("base") or None


def words_of_address() -> dict[str, str] | None:
    """The words after the question mark of the page's address by their names; None where it tells none.

    They are whatever somebody put into a link: read them as data.

    >>> words_of_address() is None
    True
    """
    if not _told:
        return None
    try:
        found = parse_qsl(_told["query"], keep_blank_values=True, max_num_fields=MOST_WORDS)
    except ValueError:  # more of them than any link of ours holds
        return {}
    return dict(found)


def link_to_page(page: str, **words: str) -> str | None:
    """The address of a page of this site, with these words in it; None outside the static site.

    `page` is the file's name, like "00-start-here.ipynb".
    """
    return f"{base}?{urlencode({'path': page, **words})}" if (base := site()) else None


def no_picture(redraw: Callable[[], None] | None = None) -> str:
    """What stands in place of a picture; in the static site, `redraw` is called once it can be had.

    >>> no_picture()
    "The picture needs matplotlib, which isn't installed here. The table has every number."
    """
    if not in_browser():
        return MISSING
    if _failed or redraw is None:
        return FAILED
    _waiting[redraw] = None
    _fetch_if_wanted()
    return COMING


def fetch_pictures() -> None:
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
