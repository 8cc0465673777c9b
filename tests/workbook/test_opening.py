"""A page opens ready to use: it runs by itself, hides its plumbing, and only ours does so.

The pages here are stand-ins, served from a copy of the workbook whose chapters they are.
"""

import json
import shutil
import time

import pytest

pytestmark = pytest.mark.browser

START, NEXT, CRASH = "00-start-here.ipynb", "01-horsepower.ipynb", "02-crash.ipynb"
STUMBLE = "03-stumble.ipynb"
PLUMBING = """# This line shows the card.
import ipywidgets
answer = ipywidgets.Text(description="Answer", continuous_update=False)
echo = ipywidgets.HTML("Nothing yet")
answer.observe(lambda change: setattr(echo, "value", "Read: " + change["new"]), "value")
ipywidgets.VBox([answer, echo])"""
CRASHES = """# A button that ends the program behind the page.
import ipywidgets, os
button = ipywidgets.Button(description="Crash")
button.on_click(lambda _: os._exit(1))
button"""
STUMBLES = """# A program that ends as often as the reader's folder says.
import os, pathlib
left = pathlib.Path("left.txt")
times = int(left.read_text())
left.write_text(str(times - 1))
if times > 0:
    os._exit(1)
print("It stands")"""
TELLS_WHERE = """# Where the workbook comes from, and how many widgets there are.
import ipywidgets
import workbook
print(workbook.__file__)
print("Widgets:", len(ipywidgets.widgets.widget._instances))"""


def words(cell_id, text):
    return {"cell_type": "markdown", "id": cell_id, "metadata": {}, "source": text}


def code(cell_id, text, hidden=True):
    metadata = {"jupyter": {"source_hidden": True}} if hidden else {}
    kept = {"outputs": [], "execution_count": None}
    return {"cell_type": "code", "id": cell_id, "metadata": metadata, "source": text, **kept}


def write_page(path, *cells):
    kernel = {"name": "python3", "display_name": "Python 3", "language": "python"}
    metadata = {"kernelspec": kernel, "wire_to_water": {"page": True}}
    page = {"cells": cells, "metadata": metadata, "nbformat": 4, "nbformat_minor": 5}
    path.write_text(json.dumps(page), encoding="utf-8")


@pytest.fixture(scope="module")
def project(root, tmp_path_factory):
    """A copy of the workbook with two pages of our own making for its chapters."""
    copy = tmp_path_factory.mktemp("project")
    leave = shutil.ignore_patterns("chapters", "__pycache__")
    shutil.copytree(root / "workbook", copy / "workbook", ignore=leave)
    shutil.copytree(root / "binder", copy / "binder")
    chapters = copy / "workbook" / "chapters"
    chapters.mkdir()
    write_page(
        chapters / START,
        words("title", f"# Start here\n\nGo on to [the next page]({NEXT})."),
        code("card", PLUMBING),
        code("sum", "450 * 62 / 3960", hidden=False),
    )
    paragraphs = [words(f"words-{n}", f"Paragraph {n}\n\nand more") for n in range(40)]
    last = code("last", "40 + 2", hidden=False)
    title = words("title", "# Horsepower")
    write_page(chapters / NEXT, title, code("where", TELLS_WHERE), *paragraphs, last)
    write_page(chapters / CRASH, words("title", "# Crash"), code("crash", CRASHES))
    write_page(chapters / STUMBLE, words("title", "# Stumble"), code("stumble", STUMBLES))
    return copy


@pytest.fixture(scope="module")
def served(serve, project):
    return serve(project)


def shown(page, text):
    return page.get_by_text(text).locator("visible=true").first.wait_for()


def start_again(page):
    """Press the button; JupyterLab may put its own words about each end of a program before it."""
    accept = page.locator(".jp-Dialog button.jp-mod-accept").last
    page.add_locator_handler(accept, lambda button: button.click(), no_wait_after=True)
    page.get_by_role("button", name="Start this page again").click()


def test_a_page_runs_by_itself_its_card_answers_and_its_file_stays_as_it_was(served, page):
    before = (served.folder / START).read_bytes()
    served.open(page)
    page.get_by_label("Answer").fill("12.5 hp")
    page.get_by_label("Answer").press("Enter")
    shown(page, "Read: 12.5 hp")
    unsaved = page.evaluate("!window.dispatchEvent(new Event('beforeunload', {cancelable: true}))")
    assert unsaved is False
    assert before == (served.folder / START).read_bytes()


def test_hidden_code_leaves_no_stub_arithmetic_stays_in_sight_and_bar_and_foot_keep_the_rules(
    served, page, axe
):
    served.open(page)
    assert not page.get_by_text("This line shows the card.").is_visible()
    assert page.get_by_text("450 * 62 / 3960").is_visible()
    shown(page, "7.0454")
    assert [] == axe(page, ".wtw-bar")
    assert [] == axe(page, ".wtw-foot")


def test_a_double_click_marks_a_word_and_single_keys_do_not_cut_the_page_to_pieces(served, page):
    served.open(page)
    heading = page.get_by_role("heading", name="Start here")
    heading.dblclick()
    assert heading.is_visible()
    heading.click()
    page.keyboard.press("x")
    assert heading.is_visible()


def test_a_copy_of_the_notebook_behind_a_page_can_be_opened_and_the_page_stays(served, page):
    served.open(page)
    assert not page.locator(".jp-NotebookPanel-toolbar").is_visible()
    page.get_by_role("button", name="Open a copy of this page as a notebook").click()
    page.locator('[data-wire-to-water="other"]').wait_for()
    shown(page, "This line shows the card.")
    assert page.locator(".jp-NotebookPanel-toolbar").is_visible()
    assert page.locator("#jp-menu-panel").is_visible()
    assert page.url.split("?")[0].endswith("/00-start-here-Copy1.ipynb")
    page.go_back()
    page.get_by_label("Answer").wait_for()
    assert not page.locator("#jp-menu-panel").is_visible()


def test_a_long_page_opens_at_its_top_on_the_workbook_that_opened_it(served, project, page):
    served.open(page, NEXT)
    shown(page, str(project / "workbook" / "__init__.py"))
    page.get_by_text("42", exact=True).wait_for(state="attached")
    assert 0 == page.locator(".jp-WindowedPanel-outer").evaluate("node => node.scrollTop")


def test_a_page_whose_program_ended_says_so_and_can_be_started_again(served, page):
    served.open(page, CRASH)
    page.get_by_role("button", name="Crash").click()
    page.locator('.wtw-page[data-state="stopped"]').wait_for()
    shown(page, "This page has stopped. Choose Start this page again.")
    start_again(page)
    page.locator('.wtw-page[data-state="ready"]').wait_for()
    page.get_by_role("button", name="Crash").wait_for()


def test_a_page_whose_program_ends_while_it_starts_is_taken_up_again(served, page):
    (served.folder / "left.txt").write_text("1")
    served.open(page, STUMBLE)
    shown(page, "It stands")


def test_a_page_that_keeps_ending_says_so_and_starts_when_it_can(served, page):
    (served.folder / "left.txt").write_text("3")
    page.goto(served.url(STUMBLE))
    page.locator('.wtw-page[data-state="stopped"]').wait_for()
    shown(page, "Part of this page didn't start. Choose Start this page again.")
    assert "0" == (served.folder / "left.txt").read_text()
    start_again(page)
    shown(page, "It stands")


def test_a_page_whose_program_is_gone_for_good_gets_a_new_one(served, page):
    served.open(page)
    for kernel in json.load(served.ask("api/kernels")):
        served.ask(f"api/kernels/{kernel['id']}", "DELETE").close()
    shown(page, "This page has stopped. Choose Start this page again.")
    start_again(page)
    page.locator('.wtw-page[data-state="ready"]').wait_for()
    shown(page, "Nothing yet")


def test_a_page_that_is_started_again_is_as_new(served, page):
    served.open(page)
    page.get_by_label("Answer").fill("first")
    page.get_by_label("Answer").press("Enter")
    shown(page, "Read: first")
    page.get_by_role("button", name="Start this page again").click()
    shown(page, "Nothing yet")
    page.locator('.wtw-page[data-state="ready"]').wait_for()
    page.get_by_label("Answer").fill("second")
    page.get_by_label("Answer").press("Enter")
    shown(page, "Read: second")


def on_one_program(served):
    """Whether all pages are on one, once what an earlier test left has ended."""
    for _ in range(40):
        running = [one for one in json.load(served.ask("api/kernels")) if one["connections"]]
        if len(running) == 1:
            return True
        time.sleep(0.5)
    return False


def test_a_link_leads_to_the_next_page_on_the_same_program_what_is_left_is_closed_and_back_leads_back(
    served, page
):
    served.open(page)
    page.get_by_label("Answer").fill("12.5 hp")
    page.get_by_label("Answer").press("Enter")
    shown(page, "Read: 12.5 hp")
    page.get_by_role("link", name="the next page").click()
    shown(page, "workbook/__init__.py")
    shown(page, "Widgets: 0")
    assert on_one_program(served)
    page.go_back()
    page.get_by_label("Answer").wait_for()


def test_a_restart_in_one_window_brings_the_page_in_another_back(served, page):
    served.open(page)
    page.get_by_label("Answer").fill("mine")
    page.get_by_label("Answer").press("Enter")
    shown(page, "Read: mine")
    other = page.context.new_page()
    served.open(other, NEXT)
    other.get_by_role("button", name="Start this page again").click()
    shown(page, "Nothing yet")
    page.locator('.wtw-page[data-state="ready"]').wait_for()
    page.get_by_label("Answer").fill("again")
    page.get_by_label("Answer").press("Enter")
    shown(page, "Read: again")
    other.locator('.wtw-page[data-state="ready"]').wait_for()
    assert on_one_program(served)


def test_nothing_typed_over_a_page_reaches_its_file(served, page):
    before = (served.folder / NEXT).read_bytes()
    served.open(page, NEXT)
    page.locator(".jp-MarkdownOutput p", has_text="Paragraph 3").first.click()
    for key in ("a", "d", "d", "x", "Enter", "Shift+Enter", "Control+s"):
        page.keyboard.press(key)
    assert page.locator(".jp-MarkdownOutput p", has_text="Paragraph 3").first.is_visible()
    assert before == (served.folder / NEXT).read_bytes()
    assert 0 == page.locator(".jp-Dialog, .Toastify__toast").count()


@pytest.fixture(scope="module")
def other(serve, project):
    """A reader's folder for notebooks that are not ours."""
    return serve(project)


@pytest.mark.parametrize("name", ["stranger.ipynb", START])
def test_a_marked_notebook_with_other_code_does_not_run(other, page, name):
    trace = other.folder / "it-ran.txt"
    write_page(other.folder / name, code("bad", f"open({str(trace)!r}, 'w').close()"))
    page.goto(other.url(name))
    page.locator('[data-wire-to-water="other"]').wait_for()
    assert page.locator(".wtw-strip").count() == 0
    assert not trace.exists()


def test_a_copy_of_our_page_in_another_folder_does_not_run(other, page):
    (other.folder / "got").mkdir()
    shutil.copy(other.folder / NEXT, other.folder / "got" / NEXT)
    page.goto(other.url(f"got/{NEXT}"))
    page.locator('[data-wire-to-water="other"]').wait_for()
    assert page.locator(".wtw-strip").count() == 0
