"""The progress page: what it says of a log, in words, pictures and tables, and what it offers."""

import re
from datetime import UTC, date, datetime, timedelta
from html import unescape
from itertools import count
from zoneinfo import ZoneInfo

import pytest

from solver import FAMILIES, draw, family_named
from workbook.log import Attempt, Log, NotKept, line_of
from workbook.practice import keeper
from workbook.study import Study, home_shown
from workbook.study import progress_shown as words
from workbook.study.goal import Goal
from workbook.study.plan import Plan
from workbook.study.plan_shown import ready_block, to_cover_block
from workbook.study.progress import days_of, flaws, kinds, minutes_on, progress
from workbook.study.progress_panel import ProgressPanel
from workbook.ui.pages import lessons

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
        shown = ProgressPanel(FAMILIES, log, log.path.with_name("goal.jsonl"), now=lambda: NOW)
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


def test_what_to_expect_is_told_of_the_kinds_that_were_tried_and_never_less_for_the_others():
    pair = [family_named("brake_power"), family_named("motor_power")]
    sure = told(*[one(days_ago=n / 1000) for n in range(5)], families=pair)
    assert pytest.approx(1, abs=0.01) == sure.ready
    assert (1, 2) == (sure.tried, sure.kinds)
    assert None is told(families=pair).ready
    # Half of the last problems right, a moment ago.
    half = [one(status=s, days_ago=n / 1000) for n, s in enumerate(["right", "wrong"] * 2)]
    assert pytest.approx(0.5, abs=0.01) == told(*half, families=pair).ready


def test_readiness_is_in_two_parts_and_held_against_the_pass_mark():
    goal, nothing = Goal(pass_mark=80), Plan((), 0, None, None)
    few = told(*[one(days_ago=n / 1000) for n in range(9)])
    assert "Work 10 problems" in text(ready_block(few, goal))
    half = [one(status=s, days_ago=n / 1000) for n, s in enumerate(["right", "wrong"] * 5)]
    tried = text(ready_block(told(*half), goal))
    assert "About 50 of 100 right That's below your pass mark of 80." in tried
    assert "your last problems of 1 kind," in tried
    assert "at or above" in text(ready_block(told(*half), goal._replace(pass_mark=50)))
    cover = text(to_cover_block(told(*half), goal, nothing, NOW.date()))
    assert f"{len(FAMILIES) - 1} of {len(FAMILIES)} kinds of problems" in cover


def test_what_comes_back_today_is_late_or_comes_later_today_and_one_number_says_so():
    study = told(one("water_power", "wrong"), one("brake_power", "wrong", days_ago=0.001))
    # The second was missed a minute ago, so it comes back in nine: today, though not yet.
    assert {"water_power", "brake_power"} == {each.family.name for each in study.back}
    assert 2 == study.back_on[NOW.date()] == study.chapters[0].back
    later = next(each for each in study.back if each.family.name == "brake_power")
    assert "missed just now, back in 9 min" == home_shown.why(later, NOW)


def test_a_kind_with_a_mistake_that_keeps_coming_comes_back_today_whenever_it_is_due():
    made = [*slips(), one("water_power", days_ago=0.1)]
    study = told(*made)
    assert ["brake_power"] == [each.family.name for each in study.back]
    assert "same mistake 2 times" == home_shown.why(study.back[0], NOW)


def test_minutes_count_each_problem_once_and_a_page_left_open_for_ten_at_most():
    made = [
        one(days_ago=1.5, seconds=300.0),
        one(days_ago=0.3, seconds=60.0),
        one(days_ago=0.29, tries=2, seconds=120.0),
        one("water_power", days_ago=0.2, seconds=9000.0),
    ]
    assert 12 == minutes_on(made, NOW.date(), UTC)
    assert 5 == minutes_on(made, NOW.date() - timedelta(days=1), UTC)


def test_each_kind_of_a_chapter_says_its_level_and_when_it_comes_back():
    study = Study([one(days_ago=3), one(days_ago=2)])
    water, brake, *_ = kinds(FAMILIES, study, "horsepower")
    assert ("water_power", 0, 0, 1, None) == (water.family.name, *water[1:5])
    assert ("brake_power", 2, 2, 2) == (brake.family.name, *brake[1:4])
    assert study.cards["brake_power"].due == brake.due


def test_a_mistake_made_twice_is_told_in_the_words_of_its_problem():
    (flaw,) = flaws(FAMILIES, Study(slips(3)))
    assert ("brake_power", 3) == (flaw.family.name, flaw.recurring.times)
    assert "You multiplied by the pump efficiency" in flaw.says


def test_a_mistake_of_a_problem_that_is_no_longer_made_is_left_out():
    old = [attempt._replace(code="BP-1U9-7-68") for attempt in slips()]
    assert [] == list(flaws(FAMILIES, Study(old)))


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


def test_nothing_is_said_not_to_come_back_where_a_table_says_it_does():
    nothing = text(words.coming(told(), NOW))
    assert "Nothing comes back in the next 14 days. Try a new kind any time." == nothing
    later = told(one("water_power", days_ago=0.1), one("water_power", days_ago=0.2))
    said = text(words.coming(later, NOW))
    assert said.startswith("Nothing more comes back today.")
    assert "Today" not in said
    missed = text(words.coming(told(one(status="wrong")), NOW))
    assert missed.startswith("Brake horsepower at the pump shaft missed yesterday")


@pytest.mark.parametrize(
    ("seconds", "said"),
    [(None, "–"), (0.4, "0 s"), (59.4, "59 s"), (59.6, "1 min"), (80, "1.5 min"), (3600, "60 min")],
)
def test_a_time_is_said_as_a_person_would(seconds, said):
    assert said == words.minutes(seconds)


# Lists and tables


def cells(html, tag="td"):
    return [text(found) for found in re.findall(rf"<{tag}[^>]*>(.*?)</{tag}>", html)]


def test_each_chapter_says_how_it_stands_and_opens_to_its_kinds():
    study = Study([one("water_power"), one("energy_cost", "wrong")])
    now = progress(FAMILIES, study, NOW)
    ours = {c.name: kinds(FAMILIES, study, c.name) for c in now.chapters}
    html = words.chapters_list(now, ours, lessons(), NOW)
    heads = cells(html, "summary")
    assert f"1. Three horsepowers 1 of {len(HORSEPOWER)} tried, 1 of 1 right" in heads[0]
    assert heads[3].endswith("not started, 16 kinds")
    assert len(FAMILIES) == html.count('scope="row"')
    assert 'href="03-kilowatt-hours-and-cost.ipynb"' in html


def test_the_calendar_has_each_day_where_it_belongs():
    study = told(*[one(days_ago=d, seed=n) for n, d in enumerate((0.1, 0.2, 1, 2, 8, 60, 200))])
    rows = re.findall("<tr>(.*?)</tr>", words.calendar(study, NOW.date()))
    assert 8 == len(rows)
    last = [cells(row)[-1] for row in rows[1:]]
    assert ["1", "1", "2", "", "", "", ""] == last
    assert "1" == cells(rows[2])[-2]
    # Those of 60 and 200 days ago are older than nine weeks, counted from a Monday.
    assert 5 == sum(int(cell or 0) for row in rows[1:] for cell in cells(row))
    assert "Sep 28" == cells(rows[0], "th")[0]


def test_the_day_with_most_problems_has_the_most_color_and_a_day_without_has_none():
    study = told(*[one(days_ago=1 + n / 1000, seed=n) for n in range(8)], one(days_ago=2))
    html = words.calendar(study, NOW.date())
    assert '<td class="w2w-shade-4">8</td>' in html
    assert '<td class="w2w-shade-1">1</td>' in html
    assert 61 == html.count("<td></td>") - 1  # but for the corner


# The panel


def test_practice_this_gives_problems_with_that_mistake(show):
    panel = show(*slips())
    (flaw,) = panel.flaws.children
    assert "You multiplied by the pump efficiency" in flaw.children[0].value
    flaw.children[1].click()
    card = panel.practicing.children[0]
    for _ in range(5):
        assert "brake_power" == card.practice.case.family.name
        assert SLIP in [mistake.id for mistake in card.practice.case.mistakes]
        card.skip.click()


def test_another_mistake_takes_the_place_of_the_one_before(show):
    other = "motor_power.multiplied_by.motor_efficiency"
    panel = show(*slips(3), *slips(2, "motor_power", other))
    first, second = panel.flaws.children
    first.children[1].click()
    card = panel.practicing.children[0]
    second.children[1].click()
    assert (card,) == panel.practicing.children
    assert "motor_power" == card.practice.case.family.name


def test_a_try_here_is_kept_and_looking_again_leaves_the_card_as_it_is(show, log):
    panel = show(*slips())
    panel.flaws.children[0].children[1].click()
    card = panel.practicing.children[0]
    assert card.practice.answer("99999").counted
    assert 3 == len(log.attempts)
    panel.again.click()
    assert "You have worked on 3 problems" in panel.top.value
    assert (card,) == panel.practicing.children


def test_what_another_page_wrote_is_there_after_looking_again(show, log):
    panel = show(one())
    Log(log.path).keep(one("motor_power"))
    panel.again.click()
    assert "You have worked on 2 problems" in panel.top.value


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
