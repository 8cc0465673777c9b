"""What the search in the bar finds: chapters, words of the trade, formulas; each with the page it is on.

The server asks for the list in a program of its own (`__main__.py`), so no page waits while the solver
is loaded; the static site has it as a file.
"""

import json
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from solver import FAMILIES
from solver.algebra.formula import Formula
from solver.render.html import formula_text
from solver.topics.formulas import FORMULAS
from solver.units.show import capital, unit_in_words
from solver.vocabulary import Quantity, quantity_named
from workbook.ui import bar
from workbook.ui.pages import Chapter, chapters, lessons, titles
from workbook.ui.pieces import asked_for

from .entry import plain
from .formulas import BESIDE, by_chapter

__all__ = ["Found", "search_json"]


class Found(NamedTuple):
    """One thing to find: what kind it is, its name, a line about it, where it is, what it is found by.

    `find` is what the page looks up when it opens; empty where it is the page itself.
    """

    kind: str
    name: str
    about: str
    page: str
    find: str
    words: str


def search_json() -> str:
    """Everything there is to find, as a list of lists in JSON."""
    return json.dumps([*_chapters(), *_words(), *_formulas()], ensure_ascii=False)


def _chapters() -> Iterator[Found]:
    taught = lessons()
    for chapter in chapters():
        problems = [f.title for f in FAMILIES if taught.get(f.chapter) == chapter]
        yield _chapter(chapter, problems)


def _chapter(chapter: Chapter, problems: Iterable[str]) -> Found:
    words = plain(" ".join((chapter.title, chapter.about, *problems)))
    return Found("chapter", chapter.title, chapter.about, chapter.file, "", words)


def _words() -> Iterator[Found]:
    """Each quantity that a formula has, by all the names that people have for it."""
    used = dict.fromkeys(name for formula in FORMULAS for name in formula.names)
    return (_word(quantity_named(name)) for name in used)


def _word(quantity: Quantity) -> Found:
    called = (*quantity.aliases, *(asked_for(quantity, units) for units in ("us", "si")))
    words = f"| {' | '.join(dict.fromkeys(map(plain, called)))} |"  # the bars part its names
    name = capital(quantity.spoken("us"))
    return Found("word", name, _units(quantity), bar.FORMULAS, quantity.label("us"), words)


def _units(quantity: Quantity) -> str:
    """What it is measured in, and what metric mode calls it where that is another name."""
    us, si = (unit_in_words(quantity.unit(units)) or "no unit" for units in ("us", "si"))
    if quantity.label("us") != quantity.label("si"):
        return f"{us}. In metric: {quantity.label('si')}, {si}"
    return us if us == si else f"{us}, or {si} in metric"


def _formulas() -> Iterator[Found]:
    named = titles()
    chapter = {id(f): named.get(name, name) for name, found in by_chapter().items() for f in found}
    for formula in FORMULAS:
        yield _formula(formula, chapter.get(id(formula), BESIDE))


def _formula(formula: Formula, about: str) -> Found:
    quantities = [quantity_named(name) for name in formula.names]
    text = formula_text(formula, "us" if "us" in formula.systems else "si")
    labels = dict.fromkeys(q.label("us") for q in quantities)
    words = plain(" ".join((text, *(" ".join(q.aliases) for q in quantities))))
    return Found("formula", capital(text), about, bar.FORMULAS, " ".join(labels), words)
