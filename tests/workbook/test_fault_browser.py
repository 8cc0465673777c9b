"""Find the fault in a real browser: a case by keyboard alone, kept over a reload; a phone; accessibility."""

import pytest

from solver.fault.case import fault_case
from tests.workbook.looking import at_width, in_theme
from tests.workbook.on_a_phone import faults_on_a_phone

pytestmark = pytest.mark.browser

PAGE = "18-find-the-fault.ipynb"
PANEL = ".w2w-faults"
CASE = fault_case(2, "us", 5)


def press(page, name: str) -> None:
    """A button by its name, with the keyboard."""
    page.get_by_role("button", name=name).first.focus()
    page.keyboard.press("Enter")


@pytest.fixture(scope="module")
def served(serve):
    return serve()


def test_a_case_by_keyboard_alone_kept_over_a_reload(served, page, axe):
    served.open(page, PAGE)
    page.get_by_label("Case code").focus()
    page.keyboard.type(str(CASE.code))
    page.keyboard.press("Enter")
    page.get_by_role("heading", name=CASE.title).wait_for()
    press(page, "Amps by leg")
    page.get_by_text("Stopped. Behind the panel door").wait_for()
    press(page, "Pressure gauges")
    page.get_by_role("button", name="✓ Pressure gauges").wait_for()
    assert [] == axe(page, PANEL)
    page.reload()
    page.locator('.wtw-page[data-state="ready"]').wait_for()
    page.get_by_role("button", name="✓ Pressure gauges").wait_for()
    for scheme in ("light", "dark"):
        in_theme(page, scheme)
        at_width(page, 390, 844)
        assert [] == axe(page, PANEL)
    assert [] == faults_on_a_phone(page)
    page.get_by_label("What is it?").select_option(index=CASE.suspects.index(CASE.fault) + 1)
    press(page, "Say so")
    page.get_by_label("What do you do about it?").select_option(index=3)
    press(page, "Do that")
    page.get_by_role("heading", name="Your readings, one by one").wait_for()
    assert [] == axe(page, PANEL)
