"""The first page and the study page in a real browser: a first visit, and a person of two months."""

from datetime import UTC, date, datetime, timedelta
from random import Random

import pytest
from playwright.sync_api import expect

from solver import FAMILIES, case_from_code, draw, family_named
from solver.engine.grading import as_typed
from tests.workbook.cards import answer, code_of
from tests.workbook.looking import in_theme
from tests.workbook.on_a_phone import faults_on_a_phone
from tests.workbook.turning import turn_to
from workbook.log import Log, line_of, made

pytestmark = pytest.mark.browser

HOME, PAGE = "00-start-here.ipynb", "14-your-study.ipynb"
FIRST, STUDY, COPIES = ".w2w-home", ".w2w-study", ".w2w-copies"
# Two mistakes that keep coming; a test clears the first.
SLIPS = {
    "brake_power": "brake_power.multiplied_by.pump_efficiency",
    "motor_power": "motor_power.multiplied_by.motor_efficiency",
}
EVENINGS = 60
KINDS = 60  # that were tried in them


def log_of(served):
    """A reader's log as it is on disk now."""
    log = Log(served.folder.parent / ".local/share/Wire to Water/attempts.jsonl")
    log.read()
    return log


def ago(days, family, seed=7, status="right", **fields):
    """A problem of so many days ago."""
    when = (datetime.now(UTC) - timedelta(days=days)).isoformat(timespec="microseconds")
    code = draw(family, seed, "us", 1).code
    given = {"family": family, "level": 1, "typed": "9", "seconds": 50.0, "status": status}
    return made(code=code, **given | fields)._replace(when=when.replace("+00:00", "Z"))


def two_months():
    """Two evenings of three for sixty days: new kinds little by little, two mistakes made twice."""
    chance = Random(14)
    names = [family.name for family in FAMILIES if family.name not in SLIPS]
    for day in range(EVENINGS, 0, -1):
        for at in range(6 * (day % 3 > 0)):
            seen = max(KINDS * (EVENINGS - day) // EVENINGS, 6)
            status = "right" if chance.random() < 0.8 else "wrong"
            yield ago(day - at / 200, chance.choice(names[:seen]), day * 10 + at, status)
    for family, slip in SLIPS.items():
        yield from (ago(1 - n / 100, family, n, "mistake", mistake=slip) for n in range(2))


@pytest.fixture(scope="module")
def reader(serve):
    """A reader who has studied for two months."""
    served = serve()
    log_of(served).keep(*sorted(two_months(), key=lambda attempt: attempt.when))
    return served


@pytest.fixture
def study(reader, show):
    page = show(reader, PAGE)
    page.locator(".w2w-calendar").wait_for()
    return page


@pytest.fixture(scope="module")
def opened(request, reader, windows):
    """One of both pages, for the tests that only look at it. They come last: to turn to a page leaves this one."""
    page = windows.show(reader, HOME if request.param == FIRST else PAGE)
    if request.param == STUDY:
        page.get_by_role("button", name="Practice this").first.click()
        page.locator(".w2w-chapter summary").first.click()
    page.locator(f"{request.param} .w2w-card h3").first.wait_for()
    return page


each_part = pytest.mark.parametrize("opened", [FIRST, STUDY], indirect=True, scope="module")


def right_answer(card):
    case = case_from_code(code_of(card))
    return as_typed(case, case.answer)


def problems(page, number):
    """Wait until the page says that so many problems were worked on."""
    page.locator(STUDY).get_by_text(f"You have worked on {number} problem").wait_for()


def test_a_first_visit_begins_with_three_sentences_and_a_problem_and_is_another_one_later(
    serve, page
):
    fresh = serve()
    fresh.open(page, HOME)
    home = page.locator(FIRST)
    home.get_by_text("Here are pump, motor and power problems").wait_for()
    card = home.locator(".w2w-card")
    assert FAMILIES[0].title == card.locator("h3").first.inner_text()
    answer(card, right_answer(card))
    card.get_by_role("button", name="Next", exact=True).wait_for()
    assert [("right", FAMILIES[0].name)] == [(a.status, a.family) for a in log_of(fresh).attempts]
    home.get_by_text("1 of 7 days").wait_for()
    home.get_by_role("button", name="Not now").click()
    home.get_by_text("of 20 minutes today").wait_for()

    turn_to(fresh, page, HOME)
    home.get_by_text("You haven't tried this kind of problem yet").wait_for()
    assert FAMILIES[1].title == card.locator("h3").first.inner_text()
    assert not home.get_by_text("Here are pump, motor").is_visible()
    assert not home.get_by_label("Day of the exam").is_visible()
    assert "1 of 7" in home.locator(".w2w-chapters li").first.inner_text()


def test_somebody_who_returns_goes_on_where_a_mistake_comes_back_and_sets_the_exam(reader, page):
    reader.open(page, HOME)
    home = page.locator(FIRST)
    home.get_by_text("You made the same mistake here twice lately").wait_for()
    brake = family_named("brake_power").title
    assert brake == home.locator(".w2w-card h3").first.inner_text()
    back = home.locator(".w2w-block", has_text="Coming back today")
    assert f"{brake}\nsame mistake 2 times" in back.inner_text()
    assert "Nothing" not in back.inner_text()

    day = home.get_by_label("Day of the exam")
    day.fill((date.today() + timedelta(days=59)).isoformat())
    home.get_by_label("Minutes a day").select_option("30 minutes")
    home.get_by_role("button", name="Save", exact=True).press("Enter")
    home.get_by_text("Exam in 59 days").wait_for()
    reader.open(page, PAGE)
    study = page.locator(STUDY)
    study.get_by_text("Exam in 59 days").wait_for()
    assert "This week" in study.locator(".w2w-plan").first.inner_text()
    cover = study.locator(".w2w-block", has_text="Still to cover").first.inner_text()
    assert "At 30 minutes a day" in cover

    study.get_by_role("button", name="Change exam date or minutes").press("Enter")
    minutes = study.get_by_label("Minutes a day")
    expect(minutes).to_be_focused()
    minutes.select_option("20 minutes")
    study.get_by_role("button", name="Save", exact=True).press("Enter")
    study.get_by_text("At 20 minutes a day").wait_for()


def test_a_mistake_is_practiced_by_keyboard_alone_and_gone_once_it_went_right_twice(reader, study):
    below, keys = study.locator(STUDY), study.keyboard
    mistakes = below.locator(".w2w-block", has_text="Mistakes that come back").last
    told = "You multiplied by the pump efficiency"
    mistakes.get_by_text(told).wait_for()
    before = len(log_of(reader).attempts)
    for _ in range(2):
        mistakes.get_by_role("button", name="Practice this").first.focus()
        keys.press("Enter")
        box = below.locator("input.w2w-box")
        study.wait_for_function("document.activeElement.closest('.w2w-study .w2w-card')")
        assert box.evaluate("node => node === document.activeElement")
        assert box.evaluate(IN_SIGHT)
        study.wait_for_timeout(500)
        keys.type(right_answer(below))
        keys.press("Enter")
        below.get_by_text("Try 1.").wait_for()
    below.get_by_role("button", name="Bring this up to date").focus()
    keys.press("Enter")
    mistakes.get_by_text(told).wait_for(state="detached")
    assert before + 2 == len(log_of(reader).attempts)


def test_a_chapter_opens_by_keyboard_to_its_kinds_and_leads_to_its_page(study):
    chapter = study.locator(".w2w-chapter").nth(2)
    chapter.locator("summary").focus()
    study.keyboard.press("Enter")
    row = chapter.get_by_role("row", name=family_named("energy_cost").title)
    row.wait_for()
    assert "of" in row.get_by_role("cell").first.inner_text()
    chapter.get_by_role("link").click()
    study.wait_for_url("**/03-kilowatt-hours-and-cost.ipynb*")
    study.get_by_role("heading", level=1, name="3. Kilowatt-hours and cost").wait_for()
    study.locator('.wtw-page[data-state="ready"]').wait_for()


def test_a_copy_is_saved_and_brought_in_where_there_is_nothing_yet(reader, show, serve, tmp_path):
    study = show(reader, PAGE)
    copies = study.locator(COPIES)
    copies.get_by_role("button", name="Make a copy to save").click()
    with study.expect_download() as saving:
        copies.get_by_role("link").click()
    saved = tmp_path / saving.value.suggested_filename
    saving.value.save_as(saved)
    kept = log_of(reader).attempts
    assert [line_of(attempt) for attempt in kept] == saved.read_text("utf-8").splitlines()

    fresh = serve()
    study = show(fresh, PAGE)
    study.locator(STUDY).get_by_text("Your log is empty so far.").wait_for()
    for said in (
        f"{len(kept)} answers brought in, 0 were",
        f"0 answers brought in, {len(kept)} were",
    ):
        with study.expect_file_chooser() as choosing:
            study.locator(COPIES).get_by_role("button", name="Bring in a copy").click()
        choosing.value.set_files(saved)
        study.locator(COPIES).get_by_text(said).wait_for()
    assert kept == log_of(fresh).attempts
    study.get_by_role("button", name="Bring this up to date").click()
    problems(study, len(kept))


def test_a_full_disk_is_said_on_the_problem_and_nothing_is_lost_when_there_is_room(serve, page):
    fresh = serve()
    path = fresh.folder.parent / ".local/share/Wire to Water/attempts.jsonl"
    path.parent.mkdir(parents=True, exist_ok=True)
    path.symlink_to("/dev/full")  # every write there fails as on a full disk
    fresh.open(page, HOME)
    home = page.locator(FIRST)
    answer(home, "99999")
    home.get_by_text("The disk is full. Free up some space").wait_for()
    path.unlink()
    answer(home, right_answer(home))
    home.get_by_text("Try 2.").wait_for()
    assert ["wrong", "right"] == [attempt.status for attempt in log_of(fresh).attempts]


def test_lines_that_cannot_be_read_are_told_and_do_no_harm(serve, page):
    fresh = serve()
    log = log_of(fresh)
    log.keep(ago(1, "water_power"))
    with log.path.open("ab") as file:
        unknown = ago(0, "water_power")._replace(family="no_such_kind")
        file.write(b'\xff\xfe<script>\n{"v": 9}\n' + line_of(unknown).encode())
    fresh.open(page, PAGE)
    problems(page, 2)
    told = "2 lines of your log couldn't be read (line 2: part of it is missing; line 3: a newer version"
    page.locator(STUDY).get_by_text(told).wait_for()


@each_part
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_accessibility_rule_is_broken_in_either_theme(opened, axe, scheme, request):
    in_theme(opened, scheme)
    assert [] == axe(opened, request.node.callspec.params["opened"])


@each_part
def test_both_pages_fit_a_telephone_with_two_months_on_them(opened):
    assert [] == faults_on_a_phone(opened)


IN_SIGHT = """node => {
  const r = node.getBoundingClientRect(), x = r.x + r.width / 2, y = r.y + r.height / 2;
  return document.elementFromPoint(x, y) === node;
}"""
