"""The figures as a reader meets them: by keyboard, by screen reader, on a phone, in the dark."""

import re

import pytest

pytestmark = pytest.mark.browser

PAGE_OF = {
    "losses": "01-three-horsepowers.ipynb",
    "cost": "03-kilowatt-hours-and-cost.ipynb",
    "legs": "04-phase-balance.ipynb",
    "column": "05-units-for-pump-work.ipynb",
    "lift": "06-head.ipynb",
    "triangle": "07-three-phase-and-nameplate.ipynb",
    "absorption": "08-insulation-and-windings.ipynb",
    "cycle": "09-wet-well-and-pump-down.ipynb",
    "slowing": "10-speed-and-impeller.ipynb",
}
FIGURE = ".w2w-figure"
NINE_POINTS = 12  # px


@pytest.fixture(scope="module", params=PAGE_OF)
def opened(request, new_page, workbook_server):
    """The page of one figure, opened once for all tests of it: opening takes seconds."""
    with new_page() as page:
        workbook_server.open(page, PAGE_OF[request.param])
        page.locator(f"{FIGURE} svg").wait_for()
        yield page


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_figure_keeps_the_accessibility_rules_in_light_and_dark(opened, axe, scheme):
    opened.emulate_media(color_scheme=scheme)
    is_light = str(scheme == "light").lower()
    opened.locator(f'body[data-jp-theme-light="{is_light}"]').wait_for(state="attached")
    assert [] == axe(opened, FIGURE)


def test_a_slider_is_known_by_its_label_and_moves_words_picture_and_table(opened):
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
