"""The reference: all of the library in it, found by words; its panel, without a browser."""

import re
from html import unescape

import pytest

from solver.algebra.tree import constants
from solver.render.html import formula_latex, formula_text
from solver.topics import limits
from solver.topics.formulas import FORMULAS
from solver.topics.tables import table_as_printed, table_names, table_source
from solver.topics.zones import Limits
from solver.units.unit import units as every_unit
from solver.vocabulary import quantity_named, spoken
from tests.workbook.said import words
from workbook import page
from workbook.reference.entry import find, plain
from workbook.reference.reference_panel import ReferencePanel, parts
from workbook.reference.tables import CONSTANTS, LIMITS, TABLES, UNITS

SYSTEMS = ["us", "si"]
PARTS = parts()


def shown(part, units):
    return part.html(part.entries(units))


@pytest.fixture(scope="module", params=SYSTEMS)
def sheet(request):
    """A system, and all that the parts with formulas show in it."""
    html = "".join(shown(part, request.param) for part in PARTS if part.mathematics)
    return request.param, unescape(html)


@pytest.fixture
def panel():
    return ReferencePanel()


def folds(panel):
    return [fold for fold in panel.folds if fold.box.layout.display != "none"]


def find_in(panel, text):
    panel.ask.box.value = text
    panel.ask.gate.click()
    return words(panel.said.value)


def test_every_formula_and_every_turn_of_it_stands_once_in_words_and_in_symbols(sheet):
    units, html = sheet
    asked = [(f, name) for f in FORMULAS if units in f.systems for name in f.solvable]
    assert len(asked) > 600
    for formula, name in asked:
        heard = f'aria-label="{formula_text(formula, units, name)}"'
        # Once where it is set in words, once where it is set in symbols.
        assert html.count(heard) >= 2, heard
        assert f"${formula_latex(formula, units, name)}$" in html
    assert len(asked) == html.count('class="w2w-symbols"')


def test_each_formula_has_its_source_its_reason_and_its_units(sheet):
    units, html = sheet
    items = html.split("<li><details>")[1:]
    formulas = [f for f in FORMULAS if units in f.systems]
    assert len(formulas) == len(items)
    for formula in formulas:
        heard = f'aria-label="{formula_text(formula, units)}"'
        own = [item for item in items if heard in item.partition("</summary>")[0]]
        assert any(formula.source in one and spoken(formula.why, units) in one for one in own)
        assert all("Units: " in one or "Numbers without a unit." in one for one in own)


@pytest.mark.parametrize("units", SYSTEMS)
def test_every_constant_has_its_trade_value_its_exact_value_and_its_source(units):
    text = words(shown(CONSTANTS, units))
    for one in {c for f in FORMULAS if units in f.systems for c in constants(f.expr)}:
        figure = one.figure(units)
        if figure[:2] != (1, ""):
            assert one.label in text
            assert one.source in text
            if figure.exact is not None and figure.exact < 1e10:
                assert f"Exact value: {figure.exact:,.10g}." in text


def test_a_constant_shows_what_the_handbooks_print():
    # NIST SP 811 App. B: a US gallon is 3.785412 L, so a cubic foot (28.31685 L) is 7.480519 of them.
    text = words(shown(CONSTANTS, "us"))
    assert "gallons per cubic foot: 7.48 gal per ft³ Exact value: 7.480519." in text
    assert "water power constant: 3,960 gpm·ft per hp Exact value: 3,956.044." in text


@pytest.mark.parametrize(
    ("units", "said"),
    [
        ("us", "psi = 6,894.757 Pa."),  # NIST SP 811 App. B.8: 6.894757 E+03
        ("us", "MGD = 694.4444 gpm = 0.04381264 m³/s."),  # 4.381264 E-02, same place
        ("us", "hp = 745.6999 W."),  # horsepower (550 ft lbf/s): 7.456999 E+02
        ("si", "in = 0.0254 m."),  # 2.54 E-02, exact
        (
            "si",
            "inHg = 3.386389 kPa = 3,386.389 Pa.",
        ),  # inch of mercury, conventional: 3.386389 E+03
    ],
)
def test_a_unit_is_as_large_as_nist_says(units, said):
    assert said in words(shown(UNITS, units))


@pytest.mark.parametrize("units", SYSTEMS)
def test_every_unit_stands_with_every_spelling(units):
    text = words(shown(UNITS, units))
    assert [] == [s for u in every_unit().values() for s in u.spellings if s not in text]


@pytest.mark.parametrize("units", SYSTEMS)
def test_every_published_table_of_the_system_stands_whole_with_its_source(units):
    other = {"us": "_si", "si": "_us"}[units]
    html = shown(TABLES, units)
    names = [name for name in table_names() if not name.endswith(other)]
    assert len(names) == html.count("<table")
    for name in names:
        assert words(table_source(name)).partition(". ")[2] in words(html)
        cells = sum(len(row) for row in table_as_printed(name))
        (found,) = (t for t in html.split("<table")[1:] if _cells(t) == _printed(name))
        assert cells == len(_cells(found))


def _cells(html):
    return [unescape(cell) for cell in re.findall(r"<t[hd][^>]*>([^<]*)</t[hd]>", html)]


def _printed(name):
    heads, *rows = table_as_printed(name)
    return [head.replace("_", " ") for head in heads] + [cell for row in rows for cell in row]


@pytest.mark.parametrize("units", SYSTEMS)
def test_every_published_limit_stands_with_its_rule_and_its_source(units):
    text = words(shown(LIMITS, units))
    judged = [value for value in vars(limits).values() if isinstance(value, Limits)]
    assert len(judged) == len(LIMITS.entries(units))
    for one in judged:
        assert one.rule[1:] in text
        assert one.source in text


@pytest.mark.parametrize(
    ("wanted", "label"),
    [
        ("wire-to-water", "wire-to-water efficiency"),  # a label
        ("pump EFFICIENCY", "pump efficiency"),  # two words, another case
        ("whp", "water horsepower"),  # a symbol as typed
        ("Eff_pump", "pump efficiency"),  # a symbol as seen
        ("MGD", "daily flow"),  # a unit
        ("gallons", "daily flow"),  # a spelling of a unit
        ("anr-0548", "brake horsepower"),  # a source
    ],
)
def test_a_formula_is_found_by_label_symbol_unit_and_source(wanted, label):
    found = find(PARTS, "us", wanted)
    html = "".join(part.html(entries) for part, entries in found.items() if part.mathematics)
    assert label in words(html)
    assert sum(map(len, found.values())) < sum(len(part.entries("us")) for part in PARTS) / 2


def test_what_is_found_is_what_has_all_the_words_and_no_more():
    found = [entry for entries in find(PARTS, "us", "nema unbalance").values() for entry in entries]
    every = [entry for part in PARTS for entry in part.entries("us")]
    has = [e for e in every if {"nema", "unbalance"} <= set(e.words.split())]
    assert has
    assert set(map(id, has)) <= set(map(id, found))
    assert all("nema" in e.words and "unbalance" in e.words for e in found)


@pytest.mark.parametrize(
    "text",
    [
        "<img src=x onerror=alert(1)>",
        "$x$ \\href{javascript:1}{y}",
        "\x00\x1b[31m",
        "(" * 9999,
        "’”“",
    ],
)
def test_hostile_text_is_shown_as_text_and_finds_nothing(panel, text):
    before = [fold.button.description for fold in folds(panel)]
    find_in(panel, text)
    assert "<img" not in panel.said.value
    assert "went wrong" not in panel.said.value
    assert len(panel.said.value) < 2000
    assert before == [fold.button.description for fold in folds(panel)]


def test_nothing_found_says_what_each_word_finds_alone_and_what_to_try(panel):
    said = find_in(panel, "shutoff zebra")
    assert "Nothing here has “shutoff zebra”." in said
    assert re.search(r"“shutoff” is in [1-9]\d*, “zebra” is in 0\.", said)
    assert "Try one short word" in said


def test_only_what_was_found_is_shown_and_opened_and_all_of_it_comes_back(panel):
    said = find_in(panel, "least inflow")
    total = int(re.search(r"(\d+) found", said)[1])
    assert total == sum(len(fold.entries) for fold in folds(panel)) > 0
    assert all(fold.open and fold.body.value for fold in folds(panel))
    panel.all.click()
    assert len(PARTS) == len(folds(panel))
    assert "" == panel.ask.box.value == "".join(fold.body.value for fold in panel.folds)


def test_much_that_is_found_waits_behind_the_buttons(panel):
    assert "Open a section to see them" in find_in(panel, "head")
    assert "" == "".join(fold.body.value for fold in panel.folds)
    assert all("found" in fold.button.description for fold in folds(panel))


def test_nothing_is_sent_before_a_part_is_opened_and_it_goes_when_closed(panel):
    assert "" == "".join(fold.body.value for fold in panel.folds)
    largest = 0
    for fold in panel.folds:
        fold.show(True)
        largest = max(largest, len(fold.body.value.encode()))
        fold.show(False)
        assert "" == fold.body.value
    assert largest < 150_000


def test_other_units_keep_what_is_open_and_what_is_looked_for(panel):
    panel.folds[0].show(True)
    assert "3,960" in words(panel.folds[0].body.value)
    panel.units.value = "si"
    assert panel.folds[0].open
    assert "3,960" not in words(panel.folds[0].body.value)
    find_in(panel, "water power constant")
    assert "102 L/s·m per kW" in words(folds(panel)[-1].body.value)
    panel.units.value = "us"
    assert "3,960 gpm·ft per hp" in words(folds(panel)[-1].body.value)


def test_what_other_units_do_not_have_leaves_all_parts_there_in_those(panel):
    panel.units.value = "si"
    find_in(panel, "60072-1")  # the source of a table that is in metric units alone
    assert 1 == len(folds(panel))
    panel.units.value = "us"
    assert "Nothing here has" in words(panel.said.value)
    assert len(PARTS) == len(folds(panel))


def test_the_page_opens_in_the_units_the_reader_had_last():
    assert "us" == page.reference().units.value


@pytest.mark.parametrize("units", SYSTEMS)
def test_every_alias_of_a_quantity_finds_its_formulas(units):
    entries = [e for part in PARTS if part.mathematics for e in part.entries(units)]
    used = {name for f in FORMULAS if units in f.systems for name in f.names}
    for name in used:
        label, *others = quantity_named(name).aliases
        found = _having(entries, label)
        assert found
        for alias in others:
            assert found & _having(entries, alias), f"{alias} does not find the {label}"


def _having(entries, alias):
    words = [f" {word}" for word in plain(alias).split()]
    return {id(e) for e in entries if all(word in f" {e.words}" for word in words)}
