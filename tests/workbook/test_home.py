"""The first page without a browser: the next problem, and what stands beside it."""

import re
from datetime import UTC, date, datetime, timedelta
from html import unescape

import pytest

from solver import FAMILIES, draw
from workbook import page
from workbook.log import Log, made
from workbook.practice import keeper
from workbook.study.goal import Goal, keep_goal, read_goal
from workbook.study.home_panel import HomePanel
from workbook.study.home_shown import Begun

NOW = datetime(2026, 11, 30, 19, tzinfo=UTC)


def text(html):
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", html)).split())


def ago(days, family, status="right", **fields):
    when = (NOW - timedelta(days=days)).isoformat(timespec="microseconds").replace("+00:00", "Z")
    given = {"level": 1, "typed": "9", "seconds": 60.0, "status": status, **fields}
    code = draw(family, int(days * 100), "us", 1).code
    return made(code=code, family=family, **given)._replace(when=when)


def two_months():
    """Every other evening, for two months: ten kinds in turn, one of them always missed."""
    names = [family.name for family in FAMILIES[:10]]
    return [
        ago(day + n / 100, names[(day + n) % 10], "wrong" if (day + n) % 10 == 3 else "right")
        for day in range(60, 0, -2)
        for n in range(9, 0, -1)
    ]


@pytest.fixture
def log(tmp_path, monkeypatch):
    kept = Log(tmp_path / "attempts.jsonl")
    monkeypatch.setattr(keeper, "own_log", lambda: kept)
    return kept


@pytest.fixture
def show(log):
    def panel(*attempts, begun=()):
        if attempts:
            log.keep(*attempts)
        goal = log.path.with_name("goal.jsonl")
        shown = HomePanel(FAMILIES, log, goal, page._guided, lambda: begun, lambda: NOW)
        shown.clock = iter(range(0, 100_000, 5)).__next__  # no click is half of a double one
        return shown

    return panel


def test_a_first_visit_has_three_sentences_then_a_problem_and_asks_for_the_exam(show):
    home = show()
    assert 3 == len(re.findall(r"[.?]( |$)", text(home.welcome.value)))
    assert FAMILIES[0].title in home.card.problem.value
    assert "Your exam" == text(home.exam.value)
    assert "" == home.goal.form.layout.display or home.goal.form.layout.display is None
    side = text(home.side.value)
    assert "Nothing yet. What you work on comes back here" in side
    assert len({f.chapter for f in FAMILIES}) == text(home.chapters.value).count("not started")


def test_somebody_who_returns_is_not_welcomed_again_and_has_what_comes_back_today(show):
    home = show(*two_months())
    assert "" == home.welcome.value
    side = text(home.side.value)
    count = int(re.search(r"Coming back today: (\d+)", side)[1])
    assert count > 0
    assert FAMILIES[3].title in side
    assert "Nothing" not in side
    assert "1. Three horsepowers 7 of 7" in text(home.chapters.value)


def test_the_date_is_asked_once_and_kept_when_it_is_put_off(show, log):
    home = show(ago(1, "water_power"))
    home.goal.leave.click()
    assert "none" == home.goal.form.layout.display
    assert Goal(asked=True) == read_goal(log.path.with_name("goal.jsonl"))
    again = show()
    assert "none" == again.goal.form.layout.display
    assert "of 20 minutes today" in text(again.exam.value)


def test_a_date_that_is_set_shows_the_days_left_and_can_be_changed(show, log):
    home = show(*two_months())
    home.goal.day.value = date(2027, 1, 28)
    home.goal.minutes.value = 30
    home.goal.save.click()
    said = text(home.exam.value)
    assert said.startswith("Exam in 59 days 0 of 30 minutes today")
    assert "This week: 2. The efficiency chain" in said
    home.goal.change.click()
    home.goal.day.value = None
    home.goal.save.click()
    assert text(home.exam.value).startswith("Your plan")
    assert 30 == read_goal(log.path.with_name("goal.jsonl")).minutes


def test_a_day_that_has_passed_is_refused_with_what_to_choose(show):
    home = show()
    home.goal.day.value = date(2026, 11, 1)
    home.goal.save.click()
    assert "Sun, Nov 1, 2026 has passed. Pick today or a later day" in text(home.goal.said.value)
    assert not home.goal.goal.asked
    home.goal.day.value = NOW.date()
    home.goal.save.click()
    assert text(home.exam.value).startswith("Your exam is today")


def test_minutes_of_another_version_that_are_not_among_the_choices_stay(show, log):
    keep_goal(log.path.with_name("goal.jsonl"), Goal(None, 25, 72, True))
    home = show()
    assert (25, 72) == (home.goal.minutes.value, home.goal.mark.value)


def test_an_answer_is_kept_and_counts_at_the_side_at_once(show, log):
    long_ago = (datetime.now(UTC) - timedelta(days=400)).isoformat(timespec="microseconds")
    home = show(ago(0, "water_power")._replace(when=long_ago.replace("+00:00", "Z")))
    home.now = lambda: datetime.now(UTC)
    home.look()
    assert "Your days show here" in text(home.exam.value)
    home.card.practice.answer("99999")
    assert 2 == len(log.attempts)
    assert "1 of 7 days" in text(home.exam.value)


def test_a_goal_that_cannot_be_kept_is_told_and_holds_as_long_as_the_page(show, log):
    home = show(ago(1, "water_power"))
    log.path.with_name("goal.jsonl").symlink_to("/dev/full")
    home.goal.day.value = date(2027, 1, 28)
    home.goal.save.click()
    assert "The disk is full." in text(home.goal.said.value)
    assert text(home.exam.value).startswith("Exam in 59 days")


def test_an_exam_and_a_set_in_progress_are_links(show):
    begun = [Begun("Practice exam", "8 questions, 3 answered", "15-practice-exam.ipynb")]
    home = show(begun=[*begun, Begun("Pumps & <b>", "from your trainer", "s et/s et.ipynb")])
    assert "In progress Practice exam 8 questions, 3 answered Pumps & <b>" in text(home.side.value)
    assert 'href="15-practice-exam.ipynb"' in home.side.value
    assert 'href="s%20et/s%20et.ipynb"' in home.side.value
    assert "In progress" not in show().side.value


def test_the_page_s_call_finds_the_exams_that_were_begun(monkeypatch, tmp_path):
    from solver.sets.paper import Paper
    from workbook.exam.sitting import begin

    monkeypatch.setenv("WIRE_TO_WATER_KEPT", str(tmp_path))
    monkeypatch.chdir(tmp_path)
    sitting = begin(Paper(("horsepower",), 1, "us", 4, 10, True, 48214), tmp_path / "exams")
    assert ["4 questions, 0 answered, 10 min 0 s left"] == [one.says for one in page._begun()]
    sitting.end()
    assert [] == page._begun()


def test_after_an_answer_only_what_has_changed_is_read_again(monkeypatch, tmp_path):
    from solver.sets.paper import Paper
    from workbook.exam import earlier
    from workbook.exam.sitting import Sitting, begin

    read = []

    def reading(path):
        read.append(path)
        return Sitting(path)

    monkeypatch.setattr(earlier, "Sitting", reading)
    _, other = (
        begin(Paper(("horsepower",), 1, "us", 4, 10, True, seed), tmp_path)
        for seed in (48214, 48215)
    )
    assert 2 == len(earlier.begun_in(tmp_path)) == len(read)
    assert 2 == len(earlier.begun_in(tmp_path)) == len(read)
    other.end()
    assert 1 == len(earlier.begun_in(tmp_path))
    assert [other.path] == read[2:]


def test_a_set_is_read_again_once_a_file_of_it_has_changed(tmp_path):
    from workbook.trainer.learner.standing import set_in

    (tmp_path / "set.toml").write_text("draw = 1\n", encoding="utf-8")
    first = set_in(tmp_path)
    assert first is set_in(tmp_path)
    (tmp_path / "set.toml").write_text("draw = 12\n", encoding="utf-8")
    assert first is not set_in(tmp_path)
