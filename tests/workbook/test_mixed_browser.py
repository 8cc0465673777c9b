"""Mixed practice in a real browser, on its page: keys, focus, narrow screens, themes."""

import pytest
from playwright.sync_api import expect

from solver import case_from_code, draw
from tests.workbook.cards import focused, open_code
from tests.workbook.looking import at_width, in_theme

pytestmark = pytest.mark.browser

PAGE = "12-mixed-practice.ipynb"
PANEL = ".w2w-mixed"
CASE = draw("brake_power", 5, "us", 2)


@pytest.fixture(scope="module")
def opened(workbook_server, new_page):
    """The mixed practice page, opened once for all tests here."""
    with new_page(height=1000) as page:
        workbook_server.open(page, PAGE)
        page.locator(PANEL).wait_for()
        yield page


@pytest.fixture
def card(opened):
    """The card with every chapter ticked, levels 1 and 2, and one known problem."""
    found = opened.locator(PANEL)
    fold = found.get_by_role("button", name="What to practice", exact=True)
    if fold.count():
        fold.click()
    if found.get_by_label("4. Phase balance").is_checked():
        found.get_by_label("4. Phase balance").uncheck()
    found.get_by_role("button", name="Check every chapter", exact=True).click()
    wait_for_text(found, "Starting with the next problem:")
    found.get_by_label("Units", exact=True).select_option("US units")
    for case in (draw("water_power", 7), CASE):
        open_code(found, case)
    return found


def wait_for_text(card, text):
    card.get_by_text(text).first.wait_for()


def ticks(card):
    return card.get_by_role("checkbox")


def test_chapters_are_chosen_with_the_keyboard_alone(card):
    keys = card.page.keyboard
    card.get_by_role("button", name="Uncheck every chapter").focus()
    keys.press("Space")
    wait_for_text(card, "Check at least one chapter first.")
    card.get_by_label("4. Phase balance").focus()
    keys.press("Space")
    wait_for_text(card, "Starting with the next problem: 1 chapter, levels 1, 2, US units.")
    assert "4. Phase balance" == focused(card.page)
    card.get_by_role("button", name="Skip").focus()
    keys.press("Enter")
    code = card.get_by_label("Problem code")
    expect(code).not_to_have_value(CASE.code)
    assert "balance" == case_from_code(code.input_value()).family.chapter


def test_every_box_is_reached_by_tab_in_the_order_seen_and_has_its_label(card):
    labels = [label.strip() for label in card.locator(".w2w-tick").all_inner_texts()]
    ticks(card).first.focus()
    order = [focused(card.page)]
    for _ in range(len(labels) + 1):  # two buttons stand between chapters and levels
        card.page.keyboard.press("Tab")
        order.append(focused(card.page))
    assert labels == [name for name in order if name in labels]
    assert all(labels)


def test_a_wrong_answer_is_listed_as_coming_back_until_it_is_right(card):
    named = f"{CASE.family.title}, level 2"
    box = card.get_by_label("Your answer")
    box.fill("99999")
    box.press("Enter")
    card.locator(".w2w-wanted li", has_text=named).wait_for()
    box.fill(f"{CASE.answer:.5g}")
    box.press("Enter")
    card.locator(".w2w-wanted li", has_text=named).wait_for(state="detached")


def test_without_a_chapter_the_problem_and_what_was_typed_stay(card):
    card.get_by_label("Your answer").fill("12.5")
    card.get_by_role("button", name="Uncheck every chapter").click()
    wait_for_text(card, "Check at least one chapter first.")
    card.get_by_role("button", name="Skip").click()
    card.locator(".w2w-told", has_text="Check at least one chapter first.").wait_for()
    assert card.locator(".w2w-question", has_text=CASE.question).is_visible()
    assert "12.5" == card.get_by_label("Your answer").input_value()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_accessibility_rule_is_broken_in_either_theme(card, axe, scheme):
    page = card.page
    in_theme(page, scheme)
    try:
        assert [] == axe(page, PANEL)
    finally:
        page.emulate_media(color_scheme="light")


@pytest.mark.parametrize("width", [1200, 400])
def test_nothing_covers_or_cuts_a_box_to_tick(card, width):
    page = card.page
    try:
        at_width(page, width)
        for box in ticks(card).all():
            box.scroll_into_view_if_needed()
            assert box.evaluate(ON_TOP), box.evaluate("node => node.labels[0].textContent")
    finally:
        page.set_viewport_size({"width": 1200, "height": 1000})


# A click on the middle of the box, and on its left edge, reaches the box; it is large enough.
ON_TOP = """node => {
  const r = node.getBoundingClientRect();
  const at = x => document.elementFromPoint(x, r.y + r.height / 2);
  return r.width >= 20 && at(r.x + r.width / 2) === node && at(r.x + 2) === node
    && node.labels[0].getBoundingClientRect().height >= 24;
}"""
