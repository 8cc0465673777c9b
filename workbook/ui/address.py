"""The address under which a page of the static site was opened, and links to its pages.

The page itself tells it when it starts (see settings/labextensions/wire-to-water): a browser's
Python runs beside the page and cannot see its address. Elsewhere nothing is told.
"""

from urllib.parse import parse_qsl, unquote, urlencode

__all__ = ["link", "site", "tell", "words_of_address"]

MOST_WORDS = 50
_told: dict[str, str] = {}


def tell(base: str, query: str) -> None:
    """Take the site's own address and what stands after the question mark, both percent-encoded."""
    _told.update(base=unquote(base), query=unquote(query))


def site() -> str | None:
    """The site's own address, which ends in a slash; None outside the static site."""
    return _told.get("base")


def words_of_address() -> dict[str, str] | None:
    """The words after the question mark of the page's address by their names; None elsewhere.

    They are whatever somebody put into a link: read them as data, and escape what is shown.

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


def link(page: str, **words: str) -> str | None:
    """The address of a page of this site, with these words in it; None outside the static site.

    `page` is the file's name, like "00-start-here.ipynb".
    """
    return f"{_told['base']}?{urlencode({'path': page, **words})}" if _told else None
