"""What the chapters are called, and the list of them on the opening page."""

from collections.abc import Iterable
from pathlib import Path
from urllib.parse import quote

from .markup import Markup, joined, tag
from .pages import CHAPTERS, Chapter, chapters, lessons, titles
from .pieces import Shown

__all__ = ["in_words", "list_of_chapters", "titled"]


def in_words(chapter: str) -> str:
    """What a chapter without a page is called."""
    return chapter.replace("_", " ").capitalize()


def titled(chapters: Iterable[str]) -> dict[str, str]:
    """Chapters by name, with what each is called, in the order of reading.

    A chapter that has no page yet stands last.
    """
    named = titles()
    places = {name: place for place, name in enumerate(named)}
    return {
        name: named.get(name) or in_words(name)
        for name in sorted(chapters, key=lambda name: places.get(name, len(places)))
    }


def list_of_chapters(folder: Path = CHAPTERS) -> Shown:
    """The chapters as links beside the opening page, then the other pages, each with what it covers."""
    found, numbered = chapters(folder), len(lessons(folder))
    shown = joined(_list(found[:numbered]), tag("h3", "More pages"), _list(found[numbered:]))
    return Shown(shown, "\n".join(f"{c.title}: {c.about} ({c.file})" for c in found))


def _list(pages: Iterable[Chapter]) -> Markup:
    items = (tag("li", tag("a", c.title, href=quote(c.file)), tag("br"), c.about) for c in pages)
    return tag("ul", items, cls="w2w-contents")
