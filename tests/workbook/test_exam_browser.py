"""The practice exam in a real browser: a whole one by keyboard alone, interrupted once; its views."""

import json
import re
import urllib.request
from contextlib import ExitStack

import psutil
import pytest

from solver.sets.paper import Paper
from tests.workbook.cards import SLOWER, focused, tab_to
from tests.workbook.looking import in_theme
from workbook.exam.question import questions_of

pytestmark = pytest.mark.browser

PAGE = "15-practice-exam.ipynb"
PANEL = ".w2w-exams"
PAPER = Paper(("horsepower", "balance", "head"), 1, "us", 8, 60, True, 48213)
QUESTIONS = questions_of(PAPER)
MISTAKEN = (6,)  # answered wrong
EMPTY = (8,)


@pytest.fixture(scope="module")
def served(serve):
    """A workbook whose reader has no history."""
    return serve()


@pytest.fixture(scope="module")
def visit(served, new_page):
    """A function that opens the page in a browser window of its own."""
    opened = ExitStack()

    def window():
        page = opened.enter_context(new_page(height=1000))
        page.goto(served.url(PAGE))
        state = page.locator('.wtw-page:not([data-state="starting"])')
        state.wait_for()
        if state.get_attribute("data-state") == "stopped":  # what was killed is on its way back
            page.get_by_role("button", name="Start this page again").click()
        page.locator('.wtw-page[data-state="ready"]').wait_for()
        page.locator(PANEL).wait_for()
        return page

    with opened:
        yield window


def wait_for(page, text):
    page.locator(PANEL).get_by_text(text).first.wait_for()


def wait_for_answer_box(page):
    page.wait_for_function("document.activeElement.matches('.w2w-asking input')")


def choice(question):
    wrong = question.number in MISTAKEN
    choices = enumerate(question.choices, 1)
    return str(next(number for number, each in choices if bool(each.mistake) == wrong))


def answer(page, number):
    """Answer this question, and arrive at the next."""
    wait_for(page, f"Question {number} of {PAPER.count}")
    wait_for_answer_box(page)
    page.keyboard.type(choice(QUESTIONS[number - 1]))
    page.keyboard.press("Enter")
    wait_for(page, f"Question {number} is saved")


def kernels(served):
    """The programs behind the open pages."""
    ask = f"{served.base}/api/kernels?token={served.token}"
    names = {kernel["id"] for kernel in json.load(urllib.request.urlopen(ask))}
    running = psutil.process_iter(["cmdline"])
    return [one for one in running if any(n in " ".join(one.info["cmdline"] or ()) for n in names)]


def kill_kernels(served, page):
    """End every program behind a page as a crash does, and wait until Jupyter has seen it."""
    killed = kernels(served)
    assert killed
    for process in killed:
        process.kill()
    page.get_by_text("This page has stopped.").wait_for()


def logged(served):
    found = list(served.folder.parent.rglob("attempts.jsonl"))
    return [json.loads(line) for path in found for line in path.read_text().splitlines()]


def test_a_whole_exam_is_taken_by_keyboard_alone_though_all_is_killed_in_the_middle(served, visit):
    page = visit()
    tab_to(page, "Exam code")
    page.keyboard.type(PAPER.code)
    page.keyboard.press("Enter")
    for number in (1, 2, 3):
        answer(page, number)
    tab_to(page, "Come back to this")
    page.keyboard.press("Space")
    wait_for(page, "3 of 8 answered, 1 to come back to.")

    kill_kernels(served, page)
    page.context.close()

    page = visit()
    tab_to(page, "Continue this exam")
    page.keyboard.press("Enter")
    wait_for(page, "3 of 8 answered, 1 to come back to.")
    wait_for(page, "Question 4 of 8")
    wait_for_answer_box(page)
    for number in (4, 5, 6, 7):
        answer(page, number)
    wait_for(page, "Question 8 of 8")
    wait_for_answer_box(page)

    tab_to(page, "Turn it in")
    page.keyboard.press("Enter")
    wait_for(page, "1 question has no answer: 8.")
    wait_for(page, "1 question is marked to come back to: 4.")
    assert "Yes, turn it in" == focused(page)
    page.wait_for_timeout(SLOWER)
    page.keyboard.press("Enter")
    wait_for(page, "6 of 8 right in time (75%).")
    told = page.locator(f"{PANEL} .w2w-missed, {PANEL} .w2w-marked").all_inner_texts()
    states = dict(re.search(r"Question (\d): ([^.]*)\.", text).groups() for text in told)
    assert [*["right"] * 5, "not right", "right", "no answer"] == [
        states[str(number)] for number in range(1, 9)
    ]
    missed = page.locator(f"{PANEL} .w2w-missed").first.inner_text()
    assert QUESTIONS[MISTAKEN[0] - 1].case.family.title in missed
    assert "Practice these" == focused(page)
    page.wait_for_timeout(SLOWER)
    page.keyboard.press("Enter")
    page.locator(f"{PANEL} .w2w-card").get_by_text("on your exam was this kind").wait_for()

    expected = {question.case.code for question in QUESTIONS if question.number not in EMPTY}
    assert expected == {each["code"] for each in logged(served)}
    assert len(expected) == len(logged(served))


@pytest.fixture(scope="module")
def window(served, windows):
    """The page as new. The tests after those of its views turn to it again."""
    return windows.show(served, PAGE, height=1000)


@pytest.fixture(params=["set-up", "question", "formulas", "handing in", "paused", "result"])
def view(request, window):
    """The panel in each of its views; a later one goes on from the one before."""
    panel = window.locator(PANEL)

    def press(name):
        window.wait_for_timeout(SLOWER)
        panel.get_by_role("button", name=name, exact=True).click()

    if request.param == "question":
        panel.get_by_label("Exam code").fill(PAPER.code)
        press("Start the exam with this code")
        wait_for(window, "Question 1 of 8")
        wait_for_answer_box(window)
        answer(window, 1)
    elif request.param == "formulas":
        press("Show the formulas")
        panel.locator(".w2w-sheet summary").first.click()
        panel.locator(".w2w-sheet mjx-container").first.wait_for()
    elif request.param == "handing in":
        press("Hide the formulas")
        press("Turn it in")
        wait_for(window, "Yes, turn it in")
    elif request.param == "paused":
        press("Pause and leave")
        wait_for(window, "The exam is paused")
    elif request.param == "result":
        window.wait_for_timeout(SLOWER)
        panel.get_by_role("button", name="Continue this exam").first.click()
        wait_for(window, "Question 2 of 8")
        wait_for_answer_box(window)
        press("Turn it in")
        wait_for(window, "questions have no answer")
        press("Yes, turn it in")
        wait_for(window, "The result")
        panel.locator("details summary").first.click()
    return panel


def test_each_view_keeps_the_rules_of_accessibility_and_fits_a_narrow_screen(view, axe):
    page = view.page
    try:
        for scheme in ("light", "dark"):
            in_theme(page, scheme)
            assert [] == axe(page, PANEL), scheme
        page.set_viewport_size({"width": 400, "height": 900})
        page.wait_for_function(f"document.querySelector('{PANEL}').clientWidth < 400")
        assert 400 == page.evaluate("document.documentElement.scrollWidth")
        assert [] == page.eval_on_selector_all(f"{PANEL} *:not(.w2w-heard)", OUTSIDE, 400)
    finally:
        page.emulate_media(color_scheme="light")
        page.set_viewport_size({"width": 1200, "height": 1000})


# Whatever reaches over the edge of the screen, or is cut by what holds it.
OUTSIDE = """(nodes, width) => nodes
  .filter(node => node.offsetParent && !node.closest('.w2w-symbols'))
  .filter(node => node.getBoundingClientRect().right > width + 1
    || (getComputedStyle(node).overflowX === 'hidden' && node.scrollWidth > node.clientWidth + 1))
  .map(node => node.className + ' ' + node.textContent.slice(0, 40))"""


def test_the_clock_goes_on_by_itself_and_stands_still_once_it_is_paused(served, show):
    page = show(served, PAGE, height=1000)
    panel = page.locator(PANEL)
    panel.get_by_label("Exam code").fill(PAPER.code)
    panel.get_by_label("Exam code").press("Enter")
    wait_for(page, "Question 1 of 8")
    clock = panel.get_by_text(re.compile(r"\d+ min \d+ s left"))
    stood = clock.first.inner_text()
    clock.filter(has_not_text=stood).first.wait_for()
    panel.get_by_role("button", name="Hide the clock").click()
    wait_for(page, "The clock is hidden.")
    panel.get_by_role("button", name="Pause and leave").click()
    row = panel.locator(".w2w-open").first
    row.wait_for()
    before = row.inner_text()
    page.wait_for_timeout(2500)
    assert before == row.inner_text()


def test_a_reload_in_the_middle_goes_on_with_the_same_exam_and_its_time(served, show):
    page = show(served, PAGE, height=1000)
    panel = page.locator(PANEL)
    panel.get_by_label("Exam code").fill(PAPER.code)
    panel.get_by_label("Exam code").press("Enter")
    answer(page, 1)
    wait_for(page, "1 of 8 answered")
    served.open(page, PAGE)
    row = page.locator(f"{PANEL} .w2w-open").first
    row.wait_for()
    assert re.search(r"8 questions, 1 answered, 59 min \d+ s left", row.inner_text())
