"""What the chapters are called, and the list of them on the opening page, under work that was set."""

from collections.abc import Iterable
from pathlib import Path
from urllib.parse import quote

from .markup import Child, Markup, joined, tag
from .pages import CHAPTERS, chapters, sets_of_work, titles
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


def list_of_chapters(folder: Path = CHAPTERS, own: Path | None = None) -> Shown:
    """The chapters as links beside the opening page, under what a trainer sent to `own`."""
    found = chapters(folder)
    items = [[_link(c.file, c.title), tag("br"), c.about] for c in found]
    shown = _links(items)
    if work := sets_of_work(own or Path.cwd()):
        sent = _links(_link(at, name) for at, name in work)
        shown = joined(tag("h3", "From your trainer"), sent, tag("h3", "Chapters"), shown)
    return Shown(shown, "\n".join(f"{c.title}: {c.about} ({c.file})" for c in found))


def _link(file: str, title: str) -> Markup:
    return tag("a", title, href=quote(file))


def _links(items: Iterable[Child]) -> Markup:
    return tag("ul", (tag("li", item) for item in items), cls="w2w-contents")
