"""The bar above every page: by mouse, by keyboard, on a phone, in the dark; and what it finds."""

import re

import pytest
from playwright.sync_api import expect

from tests.workbook.looking import at_width, in_theme
from workbook.ui.bar import bar_of

pytestmark = pytest.mark.browser

FORMULAS, CHAPTER = "16-formulas-and-tables.ipynb", "04-phase-balance.ipynb"
NARROW = 360


@pytest.fixture(scope="module")
def opened(workbook_server, new_page):
    """The page of formulas, from which the tests go on and come back."""
    with new_page() as page:
        workbook_server.open(page, FORMULAS)
        yield page


def here(page):
    return page.locator(".wtw-bar .wtw-places > li > [aria-current]")


def ready(page, title):
    page.get_by_role("heading", name=title, level=1).wait_for()
    page.locator('.wtw-page[data-state="ready"]').wait_for()


def test_it_leads_from_page_to_page_and_says_which_is_here(opened):
    bar = opened.get_by_role("navigation", name="Workbook")
    expect(here(opened)).to_have_text("Formulas")
    for place in bar_of()["places"]:
        assert bar.get_by_text(place["name"], exact=True).is_visible()
    bar.get_by_role("button", name="Chapters").press("Enter")
    bar.get_by_role("link", name="4. Phase balance").press("Enter")
    ready(opened, "4. Phase balance")
    assert opened.url.endswith(f"/{CHAPTER}")
    expect(opened.locator(".wtw-list")).to_be_hidden()
    expect(bar.get_by_role("button", name="Chapters")).to_have_class("wtw-lists wtw-here")
    opened.go_back()
    ready(opened, "Formulas and tables")
    expect(here(opened)).to_have_text("Formulas")


def test_the_keyboard_finds_a_formula_and_the_page_opens_at_it(opened):
    opened.keyboard.press("/")
    box = opened.get_by_role("combobox", name="Find a formula, a chapter or a word")
    expect(box).to_be_focused()
    opened.keyboard.type("whp")
    first = opened.locator(".wtw-bar").get_by_role("option", selected=True)
    expect(first).to_contain_text("Water horsepower (WHP)")
    opened.keyboard.press("ArrowDown")
    expect(first).to_contain_text("Water horsepower = flow")
    opened.keyboard.press("Enter")
    opened.wait_for_url("**/*find=water+horsepower*")
    opened.get_by_text("found, in").wait_for()
    ready(opened, "Formulas and tables")


def test_what_nothing_is_called_gets_a_sentence_and_escape_leads_back(opened):
    opened.keyboard.press("Control+k")
    opened.keyboard.type("zzz")
    opened.get_by_text("Nothing here is called “zzz”. Try one short word").wait_for()
    opened.keyboard.press("Escape")
    expect(opened.locator(".wtw-found")).to_be_hidden()


def test_enter_before_the_list_is_there_waits_for_it_and_opens_the_page(workbook_server, page):
    held = []
    page.route(f"**/{bar_of()['search']}*", lambda route: held.append(route))
    workbook_server.open(page, FORMULAS)
    page.keyboard.press("Control+k")
    page.keyboard.type("Phase balanc")
    page.get_by_text("One moment, the list is loading.").first.wait_for()
    marked = page.locator(".wtw-found [aria-selected=true]")
    page.keyboard.press("ArrowDown")
    expect(marked).to_contain_text("in all formulas")
    page.keyboard.type("e")
    expect(marked).to_have_count(0)
    page.keyboard.press("Enter")
    expect(here(page)).to_have_text("Formulas")
    (asked,) = held
    asked.continue_()
    ready(page, "4. Phase balance")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_bar_with_its_lists_open_keeps_the_accessibility_rules(opened, axe, scheme):
    in_theme(opened, scheme)
    opened.get_by_role("button", name="Chapters").click()
    found = axe(opened, ".wtw-bar")
    opened.keyboard.press("Escape")
    opened.keyboard.press("/")
    opened.keyboard.type("head")
    opened.locator(".wtw-bar").get_by_role("option").nth(5).wait_for()
    found += axe(opened, ".wtw-bar")
    opened.keyboard.press("Escape")
    assert [] == found


def test_on_a_phone_it_is_one_row_and_the_rest_is_under_more(opened, axe):
    at_width(opened, NARROW, 780)
    bar = opened.locator(".wtw-bar")
    assert bar.evaluate("bar => bar.scrollWidth <= bar.clientWidth && bar.clientHeight < 50")
    more = bar.get_by_role("button", name="More")
    assert not bar.get_by_role("link", name="Record").is_visible()
    more.click()
    assert bar.get_by_role("link", name="Record").is_visible()
    assert [] == axe(opened, ".wtw-bar")
    bar.get_by_role("combobox").fill("amps")
    box = bar.get_by_role("option").first.bounding_box()
    assert box["x"] >= 0
    assert box["x"] + box["width"] <= NARROW
    opened.keyboard.press("Escape")
    expect(bar.get_by_role("link", name="Record")).to_be_hidden()
    at_width(opened, 1200)


@pytest.mark.parametrize("asks", [f"contents/{CHAPTER}", "sessions"])
def test_who_chooses_another_page_before_the_first_has_come_gets_the_last(opened, asks):
    bar = opened.get_by_role("navigation", name="Workbook")
    held, asked_of = [], re.compile(rf"/api/{asks}\b")
    opened.route(asked_of, lambda route: held.append(route))
    with opened.expect_request(asked_of):
        bar.get_by_role("button", name="Chapters").click()
        bar.get_by_role("link", name="4. Phase balance").click()
    if asks == "sessions":
        opened.get_by_role("heading", name="4. Phase balance", level=1).wait_for()
    bar.get_by_role("link", name="Record").click()
    opened.wait_for_timeout(1000)
    for route in held:
        route.continue_()
    opened.unroute(asked_of)
    ready(opened, "The pump-day record")
    opened.get_by_label("Station").first.wait_for()
    expect(here(opened)).to_have_text("Record")
    assert opened.url.endswith("/13-pump-day-record.ipynb")
