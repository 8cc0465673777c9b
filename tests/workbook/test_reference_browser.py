"""The formulas and tables in a real browser, on their page: keys, mathematics, phones, themes."""

import pytest
from pypdf import PdfReader

from tests.workbook.looking import in_theme

pytestmark = pytest.mark.browser

PAGE = "16-formulas-and-tables.ipynb"
PANEL = ".w2w-reference"
BOX = "Search for a word, such as head, gpm or NEMA"


@pytest.fixture(scope="module")
def opened(workbook_server, new_page):
    with new_page(height=1000) as page:
        workbook_server.open(page, PAGE)
        page.locator(PANEL).wait_for()
        yield page


@pytest.fixture
def panel(opened):
    """The panel with all its parts closed, as wide as at first."""
    found = opened.locator(PANEL)
    opened.set_viewport_size({"width": 1200, "height": 1000})
    opened.wait_for_timeout(400)  # a click right after one like it would be a double click
    found.get_by_role("button", name="Show everything").click()
    found.get_by_text("Everything is shown again.").wait_for()
    found.get_by_role("button", name="Hide").first.wait_for(state="detached")
    return found


def find(panel, text):
    panel.get_by_label(BOX).fill(text)
    panel.get_by_label(BOX).press("Enter")
    panel.locator("[role=status]", has_text=f"“{text}”").wait_for()


def test_a_formula_is_found_and_read_with_the_keyboard_alone(panel):
    keys = panel.page.keyboard
    panel.get_by_label(BOX).focus()
    keys.type("polarization leakage")
    keys.press("Enter")
    panel.get_by_text("found, in").wait_for()
    panel.locator("details[open]").first.wait_for()
    head = panel.locator("summary").first
    head.focus()
    keys.press("Enter")
    assert panel.locator("details").first.get_attribute("open") is None
    keys.press("Enter")
    heard = panel.get_by_role(
        "img",
        name="leakage current at 10 minutes = leakage current at 1 minute / polarization index",
    )
    assert 2 == heard.count()
    assert heard.first.is_visible()


def test_symbols_are_set_as_mathematics_when_a_formula_is_opened(panel):
    panel.get_by_role("button", name="Show 1. Three horsepowers").click()
    head = panel.locator("summary", has_text="water horsepower").first
    head.wait_for()
    head.click()
    symbols = panel.locator("details[open] .w2w-symbols")
    symbols.first.locator("mjx-container").wait_for()
    assert "$" not in " ".join(symbols.all_inner_texts())
    sizes = symbols.locator("mjx-container").evaluate_all(
        "nodes => nodes.map(node => node.getBoundingClientRect().height)"
    )
    assert min(sizes) > 12


def test_a_dollar_sign_in_a_unit_stays_one(panel):
    find(panel, "$/kWh")
    panel.get_by_role("button", name="Hide Units").wait_for()
    assert panel.get_by_text("Energy price: $/kWh, cents/kWh, $/MWh").is_visible()


def test_nothing_found_is_said_and_what_to_try(panel):
    find(panel, "<b>zebra</b>")
    said = panel.locator("[role=status]", has_text="Nothing here has “<b>zebra</b>”.")
    assert "Try one short word" in said.inner_text()


@pytest.mark.parametrize("width", [1200, 400])
def test_the_page_is_short_until_a_part_is_opened_and_never_wider_than_the_screen(panel, width):
    page = panel.page
    page.set_viewport_size({"width": width, "height": 900})
    assert panel.bounding_box()["height"] < 3500
    for name in ("6. Head", "9. The wet well", "Units", "Published tables"):
        panel.get_by_role("button", name=f"Show {name}").click()
        panel.get_by_role("button", name=f"Hide {name}").wait_for()
    panel.locator("details").first.wait_for()
    panel.locator("details").evaluate_all("all => all.forEach(one => one.open = true)")
    page.wait_for_timeout(500)
    assert width == page.evaluate("document.documentElement.scrollWidth")
    wide = panel.evaluate(WIDER, ".w2w-line, table, .w2w-want, .w2w-why, .w2w-source, li")
    assert [] == wide


# What sticks out of the panel on the right.
WIDER = """(panel, what) => {
  const edge = panel.getBoundingClientRect().right;
  return [...panel.querySelectorAll(what)]
    .filter(node => node.getBoundingClientRect().right > edge + 1)
    .map(node => node.textContent.slice(0, 60));
}"""


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_accessibility_rule_is_broken_in_either_theme(panel, axe, scheme):
    page = panel.page
    in_theme(page, scheme)
    for name in ("2. The efficiency chain", "Constants", "Units", "Published tables"):
        panel.get_by_role("button", name=f"Show {name}").click()
        panel.get_by_role("button", name=f"Hide {name}").wait_for()
    panel.locator("details").evaluate_all("all => all.forEach(one => one.open = true)")
    panel.locator("mjx-container").first.wait_for()
    try:
        assert [] == axe(page, PANEL)
    finally:
        page.emulate_media(color_scheme="light")


def test_the_sheet_is_made_and_saved(panel, tmp_path):
    panel.get_by_role("button", name="Make a sheet to print").click()
    link = panel.get_by_role("link", name="Save the sheet")
    with panel.page.expect_download() as saving:
        link.click()
    saving.value.save_as(tmp_path / "sheet.pdf")
    assert "formula-sheet-us.pdf" == saving.value.suggested_filename
    assert 2 == len(PdfReader(tmp_path / "sheet.pdf").pages)
