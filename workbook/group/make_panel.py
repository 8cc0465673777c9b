"""A set made: from codes that are typed, and from problems drawn; its text to copy, and its link."""

import secrets
from collections.abc import Callable
from time import monotonic

from ipywidgets import HTML, Box

from solver import SolverError
from solver.fault.case import fault_case
from solver.sets.paper import CHAPTERS, SEEDS, Paper
from solver.sets.paper_questions import cases_of
from solver.units.show import counted
from workbook.ui import static_site
from workbook.ui.contents import titled
from workbook.ui.controls import UNIT_CHOICES, Panel, button, chooser, classed, show
from workbook.ui.entry import Entry, Gate, Paste, whole_number
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import say
from workbook.ui.qr import elsewhere

from .own_group import OwnGroup
from .set_link import PAGE, WORD, link_at
from .set_text import MOST, MOST_TITLE, BadSet, ProblemSet, codes_in, questions_of, set_of

__all__ = ["MakePanel"]

LEVELS = [("Level 1", 1), ("Level 2", 2), ("Level 3", 3), ("Any level", 0)]
ABOUT = (
    "Type the codes of problems you have seen, or add random problems. "
    "You can move codes around and remove some."
)
NO_CODES = "The list of codes is empty. Choose “Add problems” to fill it, or type the codes of problems you have seen. Then make the set."
SEND = "Copy this text into a message to your group. Everyone who opens it gets the same problems."
SITE = "Address of your group's site, if it has one"


class MakePanel(Panel):
    """Where a set is made."""

    def __init__(
        self,
        own: OwnGroup,
        units: str = "us",
        pick: Callable[[int], int] = secrets.randbelow,
        clock: Callable[[], float] = monotonic,
    ):
        super().__init__("w2w-together", clock=clock)
        self.own, self.pick = own, pick
        self.problems: ProblemSet | None = None
        drawing, making = Gate(self, self._draw), Gate(self, self._make)
        self._make_boxes(drawing, making, units)
        self.add = button("Add problems", drawing.click)
        self.add_case = button("Add a case of find the fault", self.once(self._draw_case))
        self.make = button("Make the set", making.click, first=True)
        self.here = button("Open it on this page", self.once(self._open))
        self.made = HTML()
        self.open_row = classed(Box([self.here]), "w2w-buttons")
        self.put(*self._parts())
        self._show()

    def _make_boxes(self, drawing: Gate, making: Gate, units: str) -> None:
        chapters = [("All chapters", CHAPTERS)]
        chapters += [(title, (name,)) for name, title in titled(CHAPTERS).items()]
        self.chapter = chooser("Chapter", chapters, lambda _: None)
        self.level = chooser("Level", LEVELS, lambda _: None)
        self.units = chooser("Units", UNIT_CHOICES, lambda _: None, units)
        self.count = Entry(self, f"How many, 1 to {MOST}", lambda _: None, drawing).numbers()
        self.count.fill("5")
        self.codes = Paste("Codes of the problems, in order", drawing, making)
        self.title = Entry(self, "Title of the set", lambda _: None, making)
        self.site = Entry(self, SITE, lambda _: None, making)

    def _parts(self) -> list:
        drawn = [self.chapter, self.level, self.units, self.count.box]
        site = [] if static_site.link_to_page(PAGE) else [self.site.box]
        named = classed(Box([self.title.box, *site]), "w2w-grid")
        return [
            HTML(tag("p", ABOUT, cls="w2w-about")),
            classed(Box(drawn), "w2w-grid"),
            classed(Box([self.add, self.add_case]), "w2w-buttons"),
            classed(Box([self.codes.box]), "w2w-ask"),
            named,
            classed(Box([self.make]), "w2w-buttons"),
            classed(self.said, "w2w-told"),
            self.made,
            self.open_row,
        ]

    def _draw(self) -> None:
        """Add fresh problems to the codes that are there."""
        before = codes_in(self.codes.box.value)
        try:
            count = whole_number(self.count.box.value, "problems", MOST)
            if len(before) + count > MOST:
                raise SolverError(f"A set has at most {MOST} problems; {len(before)} are there.")
        except SolverError as refusal:
            self.said.value = say("missing", str(refusal))
            return
        level, units = self.level.value, self.units.value
        paper = Paper(self.chapter.value, level, units, count, 60, False, self.pick(SEEDS))
        fresh = [case.code for case in cases_of(paper)]
        self.codes.fill("\n".join([*before, *fresh]))
        many = counted(len(before) + count, "problem")
        self.said.value = say("note", f"{count} added. The set has {many} now; make it below.")

    def _draw_case(self) -> None:
        """Add a fresh case of the level chosen, or of level 1 where any will do."""
        before = codes_in(self.codes.box.value)
        if len(before) >= MOST:
            self.said.value = say(
                "missing", f"A set has at most {MOST} problems; {len(before)} are there."
            )
            return
        case = fault_case(self.level.value or 1, self.units.value, self.pick(SEEDS))
        self.codes.fill("\n".join([*before, str(case.code)]))
        self.said.value = say(
            "note", f"A case of level {case.level} was added. When all are there, make the set."
        )

    def _make(self) -> None:
        try:
            title = self.title.box.value
            if len(title) > MOST_TITLE:
                raise BadSet(f"A title has up to {MOST_TITLE} characters; yours has {len(title)}.")
            if not (codes := codes_in(self.codes.box.value)):
                raise BadSet(NO_CODES)
            problems = set_of(title, codes)
            self._are_here(problems)
            self.link = self._link(problems)
        except BadSet as refusal:
            self.said.value = say("unreadable", *refusal.sentences)
            return
        self.problems = problems
        self.said.value = say("note", "The set is ready. Its text is below.")
        self._show()

    def _are_here(self, problems: ProblemSet) -> None:
        """What others should open must open here first."""
        faults = [
            f"Problem {one.number}: {one.fault}" for one in questions_of(problems) if one.fault
        ]
        if faults:
            raise BadSet(*faults)

    def _link(self, problems: ProblemSet) -> str:
        if here := static_site.link_to_page(PAGE, **{WORD: problems.text}):
            return here
        typed = self.site.box.value.strip()
        return link_at(typed, problems) if typed else ""

    def _show(self) -> None:
        """The text, the link and the problems of the set that was made last."""
        problems = self.problems
        show(self.open_row, problems)
        if not problems:
            return
        self.made.value = joined(
            tag("h3", problems.name),
            tag("p", SEND),
            tag(
                "textarea",
                problems.text,
                cls="w2w-copy",
                readonly=True,
                rows=4,
                aria_label=f"Text of {problems.name}, to copy",
            ),
            self._sent_as_link(),
            tag("p", "The problems, in order:"),
            tag("ol", (tag("li", one.title) for one in questions_of(problems))),
        )

    def _sent_as_link(self) -> Markup | None:
        if not self.link:
            return None
        to = tag("a", self.link, cls="w2w-save", href=self.link, target="_blank", rel="noreferrer")
        sent = tag("p", "Or send this link, which opens the set in a browser:", tag("br"), to)
        return joined(sent, elsewhere(self.link, "Open it on another device"))

    def _open(self) -> None:
        if self.problems is None:
            return
        self.own.open(self.problems)
        self.said.value = say("note", "The set is open above, under “Work on a set”.")
