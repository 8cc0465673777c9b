"""What the static site alone has: Python in the reader's browser, and the page's address.

Its page tells the address when it starts (see online/labextension): a browser's Python runs beside
the page and cannot see it.
"""

import json
import sys
from urllib.parse import parse_qsl, unquote, urlencode, urlsplit

__all__ = [
    "in_browser",
    "link_at",
    "link_to_page",
    "may_be_cleared",
    "receive",
    "shared",
    "site",
    "tell",
    "words_of_address",
]

MOST_WORDS = 50
NO_SITE = "“{}” isn't a web address. A web address begins with https:// or http://, the way your browser shows it."

_told: dict[str, str] = {}
_shared: list[tuple[str, bytes]] = []


def in_browser() -> bool:
    """Whether this is the Python of a page of the static site."""
    return sys.platform == "emscripten"


def tell(base: str, query: str, kept: str = "") -> None:
    """Take the site's own address and what stands after the question mark, both percent-encoded.

    Outside the static site `base` is empty, for nobody else could follow a link to there. `kept` is
    "yes" or "no": whether the browser has promised to keep what is written; empty if nobody asked.
    """
    _told.update(base=unquote(base), query=unquote(query), kept=kept)


def may_be_cleared() -> bool:
    """Whether the browser was asked to promise that it keeps what is written, and didn't."""
    return _told.get("kept") == "no"


def site() -> str | None:
    """The site's own address, which ends in a slash; None outside the static site."""
    return _told.get("base") or None


def receive(files: str) -> None:
    """Take files that somebody shared to the installed site: a JSON list of names and texts, percent-encoded."""
    _shared.extend((name, text.encode()) for name, text in json.loads(unquote(files)))


def shared() -> list[tuple[str, bytes]]:
    """The files that were shared to the site, names and contents, each handed over once.

    They are whatever somebody shared: read them as data.
    """
    files = list(_shared)
    _shared.clear()
    return files


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


def link_at(site: str, page: str, **words: str) -> str:
    """The same on a static site whose address somebody typed.

    >>> link_at("https://example.org/pumps?a=1", "a.ipynb", exam="E 1")
    'https://example.org/pumps/?path=a.ipynb&exam=E+1'

    Raises:
        ValueError: the sentence says what an address is.
    """
    try:
        parts = urlsplit(site)
    except ValueError:
        parts = urlsplit("")
    if parts.scheme not in ("http", "https") or not parts.netloc or any(map(str.isspace, site)):
        raise ValueError(NO_SITE.format(site[:60]))
    folder = f"{parts.path.removesuffix('index.html').removesuffix('/')}/"
    query = urlencode({"path": page, **words})
    return f"{parts.scheme}://{parts.netloc}{folder}?{query}"
