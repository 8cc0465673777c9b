"""What the form comes to: the code, and the questions of anybody.

A set is shown as people get it: one person's questions, or two beside each other, with all answers.
"""

from collections.abc import Callable, Sequence

from ipywidgets import HTML, Box, VBox

from solver import Case, SolverError
from solver.engine.choices import choices_of
from solver.fault.case import FaultCase
from solver.fault.remedies import ACTIONS, RIGHT
from solver.fault.way import Way
from solver.scenario import PEOPLE
from solver.sets.work_set import WorkSet, cases_for, faults_for, person_id, plan_of
from solver.station.faults import FAULTS
from solver.topics.catalogue import Refused
from workbook.fault import head_html
from workbook.practice import question_html, right_answer, worked_html
from workbook.trainer.sets.set_file import Assigned
from workbook.ui.controls import Panel, button, chooser, classed
from workbook.ui.entry import Entry, Gate
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import say, table

__all__ = ["CARDS", "LIST", "Looking", "preview_html"]

LIST, CARDS = "list", "cards"
EVERYBODY = "Everyone"
WAYS = [("A list of the answers", LIST), ("Problems with the solutions", CARDS)]
ABOUT = "Type anyone's id, such as the one they sign in with, to see what they will get."
NOBODY = "Type a person's id to see their questions."
Asked = Case | Refused | FaultCase
Row = tuple[str, Sequence[Asked]]  # a question, and the problem of each person there


def preview_html(work: WorkSet, people: Sequence[str], way: str) -> Markup:
    """The questions of these people, as a list of answers, or as cards with the whole solution.

    Raises:
        SolverError: somebody of them can have no such id.
    """
    if not work.each:
        people = people[:1]
    heads = list(people) if work.each else [EVERYBODY]
    columns = [cases_for(work, person) for person in people]
    asked = [
        f"{n}. {each.kind.title}, level {each.level}" for n, each in enumerate(plan_of(work), 1)
    ]
    rows = list(zip(asked, zip(*columns, strict=True), strict=True))
    first = work.count + 1
    faults = zip(*(faults_for(work, person) for person in people), strict=True)
    rows += [(f"{n}. Find the fault", cases) for n, cases in enumerate(faults, first)]
    return _list(heads, rows) if way == LIST else _cards(heads, rows)


def _answer(case: Asked) -> str:
    if isinstance(case, FaultCase):
        return f"{FAULTS[case.fault].label}. {ACTIONS[RIGHT[case.fault][0][0]]}"
    if isinstance(case, Refused):
        return case.why
    return right_answer(case, choices_of(case) if case.choices else ())


def _list(heads: Sequence[str], rows: Sequence[Row]) -> Markup:
    """The answers in a table, a row a question, with the code of each problem."""
    listed = ((asked, *map(_cell, cases)) for asked, cases in rows)
    return table(listed, "The answers", ("Question", *heads), cls="w2w-givens w2w-preview")


def _cell(case: Asked) -> Markup:
    code = case.code
    return joined(_answer(case), tag("br"), tag("span", code, cls="w2w-about"))


def _cards(heads: Sequence[str], rows: Sequence[Row]) -> Markup:
    """Each question in full; its worked solutions open."""
    return joined(
        (tag("h4", asked), tag("div", map(_card, heads, cases), cls="w2w-pair"))
        for asked, cases in rows
    )


def _card(head: str, case: Asked) -> Markup:
    if isinstance(case, FaultCase):
        answer = tag("p", tag("b", f"The answer is: {_answer(case)}."))
        return tag(
            "div", tag("p", head, cls="w2w-want"), head_html(Way(case)), answer, cls="w2w-one"
        )
    if isinstance(case, Refused):
        return tag("div", tag("p", case.why), cls="w2w-one")
    return tag(
        "div",
        tag("p", head, cls="w2w-want"),
        question_html(case, case.choices),
        tag("p", tag("b", f"The answer is {_answer(case)}.")),
        tag("details", tag("summary", "The worked solution"), worked_html(case)),
        tag("p", f"Code of this problem: {case.code}", cls="w2w-about"),
        cls="w2w-one",
    )


class Looking:
    """Buttons to see the set, and the questions of one person or of two beside each other."""

    def __init__(self, panel: Panel, gate: Gate, other_questions: Callable[[], None]):
        self.see = button("See the set", gate.click, first=True)
        self.others = button("Different questions", panel.once(other_questions))
        self.people = [
            Entry(panel, label, lambda _: None, gate)
            for label in ("As this person", "Beside this one (may be empty)")
        ]
        for entry, person in zip(self.people, PEOPLE, strict=False):
            entry.fill(person.lower())
        self.way = chooser("Shown as", WAYS, panel.safely(lambda _: self._again()))
        self.said, self.preview = HTML(say("")), classed(HTML(), "w2w-previewed")
        self.seen: Assigned | None = None
        self.box = VBox(self._parts())

    def _parts(self) -> list:
        asked = [*(entry.box for entry in self.people), self.way]
        return [
            HTML(joined(tag("h4", "See it as anyone"), tag("p", ABOUT, cls="w2w-about"))),
            classed(Box(asked), "w2w-grid"),
            classed(Box([self.see, self.others]), "w2w-buttons"),
            self.said,
            self.preview,
        ]

    def clear(self) -> None:
        """Nothing is seen: the form has changed as a whole."""
        self.seen, self.said.value, self.preview.value = None, say(""), ""

    def refuse(self, faults: Sequence[str]) -> None:
        """Say everything that keeps the form from being a set."""
        self.clear()
        self.said.value = say("missing", *faults)

    def show(self, assigned: Assigned, sentences: Sequence[str]) -> None:
        """The code of a set, these sentences about it, and its questions."""
        code = tag("p", "Code of this set: ", tag("b", assigned.work.code))
        self.seen, self.said.value = assigned, say("worked", *sentences, html=code)
        self._again()

    def _again(self) -> None:
        if not self.seen:
            return
        typed = [entry.box.value for entry in self.people if entry.box.value.strip()]
        try:
            people = list(dict.fromkeys(map(person_id, typed)))
            if not people and self.seen.work.each:
                raise SolverError(NOBODY)
            shown = preview_html(self.seen.work, people or ["anybody"], self.way.value)
        except SolverError as fault:
            shown = say("missing", str(fault))
        self.preview.value = shown
