"""Whether this runs in a reader's browser, on a page of the static site."""

import sys

__all__ = ["in_browser"]


def in_browser() -> bool:
    """Whether this is the Python of a page of the static site."""
    return sys.platform == "emscripten"
