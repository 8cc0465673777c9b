"""Find the fault: a station that misbehaves, measured on one panel, named, and looked back on.

    story.py        one person's case: its file, a line for each thing done, so a closed tab loses nothing
    view.py         the station, the clipboard, the review, as HTML
    readings.py     the buttons: readings by what they need, the steps before them
    stand.py        the case being worked: station, readings, clipboard, name it and act
    fault_panel.py  the panel: choose a case, work it, see the review
    printed.py      a case on paper, by case.typ

What other rooms take is named here. What shows anything in widgets is loaded when it is asked for, so that a
class is marked without them. The engine beneath is solver/fault.
"""

from typing import TYPE_CHECKING

from .printed import printed as case_on_paper
from .story import Story, Worked, attempt_of_way, begin, folder, story_of, way_in
from .view import LOOK, head_html, review_html

if TYPE_CHECKING:
    from .stand import Stand

__all__ = [
    "LOOK",
    "Stand",
    "Story",
    "Worked",
    "attempt_of_way",
    "begin",
    "case_on_paper",
    "folder",
    "head_html",
    "review_html",
    "story_of",
    "way_in",
]


def __getattr__(name: str) -> object:
    if name == "Stand":
        from .stand import Stand

        return Stand
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
