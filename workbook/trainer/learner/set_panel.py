"""Above the questions of a set: who works here and how the work stands. Below them: handing in."""

from collections.abc import Callable, Sequence
from contextlib import suppress
from datetime import UTC, datetime
from time import monotonic

from ipywidgets import HTML, Box, VBox

from solver import SolverError
from workbook.log import NotKept, NotRead
from workbook.ui.controls import PAUSE, Panel, button, classed, show
from workbook.ui.entry import Entry
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import say
from workbook.ui.saving import link
from workbook.ui.time_left import TimeLeft

from .own_set import SAY_WHO, NotListed, OwnSet
from .standing import standing
from .timing import limit_in_words, over_said, time_end
from .who import PERSON

__all__ = ["HandIn", "SetTop"]

WHO = "Your name or number, as your trainer has it"
ABOUT = "You type it once. Your answers are kept and graded under it."
OWN_NUMBERS = "The numbers in your questions come from it."
TRIED_OUT = "This is the course's own copy. What you try here isn't kept."
BY_HAND = f"If there is no box, type it into a file named {PERSON} next to this page, and run the page again."
ON_A_HUB = (
    "Save this page. Then open Assignment List in the Nbgrader menu, and choose Submit there."
)


class SetTop(Panel):
    """Who works here, asked once, and how the work stands."""

    def __init__(self, own: OwnSet, clock: Callable[[], float] = monotonic):
        super().__init__("w2w-set", clock=clock)
        self.own = own
        self._begun = -PAUSE
        self._doubted = ""  # a name that isn't on the list, which may be typed once more
        self.head, self.stands = HTML(), HTML()
        self.name = Entry(self, WHO, self._begin)
        self.use = button("Use this name", self.name.gate.click, first=True)
        self.other = button("Use another name", self.once(self._ask_again))
        ask = classed(Box([self.name.box, self.use]), "w2w-ask")
        self.asking = VBox([classed(HTML(tag("p", self._about())), "w2w-about"), ask])
        self.changing = classed(Box([self.other]), "w2w-buttons")
        self.open = button("Open the questions", self.once(self._open), first=True)
        self.opening = VBox([HTML(tag("p", _limit(own))), classed(Box([self.open]), "w2w-buttons")])
        self.clock_left = TimeLeft(self, self._beat, _over(own))
        self.timing = VBox([self.clock_left.box, self.clock_left.calm])
        self.put(
            self.head, self.asking, classed(self.said, "w2w-told"), self.opening, self.timing,
            self.stands, self.changing,
        )  # fmt: skip
        own.parts["top"] = self
        self.redraw()

    def _about(self) -> str:
        assigned = self.own.assigned
        own_numbers = assigned and assigned.work.each
        return f"{ABOUT} {OWN_NUMBERS}" if own_numbers else ABOUT

    def redraw(self) -> None:
        """All of it as it is now; what was said of a name holds until something is answered."""
        own, person = self.own, self.own.person
        ready = not own.fault
        show(self.asking, ready and not person.id)
        show(self.changing, ready and bool(person.id) and not person.signed_in)
        self.head.value = self._head()
        self.stands.value = _standing(own) if ready and person.id else ""
        self._redraw_time(ready and bool(person.id))
        if own.fault:
            self.said.value = say("missing", own.fault)
        elif person.note:
            self.said.value = say("notice", person.note)
        elif _begun(own):
            self.said.value = say("")

    def _redraw_time(self, ready: bool) -> None:
        """The button that opens the questions of a timed set, or the time that is left."""
        timed = ready and bool(self.own.assigned and self.own.assigned.minutes)
        left = _seconds_left(self.own) if timed else None
        show(self.opening, timed and left is None)
        show(self.timing, left is not None)
        if left is None:
            self.clock_left.stop()
        elif not self.clock_left.pulse.playing:
            self.clock_left.start(left)

    def _beat(self) -> None:
        if (left := _seconds_left(self.own)) is not None:
            self.clock_left.show(left)

    def _open(self) -> None:
        try:
            self.own.open_questions()
        except (NotKept, NotRead) as fault:
            self.said.value = say("fault", str(fault))

    def _head(self) -> Markup:
        if not (name := self.own.person.id):
            return tag("h3", "Who you are")
        tried = tag("p", TRIED_OUT) if self.own.course_copy else None
        return joined(tag("h3", "Your work"), tag("p", "Name or number: ", tag("b", name)), tried)

    def _begin(self, text: str) -> None:
        again, self._doubted = text == self._doubted, ""
        try:
            self.own.begin_as(text, sure=again)
        except NotListed as doubt:
            self._doubted = text
            self.said.value = say("notice", str(doubt))
            return
        except SolverError as refusal:
            self.said.value = say("unreadable", str(refusal))
            return
        except NotKept as fault:
            self.said.value = say("fault", str(fault))
            return
        timed = bool(self.own.assigned and self.own.assigned.minutes)
        self.said.value = say(
            "note",
            "Your time starts when you open the questions."
            if timed
            else "Your questions are below.",
            "If the name is wrong, change it before you answer.",
        )
        self._begun = self.clock()
        self.other.focus()

    def _ask_again(self) -> None:
        if self.clock() - self._begun < PAUSE:
            return  # the second press of Enter, which meant the name
        before = self.own.person.id
        try:
            self.own.ask_again()
        except (SolverError, NotRead) as refusal:
            self.said.value = say("note", str(refusal))
            return
        self.name.fill(before)
        self.said.value = say(
            "note", "You haven't answered anything yet, so you can change the name."
        )
        self.name.box.focus()

    def plain(self) -> dict[str, str]:
        """What a page that can show no widgets has in their place."""
        shown = Markup(self.head.value + self.stands.value)
        asks = self.own.fault or ("" if self.own.person.id else f"{WHO}. {BY_HAND}")
        return {**super().plain(), "text/html": str(shown + tag("p", asks))}


class HandIn(Panel):
    """How the work stands, and how it is handed in."""

    def __init__(self, own: OwnSet, clock: Callable[[], float] = monotonic):
        super().__init__("w2w-set", clock=clock)
        self.own = own
        self.stands, self.saved = HTML(), HTML()
        self.pack = button("Save your work as one file", self.once(self._pack), first=True)
        self.packing = classed(Box([self.pack]), "w2w-buttons")
        self.put(self.stands, self.packing, classed(self.said, "w2w-told"), self.saved)
        own.parts["end"] = self
        self.redraw()

    def redraw(self) -> None:
        """How it stands now; a file made before is no longer all of it."""
        own = self.own
        ready = not own.fault and bool(own.person.id)
        how = ON_A_HUB if own.person.signed_in else own.by_file
        show(self.packing, ready and not own.course_copy)
        self.saved.value, self.said.value = "", say("")
        self.stands.value = joined(_standing(own), tag("p", how)) if ready else ""
        if not ready:
            self.stands.value = tag("p", own.fault or SAY_WHO, cls="w2w-about")

    def _pack(self) -> None:
        try:
            file = self.own.packed()
        except SolverError as nothing:
            self.said.value = say("note", str(nothing))
            return
        except NotRead as fault:
            self.said.value = say("fault", str(fault))
            return
        self.saved.value = tag("p", link("Save the file", file.name, file.kind, file.data))
        missing = [
            f"It doesn't have {each}, because that isn't in the folder." for each in file.lacks
        ]
        self.said.value = say("note", "The file is ready. Click the link to save it.", *missing)

    def plain(self) -> dict[str, str]:
        """What a page that can show no widgets has in their place."""
        return {**super().plain(), "text/html": self.stands.value}


def _limit(own: OwnSet) -> str:
    if not (assigned := own.assigned) or not assigned.minutes:
        return ""
    return f"{limit_in_words(assigned)} The clock goes on when you close the page."


def _over(own: OwnSet) -> str:
    return f"Time is up. {over_said(own.assigned)}" if own.assigned else ""


def _seconds_left(own: OwnSet) -> float | None:
    """The seconds that are left; None before the questions are opened, or where the sheet can't be read."""
    with suppress(NotRead):
        if own.assigned and own.sheet and (opened := own.sheet.opened()):
            return (time_end(own.assigned, opened) - datetime.now(UTC)).total_seconds()
    return None


def _begun(own: OwnSet) -> bool:
    with suppress(NotRead):
        return own.begun()
    return False


def _standing(own: OwnSet) -> Markup:
    said: Sequence[str]
    try:
        said = standing(own)
    except NotRead as fault:
        said = [str(fault)]
    return joined(tag("p", sentence) for sentence in said)
