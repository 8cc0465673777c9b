"""The widgets of a page that was left: closed, so that they neither pile up nor answer late.

All pages share one Python. Each page of each window asks it under a name of its own, the session in
the head of a message, and so has its own widgets.
"""

import asyncio
from contextlib import suppress
from weakref import WeakSet

from IPython import get_ipython
from ipywidgets import Widget

__all__ = ["close", "watch"]

QUIET = 3  # seconds, until the next page has what it needs

_made: dict[str, WeakSet[Widget]] = {}


def watch() -> None:
    """From now on, remember for which page each widget is made."""
    Widget.on_widget_constructed(lambda widget: _made.setdefault(_asking(), WeakSet()).add(widget))


def close(page: str) -> None:
    """Close the widgets made for `page`; so too those of whom nobody could tell the page."""
    for widget in [*_made.pop(page, ()), *_made.pop("", ())]:
        widget.close()
    # IPython keeps what each cell showed, with all that hangs on it, for somebody who types code.
    with suppress(AttributeError, RuntimeError):  # no kernel, or no loop that runs
        asyncio.get_running_loop().call_later(QUIET, get_ipython().displayhook.flush)


def _asking() -> str:
    """The page that asked for what runs now."""
    try:
        return get_ipython().kernel.get_parent()["header"]["session"]
    except (AttributeError, LookupError, TypeError):
        return ""
