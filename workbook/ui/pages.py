"""The pages: which ship, what is in them, what each is called; and the sets that a trainer sent.

Only the standard library: the launcher and the server ask this before anything is shown.
"""

import hashlib
import json
import re
from functools import cache, lru_cache
from pathlib import Path
from typing import Any, NamedTuple

from .changed import Stamp, stamp_of

__all__ = [
    "CHAPTERS",
    "MARK",
    "OPENING",
    "PRACTICE",
    "TRAINERS",
    "TRAINERS_OPENING",
    "Chapter",
    "chapters",
    "code_cells",
    "fingerprint",
    "lessons",
    "read_page",
    "sets_of_work",
    "shipped_pages",
    "titles",
]

CHAPTERS = Path(__file__).resolve().parents[1] / "chapters"
OPENING = "00-start-here.ipynb"
TRAINERS = CHAPTERS.parent / "trainer" / "pages"
TRAINERS_OPENING = "01-set-work.ipynb"
MARK = "wire_to_water"
PLACES = ("*/*.ipynb", "*/*/*.ipynb")  # a set as it came, or as a packed folder opens
MOST_SETS = 200  # that are remembered
PRACTICE = re.compile(r'^page\.practice\("(\w+)"\)', re.MULTILINE)


def shipped_pages(folder: Path = CHAPTERS) -> list[Path]:
    """List the pages by their files' names, which stay as they were given out."""
    return sorted(folder.glob("*.ipynb"))


def read_page(path: Path) -> dict[str, Any]:
    """Read a notebook file.

    Raises:
        ValueError: it is not one.
        OSError: it cannot be read.
    """
    page = json.loads(path.read_text(encoding="utf-8"))
    if not isinstance(page, dict) or not isinstance(page.get("cells"), list):
        raise ValueError(f"{path.name} is not a notebook")
    return page


def code_cells(path: Path) -> list[str]:
    """Return the text of each code cell, in order."""
    return [_source(cell) for cell in read_page(path)["cells"] if cell["cell_type"] == "code"]


def fingerprint(page: dict[str, Any]) -> str:
    """Tell one text of a page from another.

    Only the cells' kinds and texts count: Jupyter rewrites the rest whenever it saves.
    """
    texts = [[cell["cell_type"], _source(cell)] for cell in page["cells"]]
    return hashlib.sha256(json.dumps(texts).encode()).hexdigest()


def _source(cell: dict[str, Any]) -> str:
    source = cell["source"]
    return source if isinstance(source, str) else "".join(source)


class Chapter(NamedTuple):
    """A chapter's file, its title, and its first sentence."""

    file: str
    title: str
    about: str


def chapters(folder: Path = CHAPTERS) -> list[Chapter]:
    """Every page but the opening page: the chapters in order of reading, then those without a number."""
    found = [_chapter(path) for path in shipped_pages(folder) if path.name != OPENING]
    numbered = {page.file for page in lessons(folder).values()}
    return sorted(found, key=lambda page: page.file not in numbered)


def _chapter(path: Path) -> Chapter:
    """The title is the page's first heading; what it covers, the first paragraph that is none."""
    cells = read_page(path)["cells"]
    texts = [_source(cell).strip() for cell in cells if cell["cell_type"] == "markdown"]
    heading, _, rest = "\n\n".join(texts).partition("\n")
    paragraphs = (part.strip() for part in rest.split("\n\n"))
    about = next((part for part in paragraphs if part and not part.startswith("#")), "")
    return Chapter(path.name, heading.lstrip("# ").strip(), " ".join(about.split()))


@cache
def lessons(folder: Path = CHAPTERS) -> dict[str, Chapter]:
    """Each page with a practice card, by the chapter that the card practices."""
    return {
        name: _chapter(path)
        for path in shipped_pages(folder)
        for name in PRACTICE.findall("\n".join(code_cells(path)))
    }


def titles(folder: Path = CHAPTERS) -> dict[str, str]:
    """The title of each page with a practice card, by the chapter that the card practices."""
    return {name: page.title for name, page in lessons(folder).items()}


def sets_of_work(folder: Path) -> list[tuple[str, str]]:
    """The pages that a trainer sent, below a folder: where each is, and its title."""
    pages = sorted(page for place in PLACES for page in folder.glob(place))
    titled = [
        (page.relative_to(folder).as_posix(), _title_of_set(stamp_of(page))) for page in pages
    ]
    return [(at, title) for at, title in titled if title]


@lru_cache(maxsize=MOST_SETS)
def _title_of_set(stamp: Stamp) -> str:
    """Empty where it is none: a set is called as its folder is, and has the mark of its writer."""
    path = stamp.path
    if path.stem != path.parent.name:
        return ""
    try:
        if not isinstance(read_page(path)["metadata"][MARK]["set"], str):
            return ""
        return re.sub(r"\\(.)", r"\1", _chapter(path).title)
    except (OSError, ValueError, LookupError, TypeError, AttributeError, StopIteration):
        return ""  # whatever it is, another program wrote it
