"""The list of chapters on the opening page, read from the chapters themselves."""

import re
from html import escape
from pathlib import Path
from typing import NamedTuple
from urllib.parse import quote

from .pages import CHAPTERS, OPENING, code_cells, read_page, shipped_pages
from .shown import Shown

__all__ = ["Chapter", "chapters", "list_of_chapters", "titles"]

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


def list_of_chapters(folder: Path = CHAPTERS) -> Shown:
    """The chapters as links beside the opening page."""
    found = chapters(folder)
    items = "".join(
        f'<li><a href="{quote(c.file)}">{escape(c.title)}</a><br>{escape(c.about)}</li>'
        for c in found
    )
    text = "\n".join(f"{c.title}: {c.about} ({c.file})" for c in found)
    return Shown(f'<ul class="w2w-contents">{items}</ul>', text)
