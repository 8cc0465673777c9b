"""A set opened as a page of cards: all its questions in order, a name, and the result as a file."""

from collections.abc import Callable
from time import monotonic

from ipywidgets import HTML, Box, VBox

from solver import Case
from solver.fault.case import FaultCase
from solver.units.show import counted
from workbook.practice import Try
from workbook.ui.controls import Panel, button, classed, show
from workbook.ui.entry import Entry, Gate, Paste
from workbook.ui.markup import joined, tag
from workbook.ui.pieces import listed, say
from workbook.ui.saving import link

from .own_group import OwnGroup
from .posed import Posed, PosedCard
from .posed_case import PosedCase
from .results import KIND, result_file
from .set_text import BadSet, ProblemSet, read_set

__all__ = ["WorkPanel"]

ABOUT = (
    "Paste the message with the set, and open it. A link to the set opens it by itself. "
    "There is no server and no account, and nothing is sent anywhere."
)
WHO = "Your name in the group, if you like"
ABOUT_NAME = (
    "Your answers are kept under it, in your own log. It is also in your result, where "
    "others see it. If two people share a computer, each types their own."
)
ALREADY = (
    "There are {} to this set under that name on this device. If you are somebody else, add a letter "
    "of your last name."
)
NO_NAME = "Answers are kept without a name from now on."
ABOUT_RESULT = (
    "Your result is a small file: your answers, when you gave them, and your name. "
    "Send it to whoever puts the results together."
)


class WorkPanel(Panel):
    """The set that is open: where to paste one, then its cards, then the result to save."""

    def __init__(self, own: OwnGroup, clock: Callable[[], float] = monotonic):
        super().__init__("w2w-together", clock=clock)
        self.own = own
        self.cards: dict[str, PosedCard | PosedCase] = {}
        self._shown: ProblemSet | None = None
        self.head, self.stands, self.saved = HTML(), HTML(), HTML()
        self.faults, self.asked, self.named = HTML(), VBox(), HTML(say(""))
        open_ = Gate(self, self._open)
        self.pasted = Paste("Text of the set", open_)
        self.open = button("Open this set", open_.click, first=True)
        save = Gate(self, self._save)
        self.name = Entry(self, WHO, self._call)
        self.name.box.observe(save.changed, "value")
        self.name.box.observe(self.safely(self._named), "value")
        self.save = button("Save my result", save.click, first=True)
        self.keeping = HTML(say(""))
        self.working = VBox(self._parts())
        about = HTML(tag("p", ABOUT, cls="w2w-about"))
        ask = classed(Box([self.pasted.box, self.open]), "w2w-ask")
        self.put(about, ask, classed(self.said, "w2w-told"), self.working)
        own.parts["work"] = self
        self._begin()

    def _parts(self) -> list:
        name = classed(Box([self.name.box]), "w2w-ask")
        about = [HTML(tag("p", text, cls="w2w-about")) for text in (ABOUT_NAME, ABOUT_RESULT)]
        buttons = classed(Box([self.save]), "w2w-buttons")
        result = [HTML(tag("h3", "Your result")), self.stands, about[1], buttons, self.saved]
        return [
            self.head, name, about[0], self.named, self.faults, self.asked,
            classed(VBox([*result, self.keeping]), "w2w-wanted"),
        ]  # fmt: skip

    def _begin(self) -> None:
        """Open what the address has; else show what was open before this cell ran again."""
        wrong = self.own.open_address()
        self.redraw()
        if wrong:
            self.said.value = say("unreadable", "There is no set in this link.", *wrong)

    def _open(self) -> None:
        try:
            problems = read_set(self.pasted.box.value)
        except BadSet as refusal:
            still = "The set you had open is still open." if self.own.problems else ""
            self.said.value = say("unreadable", *refusal.sentences, still)
            return
        if problems == self.own.problems:
            self.said.value = say("note", "This set is already open.")
            return
        self.own.open(problems)

    def redraw(self) -> None:
        """The set and the name as they are now; what is typed and not checked stays."""
        problems = self.own.problems
        show(self.working, problems)
        if not problems:
            return
        if problems != self._shown:
            self._show(problems)
        self.name.fill(self.own.name)
        made = self.own.made()
        for code, card in self.cards.items():
            ours = [each for each in made if each.code == code]
            if ours != card.before:  # else hints that were shown stay
                card.restore(ours)
        self._told()

    def _show(self, problems: ProblemSet) -> None:
        """The cards of a set just opened."""
        questions, left = self.own.questions, self._unchecked()
        self._shown = problems
        many = counted(len(questions), "question")
        about = f"{many}. This set’s ID is {problems.mark}; everyone in the group has the same one."
        self.head.value = joined(tag("h3", problems.name), tag("p", about, cls="w2w-about"))
        faults = [f"Question {one.number}: {one.fault}" for one in questions if one.fault]
        self.faults.value = say("notice", *faults, "The others are below.") if faults else ""
        self.cards = {one.code: self._card(one.number, one.case) for one in questions if one.case}
        self.asked.children = list(self.cards.values())
        self.said.value = say("note", f"“{problems.name}” is open below, with {many}.", left)

    def _unchecked(self) -> str:
        """What was typed into the cards and never checked, before others take their place."""
        typed = [
            f"“{unsent[:60]}” for {code}"
            for code, card in self.cards.items()
            if (unsent := card.unsent)
        ]
        return f"You typed this but didn't check it: {', '.join(typed)}." if typed else ""

    def _card(self, number: int, case: Case | FaultCase) -> PosedCard | PosedCase:
        if isinstance(case, FaultCase):
            code = str(case.code)
            return PosedCase(number, case, self.own, lambda: self._kept(code))
        posed = Posed(case, self._tried, self.clock)
        return PosedCard(number, posed, self.clock, lambda: self._go_on(case.code))

    def _go_on(self, code: str) -> None:
        """To the problem after this one; after the last, to the result."""
        codes = list(self.cards)
        after = codes[codes.index(code) + 1 :]
        (self.cards[after[0]] if after else self.save).focus()

    def _tried(self, told: Try) -> str:
        fault = self.own.keep(told)
        self._kept(told.case.code)
        return fault

    def _kept(self, code: str) -> None:
        """Something was kept of this question."""
        self.cards[code].before = [each for each in self.own.made() if each.code == code]
        self._told()

    def _told(self) -> None:
        """How the work stands; a result made before no longer holds it all."""
        left, many = self.own.unanswered(), len(self.cards)
        self.saved.value = self.keeping.value = ""
        if not left:
            said = "You have answered every question."
        else:
            said = f"You have answered {many - len(left)} of {counted(many, 'question')}."
            said += f" Not answered yet: {listed(left)}." if len(left) < many else ""
        self.stands.value = tag("p", said)

    def _named(self, _) -> None:
        """A name counts as soon as it is typed: nobody should have to press a button for it."""
        self._call(self.name.box.value)

    def _call(self, text: str) -> None:
        if text == self.own.name:
            return
        self.own.call(text)
        name, others = self.own.name, self.own.others()
        kept = f"Answers are kept under “{name}” from now on." if name else NO_NAME
        mine = sum(each.who == name for each in self.own.made()) if name else 0
        already = ALREADY.format(counted(mine, "answer")) if mine else ""
        there = f"Answers under {', '.join(f'“{one}”' for one in others)} are kept too."
        self.named.value = say("note", kept, already, there if others else "")

    def _save(self) -> None:
        problems, made = self.own.problems, self.own.made()
        if not (problems and made):
            self.keeping.value = say(
                "note", "There is nothing to save yet. Answer a question first."
            )
            return
        name, data = result_file(problems, self.own.name, made)
        saves = link("Save the file of my result", name, KIND, data)
        self.saved.value = tag("p", saves, cls="w2w-saves")
        self.keeping.value = say("note", "Your result is ready. Click the link to save it.")
