"""The pages that Python is told of; and the widgets of one that was left, closed, so that they neither pile up nor answer late.

All pages share one Python. Each page of each window asks it under a name of its own, the session in
the head of a message, and so has its own widgets.
"""

import asyncio
from contextlib import suppress
from weakref import WeakSet

from IPython import get_ipython
from ipywidgets import Widget

__all__ = ["close", "is_watched", "watch"]

QUIET = 3  # seconds, until the next page has what it needs

_made: dict[str, WeakSet[Widget]] = {}
_watched: set[str] = set()


def watch() -> None:
    """A page of ours begins: from now on, remember for which page each widget is made."""
    _watched.update(filter(None, [_asking()]))
    Widget.on_widget_constructed(lambda widget: _made.setdefault(_asking(), WeakSet()).add(widget))


def close(page: str) -> None:
    """Close the widgets made for `page`; so too those of whom nobody could tell the page."""
    _watched.discard(page)
    for widget in [*_made.pop(page, ()), *_made.pop("", ())]:
        widget.close()
    # IPython keeps what each cell showed, with all that hangs on it, for somebody who types code.
    with suppress(AttributeError, RuntimeError):  # no kernel, or no loop that runs
        asyncio.get_running_loop().call_later(QUIET, get_ipython().displayhook.flush)


def is_watched() -> bool:
    """Whether the page that asked for what runs now is shown as ours, and so has the look of the workbook."""
    return _asking() in _watched


def _asking() -> str:
    """The page that asked for what runs now."""
    try:
        return get_ipython().kernel.get_parent()["header"]["session"]
    except (AttributeError, LookupError, TypeError):
        return ""
