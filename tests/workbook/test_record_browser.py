"""The pump-day record in a real browser, on its page: keys, themes, narrow screens."""

import pytest

pytestmark = pytest.mark.browser

PAGE = "13-pump-day-record.ipynb"
PANEL = ".w2w-day"
AMPS = {"Amps on leg A": "25.5", "Amps on leg B": "23", "Amps on leg C": "26.5"}


@pytest.fixture
def day(workbook_server, chromium):
    """The panel of the record on a page of its own, just opened."""
    context = chromium.new_context(viewport={"width": 1200, "height": 1000})
    page = context.new_page()
    workbook_server.open(page, PAGE)
    panel = page.locator(PANEL)
    panel.wait_for()
    yield panel
    context.close()


def wait_for_text(panel, text):
    panel.get_by_text(text).first.wait_for(timeout=20_000)


def show(panel, group):
    panel.get_by_role("button", name=f"Show {group}").click()


def fill_legs(panel):
    show(panel, "volts and amps")
    for label, text in AMPS.items():
        panel.get_by_label(label).fill(text)


def focused(panel):
    """What a screen reader calls the control that has the focus."""
    return panel.page.evaluate(
        "() => { const at = document.activeElement;"
        "return (at.labels?.length ? at.labels[0].textContent : at.textContent).trim(); }"
    )


def test_a_record_is_filled_and_worked_with_the_keyboard_alone(day):
    keys = day.page.keyboard
    day.get_by_label("Station").focus()
    while not focused(day).startswith("Show volts and amps"):
        keys.press("Tab")
    keys.press("Space")
    wait_for_text(day, "Hide volts and amps")
    while focused(day) != "Amps on leg A, in A":
        keys.press("Tab")
    for text in AMPS.values():
        keys.type(text)
        keys.press("Tab")
    keys.press("Shift+Tab")
    keys.press("Enter")
    wait_for_text(day, "The current unbalance is 8%, over 5%.")
    day.locator("summary", has_text="current unbalance").focus()
    keys.press("Enter")
    day.get_by_text("Step 3: current unbalance").wait_for(state="visible")


def test_a_fault_stands_right_under_its_box_and_the_rest_is_worked(day):
    fill_legs(day)
    show(day, "flow meter and power")
    flow = day.get_by_label("Flow by meter")
    flow.fill("plenty")
    day.get_by_role("button", name="Work this record").click()
    wait_for_text(day, "1 entry was not read.")
    fault = day.get_by_text("has no number in it").bounding_box()
    box = flow.bounding_box()
    assert 0 <= fault["y"] - (box["y"] + box["height"]) < 40
    assert "plenty" == flow.input_value()
    wait_for_text(day, "The current unbalance is 8%, over 5%.")


def test_a_change_of_units_keeps_what_was_typed(day):
    show(day, "flow meter and power")
    day.get_by_label("Flow by meter, in gpm").fill("450")
    day.get_by_label("Flow by meter, in gpm").press("Tab")
    day.get_by_label("Units").select_option("Metric units")
    wait_for_text(day, "the old unit now stands behind it")
    assert "450 gpm" == day.get_by_label("Flow by meter, in L/s").input_value()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_accessibility_rule_is_broken_in_either_theme(day, axe, scheme):
    page = day.page
    page.emulate_media(color_scheme=scheme)
    page.locator(f"body[data-jp-theme-light={str(scheme == 'light').lower()}]").wait_for(
        state="attached"
    )
    fill_legs(day)
    show(day, "flow meter and power")
    day.get_by_label("Flow by meter").fill("plenty")
    day.get_by_role("button", name="Work this record").click()
    wait_for_text(day, "1 entry was not read.")
    day.locator("summary").first.click()
    assert [] == axe(page, PANEL)


def test_at_400_pixels_nothing_is_cut_and_the_page_does_not_scroll_sideways(day):
    page = day.page
    page.set_viewport_size({"width": 400, "height": 800})
    fill_legs(day)
    day.get_by_role("button", name="Work this record").click()
    wait_for_text(day, "The current unbalance is 8%, over 5%.")
    day.locator("summary").first.click()
    assert 400 == page.evaluate("document.documentElement.scrollWidth")
    assert [] == page.eval_on_selector_all(f"{PANEL}, {PANEL} *:not(.w2w-heard)", OUTSIDE, 400)


# Whatever reaches over the edge of the screen, or is cut by what holds it.
OUTSIDE = """(nodes, width) => nodes
  .filter(node => node.offsetParent)
  .filter(node => node.getBoundingClientRect().right > width + 1
    || (getComputedStyle(node).overflowX === 'hidden' && node.scrollWidth > node.clientWidth + 1))
  .map(node => node.className + ' ' + node.textContent.slice(0, 40))"""
