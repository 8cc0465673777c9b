"""What both pages of a study are put together from: a bar, a block, dates, a link to a page."""

from datetime import date
from pathlib import Path
from urllib.parse import quote

from workbook.ui.markup import Child, Markup, style, tag
from workbook.ui.static_site import link_to_page

__all__ = ["LOOK", "bar", "block", "day_in_words", "page_link", "short_day"]


LOOK = style(Path(__file__).with_name("study.css"))  # once on each page


def block(title: str, *children: Child, more: str = "") -> Markup:
    """A part of a page under its heading; `more` is a name for its looks."""
    return tag("section", tag("h3", title), children, cls=f"w2w-block {more}".strip())


def bar(share: float, tried: float = 0.0, mark: float | None = None) -> Markup:
    """A bar that is full at 1: a dark share, a lighter one behind it, and a mark to reach.

    It only repeats a number that is written beside it, so a screen reader passes over it.
    """
    parts = [
        tag("span", cls="w2w-bar-tried", style=_wide(tried)) if tried else None,
        tag("span", cls="w2w-bar-share", style=_wide(share)),
        tag("span", cls="w2w-bar-mark", style=f"left: {100 * mark:.0f}%") if mark else None,
    ]
    return tag("span", parts, cls="w2w-bar", aria_hidden="true")


def _wide(share: float) -> str:
    return f"width: {100 * min(max(share, 0.0), 1.0):.0f}%"


def page_link(text: Child, file: str) -> Markup:
    """A link to a page of the workbook, in the static site too."""
    return tag("a", text, href=link_to_page(file) or quote(file), cls="w2w-page")


def short_day(day: date) -> str:
    """A day of this year or the next.

    >>> short_day(date(2026, 11, 30))
    'Nov 30'
    """
    return f"{day:%b} {day.day}"


def day_in_words(day: date) -> str:
    """A day with its day of the week.

    >>> day_in_words(date(2027, 1, 28))
    'Thu, Jan 28'
    """
    return f"{day:%a}, {short_day(day)}"
