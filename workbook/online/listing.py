"""What JupyterLite lists of the site's files: pages to read, which cannot be saved.

A page that was saved would be a copy in the browser, which hides every later edition.
"""

import json
from pathlib import Path

from workbook.ui.pages import shipped_pages

__all__ = ["write_listing"]

LONG_AGO = "2000-01-01T00:00:00Z"  # the same site is the same files whenever it is built


def write_listing(path: Path) -> None:
    """Write the list of pages, in the form of Jupyter's contents."""
    pages = [_entry(page.name, "notebook", page.stat().st_size) for page in shipped_pages()]
    path.write_text(json.dumps({**_entry("", "directory"), "content": pages}), encoding="utf-8")


def _entry(path: str, kind: str, size: int | None = None) -> dict:
    return {
        "name": path,
        "path": path,
        "type": kind,
        "writable": False,
        "created": LONG_AGO,
        "last_modified": LONG_AGO,
        "size": size,
        "content": None,
        "format": None,
        "mimetype": None,
        "hash": None,
        "hash_algorithm": None,
    }
