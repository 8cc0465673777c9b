"""The formulas of the solver by chapter, each with all that it can be turned round for."""

from functools import cache, partial
from html import escape

from solver import FAMILIES
from solver.algebra.formula import Formula
from solver.render.html import formula_html, formula_latex, formula_text
from solver.topics.formulas import FORMULAS
from solver.units.unit import unit
from solver.vocabulary import quantity_named, spoken
from workbook.ui.chapter import formulas_of
from workbook.ui.contents import in_words
from workbook.ui.pages import titles

from .entry import Entry, Part, folded, plain, with_source
from .formula_sheet import decimals_said, units_said

__all__ = ["by_chapter", "formula_parts"]

BESIDE = "For your own numbers and the record"
GREEK = {"eta": "η", "Delta": "Δ", "Sigma": "Σ"}
TURNED = "Rearranged"
OPEN_ONE = "Open a formula for its symbols, units and source. A formula from an earlier chapter is listed in that chapter."


def formula_parts() -> list[Part]:
    """A part for each chapter, and one for what no chapter needs. Each formula stands once."""
    named, first = titles(), by_chapter()
    parts = [_part(named.get(name) or in_words(name), found) for name, found in first.items()]
    used = {id(formula) for found in first.values() for formula in found}
    return [*parts, _part(BESIDE, tuple(f for f in FORMULAS if id(f) not in used))]


@cache
def by_chapter() -> dict[str, tuple[Formula, ...]]:
    """The formulas of each chapter that no chapter before it has, in the order of reading."""
    places = {name: place for place, name in enumerate(titles())}
    practised = dict.fromkeys(family.chapter for family in FAMILIES)
    first: dict[int, str] = {}
    found = {}
    for name in sorted(practised, key=lambda name: places.get(name, len(places))):
        new = [f for f in formulas_of(name) if first.setdefault(id(f), name) == name]
        if new:
            found[name] = tuple(new)
    return found


def _part(title: str, formulas: tuple[Formula, ...]) -> Part:
    about = f"{OPEN_ONE} {decimals_said(formulas)}".strip()
    return Part(title, "formula", partial(_entries, formulas), about, mathematics=True)


def _entries(formulas: tuple[Formula, ...], units: str) -> list[Entry]:
    return [
        Entry(_words(formula, units), partial(_html, formula, units))
        for formula in formulas
        if units in formula.systems
    ]


def _html(formula: Formula, units: str, opened: bool) -> str:
    """The formula in words; under it, when opened, its symbols and all the rest."""
    turned = [name for name in formula.solvable if name != formula.result]
    forms = "".join(f"<li>{_form(formula, units, name)}</li>" for name in turned)
    others = f'<p class="w2w-want">{TURNED}</p><ul class="w2w-entries">{forms}</ul>' * bool(forms)
    body = (
        f"{_symbols(formula, units, formula.result)}"
        f'<div class="w2w-why">{escape(spoken(formula.why, units))}</div>'
        f'<div class="w2w-source mathjax_ignore">{escape(units_said(formula, units))}</div>'
        f"{with_source(formula.source)}{others}"
    )
    return folded(formula_html(formula, units), body, opened)


def _form(formula: Formula, units: str, name: str) -> str:
    shown = formula_html(formula, units, name)
    return f'<div class="w2w-both">{shown}{_symbols(formula, units, name)}</div>'


def _symbols(formula: Formula, units: str, name: str) -> str:
    """In symbols; heard as the words. What is wider than the page scrolls by the keyboard too."""
    heard = escape(formula_text(formula, units, name))
    return (
        f'<div class="w2w-symbols" role="img" tabindex="0" aria-label="{heard}">'
        f"${escape(formula_latex(formula, units, name))}$</div>"
    )


def _words(formula: Formula, units: str) -> str:
    """Labels, symbols, units with their spellings, reason and source."""
    quantities = [quantity_named(name) for name in formula.names]
    said = [formula_text(formula, units), spoken(formula.why, units), formula.source]
    said += [f"{' '.join(q.aliases)} {_typed(q.symbol(units))}" for q in quantities]
    kinds = (unit(name) for name in {q.unit(units) for q in quantities} if name)
    said += [f"{one.name} {' '.join(one.spellings)}" for one in kinds]
    return plain(" ".join(said))


def _typed(symbol: str) -> str:
    r"""A symbol as one can type it: P_\mathrm{w} is P_w and Pw, \eta is eta and η."""
    typed = symbol.replace(r"\mathrm", "").replace(r"\ ", " ")
    for mark in "\\{}":
        typed = typed.replace(mark, "")
    greek = typed
    for name, letter in GREEK.items():
        greek = greek.replace(name, letter)
    return " ".join((typed, typed.replace("_", ""), greek, greek.replace("_", "")))
