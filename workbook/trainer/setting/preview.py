"""A set as people get it: one person's questions, or two beside each other, with all answers."""

from collections.abc import Sequence
from html import escape

from solver import Case
from solver.engine.choices import choices_of
from solver.sets.work_set import WorkSet, cases_for, plan_of
from solver.topics.catalogue import Refused
from workbook.exam.question import Question
from workbook.exam.result import answer_of
from workbook.ui import fragments

__all__ = ["CARDS", "LIST", "preview_html"]

LIST, CARDS = "list", "cards"
EVERYBODY = "Everyone"


def preview_html(work: WorkSet, people: Sequence[str], way: str) -> str:
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
    return _list(heads, rows) if way == LIST else _cards(heads, rows)


def _answer(case: Case | Refused) -> str:
    if isinstance(case, Refused):
        return case.why
    return answer_of(Question(1, case, choices_of(case) if case.choices else ()))


def _list(heads: Sequence[str], rows: Sequence[tuple[str, Sequence[Case]]]) -> str:
    """The answers in a table, a row a question, with the code of each problem."""
    head = "".join(f'<th scope="col">{escape(each)}</th>' for each in ("Question", *heads))
    body = "".join(
        f'<tr><th scope="row">{escape(asked)}</th>{"".join(map(_cell, cases))}</tr>'
        for asked, cases in rows
    )
    return (
        '<table class="w2w-givens w2w-preview"><caption>The answers</caption>'
        f"<thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"
    )


def _cell(case: Case) -> str:
    return f'<td>{escape(_answer(case))}<br><span class="w2w-about">{escape(case.code)}</span></td>'


def _cards(heads: Sequence[str], rows: Sequence[tuple[str, Sequence[Case]]]) -> str:
    """Each question in full; its worked solutions open."""
    return "".join(
        f'<h4>{escape(asked)}</h4><div class="w2w-pair">{"".join(map(_card, heads, cases))}</div>'
        for asked, cases in rows
    )


def _card(head: str, case: Case) -> str:
    if isinstance(case, Refused):
        return f'<div class="w2w-one"><p>{escape(case.why)}</p></div>'
    return (
        f'<div class="w2w-one"><p class="w2w-want">{escape(head)}</p>'
        f"{fragments.question(case, case.choices)}"
        f"<p><b>The answer is {escape(_answer(case))}.</b></p>"
        f"<details><summary>The worked solution</summary>{fragments.worked(case)}</details>"
        f'<p class="w2w-about">Code of this problem: {escape(case.code)}</p></div>'
    )
