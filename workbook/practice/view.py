"""A problem as HTML, in no widgets: the question, hints, the solution, what became of an answer."""

from collections.abc import Sequence
from urllib.parse import quote

from solver import Case, Verdict
from solver.engine.choices import Choice
from solver.engine.order import right_orders
from solver.engine.telling import Hint, hints_of
from solver.own.work import Work
from solver.render.html import numbers_html, one_line_html, rule_html, step_html
from solver.render.problem import drawing_for, picture_of
from solver.render.text import given_rows, label_of, question_rows
from solver.units.show import figures, unit_in_words, with_unit
from solver.vocabulary import quantity_named
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pages import lessons
from workbook.ui.pieces import say, table

from .practice import Practice, Reply

__all__ = [
    "MISSED",
    "above_html",
    "after_state",
    "answer_label",
    "chain_html",
    "hints_html",
    "in_one_line",
    "in_order",
    "lesson_html",
    "picture_html",
    "problem_html",
    "question_html",
    "right_answer",
    "said_of",
    "steps_html",
    "title_html",
    "worked_html",
]

MISSED = ("mistake", "wrong")


def answer_label(case: Case, choices: int = 0) -> str:
    """What the place for an answer asks for: the unit and how exactly; or one of the choices."""
    if case.ordered:
        return "Your order, first step first"
    if count := choices or len(case.choices):
        return f"Choose one, 1 to {count}"
    quantity = quantity_named(case.asked)
    label, unit = quantity.label(case.units), unit_in_words(quantity.unit(case.units))
    if label.startswith("number of "):
        return f"Your answer: {label}"
    asks = f": {label}" if quantity.says_unit(case.units) else f", in {unit}"
    return f"Your answer{asks}, to three figures"


def problem_html(case: Case) -> Markup:
    """The title, the question, the givens, and the choices of a judgment: to be read, not answered."""
    return joined(title_html(case), question_html(case, case.choices))


def title_html(case: Case) -> Markup:
    """The title of a problem."""
    return tag("h3", case.family.title)


def picture_html(case: Case, verdict: Verdict | None = None) -> Markup:
    """The picture of a problem, with the answer or the faulty step in it once there is a verdict.

    Nothing, where it has none.
    """
    place = _faulty(case, verdict.mistake) if verdict and verdict.status == "mistake" else ""
    right = verdict is not None and verdict.status == "right"
    return Markup(picture_of(case, place, answered=right))


def question_html(case: Case, choices: Sequence[str] = (), pictured: bool = False) -> Markup:
    """The question, the givens, and these choices, numbered; steps to put in order have letters.

    `pictured`: a picture comes after it, which has what is given where there is one.
    """
    said = given_rows(case.given, case.units) if pictured and drawing_for(case) else ()
    drawn = case.pictured if pictured and drawing_for(case) else ()
    rows = [row for row in question_rows(case) if row not in said and row not in drawn]
    return joined(
        tag("p", case.lead, cls="w2w-question"),
        table(rows, "" if said else "What is given"),
        tag("details", tag("summary", "The picture as a table"), table(drawn)) if drawn else None,
        tag(
            "ol", (tag("li", choice) for choice in choices), cls="w2w-choices", type=numbering(case)
        )
        if choices
        else None,
    )


def numbering(case: Case) -> str | None:
    """What its choices are numbered by: letters, where they are steps to put in order."""
    return "A" if case.ordered else None


def above_html(case: Case, why: str = "", number: int = 0) -> Markup:
    """The small line above a problem: why it comes, which of today's it is, and its code."""
    today = f"problem {number} today" if number else ""
    level = "" if why else f"Level {case.level}"
    parts = [part for part in (why.rstrip("."), level, today) if part]
    code = [tag("span", case.code, cls="w2w-short")] if case.code else []
    return tag("p", Markup(" · ").join([*parts, *code]), cls="w2w-above")


def said_of(case: Case, reply: Reply, more: Markup | None = None) -> Markup:
    """What became of an answer: what to look at and where, how it was read, and the try.

    `more` is what a missed answer leads to.
    """
    verdict = reply.verdict
    read = f"Read as {verdict.echo}. " if verdict.echo else ""
    where = chain_html(case, verdict.mistake) if verdict.status == "mistake" else Markup()
    if where and drawing_for(case):  # it is marked in the picture
        where = tag("div", where, cls="w2w-heard")
    said = (after_state(verdict.says), reply.fault)
    return say(verdict.status, *said, html=joined(where, more), foot=read + reply.note)


def lesson_html(case: Case) -> Markup:
    """A link to the page that explains a problem; nothing where there is none."""
    if not (page := lessons().get(case.family.chapter)):
        return Markup()
    return tag("p", "The page that explains it: ", tag("a", page.title, href=quote(page.file)))


def after_state(says: str) -> str:
    """The solver's sentence without the word that the state above it says already."""
    for opening, instead in (
        ("Right: ", "The worked answer is "),
        ("Right. ", ""),
        ("Not yet: ", ""),
    ):
        if says.startswith(opening):
            rest = instead + says.removeprefix(opening)
            return rest[:1].upper() + rest[1:]
    return says


def chain_html(case: Case, mistake: str | None) -> Markup:
    """The steps of a problem in a row, with the one to look at marked."""
    names = [step.name for step in case.steps]
    place = _faulty(case, mistake)
    if len(names) < 2 or not place:
        return Markup()
    here = (" ", tag("b", "← look here"))
    items = (
        tag("li", label_of(name, case.units), here, cls="w2w-here")
        if name == place
        else tag("li", label_of(name, case.units))
        for name in names
    )
    return tag("ol", items, cls="w2w-chain", aria_label="The steps of this problem")


def _faulty(case: Case, mistake: str | None) -> str:
    """The step in which a mistake was made; empty where it is no one step."""
    place = (mistake or "").partition(".")[0]
    return place if place in [step.name for step in case.steps] else ""


def hints_html(practice: Practice) -> Markup:
    """The hints given so far; a screen reader speaks the newest."""
    shown = practice.hinted
    if not shown:
        return Markup()
    total = len(hints_of(practice.case))
    items = []
    for number, hint in enumerate(shown, 1):
        head = tag("p", f"Hint {number} of {total}: {hint.title}", cls="w2w-want")
        spoken = "status" if number == len(shown) else None
        items.append(tag("li", tag("div", head, _hint(hint, practice.case), role=spoken)))
    return tag("ol", items, cls="w2w-hints")


def _hint(hint: Hint, case: Case) -> Markup:
    if not hint.steps:
        return tag("p", hint.says)
    if hint.with_numbers:
        lines = (numbers_html(s, case.known, case.given, case.units) for s in hint.steps)
    else:
        lines = (rule_html(step, case.units) for step in hint.steps)
    return Markup().join(map(Markup, lines))


def steps_html(work: Case | Work, count: int | None = None) -> Markup:
    """The worked steps of a problem or of somebody's own numbers, or the first of them."""
    items = (
        Markup(step_html(number, step, work.known, work.given, work.units))
        for number, step in enumerate(work.steps[:count], 1)
    )
    return tag("ol", items, cls="w2w-steps")


def worked_html(case: Case) -> Markup:
    """All the steps, and their one line where there are several and it is short."""
    return joined(steps_html(case), in_one_line(case))


def in_one_line(case: Case) -> Markup:
    """All the steps as one line; nothing where there is one, or the line is long."""
    whole = Markup(one_line_html(case))
    return joined(tag("div", "In one line:", cls="w2w-why"), whole) if whole else Markup()


def in_order(case: Case) -> str:
    """The letters of a right order, and whether there are others."""
    many = right_orders(len(case.choices), case.pairs)
    letters = figures(case.answer, case.unit)
    return f"{letters}, or another of {many} right orders" if many > 1 else letters


def right_answer(case: Case, choices: Sequence[Choice] = ()) -> str:
    """The right answer in words; of choices, the number and the text of the right one."""
    if case.ordered:
        return in_order(case)
    if not choices:
        return with_unit(figures(case.answer, case.unit), case.unit)
    right = next(n for n, choice in enumerate(choices, 1) if not choice.mistake)
    return f"choice {right}, {choices[right - 1].text}"
