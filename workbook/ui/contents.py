"""The list of chapters on the opening page, read from the chapters themselves; and work set."""

import re
from html import escape
from pathlib import Path
from typing import NamedTuple
from urllib.parse import quote

from .pages import CHAPTERS, MARK, OPENING, code_cells, read_page, shipped_pages
from .shown import Shown

__all__ = ["Chapter", "chapters", "list_of_chapters", "sets_of_work", "titles"]

PLACES = ("*/*.ipynb", "*/*/*.ipynb")  # a set as it came, or as a packed folder opens
PRACTICE = re.compile(r'^page\.practice\("(\w+)"\)', re.MULTILINE)


class Chapter(NamedTuple):
    """A chapter's file, its title, and its first sentence."""

    file: str
    title: str
    about: str


def chapters(folder: Path = CHAPTERS) -> list[Chapter]:
    """Every chapter in order of reading, but for the opening page."""
    return [_chapter(path) for path in shipped_pages(folder) if path.name != OPENING]


def _chapter(path: Path) -> Chapter:
    """The title is the page's first heading; what it covers, the paragraph under it."""
    first = next(c for c in read_page(path)["cells"] if c["cell_type"] == "markdown")
    heading, _, rest = "".join(first["source"]).partition("\n")
    about = " ".join(rest.strip().partition("\n\n")[0].split())
    return Chapter(path.name, heading.lstrip("# ").strip(), about)


def titles(folder: Path = CHAPTERS) -> dict[str, str]:
    """The title of each page with a practice card, by the chapter that the card practises."""
    return {
        name: _chapter(path).title
        for path in shipped_pages(folder)
        for name in PRACTICE.findall("\n".join(code_cells(path)))
    }


def sets_of_work(folder: Path) -> list[tuple[str, str]]:
    """The pages that a trainer sent, below a folder: where each is, and its title."""
    pages = sorted(page for place in PLACES for page in folder.glob(place))
    titled = [(page.relative_to(folder).as_posix(), _title_of_set(page)) for page in pages]
    return [(at, title) for at, title in titled if title]


def _title_of_set(path: Path) -> str:
    """Empty where it is none: a set is called as its folder is, and has the mark of its writer."""
    if path.stem != path.parent.name:
        return ""
    try:
        if not isinstance(read_page(path)["metadata"][MARK]["set"], str):
            return ""
        return re.sub(r"\\(.)", r"\1", _chapter(path).title)
    except (OSError, ValueError, LookupError, TypeError, AttributeError, StopIteration):
        return ""  # whatever it is, another program wrote it


def list_of_chapters(folder: Path = CHAPTERS, own: Path | None = None) -> Shown:
    """The chapters as links beside the opening page, under what a trainer sent to `own`."""
    found = chapters(folder)
    items = "".join(
        f'<li><a href="{quote(c.file)}">{escape(c.title)}</a><br>{escape(c.about)}</li>'
        for c in found
    )
    text = "\n".join(f"{c.title}: {c.about} ({c.file})" for c in found)
    chosen = f'<ul class="w2w-contents">{items}</ul>'
    if work := sets_of_work(own or Path.cwd()):
        links = "".join(f'<li><a href="{quote(at)}">{escape(name)}</a></li>' for at, name in work)
        chosen = f'<h3>From your trainer</h3><ul class="w2w-contents">{links}</ul><h3>Chapters</h3>{chosen}'
    return Shown(chosen, text)
