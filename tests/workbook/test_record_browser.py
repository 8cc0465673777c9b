"""The pump-day record in a real browser, on its page: keys, themes, narrow screens."""

import re

import pytest
from playwright.sync_api import expect

from solver import case_from_code
from tests.workbook.cards import SLOWER, answer, code_of
from tests.workbook.looking import in_theme

pytestmark = pytest.mark.browser

PAGE = "13-pump-day-record.ipynb"
PANEL = ".w2w-day"
AMPS = {"Amps on leg A": "25.5", "Amps on leg B": "23", "Amps on leg C": "26.5"}


def forget_draft(server):
    """What an earlier test typed into the form is kept for the reader, and not for the next test."""
    for draft in server.folder.parent.rglob("record-draft.json"):
        draft.unlink()


@pytest.fixture
def day(workbook_server, show):
    """The panel of the record on its page, as new."""
    forget_draft(workbook_server)
    panel = show(workbook_server, PAGE, height=1000).locator(PANEL).first
    panel.wait_for()
    return panel


@pytest.fixture
def plant(day):
    """The panel of many pumps, under that of the record."""
    return day.page.locator(PANEL).last


def wait_for_text(panel, text):
    panel.get_by_text(text).first.wait_for()


def wait_for_unbalance(panel):
    """The row of the result for the legs of these tests."""
    panel.locator(".w2w-checked summary", has_text="Current unbalance").wait_for()


def unfold(panel, group):
    panel.get_by_role("button", name=f"Show {group}").click()


def fill_legs(panel):
    unfold(panel, "volts and amps")
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
    folded = day.get_by_role("button", name="volts and amps")
    expect(folded).to_have_attribute("aria-expanded", "false")
    keys.press("Space")
    wait_for_text(day, "Hide volts and amps")
    expect(folded).to_have_attribute("aria-expanded", "true")
    place = day.locator(".w2w-place-amps")
    expect(place).to_be_hidden()
    while focused(day) != "Amps on leg A, in A":
        keys.press("Tab")
    expect(place).to_be_visible()
    where = "In the panel, the clamp around one leg at a time"
    expect(day.get_by_label("Amps on leg A")).to_have_accessible_description(re.compile(where))
    expect(day.locator("#w2w-where-amps")).to_be_visible()
    for text in AMPS.values():
        keys.type(text)
        keys.press("Tab")
    keys.press("Shift+Tab")
    keys.press("Enter")
    wait_for_unbalance(day)
    day.locator("summary", has_text="Current unbalance").focus()
    keys.press("Enter")
    day.get_by_text("Step 3: current unbalance").wait_for(state="visible")


def test_a_fault_stands_right_under_its_box_and_the_rest_is_worked(day):
    fill_legs(day)
    unfold(day, "flow meter and power")
    flow = day.get_by_label("Flow by meter")
    flow.fill("plenty")
    day.get_by_role("button", name="Check these readings").click()
    wait_for_text(day, "1 entry couldn't be read.")
    fault = day.get_by_text("has no number in it").bounding_box()
    box = flow.bounding_box()
    assert 0 <= fault["y"] - (box["y"] + box["height"]) < 40
    assert "plenty" == flow.input_value()
    wait_for_unbalance(day)


def test_a_change_of_units_keeps_what_was_typed(day):
    unfold(day, "flow meter and power")
    day.get_by_label("Flow by meter, in gpm").fill("450")
    day.get_by_label("Flow by meter, in gpm").press("Tab")
    day.get_by_label("Units").select_option("Metric units")
    wait_for_text(day, "the old unit is now written after them")
    assert "450 gpm" == day.get_by_label("Flow by meter, in L/s").input_value()


def choose_file(panel, path):
    with panel.page.expect_file_chooser() as chosen:
        panel.get_by_role("button", name="Choose a CSV file").click()
    chosen.value.set_files(path)


def saved(panel, name):
    with panel.page.expect_download() as download:
        panel.get_by_role("link", name=name).click()
    return download.value.suggested_filename, download.value.path().read_bytes()


def test_a_file_is_read_and_a_pump_and_a_day_of_it_are_chosen_and_kept(plant, tmp_path):
    path = tmp_path / "pumps.csv"
    path.write_text(
        "Pump,Date,Amps A,Amps B,Amps C\n1,2023-05-01,25.5,23,26.5\n1,2024-05-01,24,ten,24\n"
    )
    choose_file(plant, path)
    wait_for_text(plant, "“pumps.csv”: 1 pump, 2 days.")
    wait_for_text(plant, "Row 3, column “Amps B”:")
    plant.get_by_label("Day").select_option("2023-05-01")
    wait_for_unbalance(plant)
    name, data = saved(plant, "Save as CSV")
    assert "pump-day-1-2023-05-01.csv" == name
    assert b"25.5" in data
    assert b'"always"' in saved(plant, "Save as JSON")[1]


def test_a_file_that_is_far_too_large_is_refused_with_a_sentence(plant, tmp_path):
    path = tmp_path / "large.csv"
    path.write_bytes(b"Pump,kW\n" + b"1,10\n" * 3_000_000)
    choose_file(plant, path)
    wait_for_text(plant, "The file is 15.0 MB, and this page takes up to 2 MB.")


def test_the_example_plant_shows_its_trends_and_its_faults_when_asked(plant):
    plant.get_by_role("button", name="Open the example plant").click()
    wait_for_text(plant, "What is wrong in the example plant?")
    assert 0 == plant.get_by_text("The insulation drops year by year").count()
    plant.get_by_label("Pump", exact=True).last.select_option("Heron Slough lift station, Pump 3")
    plant.locator(".w2w-trends svg").first.wait_for()
    plant.get_by_role("button", name="Show the three faults").click()
    wait_for_text(plant, "The insulation drops year by year")


def test_a_record_is_printed_as_a_pdf(day):
    pytest.importorskip("typst")
    fill_legs(day)
    day.get_by_role("button", name="Check these readings").click()
    day.get_by_role("button", name="Make a PDF to print").click()
    wait_for_text(day, "The PDF is made.")
    name, data = saved(day, "Save the PDF")
    assert "pump-day-pump.pdf" == name
    assert data.startswith(b"%PDF-")


def test_a_record_is_made_a_lesson_and_answered_wrong_and_right(day):
    fill_legs(day)
    day.get_by_role("button", name="Check these readings").click()
    wait_for_unbalance(day)
    day.get_by_role("button", name="Practice with these numbers").click()
    card = day.locator(".w2w-card")
    card.get_by_role("button", name="Other kinds").click()
    card.get_by_label("What to practice").select_option(
        "Current unbalance: largest deviation from the average, level 2"
    )
    card.locator(".w2w-question", has_text="unbalance").wait_for()
    card.page.wait_for_timeout(SLOWER)  # the box to answer in comes after its question
    answer(card, "14")  # highest less lowest, over the average
    wait_for_text(card, "Look again")
    answer(card, "8")
    wait_for_text(card, "The worked answer is 8%.")
    day.get_by_role("button", name="Practice with fresh numbers").click()
    wait_for_text(day, "Fresh numbers like those of")
    assert case_from_code(code_of(card))


@pytest.fixture(scope="module")
def shown(workbook_server, windows):
    """The page with everything on it: a fault, what was found, a plant, its trends, a lesson.

    It is for the last tests here, as whichever turns to a page leaves this one.
    """
    forget_draft(workbook_server)
    page = windows.show(workbook_server, PAGE, height=1000)
    day, plant = page.locator(PANEL).first, page.locator(PANEL).last
    fill_legs(day)
    unfold(day, "flow meter and power")
    day.get_by_label("Flow by meter").fill("plenty")
    day.get_by_role("button", name="Check these readings").click()
    wait_for_text(day, "1 entry couldn't be read.")
    day.locator(".w2w-checked summary").first.click()
    plant.get_by_role("button", name="Open the example plant").click()
    wait_for_text(plant, "What is wrong in the example plant?")
    plant.locator(".w2w-trends svg").first.wait_for()
    plant.locator(".w2w-checked summary").first.click()
    plant.get_by_role("button", name="Practice with these numbers").click()
    plant.locator(".w2w-card .w2w-question").wait_for()
    return page


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_accessibility_rule_is_broken_in_either_theme(shown, axe, scheme):
    in_theme(shown, scheme)
    assert [] == axe(shown, PANEL)


def test_at_400_pixels_nothing_is_cut_and_the_page_does_not_scroll_sideways(shown):
    page = shown
    page.set_viewport_size({"width": 400, "height": 800})
    page.wait_for_function(f"document.querySelector('{PANEL}').clientWidth < 400")
    assert 400 == page.evaluate("document.documentElement.scrollWidth")
    assert [] == page.eval_on_selector_all(f"{PANEL}, {PANEL} *:not(.w2w-heard)", OUTSIDE, 400)


# Whatever reaches over the edge of the screen, or is cut by what holds it.
OUTSIDE = """(nodes, width) => nodes
  .filter(node => node.offsetParent && !node.closest('.w2w-numbers, .w2w-plant'))
  .filter(node => node.getBoundingClientRect().right > width + 1
    || (getComputedStyle(node).overflowX === 'hidden' && node.scrollWidth > node.clientWidth + 1))
  .map(node => node.className + ' ' + node.textContent.slice(0, 40))"""
