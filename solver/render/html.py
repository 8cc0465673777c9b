"""Worked steps as HTML, as a teacher's board has them, and formulas in LaTeX. No arithmetic here.

Fractions stand as fractions, in the page's own letters: they wrap on a narrow screen, need no
mathematics to be loaded, and are shown at once. A screen reader hears the same line as text.
"""

import re
from dataclasses import replace
from html import escape

from solver.algebra.formula import Formula
from solver.algebra.notation import TEXT
from solver.algebra.tree import Values
from solver.algebra.typeset import numbers, symbols, words
from solver.engine.case import Case
from solver.engine.steps import Step
from solver.units.show import figures, with_unit
from solver.vocabulary import quantity_named

from .text import label_of, one_line_text, spoken_of, step_head, step_texts

__all__ = [
    "formula_html",
    "formula_latex",
    "formula_text",
    "numbers_html",
    "one_line_html",
    "rule_html",
    "step_html",
]


def _span(kind: str, *inside: str) -> str:
    return f'<span class="w2w-{kind}">{"".join(inside)}</span>'


def _fraction(over: str, under: str) -> str:
    return _span("frac", _span("over", over), _span("under", under))


def _power(base: str, exponent: str) -> str:
    """A power that stays in one piece; a quantity has brackets, for its unit stands behind it."""
    bare = base.startswith("(") or base.replace(".", "", 1).isdigit()
    return _span("power", base if bare else f"({base})", f"<sup>{exponent}</sup>")


HTML = replace(
    TEXT,
    word=escape,
    valued=lambda number, unit: _span("value", escape(with_unit(number, unit))),
    fraction=_fraction,
    root=lambda inner: "√" + _span("root", inner),
    power=_power,
    stacked=True,
)


def _equation(name: str, units: str, *sides: str) -> str:
    """The label of a quantity, and each thing it equals."""
    equals = "".join(f'<span class="w2w-side">= {side}</span>' for side in sides)
    return f'<span class="w2w-name">{escape(label_of(name, units))}</span> {equals}'


def _heard_as(text: str, shown: str) -> str:
    """A line that is seen as `shown` and heard as `text`."""
    return f'<div class="w2w-line" role="img" aria-label="{escape(text)}">{shown}</div>'


def rule_html(step: Step, units: str) -> str:
    """The rule of a step without its numbers: a hint."""
    if step.expr is None:
        return f'<div class="w2w-line">{escape(step.rule)}</div>'
    text = f"{label_of(step.name, units)} = {words(step.expr, units)}"
    return _heard_as(text, _equation(step.name, units, words(step.expr, units, HTML)))


def numbers_html(step: Step, known: Values, given: Values, units: str) -> str:
    """A step with its numbers put in, and no result: the last hint. A judgment has its rule alone."""
    if step.expr is None:
        return rule_html(step, units)
    text = f"{label_of(step.name, units)} = {numbers(step.expr, units, known, given, cancel=True)}"
    shown = numbers(step.expr, units, known, given, HTML, cancel=True)
    return _heard_as(text, _equation(step.name, units, shown))


def one_line_html(case: Case) -> str:
    """The chain of a problem as one line; "" where it has one step only, or is long."""
    if case.one_line is None:
        return ""
    shown = _equation(case.asked, case.units, words(case.one_line, case.units, HTML))
    return _heard_as(one_line_text(case), shown)


def step_html(number: int, step: Step, known: Values, given: Values, units: str) -> str:
    """One worked step as a list item: what we want, formula, numbers, result, why."""
    title = step_head(number, spoken_of(step.name, units))
    head = f'<div class="w2w-want">{escape(title)}</div>'
    why = f'<div class="w2w-why">{escape(step.why)}</div>'
    if step.expr is None:
        rule, put_in, _ = step_texts(step, known, given, units)
        lines = "".join(f'<div class="w2w-line">{escape(t)}</div>' for t in (rule, put_in) if t)
        return f'<li class="w2w-step">{head}{lines}{why}</li>'
    formula, put_in, result = step_texts(step, known, given, units)
    shown = _equation(
        step.name,
        units,
        words(step.expr, units, HTML),
        numbers(step.expr, units, known, given, HTML, cancel=True),
        _span("result", escape(with_unit(figures(step.value, step.unit), step.unit))),
    )
    heard = f"{formula}. {put_in} = {result}."
    return f'<li class="w2w-step">{head}{_heard_as(heard, shown)}{why}</li>'


def formula_text(formula: Formula, units: str, asked: str = "") -> str:
    """A formula in words, as plain text; turned round for `asked` where that is named."""
    asked = asked or formula.result
    return f"{label_of(asked, units)} = {words(formula.solved_for(asked), units)}"


def formula_html(formula: Formula, units: str, asked: str = "") -> str:
    """A formula in words, with its fractions as fractions."""
    asked = asked or formula.result
    shown = _equation(asked, units, words(formula.solved_for(asked), units, HTML))
    return _heard_as(formula_text(formula, units, asked), shown)


def formula_latex(formula: Formula, units: str, asked: str = "") -> str:
    r"""A formula in symbols, without dollar signs around it.

    >>> from solver.topics.formulas import POWER
    >>> print(formula_latex(POWER[3], "us"))
    \mathrm{WHP} = \dfrac{Q \times \mathrm{TDH}}{3{,}960}
    >>> print(formula_latex(POWER[3], "us", "flow"))
    Q = \dfrac{\mathrm{WHP} \times 3{,}960}{\mathrm{TDH}}
    """
    asked = asked or formula.result
    written = f"{quantity_named(asked).symbol(units)} = {symbols(formula.solved_for(asked), units)}"
    return re.sub(r"(?<=\d),(?=\d{3})", "{,}", written)
