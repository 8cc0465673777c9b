"""A whole evening by keyboard alone: ten problems, an exam of five, a record; no mouse from first to last."""

import json

import pytest
from playwright.sync_api import expect

from solver import case_from_code
from solver.engine.grading import as_typed
from solver.units.order import LETTERS
from tests.workbook.cards import SLOWER, code_of, focused, tab_to, tab_to_part

pytestmark = pytest.mark.browser

EXAM, RECORD = "Practice exam", "The pump-day record"
AMPS = ("25.5", "23", "26.5")
PROBLEMS, QUESTIONS = 10, 5
# The result is there, and the focus on what can be done with it.
RESULT = """() => document.activeElement.matches('.w2w-exams button')
  && document.activeElement.textContent !== 'Yes, turn it in'"""


def in_an_answer(page):
    page.wait_for_function("document.activeElement.matches('.w2w-asking input')")


def find(page, title):
    """Go to a page by the search of the bar."""
    page.keyboard.press("Control+k")
    page.keyboard.type(title)
    expect(page.locator(".wtw-bar").get_by_role("option", selected=True)).to_contain_text(title)
    page.keyboard.press("Enter")
    page.get_by_role("heading", name=title, level=1).wait_for()
    page.locator('.wtw-page[data-state="ready"]').wait_for()


def work_a_problem(page):
    """Answer it right by number or by choice; Enter checks, Enter goes on."""
    card = page.locator(".w2w-card")
    in_an_answer(page)
    case = case_from_code(code_of(card))
    page.keyboard.type(as_typed(case, case.answer))
    page.keyboard.press("Enter")
    card.locator(".w2w-right").wait_for()
    page.wait_for_timeout(SLOWER)
    page.keyboard.press("Enter")
    expect(card.locator(".w2w-above")).not_to_contain_text(case.code)


def type_an_answer(page, panel):
    """One that can be read: the first choice, the number 1, or the steps in the order they stand."""
    steps = panel.locator(".w2w-order li").locator("visible=true").count()
    page.keyboard.type(LETTERS[:steps] or "1")


def take_an_exam(page):
    panel = page.locator(".w2w-exams")
    panel.get_by_text("Start this exam").locator("visible=true").first.wait_for()
    tab_to(page, "Questions, 1 to 200")
    page.keyboard.press("Control+a")
    page.keyboard.type(str(QUESTIONS))
    tab_to(page, "Start this exam")
    page.keyboard.press("Enter")
    for number in range(1, QUESTIONS + 1):
        panel.get_by_text(f"Question {number} of {QUESTIONS}").first.wait_for()
        in_an_answer(page)
        type_an_answer(page, panel)
        page.keyboard.press("Enter")
        panel.get_by_text(f"Question {number} is saved").first.wait_for()
    tab_to(page, "Turn it in")
    page.keyboard.press("Enter")
    page.wait_for_function("document.activeElement.textContent === 'Yes, turn it in'")
    page.wait_for_timeout(SLOWER)
    page.keyboard.press("Enter")
    panel.get_by_text(f"of {QUESTIONS} right in time").wait_for()
    page.wait_for_function(RESULT)


def type_a_record(page):
    day = page.locator(".w2w-day").locator("visible=true").first
    day.get_by_text("Show volts and amps").locator("visible=true").first.wait_for()
    tab_to_part(page, "Show volts and amps")
    page.keyboard.press("Enter")
    day.get_by_label("Amps on leg A").wait_for()
    tab_to(page, "Amps on leg A, in A")
    for text in AMPS[:-1]:
        page.keyboard.type(text)
        page.keyboard.press("Tab")
    assert "Amps on leg C, in A" == focused(page)
    page.keyboard.type(AMPS[-1])
    page.keyboard.press("Enter")
    day.locator(".w2w-checked summary", has_text="Current unbalance").wait_for()
    tab_to_part(page, "Current unbalance")
    page.keyboard.press("Enter")
    expect(day.locator("details[open]")).to_contain_text("over 5%")


def test_an_evening_is_worked_by_keyboard_alone(serve, page):
    served = serve()  # here, so that another try too has a reader with no history
    served.open(page)
    for _ in range(PROBLEMS):
        work_a_problem(page)
    find(page, EXAM)
    take_an_exam(page)
    find(page, RECORD)
    type_a_record(page)
    kept = [path.read_text("utf-8") for path in served.folder.parent.rglob("attempts.jsonl")]
    tried = [json.loads(line)["status"] for line in "".join(kept).splitlines()]
    assert PROBLEMS + QUESTIONS == len(tried)
    assert ["right"] * PROBLEMS == tried[:PROBLEMS]
