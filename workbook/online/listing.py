"""What JupyterLite lists of the site's files: pages to read, and room for what a reader did.

A page that could be saved would leave a copy in the browser, which hides every later edition. A
folder that is listed need not be made, and its absence in the site need not be found out.
"""

import json
from pathlib import Path

from workbook.exam.lines import EXAMS
from workbook.pages import shipped_pages

from .drive import FOLDER

__all__ = ["write_listing"]

LONG_AGO = "2000-01-01T00:00:00Z"  # the same site is the same files whenever it is built
ROOMS = {"": FOLDER, FOLDER: EXAMS, f"{FOLDER}/{EXAMS}": None}


def write_listing(contents: Path) -> None:
    """Write what stands in each folder, in the form of Jupyter's contents."""
    pages = [_entry(path.name, "notebook", path.stat().st_size) for path in shipped_pages()]
    for folder, inside in ROOMS.items():
        listed = pages if not folder else []
        if inside:
            listed = [*listed, _entry(f"{folder}/{inside}".lstrip("/"), "directory", None)]
        (contents / folder).mkdir(parents=True, exist_ok=True)
        whole = {**_entry(folder, "directory", None), "content": listed}
        (contents / folder / "all.json").write_text(json.dumps(whole), encoding="utf-8")


def _entry(path: str, kind: str, size: int | None) -> dict:
    return {
        "name": path.rpartition("/")[2],
        "path": path,
        "type": kind,
        "writable": kind == "directory",
        "created": LONG_AGO,
        "last_modified": LONG_AGO,
        "size": size,
        "content": None,
        "format": None,
        "mimetype": None,
        "hash": None,
        "hash_algorithm": None,
    }
