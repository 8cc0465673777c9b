"""Group study in a real browser: by keyboard alone, five results put together, on a narrow screen."""

import json

import pytest

from tests.workbook.cards import focused
from tests.workbook.group.members import CASES, FAR, GROUP, RIGHT, WEDNESDAY, answer_text, results
from tests.workbook.looking import in_theme

pytestmark = pytest.mark.browser

PAGE = "17-group-study.ipynb"
WORK, RESULTS, PANELS = ".w2w-together:has(.w2w-posed)", ".w2w-results", ".w2w-together"
MOST_TABS = 60
SLOWER = 400  # milliseconds: what comes sooner after a key is taken for a double press


@pytest.fixture(scope="module")
def served(serve):
    """A workbook whose reader has no history."""
    return serve()


@pytest.fixture(scope="module")
def opened(served, new_page):
    """The page, opened once for all tests here, which go on from one another."""
    with new_page(height=1000) as page:
        served.open(page, PAGE)
        page.locator(PANELS).nth(2).wait_for()
        yield page


def tab_to(page, name, key="Tab"):
    """Press Tab until the control of this name has the focus."""
    for _ in range(MOST_TABS):
        page.keyboard.press(key)
        if focused(page).startswith(name):
            page.wait_for_timeout(SLOWER)
            return
    pytest.fail(f"{key} does not lead to {name!r}")


def wait_for(page, text):
    page.locator(PANELS).get_by_text(text).first.wait_for()


def answer(page, number, how):
    """Answer a question whose box has the focus."""
    tab_to(page, f"Question {number}.")
    page.keyboard.type(answer_text(CASES[number - 1], how))
    page.keyboard.press("Enter")


@pytest.fixture(scope="module")
def worked(opened):
    """The page once a set was made on it, opened and worked, by keyboard alone."""
    make(opened)
    work(opened)
    return opened


def make(page):
    page.get_by_label("Text of the set").focus()
    tab_to(page, "Codes of the problems, in order")
    page.keyboard.type(" ".join(WEDNESDAY.codes).lower())
    tab_to(page, "Title of the set")
    page.keyboard.type(WEDNESDAY.title)
    page.keyboard.press("Enter")
    wait_for(page, "The set is ready.")
    tab_to(page, f"Text of {WEDNESDAY.title}, to copy")
    assert WEDNESDAY.text == page.evaluate("document.activeElement.value")


def work(page):
    tab_to(page, "Text of the set", "Shift+Tab")
    page.keyboard.insert_text(f"Hi all:\n> {WEDNESDAY.text.replace('-', '–')}\nBen")
    tab_to(page, "Open this set")
    page.keyboard.press("Enter")
    wait_for(page, "“Wednesday pumps” is open below, with 3 questions.")
    tab_to(page, "Your name in the group")
    page.keyboard.type("Fay & <b>co")
    answer(page, 1, FAR)
    page.locator(f"{WORK} .w2w-wrong").wait_for()
    answer(page, 2, RIGHT)
    page.locator(f"{WORK} .w2w-right").wait_for()
    wait_for(page, "You have answered 2 of 3 questions. Not answered yet: 3.")


def test_a_set_is_made_opened_worked_and_saved_by_keyboard_alone(worked, tmp_path):
    page = worked
    page.get_by_label("Text of the set").focus()
    tab_to(page, "Save my result")
    page.keyboard.press("Enter")
    wait_for(page, "Your result is ready.")
    tab_to(page, "Save the file of my result")
    with page.expect_download() as saving:
        page.keyboard.press("Enter")
    saving.value.save_as(tmp_path / "result")
    lines = [json.loads(line) for line in (tmp_path / "result").read_text("utf-8").splitlines()]
    assert [("wrong", "Fay & <b>co"), ("right", "Fay & <b>co")] == [
        (line["status"], line["who"]) for line in lines
    ]
    assert {WEDNESDAY.key} == {line["of"] for line in lines}


def test_what_was_answered_shows_again_when_the_page_is_started_again(worked):
    page = worked
    page.get_by_role("button", name="Start this page again").click()
    page.locator('.wtw-page[data-state="starting"]').wait_for()
    page.locator('.wtw-page[data-state="ready"]').wait_for()
    page.get_by_label("Text of the set").fill(WEDNESDAY.text)
    page.get_by_role("button", name="Open this set").click()
    wait_for(page, "Try 1. This answer is kept.")
    assert "Fay & <b>co" == page.get_by_label("Your name in the group").input_value()
    assert answer_text(CASES[0], FAR) == page.get_by_label("Question 1.").input_value()


@pytest.fixture(scope="module")
def merged(worked, tmp_path_factory):
    """The page with the results of five members on it, beside those of its own reader."""
    folder = tmp_path_factory.mktemp("sent")
    for name, data in results(tmp_path_factory.mktemp("members")).items():
        (folder / name).write_bytes(data)
    (folder / "broken.jsonl").write_bytes(b"x\n" * 100_000)
    with worked.expect_file_chooser() as choosing:
        worked.locator(RESULTS).get_by_role("button", name="Bring in results").click()
    choosing.value.set_files(sorted(folder.iterdir()))
    worked.locator(RESULTS).get_by_text("6 members, 3 questions:").wait_for()
    return worked.locator(RESULTS)


def test_five_results_are_put_together_and_a_file_that_is_none_is_told(merged):
    said = merged.locator(".w2w-told").inner_text()
    assert "6 files looked at; 5 new." in said
    assert "“broken.jsonl” was left out: it has more than 5,000 lines." in said
    question = merged.locator("details").first
    if question.get_attribute("open") is None:
        question.locator("summary").click()
    first = question.inner_text()
    assert "Ana: ✓right on the first try" in " ".join(first.split())
    assert "=Eve<script>alert(1)</script>" in first
    assert merged.get_by_text("4 of 6 members, in question 1.").is_visible()
    assert merged.get_by_role("link", name="1. Three horsepowers").is_visible()


def test_names_can_be_left_out(merged):
    merged.get_by_label("No names").check()
    merged.get_by_text("Member 6").first.wait_for(state="attached")
    shown = merged.evaluate("node => node.textContent")
    assert [] == [name for name in (*GROUP, "Fay") if name in shown]


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_accessibility_rule_is_broken_in_either_theme(merged, axe, scheme):
    page = merged.page
    in_theme(page, scheme)
    assert [] == axe(page, PANELS)


def test_on_a_narrow_screen_nothing_sticks_out(merged):
    page = merged.page
    page.set_viewport_size({"width": 360, "height": 800})
    page.wait_for_function(f"document.querySelector('{PANELS}').clientWidth < 360")
    assert 360 == page.evaluate("document.documentElement.scrollWidth")
    assert [] == page.eval_on_selector_all(f"{PANELS} *:not(.w2w-heard)", STICKING_OUT)


# What ends to the right of the panel around it.
STICKING_OUT = """nodes => nodes
  .filter(node => node.offsetParent && !node.closest('.w2w-symbols'))
  .filter(node => node.getBoundingClientRect().right
    > node.closest('.w2w-together').getBoundingClientRect().right + 0.5)
  .map(node => node.outerHTML.slice(0, 80))"""
