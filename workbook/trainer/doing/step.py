"""One step of the page: boxes to fill in, a button, what came of it, and the command for a terminal."""

from collections.abc import Callable, Sequence
from pathlib import Path

from ipywidgets import HTML, Box, VBox, Widget

from solver import SolverError
from workbook.trainer.terminal import in_terminal
from workbook.ui.controls import Panel, button, classed
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import say
from workbook.ui.saving import link

from .line import do

__all__ = ["Step", "saved_link"]

MOST_LINKED = 20_000_000  # bytes of a file that a link on the page may hold
KINDS = {".zip": "application/zip", ".csv": "text/csv", ".pdf": "application/pdf"}


def saved_link(path: Path) -> Widget | None:
    """A link that saves a file of the course, where there is one and a page can hold it."""
    if not path.is_file() or path.stat().st_size > MOST_LINKED:
        return None
    kind = KINDS.get(path.suffix, "text/html")
    return HTML(tag("p", link(f"Save {path.name}", path.name, kind, path.read_bytes())))


class Step:
    """`words` gives the words of the command, as they would be typed, or raises with what is missing.

    `makes` are the files it makes, of which links are shown, and `shows` is shown before them; `after`
    is told once it is done.
    """

    def __init__(
        self,
        panel: Panel,
        title: str,
        about: str,
        does: str,
        words: Callable[[], Sequence[str]],
        boxes: Sequence[Widget] = (),
        makes: Callable[[], Sequence[Path]] = tuple,
        after: Callable[[], None] = lambda: None,
        shows: Callable[[], Markup] = Markup,
    ):
        self._words, self._makes, self._after, self._shows = words, makes, after, shows
        self.said, self.links = HTML(say("")), VBox()
        self.run = button(does, panel.once(self._run), first=True)
        self.box = VBox(
            [
                HTML(joined(tag("h4", title), tag("p", about, cls="w2w-about"))),
                *([classed(Box(list(boxes)), "w2w-grid")] if boxes else []),
                classed(Box([self.run]), "w2w-buttons"),
                self.said,
                self.links,
            ]
        )

    def _run(self) -> None:
        self.links.children = ()
        try:
            words = self._words()
        except SolverError as missing:
            self.said.value = say("missing", str(missing))
            return
        shown = in_terminal(words)
        said: list[str] = []
        self.said.value = say("note", "Working on it.", html=shown)
        try:
            for sentence in do(words):
                said.append(sentence)
                self.said.value = say("note", *said, html=shown)
        except SolverError as fault:
            self.said.value = say("fault", *said, str(fault), html=shown)
            return
        except OSError as error:
            why = f"{error.filename}: {error.strerror}. Check the name and the folder."
            self.said.value = say("fault", *said, why, html=shown)
            return
        self.said.value = say("note", *(said or ["Done."]), html=shown)
        above = [HTML(html)] if (html := self._shows()) else []
        self.links.children = (*above, *filter(None, map(saved_link, self._makes())))
        self._after()
