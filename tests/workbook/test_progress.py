"""The progress page: what it says of a log, in words, pictures and tables, and what it offers."""

import re
from datetime import UTC, date, datetime, timedelta
from html import unescape
from itertools import count
from zoneinfo import ZoneInfo

import pytest

from solver import FAMILIES, draw, family_named
from workbook.figures import picture
from workbook.log import Attempt, Log, NotKept, line_of
from workbook.practice import keeper
from workbook.study import Study
from workbook.study import progress_shown as words
from workbook.study.progress import days_of, kinds, progress
from workbook.study.progress_panel import MOST, ProgressPanel
from workbook.study.progress_shown import chapters_picture, days_picture
from workbook.ui.pages import titles

NOW = datetime(2026, 11, 25, 19, tzinfo=UTC)  # a Wednesday
NUMBER = count()
HORSEPOWER = [family for family in FAMILIES if family.chapter == "horsepower"]
SLIP = "brake_power.multiplied_by.pump_efficiency"


def one(family="brake_power", status="right", days_ago=1.0, seed=7, **fields):
    """An attempt of so many days ago."""
    when = (NOW - timedelta(days=days_ago)).isoformat(timespec="microseconds")
    known = {"level": 1, "typed": "9", "seconds": 60.0, "status": status, **fields}
    code = draw(family, seed, "us", known["level"]).code
    return Attempt(str(next(NUMBER)), when.replace("+00:00", "Z"), code, family, **known)


def slips(times=2, family="brake_power", mistake=SLIP):
    return [
        one(family, "mistake", days_ago=2 - n / 100, seed=n, mistake=mistake) for n in range(times)
    ]


def told(*attempts, families=FAMILIES, now=NOW):
    return progress(families, Study(sorted(attempts, key=lambda a: a.when)), now)


def text(html):
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", html)).split())


@pytest.fixture
def log(tmp_path, monkeypatch):
    kept = Log(tmp_path / "attempts.jsonl")
    monkeypatch.setattr(keeper, "own_log", lambda: kept)  # where the cards keep what they hear
    return kept


@pytest.fixture
def show(log):
    """The panel over a log of these attempts."""

    def panel(*attempts):
        if attempts:
            log.keep(*attempts)
        shown = ProgressPanel(FAMILIES, log, now=lambda: NOW)
        shown.clock = iter(range(0, 10_000, 5)).__next__  # no click is half of a double one
        return shown

    return panel


# Facts


def test_a_chapter_counts_first_answers_right_without_help_and_the_kinds_tried():
    chapter = told(
        one("water_power"),
        one("brake_power", "wrong", days_ago=3),
        one("brake_power", "right", days_ago=2.9, tries=2),
        one("brake_power", hints=1, days_ago=2, seconds=20.0),
        one("motor_power", seconds=100.0),
    ).chapters[0]
    assert ("horsepower", len(HORSEPOWER)) == (chapter.name, chapter.kinds)
    assert (2, 4, 3) == (chapter.right, chapter.lately, chapter.tried)
    # Of the usual times 60, 20 and 100 s of its three kinds, the middle one.
    assert 60.0 == chapter.seconds


def test_only_the_last_ten_problems_of_a_kind_count():
    early = [one(status="wrong", days_ago=40 - n) for n in range(5)]
    late = [one(days_ago=20 - n) for n in range(10)]
    assert (10, 10) == told(*early, *late).chapters[0][3:5]


def test_what_to_expect_of_an_exam_counts_a_kind_never_tried_as_not_known():
    pair = [family_named("brake_power"), family_named("motor_power")]
    sure = told(*[one(days_ago=n / 1000) for n in range(5)], families=pair)
    assert pytest.approx(0.5, abs=0.01) == sure.ready
    assert 0 == told(families=pair).ready
    # Half of the last problems right, a moment ago: half of that half.
    half = [one(status=s, days_ago=n / 1000) for n, s in enumerate(["right", "wrong"] * 2)]
    assert pytest.approx(0.25, abs=0.01) == told(*half, families=pair).ready


def test_what_is_due_is_told_for_now_and_for_the_days_to_come():
    study = told(one("water_power", "wrong"), one("brake_power", days_ago=0.01))
    assert ["water_power"] == [family.name for family in study.due_now]
    assert 1 == study.due_on[NOW.date()]
    assert 2 == study.due_on.total()
    assert min(study.due_on) == NOW.date()


def test_each_kind_of_a_chapter_says_its_level_and_when_it_comes_back():
    study = Study([one(days_ago=3), one(days_ago=2)])
    water, brake, *_ = kinds(FAMILIES, study, "horsepower")
    assert ("water_power", 0, 0, 1, None) == (water.family.name, *water[1:5])
    assert ("brake_power", 2, 2, 2) == (brake.family.name, *brake[1:4])
    assert study.cards["brake_power"].due == brake.due


def test_a_mistake_made_twice_is_told_in_the_words_of_its_problem():
    (flaw,) = told(*slips(3)).flaws
    assert ("brake_power", 3) == (flaw.family.name, flaw.recurring.times)
    assert "You multiplied by the pump efficiency" in flaw.says


def test_a_mistake_of_a_problem_that_is_no_longer_made_is_left_out():
    old = [attempt._replace(code="BP-1U9-7-68") for attempt in slips()]
    assert () == told(*old).flaws


@pytest.mark.parametrize(
    ("zone", "expected"),
    [
        # Both ends of an evening of 45 minutes that runs over midnight in Kathmandu, UTC+5:45.
        ("UTC", {date(2026, 11, 25): 3}),
        ("Asia/Kathmandu", {date(2026, 11, 25): 2, date(2026, 11, 26): 1}),
        ("America/Los_Angeles", {date(2026, 11, 25): 3}),
    ],
)
def test_days_are_those_of_the_reader(zone, expected):
    times = ["2026-11-25T17:45:00.000Z", "2026-11-25T18:14:59.999999Z", "2026-11-25T18:15:00Z"]
    assert expected == days_of(times, ZoneInfo(zone))


def test_a_solution_opened_at_once_is_a_problem_worked_on_and_a_second_try_is_not():
    many = told(
        one(status="shown", tries=0, solution=True), one("water_power"), one("water_power", tries=2)
    )
    assert (2, {date(2026, 11, 24): 2}) == (many.problems, many.days)


# Words


def test_an_empty_log_is_no_reproach(log):
    assert "Your log is empty so far. Every answer you give on any page is kept here." == text(
        words.summary(told(), log)
    )
    assert "" == words.ready(told())


def test_the_summary_counts_problems_and_days(log):
    study = told(one(), one(days_ago=1.01, seed=8), one(days_ago=5))
    assert "You have worked on 3 problems, on 2 days." == text(words.summary(study, log))


def test_lines_that_cannot_be_read_are_named_and_escaped(log):
    log.path.write_bytes(b'{"v": 1, "<b>": 1}\n' * 5)
    log.read()
    said = words.summary(told(), log)
    assert "5 lines of your log couldn't be read (line 1: it has no id" in text(said)
    assert "and 2 more)" in text(said)
    assert str(log.path) in said
    assert "<b>" not in said


def test_what_is_due_is_said_in_whole_sentences():
    assert "Nothing is due right now." in words.due(told(), MOST)
    assert "1 kind comes back today. It is here." in words.due(told(one(status="wrong")), MOST)
    many = told(*[one(f.name, "wrong") for f in HORSEPOWER])
    assert (
        f"{len(HORSEPOWER)} kinds come back today. The 6 you are least sure of are here."
        in words.due(many, MOST)
    )


@pytest.mark.parametrize(
    ("seconds", "said"),
    [(None, "–"), (0.4, "0 s"), (59.4, "59 s"), (59.6, "1 min"), (80, "1.5 min"), (3600, "60 min")],
)
def test_a_time_is_said_as_a_person_would(seconds, said):
    assert said == words.minutes(seconds)


# Pictures and their tables


def words_of(svg):
    return [found.strip() for found in re.findall(r"<text[^>]*>([^<]*)<", svg)]


def test_the_chapters_picture_says_what_its_table_says():
    study = told(one("water_power"), one("energy_cost", "wrong"), one("energy_cost", days_ago=0.5))
    names = {f.chapter: titles().get(f.chapter, f.chapter) for f in FAMILIES}
    figure, view = chapters_picture(study, names)
    assert [names[c.name] for c in study.chapters] == [row[0] for row in view.rows]
    shown = {row[0]: row[1] for row in view.rows}
    assert ("1 of 1", "1 of 2") == (shown[names["horsepower"]], shown[names["cost"]])
    assert [100, 50] == [view.known[names[name]] for name in ("horsepower", "cost")]
    drawn = words_of(picture(figure, view))
    assert {cell for row in view.rows for cell in row[:2]} <= set(drawn)
    assert all(f"{row[0]}: {row[1]}" in view.alt for row in view.rows)


def test_the_calendar_has_each_day_where_it_belongs_and_weeks_that_add_up():
    study = told(*[one(days_ago=d, seed=n) for n, d in enumerate((0.1, 0.2, 1, 2, 8, 60, 200))])
    figure, view = days_picture(study, NOW.date())
    last = [view.known[f"2026-11-{day}"] for day in (22, 23, 24, 25)]
    assert [0, 1, 1, 2] == last
    assert ("23 Nov", "3", "4") == view.rows[0]
    assert ("16 Nov", "1", "1") == view.rows[1]
    assert 13 == len(view.rows)
    # The one of 200 days ago is older than the calendar.
    assert 6 == sum(int(row[2]) for row in view.rows) == sum(view.known.values())
    assert ["1", "1", "1", "1", "2"] == sorted(
        word for word in words_of(picture(figure, view)) if word.isdecimal()
    )


def test_a_first_monday_and_a_sunday_are_no_special_case():
    for today in (date(2026, 11, 23), date(2026, 11, 29)):
        _, view = days_picture(told(), today)
        assert today.isoformat() == list(view.known)[-1]
        assert date.fromisoformat(next(iter(view.known))).weekday() == 0


# The panel


def test_practise_exactly_this_gives_problems_with_that_mistake(show):
    panel = show(*slips())
    (flaw,) = panel.flaws.children
    assert "You multiplied by the pump efficiency" in flaw.children[0].value
    flaw.children[1].children[0].click()
    card = panel.practising.children[0]
    for _ in range(5):
        assert "brake_power" == card.practice.case.family.name
        assert SLIP in [mistake.id for mistake in card.practice.case.mistakes]
        card.next.click()


def test_another_kind_takes_the_place_of_the_one_before_and_says_what_was_left(show):
    panel = show(one("water_power", "wrong"), one("motor_power", "wrong"))
    first, second = panel.due.children[1].children
    first.click()
    card = panel.practising.children[0]
    card.answer.box.value = "12"
    before = card.practice.case
    second.click()
    assert (card,) == panel.practising.children
    assert before.family is not card.practice.case.family
    assert f"The problem before was {before.code}. You had typed “12”." in text(card.said.value)


def test_a_try_here_is_kept_and_looking_again_leaves_the_card_as_it_is(show, log):
    panel = show(one("water_power", "wrong"))
    panel.due.children[1].children[0].click()
    card = panel.practising.children[0]
    assert card.practice.answer("99999").counted
    assert 2 == len(log.attempts)
    panel.again.click()
    assert "You have worked on 2 problems" in panel.top.value
    assert (card,) == panel.practising.children


def test_what_another_page_wrote_is_there_after_looking_again(show, log):
    panel = show(one())
    Log(log.path).keep(one("motor_power"))
    panel.again.click()
    assert "You have worked on 2 problems" in panel.top.value


def test_pictures_are_drawn_again_only_when_a_number_changed(show, log, monkeypatch):
    drawn = []
    panel = show(one())
    monkeypatch.setattr(
        "workbook.figures.beside.picture", lambda figure, view: drawn.append(figure.name) or ""
    )
    panel.again.click()
    assert [] == drawn
    log.keep(one(status="wrong", tries=2))  # a second try changes no number of either
    panel.again.click()
    assert [] == drawn
    log.keep(one("motor_power"))
    panel.again.click()
    assert ["progress", "days"] == drawn


def test_what_could_not_be_saved_is_said_and_saved_by_looking_again(show, log):
    panel = show()
    log.path.symlink_to("/dev/full")
    with pytest.raises(NotKept, match="The disk is full"):
        log.keep(one())
    panel.again.click()
    assert "1 answer couldn't be saved yet. It is kept and saved with your next one." in text(
        panel.top.value
    )
    log.path.unlink()
    panel.again.click()
    assert "couldn't be saved" not in panel.top.value
    assert line_of(log.attempts[0]) == log.path.read_text().strip()


def test_a_log_that_cannot_be_read_is_said_and_the_page_still_opens(show, log):
    log.path.mkdir()
    panel = show()
    assert "Your log couldn&#39;t be read." in panel.said.value
    assert "Your log is empty so far." in panel.top.value
