"""The pages that ship: which they are, and what is in them."""

import hashlib
import json
from pathlib import Path

__all__ = [
    "CHAPTERS",
    "MARK",
    "OPENING",
    "TRAINERS",
    "TRAINERS_OPENING",
    "code_cells",
    "fingerprint",
    "shipped_pages",
]

CHAPTERS = Path(__file__).resolve().parents[1] / "chapters"
OPENING = "00-start-here.ipynb"
TRAINERS = CHAPTERS.parent / "trainer" / "pages"
TRAINERS_OPENING = "01-set-work.ipynb"
MARK = "wire_to_water"


def shipped_pages(folder: Path = CHAPTERS) -> list[Path]:
    """List the pages in their order of reading."""
    return sorted(folder.glob("*.ipynb"))


def read_page(path: Path) -> dict:
    """Read a notebook file; ValueError when it is not one."""
    page = json.loads(path.read_text(encoding="utf-8"))
    if not isinstance(page, dict) or not isinstance(page.get("cells"), list):
        raise ValueError(f"{path.name} is not a notebook")
    return page


def code_cells(path: Path) -> list[str]:
    """Return the text of each code cell, in order."""
    return [_source(cell) for cell in read_page(path)["cells"] if cell["cell_type"] == "code"]


def fingerprint(page: dict) -> str:
    """Tell one text of a page from another.

    Only the cells' kinds and texts count: Jupyter rewrites the rest whenever it saves.
    """
    texts = [[cell["cell_type"], _source(cell)] for cell in page["cells"]]
    return hashlib.sha256(json.dumps(texts).encode()).hexdigest()


def _source(cell: dict) -> str:
    source = cell["source"]
    return source if isinstance(source, str) else "".join(source)
