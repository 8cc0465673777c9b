"""The trainer's pages in a real browser: work set from nothing, a class seen with names and without."""

from datetime import UTC, datetime

import pytest

from solver.sets.work_set import cases_for, set_of
from tests.workbook.looking import in_theme
from tests.workbook.trainer.a_class import handed_in, people
from tests.workbook.turning import turn_to
from workbook.trainer.course import course_at
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.sets.set_file import SET_FILE, Assigned, read_set_file
from workbook.trainer.setting.keep import put
from workbook.ui.pages import TRAINERS, shipped_pages

pytestmark = pytest.mark.browser

SET, CLASS = "01-set-work.ipynb", "02-the-class.ipynb"
FORM, REPORT = ".w2w-setting", ".w2w-class"
WEEK = Assigned(
    "week-3", "Week 3: power", set_of(chapters=["horsepower", "efficiency"], count=12, seed=48213)
)
NINE_POINTS = 12  # px
WIDE, BETWEEN, NARROW = 1200, 700, 360
# What ends to the right of the panel's own edge, but for what a region moves sideways.
STICKING_OUT = """panel => {
  const edge = panel.getBoundingClientRect().right + 0.5;
  return [...panel.querySelectorAll('*')]
    .filter(node => !node.closest('svg') && !node.closest('.w2w-heard'))
    .filter(node => !node.closest('.w2w-across :scope, .w2w-across > *'))
    .filter(node => node.getBoundingClientRect().right > edge)
    .map(node => node.outerHTML.slice(0, 80));
}"""
CUT_OFF = """svg => {
  const box = svg.getBoundingClientRect();
  return [...svg.querySelectorAll('text')].filter(text => {
    const r = text.getBoundingClientRect();
    return r.left < box.left - 1 || r.right > box.right + 1
      || r.top < box.top - 1 || r.bottom > box.bottom + 1;
  }).map(text => text.textContent);
}"""
SMALLEST = """svg => {
  const shown = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
  return shown * Math.min(
    ...[...svg.querySelectorAll('text')].map(text => parseFloat(getComputedStyle(text).fontSize)));
}"""


@pytest.fixture(scope="module")
def served(serve):
    """A course, opened by its command, in which 24 people have handed in."""
    served = serve(course=True)
    course = course_at(served.folder)
    put(course.root, WEEK, datetime.now())
    for person, sheet in handed_in(WEEK, people(24)):
        folder = course.folder("submitted", WEEK.name, person)
        folder.mkdir(parents=True)
        (folder / SHEET).write_bytes(sheet)
    return served


@pytest.fixture
def setting(served, show):
    return show(served, SET).locator(FORM)


@pytest.fixture
def report(served, show):
    return show(served, CLASS).locator(REPORT)


def see_class(report):
    report.get_by_label("Set", exact=True).select_option("week-3")
    report.get_by_role("button", name="Grade and show").click()
    report.get_by_role("heading", name="Question by question").wait_for()
    report.locator("svg").nth(1).wait_for()


def fill_in(setting, title, chapter="1. Three horsepowers"):
    setting.get_by_label("Title", exact=True).fill(title)
    setting.get_by_label(chapter).and_(setting.get_by_role("checkbox")).check()


def test_the_command_opens_the_course_with_the_trainers_pages_beside_the_chapters(served):
    beside = {path.name for path in served.folder.glob("*.ipynb")}
    assert {path.name for path in (*shipped_pages(), *shipped_pages(TRAINERS))} == beside
    assert "becomes a course now." in served.output
    assert f"/tree/{SET}?token=" in served.output
    assert "pumps-2026" == course_at(served.folder).name


def test_work_is_set_by_keyboard_alone_and_what_is_written_is_what_was_seen(served, setting):
    page = setting.page
    setting.get_by_label("Title", exact=True).focus()
    page.keyboard.type("By keyboard")
    box = setting.get_by_label("6. Head").and_(setting.get_by_role("checkbox"))
    box.focus()
    page.keyboard.press("Space")
    count = setting.get_by_label("Questions, 1 to 60")
    count.focus()
    page.keyboard.press("Control+a")
    page.keyboard.type("4")
    page.keyboard.press("Enter")  # the text has not left its box yet
    code = setting.locator(".w2w-worked b").first
    code.wait_for()
    setting.get_by_text("4 questions at any level").wait_for()
    setting.get_by_role("button", name="Save the set").focus()
    page.keyboard.press("Enter")
    setting.get_by_text("The set is saved in").wait_for()
    kept = read_set_file(served.folder / "source" / "by-keyboard" / SET_FILE)
    assert (code.inner_text(), 4) == (kept.work.code, kept.work.count)
    shown = setting.locator(".w2w-preview").inner_text()
    assert all(case.code in shown for case in cases_for(kept.work, "tobias"))


def test_a_click_right_after_typing_writes_what_was_typed(served, setting):
    fill_in(setting, "At once")
    setting.get_by_label("Questions, 1 to 60").fill("7")
    setting.get_by_role("button", name="Save the set").click()
    setting.get_by_text("The set is saved in").wait_for()
    assert 7 == read_set_file(served.folder / "source" / "at-once" / SET_FILE).work.count


def test_a_due_time_is_that_of_the_trainers_own_computer(served, new_page):
    with new_page(timezone_id="America/Chicago") as page:
        served.open(page, SET)
        setting = page.locator(FORM)
        fill_in(setting, "Due in Chicago")
        setting.get_by_label("Due, in your own time").fill("2026-12-01T18:00")
        setting.get_by_label("Taken off for being late").fill("10")
        setting.get_by_role("button", name="Save the set").click()
        setting.get_by_text("The set is saved in").wait_for()
        kept = read_set_file(served.folder / "source" / "due-in-chicago" / SET_FILE)
        assert (datetime(2026, 12, 2, 0, tzinfo=UTC), 0.1) == (kept.due, kept.late)
        # Opened again, the box has it as it was typed.
        turn_to(served, page, SET)
        setting.get_by_label("Begin with").select_option("due-in-chicago")
        setting.get_by_role("button", name="Open it").click()
        setting.get_by_text("“Due in Chicago” is open.").wait_for()
        assert (
            "2026-12-01T18:00" == setting.get_by_label("Due, in your own time").input_value()[:16]
        )


def test_a_set_that_stands_there_is_not_replaced_without_its_own_button(served, setting):
    file = served.folder / "source" / "twice" / SET_FILE
    put(served.folder, WEEK._replace(name="twice", title="Twice"), datetime.now())
    before = file.read_bytes()
    fill_in(setting, "Twice")
    setting.get_by_role("button", name="Save the set").click()
    setting.get_by_text("This course already has another set called “twice”.").wait_for()
    assert before == file.read_bytes()
    setting.get_by_role("button", name="Replace it").click()
    setting.get_by_text("The set that was there is kept in").wait_for()
    assert WEEK.work != read_set_file(file).work
    (aside,) = (served.folder / "replaced").glob("twice*")
    assert before == (aside / SET_FILE).read_bytes()


def test_an_empty_form_says_all_that_is_missing_where_the_eye_is(setting):
    setting.get_by_role("button", name="See the set").click()
    said = setting.locator(".w2w-missing").first
    said.wait_for()
    assert "The title is empty." in said.inner_text()
    assert "Nothing is chosen yet." in said.inner_text()


def test_a_plant_is_brought_in_and_its_names_stand_in_the_questions(setting, tmp_path):
    file = tmp_path / "plant.toml"
    pumps = '[[pumps]]\nname = "Pump 9"\nstation = "the Quarry Road lift station"\n'
    file.write_text(f'name = "Marlow Bend"\n{pumps}', encoding="utf-8")
    with setting.page.expect_file_chooser() as choosing:
        setting.get_by_role("button", name="Bring in a plant").click()
    choosing.value.set_files(file)
    setting.get_by_text("The problems are about “Marlow Bend”, 1 pump.").wait_for()
    fill_in(setting, "Ours")
    setting.get_by_label("Shown as").select_option("Problems with the solutions")
    setting.get_by_role("button", name="See the set").click()
    setting.locator(".w2w-pair").first.wait_for()
    assert (
        "Pump 9 at the Quarry Road lift station" in setting.locator(".w2w-previewed").inner_text()
    )


def test_the_class_is_marked_and_no_id_is_left_on_the_page_without_names(report):
    see_class(report)
    report.get_by_text("24 sheets graded.").wait_for()
    assert "operator-" in report.inner_text()
    report.get_by_label("No names").check()
    report.get_by_role("cell", name="operator-").first.wait_for(state="detached")
    report.get_by_role("rowheader", name="Person ").first.wait_for()
    assert "operator-0" not in report.page.content()


def test_the_file_of_people_is_saved(report, tmp_path):
    see_class(report)
    report.get_by_role("button", name="Make files to save").click()
    with report.page.expect_download() as saving:
        report.get_by_role("link", name="Save the people").click()
    assert "week-3-people.csv" == saving.value.suggested_filename
    saving.value.save_as(tmp_path / "people.csv")
    lines = (tmp_path / "people.csv").read_text("utf-8-sig").splitlines()
    assert ["person", *people(24)] == [line.partition(",")[0] for line in lines]


def test_a_mistake_leads_to_its_chapter_and_the_class_stays_open(report):
    see_class(report)
    with report.page.expect_popup() as opening:
        report.locator(".w2w-flaws a").first.click()
    chapter = opening.value
    chapter.locator('.wtw-page[data-state="ready"]').wait_for()
    assert any(path.name in chapter.url for path in shipped_pages())
    assert report.get_by_role("heading", name="Question by question").is_visible()
    chapter.close()


def show_all_of_form(setting):
    fill_in(setting, "Looked at")
    setting.get_by_label("Shown as").select_option("Problems with the solutions")
    setting.get_by_role("button", name="See the set").click()
    setting.locator(".w2w-pair").first.wait_for()
    setting.locator(".w2w-pair summary").first.click()


def show_all_of_report(report):
    see_class(report)
    report.get_by_role("button", name="Make files to save").click()
    report.get_by_role("link", name="Save the people").wait_for()


SHOW_ALL = {REPORT: (CLASS, show_all_of_report), FORM: (SET, show_all_of_form)}


@pytest.fixture(scope="module")
def opened(request, served, windows):
    """A panel with everything on it shown. It is for the last tests here: to turn to a page leaves this one."""
    name, show_all = SHOW_ALL[request.param]
    panel = windows.show(served, name).locator(request.param)
    show_all(panel)
    return panel


# The report stands first in both lists, as pytest knows by its number which panel a test goes on with.
each_panel = pytest.mark.parametrize("opened", SHOW_ALL, indirect=True, scope="module")
the_report = pytest.mark.parametrize("opened", [REPORT], indirect=True, scope="module")


@each_panel
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_accessibility_rule_is_broken_in_either_theme(opened, axe, scheme, request):
    in_theme(opened.page, scheme)
    assert [] == axe(opened.page, request.node.callspec.params["opened"])


@each_panel
@pytest.mark.parametrize("width", [WIDE, 400, NARROW])
def test_nothing_sticks_out_and_every_word_in_a_picture_is_whole_and_large_enough(opened, width):
    page = opened.page
    page.set_viewport_size({"width": width, "height": 900})
    page.wait_for_function(
        "([panel, width]) => panel.clientWidth < width", arg=[opened.element_handle(), width]
    )
    assert width == page.evaluate("document.documentElement.scrollWidth")
    assert [] == opened.evaluate(STICKING_OUT)
    for picture in opened.locator("svg").all():
        assert [] == picture.evaluate(CUT_OFF)
        if width > NARROW:  # words are 9 points where a figure has 330 px; there it has 304
            assert NINE_POINTS <= round(picture.evaluate(SMALLEST), 1)


@the_report
def test_the_wide_table_fits_a_telephone_and_is_moved_by_keyboard_where_it_is_wider(opened):
    page = opened.page
    table = page.get_by_role("region", name="How the answers came out")
    page.set_viewport_size({"width": NARROW, "height": 900})
    page.wait_for_function(f"document.querySelector('.w2w-across').clientWidth < {NARROW}")
    assert table.evaluate("node => node.scrollWidth <= node.clientWidth")
    page.set_viewport_size({"width": BETWEEN, "height": 900})
    page.wait_for_function(f"document.querySelector('.w2w-across').clientWidth > {NARROW}")
    assert table.evaluate("node => node.scrollWidth > node.clientWidth")
    table.focus()
    page.keyboard.press("ArrowRight")
    page.wait_for_function("document.activeElement.scrollLeft > 0")
