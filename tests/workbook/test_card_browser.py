"""The cards in a real browser, on the shipped pages, as a reader meets them.

The unit tests stand beside this file; here is what only JupyterLab and a browser can show: keys,
focus, double clicks, narrow screens, themes.
"""

import re
import statistics
import time

import pytest
from playwright.sync_api import expect

from solver import case_from_code, draw
from tests.workbook.cards import code_of, focused, open_code
from tests.workbook.looking import in_theme

pytestmark = pytest.mark.browser

PAGE = "01-three-horsepowers.ipynb"
PANELS = ".w2w-panel"
CASE = draw("motor_power", 5, "us", 2)
NAMED = next(m for m in CASE.mistakes if m.id.startswith("brake_power."))


@pytest.fixture(scope="module")
def horsepower(workbook_server, new_page):
    """The horsepower page, opened once for all tests here."""
    with new_page(height=1200) as page:
        workbook_server.open(page, PAGE)
        page.locator(".w2w-card").wait_for()
        yield page


@pytest.fixture
def card(horsepower):
    """The practice card with one known problem that nobody has tried."""
    found = horsepower.locator(".w2w-card")
    left_open = found.get_by_role("button", name="Close: other kinds")
    if left_open.count():  # by a test that failed and is tried again
        left_open.click()
    open_code(found, draw("water_power", 7))
    open_code(found, CASE)
    return found


def box(card):
    return card.get_by_label("Your answer")


def press(card, name):
    card.get_by_role("button", name=name).click()


def said(card):
    return card.locator(".w2w-told .w2w-say")


def wait_for_text(card, text):
    card.get_by_text(text).first.wait_for()


def test_enter_sends_the_answer_once_and_what_was_read_is_said(card):
    box(card).fill("12 kW")
    box(card).press("Enter")
    wait_for_text(card, "Read as 12 kW, which is 16.09 hp.")
    wait_for_text(card, "Try 1.")
    card.page.wait_for_timeout(500)  # a second try would come within this
    assert said(card).get_by_text("Try 1.").is_visible()


def test_a_wrong_answer_is_named_under_the_box_in_a_region_that_speaks_and_marked_in_the_picture(
    card,
):
    box(card).fill(f"{NAMED.value:.5g}")
    press(card, "Check")
    wait_for_text(card, NAMED.says)
    assert "status" == said(card).get_attribute("role")
    assert "← look here" in said(card).text_content()
    card.locator(".w2w-drawn svg").get_by_text("Look here: brake horsepower").wait_for()
    places = [part.bounding_box() for part in (box(card), said(card))]
    assert places[1]["y"] < places[0]["y"] + places[0]["height"] + 40
    assert box(card).evaluate("node => node === document.activeElement")


def test_a_double_click_is_one_try_and_one_new_problem(card):
    box(card).fill("99999")
    card.get_by_role("button", name="Check").dblclick()
    wait_for_text(card, "Try 1.")
    card.page.wait_for_timeout(500)  # the second click would answer within this
    assert said(card).get_by_text("Try 1.").is_visible()
    card.get_by_role("button", name="Skip").dblclick()
    gone(card, CASE)
    second = code_of(card)
    card.page.wait_for_timeout(500)
    assert second == code_of(card)


def test_the_same_answer_sent_again_is_told_and_not_counted(card):
    box(card).fill("99999")
    box(card).press("Enter")
    wait_for_text(card, "Try 1.")
    card.page.wait_for_timeout(500)  # later than a double click
    box(card).press("Enter")
    wait_for_text(card, "You already gave this answer, so it doesn't count again.")


def test_unreadable_text_stays_in_the_box_and_counts_for_nothing(card):
    box(card).fill("12 psi")
    box(card).press("Enter")
    wait_for_text(card, "psi is a pressure; this asks for a power in hp.")
    assert "12 psi" == box(card).input_value()
    assert said(card).get_by_text("This doesn't count as a try.").is_visible()


def test_hints_and_the_solution_show_fractions_and_keep_the_answer(card):
    box(card).fill("30")
    press(card, "Hint")
    wait_for_text(card, "Hint 1 of 4")
    card.page.wait_for_timeout(400)  # later than a double click
    press(card, "Hint")
    wait_for_text(card, "Hint 2 of 4")
    show_every_step(card)
    line = card.get_by_role("img", name=re.compile("^water horsepower = flow × total dynamic head"))
    expect(line.locator(".w2w-frac")).to_have_count(2)  # the hints go a moment after it comes
    assert "30" == box(card).input_value()


def show_every_step(card):
    press(card, "Show the steps")
    wait_for_text(card, "Step 1: water horsepower (WHP)")
    press(card, "All steps")
    wait_for_text(card, "Step 3: motor horsepower (MHP)")


def gone(card, case):
    """Wait until another problem has taken the place of this one."""
    expect(card.locator(".w2w-above")).not_to_contain_text(case.code)


def test_a_bad_code_is_explained_where_it_was_typed(card):
    code = card.get_by_label("Problem code")
    code.fill("MP-2U1")
    press(card, "Open this code")
    wait_for_text(card, "isn't a problem code")
    assert "MP-2U1" == code.input_value()
    assert CASE.code == code_of(card)


def test_a_new_level_makes_a_new_problem(card):
    press(card, "Other kinds")
    card.get_by_label("Level").select_option("3")
    gone(card, CASE)
    card.page.wait_for_timeout(400)  # later than a double click
    press(card, "Close: other kinds")
    code = card.get_by_label("Problem code").element_handle()
    card.page.wait_for_function("box => box.value.startsWith('MP-3U')", arg=code)


def test_tab_leads_through_what_may_be_pressed_in_the_order_seen(card):
    keys = card.page.keyboard
    box(card).focus()
    order = []
    for _ in range(6):
        keys.press("Tab")
        order.append(focused(card.page))
    assert ["Check", "Hint", "Show the steps", "Skip", "Other kinds", "Close: code"] == order


def test_who_goes_on_to_the_search_before_a_problem_comes_keeps_the_focus_there(card):
    search = card.page.get_by_label("Find a formula, a chapter or a word")
    skip = card.get_by_role("button", name="Skip")
    skip.evaluate("""skip => {
      skip.click();
      document.querySelector(".wtw-search input").focus();
    }""")
    gone(card, CASE)
    card.page.wait_for_timeout(500)  # what takes the focus comes after the question
    expect(search).to_be_focused()


def test_ten_problems_in_numbers_and_choices_are_worked_by_keys_alone(card):
    """Enter checks, Enter goes on, and whatever comes is answered where the focus already is."""
    page, keys = card.page, card.page.keyboard
    card.get_by_role("button", name="Other kinds", exact=True).click()
    card.get_by_label("Kind of problem").select_option("All kinds, mixed")
    gone(card, CASE)
    card.page.wait_for_timeout(400)  # later than a double click
    press(card, "Close: other kinds")
    box(card).or_(card.get_by_role("radio").first).first.focus()
    kinds, times = set(), []
    while len(times) < 10 or len(kinds) < 2:  # they come by chance, and so may ten of one kind
        case = case_from_code(code_of(card))
        kinds.add(bool(case.choices))
        assert page.evaluate("document.activeElement.closest('.w2w-asking') !== null")
        _type(keys, case, len(times))
        begun = time.monotonic()
        keys.press("Enter")
        card.locator(".w2w-right").wait_for()
        times.append(time.monotonic() - begun)
        card.get_by_role("button", name="Next", exact=True).wait_for()
        page.wait_for_timeout(400)  # later than a double press
        keys.press("Enter")
        gone(card, case)
    print(f"\nanswer to result: {statistics.median(times):.3f} s, at most {max(times):.3f} s")


def _type(keys, case, turn):
    """A number; or the choice by its digit, its letter, or the arrow keys, in turn."""
    if not case.choices:
        keys.type(f"{case.answer:.4g}")
        return
    number = round(case.answer)
    if turn % 3 == 2:
        for _ in range(number):
            keys.press("ArrowDown")
    else:
        keys.press("abcd"[number - 1] if turn % 3 else str(number))


def test_a_choice_is_a_row_to_click_and_enter_checks_it(card):
    case = draw("which_power", 5)
    open_code(card, case)
    row = card.locator(".w2w-choice").nth(round(case.answer) - 1)
    assert all(part.bounding_box()["height"] >= 44 for part in card.locator(".w2w-choice").all())
    row.click()
    card.page.keyboard.press("Enter")
    card.locator(".w2w-right").wait_for()
    assert "w2w-choice" in card.page.evaluate("document.activeElement.parentElement.className")


def test_own_readings_are_worked_or_what_is_missing_is_named(horsepower):
    own = horsepower.locator(".w2w-own")
    own.get_by_label("Flow, in gpm").fill("450 gpm")
    own.get_by_label("Flow, in gpm").press("Enter")
    wait_for_text(own, "The water horsepower can't be calculated yet.")
    own.get_by_label("Total dynamic head (TDH), in ft").fill("62")
    own.get_by_role("button", name="Work it out").click()
    wait_for_text(own, "The water horsepower is 7.045 hp.")
    own.get_by_label("What do you want to find?").select_option("input power (kW)")
    own.get_by_text("The water horsepower is 7.045 hp.").wait_for(state="detached")
    assert "450 gpm" == own.get_by_label("Flow, in gpm").input_value()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_accessibility_rule_is_broken_in_either_theme(card, axe, scheme):
    page = card.page
    in_theme(page, scheme)
    box(card).fill(f"{NAMED.value:.5g}")
    box(card).press("Enter")
    wait_for_text(card, NAMED.says)
    show_every_step(card)
    try:
        assert [] == axe(page, PANELS)
    finally:
        page.emulate_media(color_scheme="light")


def test_at_400_pixels_nothing_is_cut_and_the_page_does_not_scroll_sideways(card):
    page = card.page
    page.set_viewport_size({"width": 400, "height": 800})
    try:
        show_every_step(card)
        assert 400 == page.evaluate("document.documentElement.scrollWidth")
        assert [] == page.eval_on_selector_all(
            f"{PANELS}, {PANELS} *:not(.w2w-heard *, .w2w-heard)", OUTSIDE, 400
        )
    finally:
        page.set_viewport_size({"width": 1200, "height": 1000})


# Whatever reaches over the edge of the screen, or is cut by what holds it.
OUTSIDE = """(nodes, width) => nodes
  .filter(node => node.offsetParent && !node.closest('.w2w-symbols'))
  .filter(node => node.getBoundingClientRect().right > width + 1
    || (getComputedStyle(node).overflowX === 'hidden' && node.scrollWidth > node.clientWidth + 1))
  .map(node => node.className + ' ' + node.textContent.slice(0, 40))"""
