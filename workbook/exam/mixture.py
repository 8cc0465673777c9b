"""The mixture of an exam: a share for each chapter, as text to keep, to send and to paste.

Several are kept by a name in front of their line (workbook/ui/kept_mixtures.py). The text of the last exam that
was started with one is kept beside the exams, and is there again.
"""

from collections.abc import Callable, Mapping
from contextlib import suppress
from pathlib import Path

from ipywidgets import HTML, VBox, Widget

from solver import SolverError
from solver.sets.mixtures import Mixtures, mixture_named, mixture_of, mixtures_text, read_mixtures
from solver.sets.paper import CHAPTERS, MOST
from solver.sets.shares import counts_of
from workbook.ui.contents import titled
from workbook.ui.controls import Panel, button, chooser, classed, row, show
from workbook.ui.entry import Gate, Paste, whole_number
from workbook.ui.kept_mixtures import KeptMixtures, chapters_called
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
    "To keep several, write a name and a colon in front: “Grade 2: head 30, wet well 20”. Then press Keep it, and "
    "choose it here next time. The line is all there is to it. Send it to your class: pasted here, it gives the "
    "same mixture. Several lines, one mixture each, can be kept at once."
)
EVEN = 10  # the share of every chapter, where all are filled in to be changed
CHOOSE = ("Choose one", "")
ALL = ("All of them, as text to send", "*")
NO_NAME = "It has no name yet. Write one in front, with a colon: “Grade 2: head 30, wet well 20”."


class Mixture:
    """A place for the shares; `count` gives how many questions were typed, for the table of them."""

    def __init__(self, panel: Panel, where: Path, count: Callable[[], str], start: Gate):
        self._last, self._count = where / "shares.txt", count
        self.kept = KeptMixtures(where.parent)
        see, keep = Gate(panel, self._see), Gate(panel, self._keep)
        self.choose = chooser("Mixtures you keep", [CHOOSE], panel.safely(self._chosen))
        self.text = Paste("Shares", see, keep, start)
        self.fill = button("Fill in every chapter", panel.once(self._fill))
        self.see = button("Show the mixture", see.click)
        self.store = button("Keep it", keep.click)
        self.drop = button("Delete it from the list", panel.once(self._drop))
        self.said = HTML(say(""))
        with suppress(OSError, UnicodeDecodeError):
            self.text.fill(self._last.read_text(encoding="utf-8"))
        self._list()
        about = [HTML(tag("p", text, cls="w2w-about")) for text in (ABOUT, KEEP)]
        buttons = row("w2w-buttons", self.see, self.fill, self.store, self.drop)
        shares = row("w2w-ask", self.text.box)
        parts = [self.choose, about[0], shares, buttons, self.said, about[1]]
        self.box: Widget = classed(VBox(parts), "w2w-wanted")
        if strange := self.kept.strange():
            self._tell(
                "notice", f"{self.kept.path} has a line that can't be read: “{strange[0][:60]}”."
            )

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
        return mixture_of(text, self.kept.read(), chapters_called()) if text.strip() else {}

    def keep(self) -> None:
        """Keep the text for the next time; an exam starts all the same where it can't be."""
        with suppress(OSError):
            self._last.parent.mkdir(parents=True, exist_ok=True)
            self._last.write_text(self.text.box.value, encoding="utf-8")

    def _list(self, chosen: str = "") -> None:
        """The names in the list as they are kept now, with this one chosen."""
        names = list(self.kept.read())
        several = [ALL] if len(names) > 1 else []
        self.choose.put(chosen, [CHOOSE, *((name, name) for name in names), *several])
        show(self.choose, names)
        show(self.drop, chosen in names)

    def _chosen(self, name: str) -> None:
        there = self.kept.read()
        if name == ALL[1] or name in there:
            self.text.fill(mixtures_text(there if name == ALL[1] else {name: there[name]}))
            self.said.value = say("")
        show(self.drop, name in there)

    def _keep(self) -> None:
        try:
            mixtures = read_mixtures(self.text.box.value, chapters_called())
            if "" in mixtures:
                raise SolverError(NO_NAME)
            replaced = self.kept.keep(mixtures)
        except SolverError as refusal:
            self._tell("missing", str(refusal))
            return
        except OSError as fault:
            self._tell("fault", f"It couldn't be kept in {self.kept.path}: {fault.strerror}.")
            return
        self._list("" if len(mixtures) > 1 else next(iter(mixtures)))
        old = [f"It takes the place of the earlier “{name}”." for name in replaced]
        self._tell("worked", f"Kept: {_names(mixtures)}.", *old)

    def _drop(self) -> None:
        """Keep the chosen one no more; its line stays in the box."""
        name = mixture_named(self.choose.value, self.kept.read())
        if not name:
            return
        try:
            self.kept.drop(name)
        except OSError as fault:
            self._tell("fault", f"{self.kept.path} couldn't be changed: {fault.strerror}.")
            return
        self._list()
        back = "Its line is still in the box. To have it back, press Keep it."
        self._tell("worked", f"“{name}” isn't kept any more.", back)

    def _fill(self) -> None:
        """Add the chapters that aren't in the text yet; what is written stays, with its name."""
        try:
            written = self.shares()
            name = (
                next(iter(read_mixtures(self.text.box.value, chapters_called())), "")
                if written
                else ""
            )
        except SolverError as refusal:
            self._tell("missing", str(refusal))
            return
        every = {one: written.get(one, EVEN) for one in CHAPTERS}
        self.text.fill(mixtures_text({name: every}))
        self._see()

    def _see(self) -> None:
        try:
            shares = self.shares() or mixture_of(self.text.box.value)
            count = whole_number(self._count(), "questions", MOST)
        except SolverError as refusal:
            self._tell("missing", str(refusal))
            return
        self.said.value = say("note", html=mixture_html(shares, count))

    def _tell(self, state: str, *sentences: str) -> None:
        self.said.value = say(state, *sentences)


def _names(mixtures: Mixtures) -> str:
    return ", ".join(f"“{name}”" for name in mixtures)


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
