"""Every chapter as a reader meets it: it opens, its card answers, and all of it fits a telephone.

The first chapter with a figure and the first without are opened in a window of their own; from there
the others are turned to. A figure is looked at on the same page: by keyboard, by screen reader, on a
phone, and in one theme, by turns, as one sheet of colors is behind them all.
"""

import re

import pytest

from solver import case_from_code
from solver.engine.grading import as_typed
from tests.workbook.cards import answer, open_code
from tests.workbook.looking import in_theme
from tests.workbook.on_a_phone import faults_on_a_phone
from workbook.ui.pages import code_cells, shipped_pages

pytestmark = pytest.mark.browser

EXAMPLE = re.compile(r'page\.worked_example\("([\w-]+)"\)')
CODE = {path.name: "\n".join(code_cells(path)) for path in shipped_pages()}
# Each page with a worked example is a chapter. Those with a figure stand first in both lists, as
# pytest knows by its number which page a test goes on with.
EXAMPLES = {name: found[1] for name, code in CODE.items() if (found := EXAMPLE.search(code))}
ILLUSTRATED = [name for name in EXAMPLES if "page.figure(" in CODE[name]]
PLAIN = [name for name in EXAMPLES if name not in ILLUSTRATED]
CHAPTERS = [*ILLUSTRATED, *PLAIN]
FIRST = (*ILLUSTRATED[:1], *PLAIN[:1])
THEME = {name: ("light", "dark")[at % 2] for at, name in enumerate(ILLUSTRATED)}
FIGURE = ".w2w-figure"
NINE_POINTS = 12  # px


@pytest.fixture(scope="module")
def opened(request, windows, workbook_server):
    """The page of a chapter, as new, for all tests of it."""
    if request.param in FIRST:
        windows.close()
    return windows.show(workbook_server, request.param)


each_chapter = pytest.mark.parametrize("opened", CHAPTERS, indirect=True, scope="module")
each_figure = pytest.mark.parametrize("opened", ILLUSTRATED, indirect=True, scope="module")


@each_chapter
def test_a_chapter_opens_its_card_marks_a_right_answer_and_opens_a_code_and_it_fits_a_telephone(
    opened, request
):
    page = opened
    case = case_from_code(EXAMPLES[request.node.callspec.params["opened"]])
    card = page.locator(".w2w-card")
    open_code(card, case)
    answer(card, as_typed(case, case.answer))
    card.locator(".w2w-right").wait_for()
    assert "Try 1." in card.inner_text()
    card.get_by_role("button", name="Show the steps").click()
    page.locator(".w2w-example").get_by_role("button", name="All steps").click()
    page.locator(".w2w-steps").nth(1).wait_for()
    assert [] == faults_on_a_phone(page)


@each_figure
def test_a_figure_keeps_the_accessibility_rules(opened, axe, request):
    in_theme(opened, THEME[request.node.callspec.params["opened"]])
    assert [] == axe(opened, FIGURE)


@each_figure
def test_a_slider_is_known_by_its_label_and_moves_words_picture_and_table(opened):
    opened.locator(f"{FIGURE} svg").wait_for()
    label = opened.locator(f"{FIGURE} .widget-slider .widget-label").first.inner_text()
    slider = opened.locator(FIGURE).get_by_role("slider", name=label, exact=True)
    parts = [opened.locator(f"{FIGURE} {part}") for part in ("svg", "table", ".w2w-headline")]
    before = [part.inner_html() for part in parts]
    stood = slider.get_attribute("aria-valuetext")
    slider.press("ArrowRight")
    opened.wait_for_function(
        "([selector, old]) => document.querySelector(selector).innerHTML !== old",
        arg=[f"{FIGURE} svg", before[0]],
    )
    assert [] == [old for part, old in zip(parts, before, strict=True) if part.inner_html() == old]
    assert re.fullmatch(r"\d+(\.\d)?", slider.get_attribute("aria-valuetext"))
    assert float(stood) < float(slider.get_attribute("aria-valuetext"))


@each_figure
def test_on_a_phone_a_figure_fits_and_its_type_is_nine_points_or_more(opened):
    opened.set_viewport_size({"width": 400, "height": 800})
    svg = opened.locator(f"{FIGURE} svg")
    opened.wait_for_function(f"document.querySelector('{FIGURE}').clientWidth < 400")
    box = svg.bounding_box()
    units = svg.evaluate("svg => svg.viewBox.baseVal.width")
    sizes = svg.locator("text").evaluate_all(
        "all => all.map(text => parseFloat(getComputedStyle(text).fontSize))"
    )
    too_wide = opened.locator(FIGURE).evaluate("node => node.scrollWidth - node.clientWidth")
    opened.set_viewport_size({"width": 1200, "height": 900})
    assert box["x"] >= 0
    assert box["x"] + box["width"] <= 400
    assert NINE_POINTS <= round(min(sizes) * box["width"] / units, 1)
    assert 0 >= too_wide
