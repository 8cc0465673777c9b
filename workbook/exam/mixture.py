"""The mixture of an exam: a share for each chapter, as text to keep, to send and to paste.

The text of the last exam that was started with one is kept beside the exams, and is there again.
"""

from collections.abc import Callable, Mapping
from contextlib import suppress
from pathlib import Path

from ipywidgets import HTML, VBox, Widget

from solver import SolverError
from solver.sets.paper import CHAPTERS, MOST
from solver.sets.shares import counts_of, read_shares, shares_text
from workbook.ui.contents import titled
from workbook.ui.controls import Panel, button, classed, row
from workbook.ui.entry import Gate, Paste, whole_number
from workbook.ui.markup import Markup, tag
from workbook.ui.pieces import say, table

__all__ = ["Mixture", "mixture_html"]

NAME = "Set a share for each chapter"
ABOUT = (
    "An exam for your certificate and grade asks more of some chapters than of others. Look up in its own outline "
    "how much of each it asks. Write a share beside each chapter, from 1 to 99: head 30, wet well 20. "
    "Chapters you don't name aren't asked. To use the checked chapters again, empty this box."
)
KEEP = (
    "This line is all there is to keep. Save it in a file, or send it to your class: pasted here, it gives the same "
    "mixture. An exam's code has the mixture in it too."
)
EVEN = 10  # the share of every chapter, where all are filled in to be changed


class Mixture:
    """A place for the shares; `count` gives how many questions were typed, for the table of them."""

    def __init__(self, panel: Panel, where: Path, count: Callable[[], str], start: Gate):
        self._kept, self._count = where / "shares.txt", count
        see = Gate(panel, self._see)
        self.text = Paste("Shares", see, start)
        self.fill = button("Fill in every chapter", panel.once(self._fill))
        self.see = button("Show the mixture", see.click)
        self.said = HTML(say(""))
        with suppress(OSError, UnicodeDecodeError):
            self.text.fill(self._kept.read_text(encoding="utf-8"))
        about = [HTML(tag("p", text, cls="w2w-about")) for text in (ABOUT, KEEP)]
        buttons = row("w2w-buttons", self.see, self.fill)
        parts = [about[0], row("w2w-ask", self.text.box), buttons, self.said, about[1]]
        self.box: Widget = classed(VBox(parts), "w2w-wanted")

    @property
    def is_kept(self) -> bool:
        """Whether there are shares in the box."""
        return bool(self.text.box.value.strip())

    def shares(self) -> dict[str, int]:
        """The share of each chapter; nothing where none are written.

        Raises:
            SolverError: they can't be read; the sentence says what to write.
        """
        text = self.text.box.value
        return read_shares(text, _called()) if text.strip() else {}

    def keep(self) -> None:
        """Keep the text for the next time; an exam starts all the same where it can't be."""
        with suppress(OSError):
            self._kept.parent.mkdir(parents=True, exist_ok=True)
            self._kept.write_text(self.text.box.value, encoding="utf-8")

    def _fill(self) -> None:
        """Add the chapters that aren't in the text yet; what is written stays."""
        try:
            written = self.shares()
        except SolverError as refusal:
            self.said.value = say("missing", str(refusal))
            return
        self.text.fill(shares_text({name: written.get(name, EVEN) for name in CHAPTERS}))
        self._see()

    def _see(self) -> None:
        try:
            shares = self.shares() or read_shares(self.text.box.value)
            count = whole_number(self._count(), "questions", MOST)
        except SolverError as refusal:
            self.said.value = say("missing", str(refusal))
            return
        self.said.value = say("note", html=mixture_html(shares, count))


def _called() -> dict[str, str]:
    """The chapters by their titles, without a number in front."""
    return {title.partition(". ")[2] or title: name for name, title in titled(CHAPTERS).items()}


def mixture_html(shares: Mapping[str, int], count: int) -> Markup:
    """How many of so many questions each chapter gives."""
    each = dict(zip(shares, counts_of(count, list(shares.values())), strict=True))
    whole = sum(shares.values())
    rows = [
        (title, f"{shares[name] / whole:.0%}", each[name]) for name, title in titled(shares).items()
    ]
    return table(
        rows, f"Of {count} questions", ("Chapter", "Share", "Questions"), "w2w-givens w2w-tallies"
    )
