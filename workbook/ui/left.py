"""The widgets of a page that was left: closed, so that they neither pile up nor answer late.

All pages share one Python. Each page of each window asks it under a name of its own, the session in
the head of a message, and so has its own widgets.
"""

from weakref import WeakSet

from IPython import get_ipython
from ipywidgets import Widget

__all__ = ["close", "watch"]

_made: dict[str, WeakSet[Widget]] = {}


def watch() -> None:
    """From now on, remember for which page each widget is made."""
    Widget.on_widget_constructed(lambda widget: _made.setdefault(_asking(), WeakSet()).add(widget))


def close(page: str) -> None:
    """Close the widgets made for `page`; so too those of whom nobody could tell the page."""
    for widget in [*_made.pop(page, ()), *_made.pop("", ())]:
        widget.close()


def _asking() -> str:
    """The page that asked for what runs now."""
    try:
        return get_ipython().kernel.get_parent()["header"]["session"]
    except (AttributeError, LookupError, TypeError):
        return ""
