"""What a panel shows, as HTML: the problem, its hints, its solution, what became of an answer."""

from collections.abc import Iterable
from html import escape

from solver import Case
from solver.engine.telling import Hint, hints_of
from solver.render.html import numbers_html, one_line_html, rule_html, step_html
from solver.render.text import label_of, question_rows
from solver.vocabulary import quantity_named
from workbook.practice.practice import Practice, Reply

from .names import asked_for
from .saying import say

__all__ = [
    "after_state",
    "answer_label",
    "chain",
    "hints",
    "problem",
    "question",
    "rows",
    "said_of",
    "solution",
    "steps",
    "worked",
]


def answer_label(case: Case, choices: int = 0) -> str:
    """What the answer box asks for: how exactly, a quantity and its unit; or one of the choices."""
    if count := choices or len(case.choices):
        return f"Choose one: the number of your choice, 1 to {count}"
    quantity = quantity_named(case.asked)
    counted = quantity.label(case.units).startswith("number of ")
    exactly = "" if counted else " to three figures"
    return f"Your answer{exactly}: {asked_for(quantity, case.units)}"


def rows(pairs: Iterable[tuple[str, str]], caption: str) -> str:
    """Quantities and their values as a small table."""
    body = "".join(
        f'<tr><th scope="row">{escape(label)}</th><td>{escape(value)}</td></tr>'
        for label, value in pairs
    )
    if not body:
        return ""
    return (
        f'<table class="w2w-givens"><caption>{escape(caption)}</caption>'
        f"<tbody>{body}</tbody></table>"
    )


def problem(case: Case) -> str:
    """The title, the question, the givens, and the choices of a judgement."""
    return f"<h3>{escape(case.family.title)}</h3>{question(case, case.choices)}"


def question(case: Case, choices: Iterable[str] = ()) -> str:
    """The question, the givens, and these choices, numbered."""
    items = "".join(f"<li>{escape(choice)}</li>" for choice in choices)
    listed = f'<ol class="w2w-choices">{items}</ol>' if items else ""
    return (
        f'<p class="w2w-question">{escape(case.lead)}</p>'
        f"{rows(question_rows(case), 'What is given')}{listed}"
    )


def said_of(case: Case, reply: Reply) -> str:
    """What became of an answer: how it was read, what to look at and where, and the try."""
    verdict = reply.verdict
    read = f"Read as {verdict.echo}." if verdict.echo else ""
    where = chain(case, verdict.mistake) if verdict.status == "mistake" else ""
    said = (read, after_state(verdict.says), reply.fault)
    return say(verdict.status, *said, html=where, foot=reply.note)


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


def chain(case: Case, mistake: str | None) -> str:
    """The steps of a problem in a row, with the one to look at marked."""
    names = [step.name for step in case.steps]
    place = (mistake or "").partition(".")[0]
    if len(names) < 2 or place not in names:
        return ""
    items = "".join(
        f'<li class="w2w-here">{escape(label_of(name, case.units))} <b>← look here</b></li>'
        if name == place
        else f"<li>{escape(label_of(name, case.units))}</li>"
        for name in names
    )
    return f'<ol class="w2w-chain" aria-label="The steps of this problem">{items}</ol>'


def hints(practice: Practice) -> str:
    """The hints given so far; a screen reader speaks the newest."""
    shown = practice.hinted
    if not shown:
        return ""
    total = len(hints_of(practice.case))
    items = []
    for number, hint in enumerate(shown, 1):
        head = f'<p class="w2w-want">Hint {number} of {total}: {escape(hint.title)}</p>'
        spoken = ' role="status"' * (number == len(shown))
        items.append(f"<li><div{spoken}>{head}{_hint(hint, practice.case)}</div></li>")
    return f'<ol class="w2w-hints">{"".join(items)}</ol>'


def _hint(hint: Hint, case: Case) -> str:
    if not hint.steps:
        return f"<p>{escape(hint.says)}</p>"
    if hint.with_numbers:
        return "".join(numbers_html(s, case.known, case.given, case.units) for s in hint.steps)
    return "".join(rule_html(step, case.units) for step in hint.steps)


def steps(case: Case, count: int | None = None) -> str:
    """The worked steps, or the first of them."""
    items = "".join(
        step_html(number, step, case.known, case.given, case.units)
        for number, step in enumerate(case.steps[:count], 1)
    )
    return f'<ol class="w2w-steps">{items}</ol>'


def worked(case: Case) -> str:
    """All the steps, and their one line where there are several and it is short."""
    whole = one_line_html(case)
    line = f'<div class="w2w-why">In one line:</div>{whole}' if whole else ""
    return f"{steps(case)}{line}"


def solution(case: Case) -> str:
    """The worked solution with its heading."""
    return f'<h4><span role="status">The worked solution</span></h4>{worked(case)}'
