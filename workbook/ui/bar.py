"""Where the bar above every page leads: made from the pages that are there.

Only the standard library: the server asks this before anything is shown.
"""

from pathlib import Path
from typing import Any

from .pages import CHAPTERS, OPENING, TRAINERS, chapters, shipped_pages

__all__ = ["FORMULAS", "SEARCH", "bar_of"]

FORMULAS = "16-formulas-and-tables.ipynb"
SEARCH = "wire-to-water/search.json"  # below the address of the server, or of the site
IN_LIST = "Chapters"
# A page has its own place in the bar, or else is in the list of chapters.
PLACES = {
    "Home": OPENING,
    "Study": "14-your-study.ipynb",
    IN_LIST: "",
    "Exam": "15-practice-exam.ipynb",
    "Find the fault": "18-find-the-fault.ipynb",
    "Formulas": FORMULAS,
    "Record": "13-pump-day-record.ipynb",
    "Group": "17-group-study.ipynb",
}


def bar_of(folder: Path = CHAPTERS) -> dict[str, Any]:
    """The places in the bar over a folder's pages, each with its page or its list of pages; what to search."""
    pages = {path.name for path in shipped_pages(folder)}
    named = [{"name": one.title, "page": one.file} for one in chapters(folder)]
    if folder == TRAINERS:
        return {"places": named}
    listed = [one for one in named if one["page"] not in PLACES.values()]
    places = [
        {"name": name, "pages": listed} if name == IN_LIST else {"name": name, "page": page}
        for name, page in PLACES.items()
        if name == IN_LIST or page in pages
    ]
    found = {"search": SEARCH, "formulas": FORMULAS} if FORMULAS in pages else {}
    return {"places": places, **found}
