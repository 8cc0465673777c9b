"""A Case, a Verdict or worked numbers as text or JSON (HTML: html.py). No arithmetic."""

from collections.abc import Sequence
from typing import Any

from solver.algebra.tree import Values
from solver.algebra.typeset import numbers, words
from solver.engine.case import Case
from solver.engine.family import Family
from solver.engine.grading import Verdict
from solver.engine.steps import Step
from solver.own.work import Work
from solver.units.order import LETTERS
from solver.units.show import capital, exact, figures, with_unit
from solver.vocabulary import quantity_named

__all__ = [
    "case_json",
    "case_text",
    "family_json",
    "family_text",
    "given_rows",
    "one_line_text",
    "question_rows",
    "step_head",
    "step_lines",
    "step_texts",
    "steps_text",
    "verdict_json",
    "work_json",
    "work_text",
]

NO_QUANTITY = {"choice": "judgment", "order": "the order", "place": ""}
ROUNDING = "Results are shown to four figures; each step uses the full values."


def value_json(value: float, unit: str) -> dict[str, Any]:
    """A value with its unit, at full precision."""
    return {"value": value, "unit": unit}


def label_of(name: str, units: str) -> str:
    """What a step is called: a quantity's label, or "judgment"; a step in its place says itself what it is."""
    return NO_QUANTITY[name] if name in NO_QUANTITY else quantity_named(name).label(units)


def spoken_of(name: str, units: str) -> str:
    """The same with its abbreviation, for its first use: "water horsepower (WHP)"."""
    return NO_QUANTITY[name] if name in NO_QUANTITY else quantity_named(name).spoken(units)


def step_texts(step: Step, known: Values, given: Values, units: str) -> tuple[str, str, str]:
    """A step in plain text: the formula in words, the numbers put in, and the result."""
    if step.unit == "place":
        return step.rule, "", ""
    if step.unit == "order":
        return step.rule, f"A right order is {figures(step.value, step.unit)}", ""
    if step.expr is None:
        best = f"the best answer is choice {step.value:g}"
        return step.rule, f"{step.numbers}; {best}" if step.numbers else capital(best), ""
    name = label_of(step.name, units)
    return (
        f"{name} = {words(step.expr, units)}",
        f"{name} = {numbers(step.expr, units, known, given, cancel=True)}",
        with_unit(figures(step.value, step.unit), step.unit),
    )


def step_lines(step: Step, known: Values, given: Values, units: str) -> tuple[str, str, str, str]:
    """A step as it is laid out: its title, the formula, the numbers with the result, and why."""
    formula, put_in, result = step_texts(step, known, given, units)
    ends = step.expr is None or put_in.endswith(f"= {result}")
    title = spoken_of(step.name, units)
    return title, formula, put_in if ends else f"{put_in} = {result}", step.why


def step_head(number: int, title: str) -> str:
    """The head of a step: its number, and what it is where that has a name."""
    return f"Step {number}: {title}" if title else f"Step {number}"


def steps_text(steps: Sequence[Step], known: Values, given: Values, units: str) -> str:
    """Worked steps as a good teacher's board has them."""
    lines = []
    for number, step in enumerate(steps, 1):
        title, formula, put_in, why = step_lines(step, known, given, units)
        lines += [
            step_head(number, title),
            f"  {formula}",
            f"  {put_in}" * bool(put_in),
            f"  {why}",
        ]
    if any(step.expr is not None for step in steps[:-1]):
        lines += [ROUNDING]
    return "\n".join(filter(None, lines))


def one_line_text(case: Case) -> str:
    """The chain of a problem as the one line that an exam's formula sheet has; "" where it is long.

    >>> from solver import draw
    >>> one_line_text(draw("brake_power", 7, level=2)).partition(" = ")[2]
    'flow × total dynamic head / (3,960 × pump efficiency (as a decimal))'
    """
    if case.one_line is None:
        return ""
    return f"{label_of(case.asked, case.units)} = {words(case.one_line, case.units)}"


def given_rows(given: Values, units: str) -> list[tuple[str, str]]:
    """The givens as rows of a small table: label, value with its unit."""
    rows = []
    for name, value in given.items():
        quantity = quantity_named(name)
        unit = quantity.unit(units)
        rows.append((quantity.spoken(units), with_unit(exact(value, unit), unit)))
    return rows


def question_rows(case: Case) -> list[tuple[str, str]]:
    """What is given, and what else the question has in its table."""
    return list(dict.fromkeys((*given_rows(case.given, case.units), *case.table)))


def case_text(case: Case, *, solution: bool = True) -> str:
    """A problem for the terminal, with its solution where wanted."""
    lines = [f"{case.family.title} (level {case.level})", "", case.lead, ""]
    lines += [f"  {label}: {value}" for label, value in question_rows(case)]
    marks = LETTERS if case.ordered else "123456789"
    lines += [f"  {mark}) {choice}" for mark, choice in zip(marks, case.choices, strict=False)]
    if solution:
        lines += ["", steps_text(case.steps, case.known, case.given, case.units)]
        if whole := one_line_text(case):
            lines += [f"In one line: {whole}"]
    return "\n".join([*lines, "", f"Code: {case.code}"])


def steps_json(
    steps: Sequence[Step], known: Values, given: Values, units: str
) -> list[dict[str, Any]]:
    """Worked steps with their texts and full values."""
    rows = []
    for step in steps:
        formula, put_in, _ = step_texts(step, known, given, units)
        rows.append(
            {
                "name": step.name,
                "formula": formula,
                "substituted": put_in,
                **value_json(step.value, step.unit),
                "why": step.why,
            }
        )
    return rows


def given_json(given: Values, units: str) -> dict[str, Any]:
    """The givens by name, each with its unit."""
    return {n: value_json(v, quantity_named(n).unit(units)) for n, v in given.items()}


def case_json(case: Case) -> dict[str, Any]:
    """Everything about a problem, its answer and its mistakes, at full precision.

    Of steps to put in order, `order` has the letters of a right one; its value is that order's number
    (units/order.py). `pairs` are the letters that must stand before one another: all that an order is
    marked by.
    """
    return {
        "code": case.code,
        "family": case.family.name,
        "revision": case.family.revision,
        "chapter": case.family.chapter,
        "level": case.level,
        "units": case.units,
        "question": case.question,
        "given": given_json(case.given, case.units),
        "asked": {"name": case.asked, "unit": case.unit},
        "answer": value_json(case.answer, case.unit),
        "accepted": {"low": case.low, "high": case.high},
        "choices": list(case.choices),
        "order": figures(case.answer, case.unit) if case.ordered else "",
        "pairs": [[LETTERS[first], LETTERS[then]] for first, then in case.pairs],
        "steps": steps_json(case.steps, case.known, case.given, case.units),
        "one_line": one_line_text(case),
        "mistakes": [
            {"id": m.id, **value_json(m.value, case.unit), "says": m.says} for m in case.mistakes
        ],
    }


def verdict_json(verdict: Verdict) -> dict[str, Any]:
    """A verdict as the command line prints it."""
    return {
        "status": verdict.status,
        "mistake": verdict.mistake,
        "says": verdict.says,
        "value": verdict.value,
        "unit": verdict.unit,
        "echo": verdict.echo,
    }


def family_json(family: Family) -> dict[str, Any]:
    """What a family is, for a list of families."""
    levels = {str(n): level for n, level in enumerate(family.levels, 1)}
    return {
        "name": family.name,
        "title": family.title,
        "chapter": family.chapter,
        "levels": list(range(1, len(family.levels) + 1)),
        "units": ["us", "si"],
        "given": list(dict.fromkeys(name for level in family.levels for name in level.given)),
        "given_by_level": {n: list(level.given) for n, level in levels.items()},
        "asked": family.asked,
        "asked_by_level": {n: family.asks(level) for n, level in levels.items()},
        "revision": family.revision,
    }


def family_text(family: Family) -> str:
    """A family in one line."""
    return f"{family.name:24} {family.chapter:12} levels 1 to {len(family.levels)}  {family.title}"


def work_json(found: Work) -> dict[str, Any]:
    """Own numbers worked, at full precision; `answer` is null where something is missing."""
    answer = None if found.answer is None else value_json(found.answer, found.unit)
    return {
        "units": found.units,
        "given": given_json(found.given, found.units),
        "asked": {"name": found.find, "unit": found.unit},
        "answer": answer,
        "steps": steps_json(found.steps, found.known, found.given, found.units),
        "missing": [list(names) for names in found.missing],
        "contradictions": list(found.contradictions),
        "notices": list(found.notices),
        "says": found.says,
    }


def work_text(found: Work) -> str:
    """Own numbers worked, for the terminal."""
    lines = [f"  {label}: {value}" for label, value in given_rows(found.given, found.units)]
    lines += ["", steps_text(found.steps, found.known, found.given, found.units)] * bool(
        found.steps
    )
    return "\n".join([*lines, "", found.says, *found.contradictions, *found.notices])
