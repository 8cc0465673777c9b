"""The pictures of the README, taken from the real screens.

Its name keeps it out of the test run. To take them again after a change of the screens:

    python3 -m workbook test tests/take_pictures.py
"""

from pathlib import Path

import pytest

from solver import draw
from tests.workbook.cards import open_code

PICTURES = Path(__file__).parent.parent / "workbook" / "pictures"
FIRST = "01-three-horsepowers.ipynb"
SPEED = "10-speed-and-impeller.ipynb"
RECORD = "13-pump-day-record.ipynb"
CASE = draw("motor_power", 5, "us", 2)
SLIP = next(m for m in CASE.mistakes if m.id == "brake_power.multiplied_by.pump_efficiency")

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def opened(workbook_server, chromium):
    """A function that opens a page, in a window large enough for its panels."""
    context = chromium.new_context(
        viewport={"width": 1000, "height": 2600}, device_scale_factor=1.25
    )
    context.set_default_timeout(180_000)

    def open_page(name: str):
        page = context.new_page()
        workbook_server.open(page, name)
        page.locator(".w2w-panel").first.wait_for()
        return page

    yield open_page
    context.close()


@pytest.fixture(scope="module")
def screen(opened):
    return opened(FIRST)


def take(part, name: str) -> None:
    path = PICTURES / f"{name}.png"
    part.page.wait_for_timeout(400)
    part.screenshot(path=path)
    assert path.stat().st_size > 10_000


def test_a_wrong_answer_and_its_mistake(screen):
    card = screen.locator(".w2w-card")
    open_code(card, CASE)
    card.get_by_role("button", name="Close: code").click()
    card.get_by_label("Your answer").fill(f"{SLIP.value:.3g} hp")
    card.get_by_label("Your answer").press("Enter")
    card.get_by_text(SLIP.says).wait_for()
    take(card, "card")


def test_the_worked_solution(screen):
    card = screen.locator(".w2w-card")
    card.get_by_role("button", name="Show the steps").click()
    card.get_by_role("button", name="All steps").click()
    card.get_by_text("Step 3: motor horsepower (MHP)").wait_for()
    take(card.locator(".w2w-steps"), "solution")


def test_the_figure(screen):
    take(screen.locator(".w2w-panel", has=screen.locator(".w2w-picture")), "figure")


def test_own_numbers(screen):
    own = screen.locator(".w2w-own")
    own.get_by_label("Flow, in gpm").fill("450 gpm")
    own.get_by_label("Total dynamic head (TDH), in ft").fill("62 ft")
    own.get_by_role("button", name="Work it out").click()
    own.get_by_text("The water horsepower is 7.045 hp.").wait_for()
    take(own, "own-numbers")


def test_the_figure_of_the_cube_law(opened):
    page = opened(SPEED)
    take(page.locator(".w2w-panel", has=page.locator(".w2w-picture svg")).first, "slowing")


def test_the_record_of_the_example_plant(opened):
    day = opened(RECORD).locator(".w2w-day").last
    day.get_by_role("button", name="Open the example plant").click()
    day.get_by_label("Pump", exact=True).select_option(index=2)
    day.get_by_text("The wire-to-water efficiency is falling").wait_for()
    take(day.locator(".w2w-trends"), "record")
