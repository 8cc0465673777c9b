"""The study page in a real browser: what is kept, what comes next, what can be taken along."""

from datetime import UTC, datetime, timedelta

import pytest

from solver import case_from_code, draw, family_named
from tests.workbook.looking import in_theme
from workbook.log import Log, line_of, made

pytestmark = pytest.mark.browser

CHAPTER, PAGE = "01-three-horsepowers.ipynb", "14-your-study.ipynb"
GUIDE, PROGRESS, COPIES = ".w2w-mixed", ".w2w-progress", ".w2w-copies"
SLIP = "brake_power.multiplied_by.pump_efficiency"
NINE_POINTS = 12  # px


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


def history():
    """A mistake made twice, two kinds that are due, and one that is not."""
    yield from (ago(30 - n, "water_power", n) for n in range(3))
    yield from (ago(2 + n, "brake_power", n, "mistake", mistake=SLIP) for n in range(2))
    yield from (ago(12 + n, "energy_cost", n) for n in range(4))
    yield from (ago(40 + n, "amps_average", n) for n in range(2))


@pytest.fixture(scope="module")
def reader(serve):
    """A reader who has studied for a month."""
    served = serve()
    log_of(served).keep(*sorted(history(), key=lambda attempt: attempt.when))
    return served


@pytest.fixture
def study(reader, page):
    reader.open(page, PAGE)
    page.locator(f"{PROGRESS} svg").nth(1).wait_for()
    return page


@pytest.fixture(scope="module")
def opened(reader, new_page):
    """The page with everything on it open, for tests that only look at it."""
    with new_page() as page:
        reader.open(page, PAGE)
        page.locator(PROGRESS).get_by_role("button", name="Practice:").first.click()
        page.locator(f"{PROGRESS} .w2w-card h3").wait_for()
        page.locator(COPIES).get_by_role("button", name="Make a copy to save").click()
        page.locator(f"{COPIES} a").wait_for()
        yield page


def answer(card, text):
    box = card.get_by_label("Your answer")
    box.fill(text)
    box.press("Enter")
    card.locator(".w2w-told .w2w-say:not(:empty)").wait_for()


def right_answer(card):
    case = case_from_code(card.get_by_label("Problem code").input_value())
    return f"{case.answer:.6g}"


def problems(page, number):
    """Wait until the page says that so many problems were worked on."""
    page.locator(PROGRESS).get_by_text(f"You have worked on {number} problem").wait_for()


def test_an_answer_on_a_chapter_page_is_in_the_log_and_on_this_page_after_a_restart(serve, page):
    fresh = serve()
    fresh.open(page, CHAPTER)
    card = page.locator(".w2w-card").first
    answer(card, right_answer(card))
    assert [("right", "water_power")] == [(a.status, a.family) for a in log_of(fresh).attempts]
    fresh.open(page, PAGE)
    problems(page, 1)
    guide = page.locator(GUIDE)
    guide.get_by_text("Why this one: You haven't tried this kind of problem yet.").wait_for()
    answer(guide, "99999")
    page.get_by_role("button", name="Start this page again").click()
    page.locator('.wtw-strip[data-state="starting"]').wait_for()
    page.locator('.wtw-strip[data-state="ready"]').wait_for()
    problems(page, 2)


def test_the_guide_says_why_and_hears_of_an_answer_given_elsewhere_on_the_page(reader, study):
    guide, below = study.locator(GUIDE), study.locator(PROGRESS)
    why = "Why this one: You made the same mistake here twice lately."
    guide.get_by_text(why).wait_for()
    before = guide.locator(".w2w-wanted li").all_inner_texts()
    assert "Brake horsepower at the pump shaft, level 1 (recurring mistake)" == before[0]
    for _ in range(2):  # twice right without help, and it no longer recurs
        below.get_by_role("button", name="Practice exactly this").click()
        below.locator(".w2w-card").wait_for()
        study.wait_for_timeout(500)
        answer(below, right_answer(below))
        below.get_by_text("Try 1.").wait_for()
    guide.get_by_role("button", name="Next problem").click()
    guide.get_by_text("Here is a new problem.").wait_for()
    assert before[0] not in guide.locator(".w2w-wanted li").all_inner_texts()
    study.get_by_role("button", name="Look again").click()
    below.get_by_text("You haven't made the same mistake twice lately.").wait_for()


def test_a_due_kind_is_practised_by_keyboard_alone_and_the_focus_is_in_sight(reader, study):
    below, keys = study.locator(PROGRESS), study.keyboard
    title = family_named("energy_cost").title
    before = len(log_of(reader).attempts)
    below.get_by_role("button", name=f"Practice: {title}").focus()
    keys.press("Enter")
    box = below.get_by_label("Your answer")
    study.wait_for_function("document.activeElement.closest('.w2w-progress .w2w-card')")
    assert box.evaluate("node => node === document.activeElement")
    assert box.evaluate(IN_SIGHT)
    assert title == below.locator(".w2w-card h3").inner_text()
    keys.type(right_answer(below))
    keys.press("Enter")
    below.get_by_text("Try 1.").wait_for()
    below.get_by_role("button", name="Look again").focus()
    keys.press("Enter")
    problems(study, before + 1)
    assert below.get_by_text("Try 1.").is_visible()
    below.get_by_role("button", name=f"Practice: {title}").wait_for(state="detached")


def test_the_kinds_of_another_chapter_are_shown_when_it_is_chosen(study):
    below = study.locator(PROGRESS)
    below.get_by_label("Kinds of problems in this chapter").select_option(
        "3. Kilowatt-hours and cost"
    )
    row = below.get_by_role("row", name=family_named("energy_cost").title)
    row.wait_for()
    assert "of" in row.get_by_role("cell").first.inner_text()


def test_a_copy_is_saved_and_brought_in_where_there_is_nothing_yet(reader, study, serve, tmp_path):
    copies = study.locator(COPIES)
    copies.get_by_role("button", name="Make a copy to save").click()
    with study.expect_download() as saving:
        copies.get_by_role("link").click()
    saved = tmp_path / saving.value.suggested_filename
    saving.value.save_as(saved)
    kept = log_of(reader).attempts
    assert [line_of(attempt) for attempt in kept] == saved.read_text("utf-8").splitlines()

    fresh = serve()
    fresh.open(study, PAGE)
    study.locator(PROGRESS).get_by_text("Your log is empty so far.").wait_for()
    for said in (
        f"{len(kept)} answers brought in, 0 were",
        f"0 answers brought in, {len(kept)} were",
    ):
        with study.expect_file_chooser() as choosing:
            study.locator(COPIES).get_by_role("button", name="Bring in a copy").click()
        choosing.value.set_files(saved)
        study.locator(COPIES).get_by_text(said).wait_for()
    assert kept == log_of(fresh).attempts
    study.get_by_role("button", name="Look again").click()
    problems(study, len(kept))


def test_a_full_disk_is_said_on_the_card_and_nothing_is_lost_when_there_is_room(serve, page):
    fresh = serve()
    path = fresh.folder.parent / ".local/share/Wire to Water/attempts.jsonl"
    path.parent.mkdir(parents=True, exist_ok=True)
    path.symlink_to("/dev/full")  # every write there fails as on a full disk
    fresh.open(page, PAGE)
    guide = page.locator(GUIDE)
    answer(guide, "99999")
    guide.get_by_text("The disk is full. Free up some space").wait_for()
    page.get_by_role("button", name="Look again").click()
    page.get_by_text("1 answer couldn't be saved yet.").wait_for()
    path.unlink()
    answer(guide, right_answer(guide))
    guide.get_by_text("Try 2.").wait_for()
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
    page.locator(PROGRESS).get_by_text(told).wait_for()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_accessibility_rule_is_broken_in_either_theme(opened, axe, scheme):
    in_theme(opened, scheme)
    assert [] == [fault for part in (GUIDE, PROGRESS, COPIES) for fault in axe(opened, part)]


@pytest.mark.parametrize("width", [1200, 400])
def test_nothing_sticks_out_and_every_word_in_a_picture_is_whole_and_large_enough(opened, width):
    opened.set_viewport_size({"width": width, "height": 900})
    opened.wait_for_function(f"document.querySelector('{PROGRESS}').clientWidth < {width}")
    assert width == opened.evaluate("document.documentElement.scrollWidth")
    for part in (GUIDE, PROGRESS, COPIES):
        assert [] == opened.locator(part).evaluate(STICKING_OUT), part
    pictures = opened.locator(f"{PROGRESS} svg")
    for picture in pictures.all():
        assert [] == picture.evaluate(CUT_OFF)
        assert NINE_POINTS <= round(picture.evaluate(SMALLEST), 1)


IN_SIGHT = """node => {
  const r = node.getBoundingClientRect(), x = r.x + r.width / 2, y = r.y + r.height / 2;
  return document.elementFromPoint(x, y) === node;
}"""
# What ends to the right of the panel's own edge.
STICKING_OUT = """panel => {
  const edge = panel.getBoundingClientRect().right + 0.5;
  return [...panel.querySelectorAll('*')]
    .filter(node => !node.closest('svg') && !node.closest('.w2w-heard'))
    .filter(node => node.getBoundingClientRect().right > edge)
    .map(node => node.outerHTML.slice(0, 80));
}"""
# Words that do not lie whole within their picture.
CUT_OFF = """svg => {
  const box = svg.getBoundingClientRect();
  return [...svg.querySelectorAll('text')].filter(text => {
    const r = text.getBoundingClientRect();
    return r.left < box.left - 1 || r.right > box.right + 1
      || r.top < box.top - 1 || r.bottom > box.bottom + 1;
  }).map(text => text.textContent);
}"""
# The smallest type in a picture, in pixels as shown.
SMALLEST = """svg => {
  const shown = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
  return shown * Math.min(
    ...[...svg.querySelectorAll('text')].map(text => parseFloat(getComputedStyle(text).fontSize)));
}"""
