"""Every chapter as a reader meets it: it opens, its card answers, and all of it fits a telephone."""

import re

import pytest

from solver import case_from_code
from tests.workbook.on_a_phone import faults_on_a_phone
from workbook.pages import code_cells, shipped_pages

pytestmark = pytest.mark.browser

EXAMPLE = re.compile(r'page\.worked_example\("([\w-]+)"\)')
# Each page with a worked example is a chapter.
CHAPTERS = {
    path.name: found[1]
    for path in shipped_pages()
    if (found := EXAMPLE.search("\n".join(code_cells(path))))
}


@pytest.mark.parametrize("name", CHAPTERS)
def test_a_chapter_opens_its_card_marks_a_right_answer_and_opens_a_code_and_it_fits_a_telephone(
    name, workbook_server, page
):
    case = case_from_code(CHAPTERS[name])
    workbook_server.open(page, name)
    card = page.locator(".w2w-card")
    code = card.get_by_label("Code of this problem")
    code.fill(case.code)
    code.press("Enter")
    card.locator(".w2w-question", has_text=case.question).wait_for()
    answer = card.get_by_label(re.compile("^Your answer"))
    answer.fill(f"{case.answer:.4g}")
    answer.press("Enter")
    card.locator(".w2w-right").wait_for()
    assert "This was your first try." in card.inner_text()
    for button in ("Show the worked solution", "Show every step"):
        page.get_by_role("button", name=button).click()
    page.locator(".w2w-steps").nth(1).wait_for()
    assert [] == faults_on_a_phone(page)
