"""The formulas of the solver by chapter, as HTML: a chapter's list, and entries to look up.

Each shows its words, symbols, units, reason and source; an entry also all it can be rearranged for.
"""

from collections.abc import Iterable
from functools import cache, partial

from solver import FAMILIES
from solver.algebra.expression import Fraction
from solver.algebra.formula import Formula
from solver.algebra.tree import walk
from solver.render.html import formula_html, formula_latex, formula_text
from solver.topics.formulas import FORMULAS
from solver.units.unit import unit
from solver.vocabulary import quantity_named, spoken
from workbook.ui.chapter import formulas_of
from workbook.ui.contents import in_words
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pages import titles
from workbook.ui.pieces import asked_for

from .entry import Entry, Part, folded, plain, with_source

__all__ = ["by_chapter", "chapters_html", "formula_parts", "sheet_html"]

DECIMALS = "An efficiency goes in as a decimal: 82% is 0.82."
BESIDE = "For judgments, your own numbers and the record"
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
    practiced = dict.fromkeys(family.chapter for family in FAMILIES)
    first: dict[int, str] = {}
    found = {}
    for name in sorted(practiced, key=lambda name: places.get(name, len(places))):
        new = [f for f in formulas_of(name) if first.setdefault(id(f), name) == name]
        if new:
            found[name] = tuple(new)
    return found


def _part(title: str, formulas: tuple[Formula, ...]) -> Part:
    about = f"{OPEN_ONE} {_decimals_said(formulas)}".strip()
    return Part(title, "formula", partial(_entries, formulas), about, mathematics=True)


def _entries(formulas: tuple[Formula, ...], units: str) -> list[Entry]:
    return [
        Entry(_words(formula, units), partial(_html, formula, units))
        for formula in formulas
        if units in formula.systems
    ]


def sheet_html(formulas: Iterable[Formula], units: str) -> Markup:
    """Formulas as a list, for a widget that sets mathematics."""
    shown = [formula for formula in formulas if units in formula.systems]
    said = _decimals_said(shown)
    items = (tag("li", _item(formula, units)) for formula in shown)
    return joined(tag("p", said) if said else None, tag("ol", items, cls="w2w-steps"))


def chapters_html(chapters: Iterable[str], units: str) -> Markup:
    """The formulas of these chapters, a part to open for each; of one chapter it is open."""
    named = titles()
    lists = [(named.get(name) or in_words(name), formulas_of(name)) for name in chapters]
    there = [(title, formulas) for title, formulas in lists if formulas]
    return joined(
        tag("details", tag("summary", title), sheet_html(formulas, units), open=len(there) == 1)
        for title, formulas in there
    )


def _item(formula: Formula, units: str) -> Markup:
    """One formula. The last lines may hold dollar signs, which are no mathematics there."""
    about = tag(
        "div",
        _units_said(formula, units),
        tag("br"),
        _source_said(formula.source),
        cls="w2w-source mathjax_ignore",
    )
    return joined(_both(formula, units, formula.result), _why(formula, units), about)


def _source_said(source: str) -> str:
    """Where a formula is from; that of a table says so in its own words."""
    return source if "Source: " in source else f"Source: {source}"


def _html(formula: Formula, units: str, opened: bool) -> Markup:
    """The formula in words; under it, when opened, its symbols and all the rest."""
    turned = [name for name in formula.solvable if name != formula.result]
    forms = (tag("li", _both(formula, units, name)) for name in turned)
    others = (tag("p", TURNED, cls="w2w-want"), tag("ul", forms, cls="w2w-entries"))
    body = joined(
        _symbols(formula, units, formula.result),
        _why(formula, units),
        tag("div", _units_said(formula, units), cls="w2w-source mathjax_ignore"),
        with_source(formula.source),
        others if turned else None,
    )
    return folded(Markup(formula_html(formula, units)), body, opened)


def _both(formula: Formula, units: str, name: str) -> Markup:
    """Solved for the quantity `name`, in words and in symbols."""
    shown = Markup(formula_html(formula, units, name))
    return tag("div", shown, _symbols(formula, units, name), cls="w2w-both")


def _symbols(formula: Formula, units: str, name: str) -> Markup:
    """In symbols; heard as the words. What is wider than the page scrolls by the keyboard too."""
    return tag(
        "div",
        f"${formula_latex(formula, units, name)}$",
        cls="w2w-symbols",
        role="img",
        tabindex=0,
        aria_label=formula_text(formula, units, name),
    )


def _why(formula: Formula, units: str) -> Markup:
    return tag("div", spoken(formula.why, units), cls="w2w-why")


def _decimals_said(formulas: Iterable[Formula]) -> str:
    """How an efficiency goes in, where one does."""
    nodes = (node for formula in formulas for node in walk(formula.expr))
    return DECIMALS if any(isinstance(node, Fraction) for node in nodes) else ""


def _units_said(formula: Formula, units: str) -> str:
    """Which unit each quantity is in."""
    quantities = map(quantity_named, dict.fromkeys((*formula.names[1:], formula.result)))
    parts = [asked_for(q, units, " in ") for q in quantities if q.unit(units)]
    return f"Units: {', '.join(parts)}." if parts else "Numbers without a unit."


def _words(formula: Formula, units: str) -> str:
    """Labels, symbols, units with their spellings, reason and source."""
    quantities = [quantity_named(name) for name in formula.names]
    said = [formula_text(formula, units), spoken(formula.why, units), formula.source]
    said += [f"{' '.join(q.aliases)} {_typed(q.symbol(units))}" for q in quantities]
    kinds = (unit(name) for name in dict.fromkeys(q.unit(units) for q in quantities) if name)
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
