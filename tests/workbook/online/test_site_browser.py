"""The static site in a browser, with every address but its own refused.

One reader's browser goes through the pages as readers do; a second one is somebody else's.
"""

import re
from contextlib import contextmanager
from datetime import date, timedelta
from urllib.parse import urlencode

import pytest

from solver import case_from_code, draw
from solver.engine.grading import as_typed
from solver.sets.work_set import cases_for, set_of
from tests.workbook.cards import answer, open_code
from tests.workbook.group.members import WEDNESDAY, results
from tests.workbook.online.serving import Served
from workbook.log import read_line
from workbook.trainer.marking.marked import mark
from workbook.trainer.sets.as_text import text_of
from workbook.trainer.sets.set_file import Assigned
from workbook.ui import printing
from workbook.ui.pages import shipped_pages

pytestmark = pytest.mark.browser

START, FIRST, STUDY = "00-start-here.ipynb", "01-three-horsepowers.ipynb", "14-your-study.ipynb"
GROUP = "17-group-study.ipynb"
CASE = draw("motor_power", 5, "us", 2)
NAMED = next(m for m in CASE.mistakes if m.id.startswith("brake_power."))
STATE = '.wtw-page:is([data-state="ready"], [data-state="stopped"])'
# Whatever reaches over the edge of the screen, or is cut by what holds it.
OUTSIDE = """(nodes, width) => nodes
  .filter(node => node.offsetParent && !node.closest('.w2w-symbols'))
  .filter(node => node.getBoundingClientRect().right > width + 1
    || (getComputedStyle(node).overflowX === 'hidden' && node.scrollWidth > node.clientWidth + 1))
  .map(node => node.className + ' ' + node.textContent.slice(0, 40))"""
KEPT = """async () => {
  const named = async (start) => caches.open((await caches.keys()).find((name) => name.startsWith(start)) ?? "none");
  const inIt = await (await named("python of")).keys();
  const python = inIt.some(({ url }) => !url.endsWith("&history")); // one that has started
  return Boolean(python && await (await named("wire-to-water")).match("kept-files.json"));
}"""
TOLD = """addEventListener("wire-to-water:opening", ({ detail }) => (globalThis.told ??= []).push(detail))"""
PATIENCE = 180_000  # ms; a busy machine starts Python slowly


class Reader:
    """Somebody's own browser, at the site. `outside` are the addresses that were refused."""

    def __init__(self, context, address):
        self.address, self.outside, self.faults = address, [], []
        context.set_default_timeout(PATIENCE)
        context.route(lambda url: not url.startswith(address), self._refuse)
        context.add_init_script(TOLD)
        self.page = context.new_page()
        self.page.on("pageerror", lambda error: self.faults.append(str(error)))
        self.page.on("console", lambda said: said.type == "error" and self.faults.append(said.text))

    def _refuse(self, route):
        self.outside.append(route.request.url)
        route.abort()

    def open(self, name=""):
        self.page.goto(f"{self.address}/?path={name}" if name else f"{self.address}/")
        self.wait()

    def wait_until_kept(self) -> None:
        """Wait until all files of the site are kept, and a Python; a promise is no sign that they are."""
        for _ in range(PATIENCE // 500):
            if self.page.evaluate(KEPT):
                return
            self.page.wait_for_timeout(500)
        pytest.fail("the site was never kept as a whole")

    def open_at(self, name):
        """Open a page on the Python that runs already, as the browser's Forward does."""
        self.page.evaluate(
            """name => {
              document.querySelector(".wtw-page").dataset.state = "left";
              history.pushState(null, "", `?path=${name}`);
              dispatchEvent(new PopStateEvent("popstate"));
            }""",
            name,
        )
        self.wait()

    def wait(self):
        state = self.page.locator(STATE)
        state.wait_for()
        assert state.get_attribute("data-state") == "ready", state.inner_text()

    def follow(self, text):
        """Choose a link to another page, which opens on the Python that runs already."""
        before = self.page.title()
        self.page.get_by_role("link", name=text, exact=True).first.click()
        self.page.wait_for_function("title => document.title !== title", arg=before)
        self.wait()

    @property
    def card(self):
        return self.page.locator(".w2w-card").first

    def open_code(self, case):
        open_code(self.card, case)

    def answer(self, text):
        answer(self.card, text)


@pytest.fixture(scope="module")
def site(built):
    with Served(built.out) as served:
        yield served


@pytest.fixture(scope="module")
def browser(chromium, site):
    """A function that gives somebody's own browser at the site."""

    @contextmanager
    def opened(width=1200):
        with chromium.new_context(viewport={"width": width, "height": 900}) as context:
            yield Reader(context, site.address)

    return opened


@pytest.fixture(scope="module")
def reader(browser):
    """A reader who opened the site's own address."""
    with browser() as reader:
        reader.open()
        yield reader


def test_the_address_alone_opens_the_opening_page_as_a_page(reader):
    page = reader.page
    assert "Wire to Water" == page.title()
    assert page.get_by_role("heading", name="How to work a problem").is_visible()
    assert [] == [
        part
        for part in ("#menu-panel", "#top-panel", "#jp-left-stack", ".jp-NotebookPanel-toolbar")
        if page.locator(part).is_visible()
    ]
    assert not page.get_by_text("from workbook import page").first.is_visible()


def test_what_is_loaded_is_said_meanwhile_in_words_and_megabytes(reader):
    told = reader.page.evaluate("told")
    assert re.fullmatch(r"Loading Python and the problems: \d+ of 2\d MB\.", told[0])
    assert "Starting Python." == told[-1]


def test_no_accessibility_rule_is_broken(reader, axe):
    assert [] == axe(reader.page, ".wtw-bar, .wtw-foot, .w2w-panel, .jp-RenderedMarkdown")


def test_a_link_opens_the_next_page_on_the_python_that_runs(reader):
    workers = len(reader.page.workers)
    reader.follow("1. Three horsepowers")
    assert reader.page.url.endswith(f"/?path={FIRST}")
    assert "1. Three horsepowers - Wire to Water" == reader.page.title()
    assert workers == len(reader.page.workers)
    reader.page.go_back()
    reader.page.get_by_role("heading", name="How to work a problem").wait_for()
    assert "Wire to Water" == reader.page.title()


@pytest.fixture(scope="module")
def first(reader):
    """The reader at the first chapter, where one wrong answer and the right one were given."""
    reader.open(FIRST)
    reader.open_code(CASE)
    reader.answer(f"{NAMED.value:.5g}")
    reader.card.get_by_text(NAMED.says).wait_for()
    reader.page.wait_for_timeout(500)  # later than a double click
    reader.answer(f"{CASE.answer:.4g} hp")
    reader.card.locator(".w2w-right").wait_for()
    return reader


def test_what_is_kept_is_said_at_the_foot_of_the_page(first):
    kept = first.page.locator(".wtw-kept").locator("visible=true")
    kept.get_by_text("Saved on this device: every page opens without a network.").wait_for()
    kept.get_by_text("This browser may clear your answers").wait_for()
    assert "14-your-study.ipynb" in kept.get_by_role("link").get_attribute("href")


def test_a_wrong_answer_is_named_and_a_right_one_is_right(first):
    assert "Try 2." in first.card.inner_text()


def test_a_figure_is_drawn(first):
    figure = first.page.locator(".w2w-figure")
    figure.locator(".w2w-picture svg").wait_for()
    assert figure.locator("table").is_visible()


def test_at_360_pixels_nothing_is_cut_and_the_page_does_not_scroll_sideways(first):
    page = first.page
    page.set_viewport_size({"width": 360, "height": 740})
    page.wait_for_function("document.querySelector('.jp-Notebook').clientWidth <= 360")
    try:
        assert 360 == page.evaluate("document.documentElement.scrollWidth")
        assert [] == page.eval_on_selector_all(
            ".wtw-bar, .wtw-bar *, .wtw-foot, .w2w-panel, .w2w-panel *:not(.w2w-heard)",
            OUTSIDE,
            360,
        )
    finally:
        page.set_viewport_size({"width": 1200, "height": 900})


@pytest.fixture(scope="module")
def copy(first, tmp_path_factory):
    """The copy of the log that the reader saves, on a page that was opened anew."""
    first.open(STUDY)
    copies = first.page.locator(".w2w-copies")
    copies.get_by_role("button", name="Make a copy to save").click()
    with first.page.expect_download() as saving:
        copies.get_by_role("link").click()
    path = tmp_path_factory.mktemp("saved") / saving.value.suggested_filename
    saving.value.save_as(path)
    return path


def test_what_was_answered_is_still_there_when_the_page_is_opened_again(copy, reader):
    reader.page.get_by_text("You have worked on 1 problem, on 1 day.").wait_for()
    typed = [read_line(line).typed for line in copy.read_text("utf-8").splitlines()]
    assert [f"{NAMED.value:.5g}", f"{CASE.answer:.4g} hp"] == typed


def test_the_date_of_an_exam_and_what_was_done_are_there_on_the_first_page(copy, reader):
    home = reader.page.locator(".w2w-home")
    reader.open(START)
    home.get_by_label("Day of the exam").fill((date.today() + timedelta(days=59)).isoformat())
    home.get_by_role("button", name="Save", exact=True).click()
    home.get_by_text("Exam in 59 days").wait_for()
    reader.open(START)
    home.get_by_text("Exam in 59 days").wait_for()
    home.get_by_text("1 of 7 days").wait_for()


@pytest.fixture(scope="module")
def other(browser):
    """Somebody else, whose browser has never been here, on a phone."""
    with browser(width=360) as reader:
        reader.open(STUDY)
        yield reader


def test_a_copy_is_brought_in_elsewhere(copy, other):
    with other.page.expect_file_chooser() as choosing:
        other.page.get_by_role("button", name="Bring in a copy").click()
    choosing.value.set_files(copy)
    other.page.get_by_text("2 answers brought in, 0 were here already.").wait_for()


def test_a_code_opens_the_same_question_elsewhere(other):
    other.open_at(FIRST)
    other.open_code(CASE)
    assert CASE.code == other.card.get_by_label("Problem code").input_value()


@pytest.mark.parametrize("name", [path.name for path in shipped_pages()])
def test_every_page_opens_and_shows_no_error(name, other):
    other.open_at(name)
    assert 0 == other.page.locator("[data-mime-type='application/vnd.jupyter.stderr']").count()
    assert 0 == other.page.locator(".w2w-fault").count()
    assert 360 == other.page.evaluate("document.documentElement.scrollWidth")
    assert [] == other.faults


def test_a_link_to_a_set_opens_its_problems_and_five_results_are_put_together(other, tmp_path):
    other.page.goto(f"{other.address}/?{urlencode({'path': GROUP, 'set': WEDNESDAY.text})}")
    other.wait()
    other.page.get_by_text("“Wednesday pumps” is open below, with 3 questions.").wait_for()
    asked = other.page.locator(".w2w-posed").all_inner_texts()
    questions = [case_from_code(code).question for code in WEDNESDAY.codes]
    assert [True] * 3 == [q in text for q, text in zip(questions, asked, strict=True)]
    sent = tmp_path / "sent"
    sent.mkdir()
    for name, data in results(tmp_path / "members").items():
        (sent / name).write_bytes(data)
    with other.page.expect_file_chooser() as choosing:
        other.page.get_by_role("button", name="Bring in results").click()
    choosing.value.set_files(sorted(sent.iterdir()))
    other.page.get_by_text("5 members, 3 questions:").wait_for()
    assert [] == other.faults


def test_a_trainers_link_opens_ones_own_numbers_and_the_file_that_goes_back_is_graded(
    other, tmp_path
):
    week = Assigned("week-3", "Week 3", set_of(chapters=["horsepower"], count=2, seed=7))
    text, page = text_of(week, ("op01", "op02")), other.page
    address = f"{other.address}/?{urlencode({'path': '27-from-your-trainer.ipynb', 'class': text})}"
    page.goto(address)
    other.wait()
    page.get_by_label("Your name or number").fill("op02")
    page.get_by_role("button", name="Use this name").click()
    page.get_by_text("Your questions are below.").wait_for()
    case = cases_for(week.work, "op02")[0]
    card = page.locator(".w2w-asked").first
    answer(card, as_typed(case, case.answer))
    card.locator(".w2w-right").wait_for()
    page.goto(address)
    other.wait()
    page.get_by_text("You have answered 1 of 2 questions.").first.wait_for()
    page.get_by_role("button", name="Save your work as one file").click()
    with page.expect_download() as saving:
        page.get_by_role("link", name="Save the file").click()
    sent = tmp_path / saving.value.suggested_filename
    saving.value.save_as(sent)
    marked = mark(week, "op02", sent.read_bytes())
    assert ("week-3-op02.jsonl", 1.0, False) == (sent.name, marked.points, marked.needs_person)
    assert [] == other.faults


def test_nothing_keeps_the_browser_from_installing_the_site(other):
    asked = other.page.context.new_cdp_session(other.page)
    errors = asked.send("Page.getInstallabilityErrors")["installabilityErrors"]
    # A test's browser keeps nothing, as a private window does.
    assert ["in-incognito"] == [error["errorId"] for error in errors]


def test_a_pdf_cannot_be_made_in_a_browser_and_the_page_says_so(other):
    other.open_at("16-formulas-and-tables.ipynb")
    other.page.get_by_role("button", name="Make a sheet to print").click()
    other.page.get_by_text(printing.IN_BROWSER).wait_for()


def test_an_exam_goes_on_where_it_was_when_python_is_started_again(other):
    other.open_at("15-practice-exam.ipynb")
    other.page.get_by_role("button", name="Start this exam").click()
    question = other.page.locator(".w2w-exams .w2w-question")
    question.wait_for()
    asked = question.inner_text()
    other.page.get_by_role("button", name="Start this page again").click()
    other.page.locator('.wtw-page[data-state="starting"]').wait_for()
    other.wait()
    other.page.get_by_role("button", name="Continue this exam").first.click()
    question.wait_for()
    assert asked == question.inner_text()


def test_without_a_network_a_page_opens_and_answers_once_the_site_is_kept(other, site):
    other.wait_until_kept()
    site.stop()
    try:
        other.open("06-head.ipynb")
        case = draw("static_head", 3)
        other.open_code(case)
        other.answer(f"{case.answer:.4g}")
        other.card.locator(".w2w-right").wait_for()
    finally:
        site.start()


def test_the_runtime_came_once_though_these_browsers_are_private(site, reader, other):
    # Two readers; on a starved computer one of them may ask before the service worker is there.
    for file in ("pyodide/pyodide.asm.wasm", "library.zip"):
        assert site.asked.count(f"/static/{file}") in (2, 3)


def test_nothing_was_asked_of_any_other_address(reader, other):
    assert [] == [*reader.outside, *other.outside]
    assert [] == [*reader.faults, *other.faults]
