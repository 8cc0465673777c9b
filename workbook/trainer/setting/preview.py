"""What the form comes to: the code, all of it in sentences, and the questions of anybody.

A set is shown as people get it: one person's questions, or two beside each other, with all answers.
"""

from collections.abc import Callable, Sequence
from datetime import UTC, datetime
from pathlib import Path

from ipywidgets import HTML, Box, VBox

from solver import Case, SolverError
from solver.engine.choices import choices_of
from solver.fault.case import FaultCase
from solver.fault.remedies import ACTIONS, RIGHT
from solver.fault.way import Way
from solver.scenario import PEOPLE
from solver.sets.credit import in_points
from solver.sets.work_set import WorkSet, cases_for, faults_for, person_id, plan_of
from solver.station.faults import FAULTS
from solver.topics.catalogue import Refused
from solver.units.show import counted, exact
from workbook.fault import head_html
from workbook.practice import question_html, right_answer, worked_html
from workbook.trainer.command import line_of
from workbook.trainer.sets.guessing import guessing
from workbook.trainer.sets.set_file import Assigned
from workbook.trainer.sets.set_keys import COUNTS as COUNTED
from workbook.ui.controls import Panel, button, chooser, classed
from workbook.ui.entry import Entry, Gate
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import say, table
from workbook.ui.printing import UNITS

__all__ = ["CARDS", "LIST", "Looking", "next_steps", "preview_html", "summary"]

COUNTS = {"best": "the best one counts", "last": "the last one counts", "first": "the first counts"}
LIST, CARDS = "list", "cards"
EVERYBODY = "Everyone"
WAYS = [("A list of the answers", LIST), ("Problems with the solutions", CARDS)]
ABOUT = "Type anyone's id, such as the one they sign in with, to see what they will get."
NOBODY = "Type a person's id to see their questions."
Asked = Case | Refused | FaultCase
Row = tuple[str, Sequence[Asked]]  # a question, and the problem of each person there


def summary(assigned: Assigned, now: datetime) -> list[str]:
    """Everything that was chosen, to be read over before it is written; `now` has its zone."""
    work = assigned.work
    level = f"at level {work.level}" if work.level else "at any level"
    kinds = counted(len(work.families), "kind")
    whose = "Each person gets their own numbers." if work.each else "Everyone has the same numbers."
    return [
        f"{counted(work.count, 'question')} {level}, in {UNITS[work.units]}, from {kinds} of problem.",
        whose,
        *_points(assigned),
        *_tries(assigned),
        guessing(assigned),
        *_cases(assigned),
        *_time(assigned),
        *_due(assigned, now),
        *_plant(assigned),
    ]


def _points(assigned: Assigned) -> list[str]:
    credit, each = assigned.credit, assigned.points
    noun = "point" if each == 1 else "points"
    whole = exact(round(assigned.out_of, 4))
    slip, close = _percent(credit.mistake), _percent(credit.close)
    lines = [
        f"Each is worth {exact(each)} {noun}, {whole} in all.",
        f"A known slip earns {slip} of the points, and a close answer {close}.",
    ]
    if credit.by_mistake:
        some = counted(len(credit.by_mistake), "mistake")
        lines.append(f"The set's file gives {some} a different share, and that stays.")
    return lines


def _percent(share: float) -> str:
    return f"{round(100 * share, 2):g}%"


def _tries(assigned: Assigned) -> list[str]:
    choice = assigned.choice_tries
    many = "one try" if choice == 1 else f"up to {choice} tries"
    more = [f"A question with choices has {many}."] if choice and choice != assigned.tries else []
    return [_usual_tries(assigned), *more]


def _usual_tries(assigned: Assigned) -> str:
    tries, off = assigned.tries, assigned.credit.each_try
    if tries == 1:
        return "There is one try for each question."
    many = f"Up to {tries} tries for each question" if tries else "Any number of tries"
    taken = f" Each earlier try takes off {_percent(off)}." if off else ""
    return f"{many}; {COUNTS[assigned.counts]}.{taken}"


def _cases(assigned: Assigned) -> list[str]:
    """The cases of find the fault, where there are any."""
    if not (part := assigned.work.faults):
        return []
    off = assigned.faults.unsafe
    each = f"{in_points(assigned.faults.points)}{' each' * (part.count > 1)}"
    unsafe = f" Each unsafe step takes off {_percent(off)}." if off else ""
    return [
        f"Then {counted(part.count, 'case')} of find the fault at level {part.level}, {each}.{unsafe}"
    ]


def _time(assigned: Assigned) -> list[str]:
    """The time limit, where there is one, and what it can prove."""
    if not assigned.minutes:
        return []
    counts = (
        "counts too, and you are told which" if assigned.after_time == COUNTED else "doesn't count"
    )
    return [
        f"{counted(assigned.minutes, 'minute')} from when a person opens the questions. What they answer "
        f"after that {counts}.",
        "Each person's own computer keeps the time, so it can be set back. If the grade matters, watch.",
    ]


def _due(assigned: Assigned, now: datetime) -> list[str]:
    if not assigned.due:
        return ["There is no due time, so nothing counts as late."]
    here = assigned.due.astimezone(now.tzinfo)
    lines = [
        f"Due on {here:%A}, {here:%B} {here.day}, {here.year}, at {_clock(assigned.due, here)}."
    ]
    if assigned.due <= now:
        lines.append("That time has passed, so everything that comes in is late. Check the date.")
    off = f"takes off {_percent(assigned.late)} of the score" if assigned.late else "costs nothing"
    return [*lines, f"Turning it in late {off}."]


def _clock(due: datetime, here: datetime) -> str:
    there = due.astimezone(UTC)
    if here.utcoffset() == there.utcoffset():
        return f"{there:%H:%M} UTC; the form shows it in your own time"
    day = "" if here.date() == there.date() else f" on {there:%A}"
    return f"{here:%H:%M} on this computer, which is {there:%H:%M} UTC{day}"


def _plant(assigned: Assigned) -> list[str]:
    if not (plant := assigned.work.plant):
        return []
    pumps = counted(len(plant.places), "pump")
    return [f"The problems are about “{plant.name}”, with {pumps}."]


def next_steps(assigned: Assigned, course: Path) -> Sequence[tuple[str, str]]:
    """What to do now, each with the command for a terminal, wherever that is."""
    name, at = assigned.name, ["--course", str(course)]
    return (
        ("Make what people get", line_of(["set", name, *at])),
        (
            "Put what people send back into the course's folder incoming, and grade it",
            line_of(["mark", name, *at, "--hand-in", str(course / "incoming" / name)]),
        ),
        ("See how the class did", line_of(["class", name, *at])),
    )


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
