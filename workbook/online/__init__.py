"""The workbook as a static site: built here, and what it needs to know where it runs.

`build` and what stands beside it make the site, on any computer. `address`, `journal` and `later`
are used by pages that run in a reader's browser; they import nothing that a browser's Python lacks.
"""

import sys

__all__ = ["in_browser"]


def in_browser() -> bool:
    """Whether this is the Python of a page of the static site."""
    return sys.platform == "emscripten"
