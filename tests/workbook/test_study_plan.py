"""The goal in its file, and the plan to the day of the exam, as numbers and in words."""

import re
from datetime import UTC, date, datetime, timedelta
from html import unescape
from itertools import pairwise

import pytest

from solver import FAMILIES, draw
from workbook.log import Attempt
from workbook.study import Study
from workbook.study.goal import MINUTES, Goal, keep_goal, read_goal
from workbook.study.home_shown import exam_in_words
from workbook.study.plan import plan_of, seconds_a_problem
from workbook.study.plan_shown import fits, fits_shortly, plan_table, this_week
from workbook.study.skills import usual_intervals

NOW = datetime(2026, 11, 30, 19, tzinfo=UTC)  # a Monday
TODAY = NOW.date()
ALL = len(FAMILIES)


def text(html):
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", html)).split())


def one(family, days_ago=1.0, status="right", seconds=100.0, number=0):
    when = (NOW - timedelta(days=days_ago)).isoformat(timespec="microseconds")
    code = draw(family, 7, "us", 1).code
    name = f"{family.name}-{days_ago}-{number}"
    known = {"level": 1, "typed": "9", "seconds": seconds, "status": status}
    return Attempt(name, when.replace("+00:00", "Z"), code, family.name, **known)


def plan(days=59, minutes=20, *made, families=FAMILIES):
    exam = TODAY + timedelta(days=days) if days is not None else None
    study = Study(sorted(made, key=lambda attempt: attempt.when))
    return plan_of(families, study, Goal(exam, minutes), NOW)


# The file


def test_a_goal_is_read_as_it_was_kept_and_the_last_one_holds(tmp_path):
    path = tmp_path / "kept" / "goal.jsonl"
    assert Goal() == read_goal(path)
    first, last = Goal(date(2027, 1, 28), 30, 75, True), Goal(None, 15, 70, True)
    assert "" == keep_goal(path, first)
    assert first == read_goal(path)
    assert "" == keep_goal(path, last)
    assert last == read_goal(path)
    assert 2 == len(path.read_bytes().splitlines())


@pytest.mark.parametrize(
    "damage",
    [
        b'{"v": 1, "exam": "2027-',
        b'{"v": 9, "exam": "", "minutes": 20, "pass_mark": 70}\n',
        b'{"v": 1, "exam": "soon", "minutes": 20, "pass_mark": 70}\n',
        b'{"v": 1, "exam": "", "minutes": 0, "pass_mark": 70}\n',
        b'{"v": 1, "exam": "", "minutes": true, "pass_mark": 70}\n',
        b'{"v": 1, "exam": "", "minutes": 20, "pass_mark": 700}\n',
        b'{"v": 1, "exam": "", "minutes": 20}\n',
        b"\xff\xfe\n[]\n",
    ],
)
def test_a_line_that_cannot_be_read_leaves_the_one_before_it(tmp_path, damage):
    path = tmp_path / "goal.jsonl"
    goal = Goal(date(2027, 1, 28), 30, 75, True)
    keep_goal(path, goal)
    with path.open("ab") as file:
        file.write(damage)
    assert goal == read_goal(path)
    keep_goal(path, goal._replace(minutes=45))
    assert 45 == read_goal(path).minutes


def test_the_line_that_the_first_version_wrote_is_still_read(tmp_path):
    path = tmp_path / "goal.jsonl"
    path.write_text(
        '{"v": 1, "when": "2026-11-30T19:00:00.000000Z", "exam": "2027-01-28", "minutes": 20, '
        '"pass_mark": 70, "check": "6d1d2802"}\n'
    )
    assert Goal(date(2027, 1, 28), 20, 70, True) == read_goal(path)


def test_a_goal_that_cannot_be_kept_is_told(tmp_path):
    path = tmp_path / "goal.jsonl"
    path.symlink_to("/dev/full")
    assert "The disk is full." in keep_goal(path, Goal())


# The plan as numbers


def test_every_kind_is_begun_once_in_the_order_of_the_chapters():
    made = plan(120)
    begun = [name for week in made.weeks for name, many in week.new for _ in range(many)]
    assert [family.chapter for family in FAMILIES] == begun
    assert 0 == made.left
    assert None is made.enough


def test_weeks_are_whole_from_the_second_on_and_end_the_day_before_the_exam():
    weeks = plan(12).weeks
    assert [(TODAY, date(2026, 12, 6)), (date(2026, 12, 7), date(2026, 12, 11))] == [
        (week.first, week.last) for week in weeks
    ]


def test_kinds_that_were_tried_are_not_begun_again_and_come_back():
    tried = [one(family, days_ago=30, number=n) for family in FAMILIES[:20] for n in range(2)]
    made = plan(120, 20, *tried)
    begun = sum(many for week in made.weeks for _, many in week.new)
    assert ALL - 20 == begun
    # All twenty are late, so they fill this week's evenings.
    assert made.weeks[0].back > plan(120).weeks[0].back


def test_more_minutes_a_day_cover_more_and_never_less():
    begun = [ALL - plan(14, minutes).left for minutes in (10, 20, 45, 120)]
    assert sorted(begun) == begun
    assert begun[0] < begun[-1]


def test_the_minutes_that_are_enough_are_enough_and_the_choice_before_them_is_not():
    tight = plan(21)
    assert tight.left > 0
    assert 0 == plan(21, tight.enough).left
    before = MINUTES[MINUTES.index(tight.enough) - 1]
    assert plan(21, before).left > 0


def test_nothing_new_is_begun_in_the_last_week_before_an_exam_that_is_weeks_away():
    made = plan(28, 120)
    assert made.covered <= TODAY + timedelta(days=20)
    assert plan(28, 10).weeks[-2].new or plan(28, 10).weeks[-1].new == ()


def test_on_the_day_of_the_exam_there_is_no_week_and_after_it_a_plan_as_without_a_date():
    assert () == plan(0).weeks
    assert plan(None) == plan(-5)


def test_what_comes_back_leaves_every_third_problem_to_new_kinds():
    # A hundred kinds missed: more than any evening holds.
    late = [one(family, days_ago=3, status="wrong") for family in FAMILIES[:100]]
    made = plan(59, 20, *late)
    assert made.weeks[0].new
    problems = 7 * 20 * 60 / seconds_a_problem(Study(late))
    begun = sum(many for _, many in made.weeks[0].new)
    assert begun == pytest.approx(problems / 3, abs=2)
    assert made.weeks[0].back + begun == pytest.approx(problems, abs=4)


def test_a_kind_comes_back_after_days_then_weeks_and_never_later_than_three():
    days = usual_intervals()
    assert days[0] < 7
    assert all(1 <= later - sooner <= 21 for sooner, later in pairwise(days))


def test_the_time_of_a_problem_is_the_person_s_own_once_ten_kinds_say_so():
    assert 120 == seconds_a_problem(Study([one(f, seconds=40) for f in FAMILIES[:9]]))
    assert 40 == seconds_a_problem(Study([one(f, seconds=40) for f in FAMILIES[:10]]))
    assert 480 == seconds_a_problem(Study([one(f, seconds=9999) for f in FAMILIES[:10]]))


# In words


@pytest.mark.parametrize(
    ("days", "said"),
    [
        (None, "Your plan"),
        (59, "Exam in 59 days"),
        (1, "Exam tomorrow"),
        (0, "Your exam is today"),
        (-1, "Your exam was Sun, Nov 29"),
    ],
)
def test_a_heading_says_when_the_exam_is(days, said):
    exam = TODAY + timedelta(days=days) if days is not None else None
    assert said == exam_in_words(Goal(exam), TODAY)


def test_the_plan_says_whether_all_fits_and_what_would_make_it_fit():
    dated = Goal(TODAY + timedelta(days=120), 20)
    said = fits(dated, plan(120), TODAY)
    assert re.fullmatch(
        r"At 20 minutes a day, you'll have tried every kind by \w+, \w+ \d+, .* before your exam.",
        said,
    )
    tight = Goal(TODAY + timedelta(days=21), 20)
    enough = plan(21).enough
    said = fits(tight, plan(21), TODAY)
    assert re.search(rf"\d+ kinds of problems won't fit before your exam\. {enough} minutes", said)
    would = f"{enough} minutes a day would do it."
    assert fits_shortly(tight, plan(21), TODAY).endswith(would)


def test_an_exam_that_is_over_is_named_and_planned_for_no_more():
    over = Goal(TODAY - timedelta(days=3), 20)
    assert "your exam" not in fits(over, plan(-3), TODAY)
    assert plan_table(plan(-3), over, TODAY) == plan_table(plan(None), Goal(), TODAY)


def test_a_table_has_a_row_a_week_and_this_week_is_called_so():
    goal = Goal(TODAY + timedelta(days=80), 20)
    html = plan_table(plan(80), goal, TODAY)
    rows = re.findall(r'<th scope="row">(.*?)</th>', html)
    assert ["This week", "Dec 7 to 13", "Dec 14 to 20", "Dec 21 to 27", "Dec 28 to Jan 3"] == rows[
        :5
    ]
    assert 12 == len(rows)
    assert "1. Three horsepowers 7 kinds" in text(html)


def test_without_a_date_the_table_ends_where_nothing_new_is_left():
    made = plan(None)
    rows = re.findall(r'<th scope="row">', plan_table(made, Goal(), TODAY))
    assert len(rows) == sum(bool(week.new) for week in made.weeks) < len(made.weeks)
    assert "every kind by" in fits(Goal(), made, TODAY)


def test_this_week_names_the_first_chapters_and_counts_the_others():
    said = this_week(plan(59))
    assert "This week: 1. Three horsepowers, 2. The efficiency chain and 2 more." == said
    everything = [one(family, days_ago=0.1) for family in FAMILIES]
    assert "only what comes back" in this_week(plan(59, 20, *everything))
