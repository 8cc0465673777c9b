"""The formulas of a chapter: in words, in symbols, with units, the reason and the source."""

from collections.abc import Iterable
from html import escape

from ipywidgets import HTMLMath

from solver.algebra.expression import Fraction
from solver.algebra.formula import Formula
from solver.algebra.tree import walk
from solver.render.html import formula_html, formula_latex, formula_text
from solver.vocabulary import quantity_named, spoken
from workbook.ui.controls import UNIT_CHOICES, Panel, chooser
from workbook.ui.pieces import asked_for

__all__ = ["FormulaSheet", "decimals_said", "sheet_html", "units_said"]

DECIMALS = "An efficiency goes in as a decimal: 82% is 0.82."


class FormulaSheet(Panel):
    """Formulas in US or metric units; the constants and the units follow the choice."""

    def __init__(self, formulas: tuple[Formula, ...]):
        super().__init__("w2w-formulas")
        self.formulas = formulas
        self.sheet = HTMLMath()
        self.units = chooser("Units", UNIT_CHOICES, self.safely(self._show))
        self.put(self.units, self.sheet, self.said)
        self._show(self.units.value)

    def _show(self, units: str) -> None:
        self.sheet.value = sheet_html(self.formulas, units)


def sheet_html(formulas: Iterable[Formula], units: str) -> str:
    """Formulas as a list, for a widget that sets mathematics."""
    shown = [formula for formula in formulas if units in formula.systems]
    said = decimals_said(shown)
    first = f"<p>{said}</p>" if said else ""
    items = "".join(_item(formula, units) for formula in shown)
    return f'{first}<ol class="w2w-steps">{items}</ol>'


def decimals_said(formulas: Iterable[Formula]) -> str:
    """How an efficiency goes in, where one does."""
    nodes = (node for formula in formulas for node in walk(formula.expr))
    return DECIMALS if any(isinstance(node, Fraction) for node in nodes) else ""


def _item(formula: Formula, units: str) -> str:
    """One formula; a screen reader hears the symbols as the words.

    The last lines may hold dollar signs, which are no mathematics there. Symbols that are wider
    than the page scroll, so the keyboard must reach them.
    """
    heard = escape(formula_text(formula, units))
    return (
        f'<li><div class="w2w-both">{formula_html(formula, units)}'
        f'<div class="w2w-symbols" role="img" tabindex="0" aria-label="{heard}">'
        f"${escape(formula_latex(formula, units))}$</div></div>"
        f'<div class="w2w-why">{escape(spoken(formula.why, units))}</div>'
        f'<div class="w2w-source mathjax_ignore">{escape(units_said(formula, units))}<br>'
        f"{escape(_source_said(formula))}</div></li>"
    )


def units_said(formula: Formula, units: str) -> str:
    """Which unit each quantity is in."""
    quantities = map(quantity_named, dict.fromkeys((*formula.names[1:], formula.result)))
    parts = [asked_for(q, units, " in ") for q in quantities if q.unit(units)]
    return f"Units: {', '.join(parts)}." if parts else "Numbers without a unit."


def _source_said(formula: Formula) -> str:
    """Where a formula is from; that of a table says so in its own words."""
    return formula.source if "Source: " in formula.source else f"Source: {formula.source}"
