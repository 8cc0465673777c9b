"""The page of a set in a real browser: it waits to be started, and is worked to its end."""

import contextlib
import json
import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.request
import zipfile
from html import unescape
from pathlib import Path
from tempfile import mkdtemp

import pytest

from solver.sets.work_set import cases_for, set_of
from tests.conftest import wait_for_page
from tests.workbook.cards import focused
from tests.workbook.looking import in_theme
from workbook.start import child
from workbook.trainer.learner.answer_sheet import SHEET, read_sheet
from workbook.trainer.sets.notebook import write_source
from workbook.trainer.sets.set_file import Assigned

pytestmark = pytest.mark.browser

WORK = set_of(families=["brake_power", "water_power", "which_power"], level=1, count=3, seed=48213)
WEEK = Assigned("week-3", "Week 3: power", WORK, points=5.0, tries=3)
CASES = cases_for(WORK, "ana.r")
TYPED = next(number for number, case in enumerate(CASES, 1) if not case.choices)
CASE = CASES[TYPED - 1]
MISTAKE = CASE.mistakes[0]
START, AGAIN = "Start this page", "Start this page again"
# Whatever reaches over the edge of the screen, or is cut by what holds it.
OUTSIDE = """(nodes, width) => nodes.filter(node => node.offsetParent)
  .filter(node => node.getBoundingClientRect().right > width + 1
    || (getComputedStyle(node).overflowX === 'hidden' && node.scrollWidth > node.clientWidth + 1))
  .map(node => node.className + ' ' + node.textContent.slice(0, 40))"""


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """The set as a trainer has it."""
    return write_source(WEEK, tmp_path_factory.mktemp("class")).parent


@pytest.fixture(scope="module")
def served(serve):
    """A workbook into whose folder work is put."""
    return serve()


@pytest.fixture
def sent(served, made):
    """The set, just come, in a folder of the reader's own."""
    folder = Path(mkdtemp(dir=served.folder)) / "week-3"
    shutil.copytree(made, folder)
    return folder


@pytest.fixture
def waiting(served, sent, show):
    """A function that turns to a page of the set, which waits; and the program of the one before is ended."""

    def turned(name="week-3.ipynb"):
        path = (sent / name).relative_to(served.folder).as_posix()
        page = show(served, path, "waiting")
        with served.ask("api/sessions") as answered:
            left = [session for session in json.load(answered) if session["path"] != path]
        for session in left:
            served.ask(f"api/sessions/{session['id']}", "DELETE").close()
        return page

    return turned


def opened(served, page, folder):
    """The set in a window that is loaded for it."""
    served.open(page, (folder / "week-3.ipynb").relative_to(served.folder).as_posix(), "waiting")


def start(page, name=START):
    page.get_by_role("button", name=name, exact=True).click()
    wait_for_page(page)
    page.get_by_role("heading", name="Turning it in").wait_for()


def begin(page, name="Ana.R"):
    page.get_by_label("Your name or number").fill(name)
    page.get_by_label("Your name or number").press("Enter")
    page.locator(".w2w-question").first.wait_for()
    page.wait_for_function("document.activeElement.textContent === 'Use another name'")


def box(page, number=TYPED):
    return page.get_by_label(f"Question {number}.")


def card(page, number=TYPED):
    return page.locator(".w2w-asked").nth(number - 1)


def answer(page, text, number=TYPED):
    box(page, number).fill(text)
    box(page, number).press("Enter")


def said(page, text, number=TYPED):
    card(page, number).get_by_text(text).first.wait_for()


def in_sight(page):
    """How many lines of code, and how many cells for plain answers, can be seen."""
    code = page.locator(".jp-CodeCell .jp-Cell-inputWrapper").locator("visible=true")
    return code.count(), page.get_by_role("paragraph").filter(has_text="Answer:").count()


def lines(folder):
    path = folder / SHEET
    return read_sheet(path.read_bytes() if path.exists() else None).lines


def test_it_does_not_run_by_itself_and_says_where_it_comes_from(sent, waiting):
    page = waiting()
    page.get_by_text(
        "This page comes from your trainer. Start it only if you expect it."
    ).wait_for()
    page.wait_for_timeout(3000)  # a page of ours would be running by then
    assert 0 == page.locator(".jp-OutputArea-child").count()
    assert page.get_by_role("heading", name="Week 3: power").is_visible()
    assert (0, 0) == in_sight(page)


def test_a_page_with_other_code_shows_it_and_does_not_run_unasked(sent, waiting):
    book = json.loads((sent / "week-3.ipynb").read_text(encoding="utf-8"))
    hidden = next(cell for cell in book["cells"] if cell["id"] == "who")
    hidden["source"] = "# This line asks who you are.\nopen('it-ran.txt', 'w').close()"
    (sent / "other.ipynb").write_text(json.dumps(book), encoding="utf-8")
    page = waiting("other.ipynb")
    page.get_by_text("Some code here isn't the workbook's.").wait_for()
    assert page.get_by_text("open('it-ran.txt', 'w')").is_visible()
    page.wait_for_timeout(2000)
    assert not (sent / "it-ran.txt").exists()
    start(page)
    assert (sent / "it-ran.txt").exists()


def test_files_beside_the_page_do_not_run_in_the_place_of_libraries(sent, waiting):
    for name in ("ipykernel_launcher", "ipywidgets", "workbook"):
        (sent / f"{name}.py").write_text("open('it-ran.txt', 'w').close()")
    page = waiting()
    start(page)
    begin(page)
    assert not (sent / "it-ran.txt").exists()


def test_started_it_is_cards_without_code_that_name_mistakes_and_keep_answers(sent, waiting):
    page = waiting()
    start(page)
    begin(page)
    assert (0, 0) == in_sight(page)
    page.get_by_role("button", name="Show the code").click()
    page.wait_for_timeout(300)
    assert 3 == in_sight(page)[1]
    page.get_by_role("button", name="Show the code").click()
    answer(page, f"{MISTAKE.value:.5g}")
    said(page, MISTAKE.says)
    said(page, "Try 1. You have 2 tries left.")
    answer(page, f"{CASE.answer:.5g}")
    said(page, "Try 2.")
    assert ["mistake", "right"] == [line.status for line in lines(sent)]
    page.get_by_text("You have answered 1 of 3 questions.").first.wait_for()


def test_after_a_reload_and_after_a_restart_it_stands_as_it_was_left_and_its_file_is_readable(
    served, sent, page
):
    opened(served, page, sent)
    start(page)
    begin(page)
    typed = f"{MISTAKE.value:.5g}"
    answer(page, typed)
    said(page, MISTAKE.says)
    page.reload()
    page.locator('.wtw-page[data-state="waiting"]').wait_for()
    assert not card(page).is_visible()
    for name in (START, AGAIN):
        accept = page.locator(".jp-Dialog button.jp-mod-accept").last
        page.add_locator_handler(accept, lambda button: button.click(), no_wait_after=True)
        start(page, name)
        said(page, "This answer is kept. Try 1. You have 2 tries left.")
        assert typed == box(page).input_value()
        assert page.get_by_text("ana.r").first.is_visible()
    assert 1 == len(lines(sent))
    # The questions stay in it for what shows no widgets.
    _until(lambda: CASE.question in _html(sent / "week-3.ipynb"))


def _html(path):
    text = path.read_text(encoding="utf-8")  # nothing at all while the server writes it anew
    cells = json.loads(text)["cells"] if text else []
    outputs = (each for cell in cells for each in cell.get("outputs", []))
    return unescape("".join("".join(each["data"].get("text/html", "")) for each in outputs))


def _until(true, patience=60):
    end = time.monotonic() + patience
    while not true():
        assert time.monotonic() < end, "it did not come"
        time.sleep(0.2)


def test_a_plain_answer_that_was_written_stays_in_sight(sent, waiting):
    path = sent / "week-3.ipynb"
    book = json.loads(path.read_text(encoding="utf-8"))
    cell = next(cell for cell in book["cells"] if cell["id"] == f"answer-{TYPED:02}")
    cell["source"] += "12.5 hp by hand"
    path.write_text(json.dumps(book), encoding="utf-8")
    page = waiting()
    start(page)
    assert 1 == in_sight(page)[1]
    assert page.get_by_role("paragraph").filter(has_text="12.5 hp by hand").is_visible()


def test_the_opening_page_leads_to_work_that_was_sent(served, sent, show):
    page = show(served, "00-start-here.ipynb")
    page.get_by_role("link", name=WEEK.title).first.click()
    page.locator('.wtw-page[data-state="waiting"]').wait_for()


def test_the_work_is_saved_as_one_file(sent, waiting, tmp_path):
    page = waiting()
    start(page)
    begin(page)
    answer(page, f"{CASE.answer:.5g}")
    said(page, "Try 1.")
    page.get_by_role("button", name="Save your work as one file").click()
    with page.expect_download() as saving:
        page.get_by_role("link", name="Save the file").click()
    saving.value.save_as(tmp_path / "work.zip")
    assert "week-3-ana.r.zip" == saving.value.suggested_filename
    with zipfile.ZipFile(tmp_path / "work.zip") as packed:
        assert (sent / SHEET).read_bytes() == packed.read(f"ana.r/week-3/{SHEET}")


def test_the_keyboard_alone_is_enough(served, sent, page):
    opened(served, page, sent)
    tab_to(page, START)
    page.keyboard.press("Enter")
    page.locator('.wtw-page[data-state="ready"]').wait_for()
    tab_to(page, "Your name or number, as your trainer has it")
    page.keyboard.type("ana.r")
    page.keyboard.press("Enter")
    page.wait_for_function("document.activeElement.textContent === 'Use another name'")
    for number, case in enumerate(CASES, 1):
        tab_to(page, f"Question {number}.")
        page.keyboard.type(f"{case.answer:.5g}")
        page.keyboard.press("Tab")
        assert "Check" == focused(page)
        page.keyboard.press("Space")
        said(page, "Try 1.", number)
        assert ("Next" if number < len(CASES) else "Check") == focused(page)
    page.get_by_text("You have answered every question.").first.wait_for()
    tab_to(page, "Save your work as one file")
    page.wait_for_timeout(400)  # later than a double click
    page.keyboard.press("Enter")
    page.get_by_role("link", name="Save the file").wait_for()
    assert ["right"] * 3 == [line.status for line in lines(sent)]


def tab_to(page, name):
    """Press Tab until the control whose name begins so has the focus."""
    seen = []
    for _ in range(60):
        page.keyboard.press("Tab")
        seen.append(focused(page))
        if seen[-1].startswith(name):
            return
    pytest.fail(f"Tab does not lead to {name!r} but to {seen}")


def faults_in_either_theme(page, axe, selector):
    found = []
    for scheme in ("light", "dark"):
        in_theme(page, scheme)
        found += axe(page, selector)
    return found


def test_no_accessibility_rule_is_broken_in_either_theme_and_at_360_pixels_nothing_is_cut(
    waiting, axe
):
    page = waiting()
    assert [] == faults_in_either_theme(page, axe, ".wtw-strip")
    page.set_viewport_size({"width": 360, "height": 800})
    assert strip_is_whole(page)
    start(page)
    assert [] == axe(page, ".w2w-panel")
    begin(page)
    answer(page, f"{MISTAKE.value:.5g}")
    said(page, MISTAKE.says)
    page.get_by_role("button", name="Save your work as one file").click()
    page.get_by_role("link", name="Save the file").wait_for()
    assert 360 == page.evaluate("document.documentElement.scrollWidth")
    parts = ".wtw-bar, .wtw-bar *, .wtw-foot, .w2w-panel, .w2w-panel *:not(.w2w-heard)"
    assert [] == page.eval_on_selector_all(parts, OUTSIDE, 360)
    page.set_viewport_size({"width": 1200, "height": 900})
    assert [] == faults_in_either_theme(page, axe, ".w2w-panel")


def strip_is_whole(page):
    strip = page.locator(".wtw-strip")
    return strip.evaluate("node => node.scrollHeight <= node.clientHeight")


# JupyterLab as it comes, without what the workbook adds to it


def test_in_a_plain_jupyterlab_it_works_when_all_cells_are_run_by_hand(root, made, page, tmp_path):
    shutil.copytree(made, tmp_path / "week-3")
    with plain_lab(root, tmp_path) as base:
        page.goto(f"{base}/lab/tree/week-3/week-3.ipynb?token=key&reset")
        page.locator(".jp-Notebook").wait_for()
        run_all_cells(page)
        begin(page)
        assert 0 == page.locator(".wtw-strip").count()
        assert 3 == in_sight(page)[1]
        answer(page, f"{CASE.answer:.5g}")
        said(page, "Try 1.")
    assert ["right"] == [line.status for line in lines(tmp_path / "week-3")]


def run_all_cells(page):
    """By the menu, once the program behind the page is up; before, JupyterLab asks which to take."""
    page.get_by_text("Python 3 (ipykernel) | Idle").wait_for()
    page.get_by_role("menuitem", name="Run", exact=True).click()
    page.locator('[data-command="runmenu:run-all"]').click()


@contextlib.contextmanager
def plain_lab(root, folder):
    with socket.socket() as trial:
        trial.bind(("127.0.0.1", 0))
        port = trial.getsockname()[1]
    command = [sys.executable, "-m", "jupyterlab", "--no-browser", "--allow-root", f"--port={port}"]
    own = {"HOME": str(folder), "PYTHONPATH": str(root), "JUPYTER_TOKEN": "key"}
    kept = {n: v for n, v in os.environ.items() if not n.startswith(("XDG_", "JUPYTER"))}
    place = ["--ServerApp.port_retries=0", f"--ServerApp.root_dir={folder}"]
    with child.started(
        [*command, *place], cwd=folder, env={**kept, **own}, stderr=subprocess.DEVNULL
    ) as server:
        _until(lambda: server.poll() is not None or _answers(f"http://127.0.0.1:{port}/api"))
        assert server.poll() is None, "the server did not start"
        yield f"http://127.0.0.1:{port}"


def _answers(address):
    with contextlib.suppress(OSError), urllib.request.urlopen(address, timeout=5):
        return True
    return False
