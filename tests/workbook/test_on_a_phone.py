"""Every page on a telephone 360 pixels wide; test_chapters_in_browser.py looks at the chapters."""

import pytest

from solver import FAMILIES, draw
from tests.workbook.group.members import WEDNESDAY
from tests.workbook.on_a_phone import WIDTH, faults_on_a_phone
from workbook.practice import chain_html, problem_html, worked_html
from workbook.ui.pieces import css

pytestmark = pytest.mark.browser

SLOWER = 400  # milliseconds: what comes sooner after a click is taken for a double one
# The pages that are no chapters, each with the buttons that show most of it, and what then shows.
PAGES = {
    "00-start-here.ipynb": (["Show the steps"], ".w2w-steps"),
    "12-mixed-practice.ipynb": (["Show the steps"], ".w2w-steps"),
    "13-pump-day-record.ipynb": (["Open the example plant"], ".w2w-checks"),
    "14-your-study.ipynb": ([], ".w2w-calendar"),
    "15-practice-exam.ipynb": (
        ["Start this exam", "Show the formulas"],
        ".w2w-sheet summary",
    ),
    "16-formulas-and-tables.ipynb": ([], ".w2w-reference"),
    "17-group-study.ipynb": (["Open this set"], ".w2w-posed"),
    "18-find-the-fault.ipynb": (["Start a case", "Listen and feel"], ".w2w-clip"),
}


@pytest.mark.parametrize("name", PAGES)
def test_a_page_fits_a_telephone_and_can_be_touched(name, workbook_server, show):
    page = show(workbook_server, name)
    buttons, shown = PAGES[name]
    if name == "17-group-study.ipynb":
        page.get_by_label("Text of the set").fill(WEDNESDAY.text)
    for button in buttons:
        page.get_by_role("button", name=button).first.click()
        page.wait_for_timeout(SLOWER)
    page.locator(shown).first.wait_for()
    assert [] == faults_on_a_phone(page)


def test_every_problem_and_its_worked_solution_fit_a_telephone(page):
    cases = [
        draw(family, 7, units, level)
        for family in FAMILIES
        for units in ("us", "si")
        for level in range(1, len(family.levels) + 1)
    ]
    panels = "".join(
        f'<div class="w2w-panel" id="{case.code}">{_shown(case)}</div>' for case in cases
    )
    page.set_viewport_size({"width": WIDTH, "height": 740})
    page.set_content(f'<body style="margin: 0 15px; font: 16px sans-serif">{css()}{panels}')
    assert [] == page.eval_on_selector_all(".w2w-panel", STICKING_OUT)


def _shown(case):
    """All that a card can show of a problem."""
    chains = (chain_html(case, mistake.id) for mistake in case.mistakes[:1])
    return f"{problem_html(case)}{worked_html(case)}{''.join(chains)}"


# The problems of which something ends to the right of where the panel's text may.
STICKING_OUT = """panels => panels.filter(panel => {
  const edge = panel.getBoundingClientRect().right - parseFloat(getComputedStyle(panel).paddingRight);
  return [...panel.querySelectorAll('*')].some(node => node.getBoundingClientRect().right > edge + 1);
}).map(panel => panel.id)"""
