"""A set with a time limit: the clock on its page, what its file says, and what counts after the time."""

from datetime import UTC, datetime, timedelta

import pytest

from solver import grade
from solver.sets.work_set import cases_for, set_of
from tests.workbook.said import type_in, words
from tests.workbook.trainer.sheets import right
from workbook.log import SHOWN, Attempt, line_of
from workbook.trainer.learner import timing
from workbook.trainer.learner.answer_sheet import SHEET, read_sheet
from workbook.trainer.learner.own_set import OwnSet
from workbook.trainer.learner.set_card import SetCard
from workbook.trainer.learner.set_panel import SetTop
from workbook.trainer.marking.marked import mark
from workbook.trainer.marking.timed import BEFORE, NO_TIME, NOT_OPENED, SET_BACK
from workbook.trainer.sets.as_toml import toml_of
from workbook.trainer.sets.set_file import Assigned, SetFault, parse_set_file
from workbook.trainer.setting.draft import assigned_from, draft_of
from workbook.trainer.setting.summary import summary

ANA = "ana.r"
WORK = set_of(families=["brake_power", "water_power"], level=1, count=2, seed=48213)
QUIZ = Assigned("quiz", "Quiz", WORK, points=5.0, minutes=30)
TOO = QUIZ._replace(after_time="counts")
OPENED = datetime(2026, 12, 1, 18, tzinfo=UTC)
TICKS = range(0, 99_999, 5)


# Its file and its form.


def test_a_time_limit_is_kept_by_the_file_and_by_the_form_and_no_other_set_has_it():
    for quiz in (QUIZ, TOO):
        assert quiz == parse_set_file(toml_of(quiz), "quiz")
        assert (quiz, []) == assigned_from(draft_of(quiz))
    assert "minutes" not in toml_of(QUIZ._replace(minutes=0))
    said = " ".join(summary(QUIZ, OPENED))
    assert "30 minutes from when a person opens the questions." in said
    assert "can be set back" in said


@pytest.mark.parametrize("line", ["minutes = 601", "minutes = 1.5", 'after_time = "maybe"'])
def test_a_time_limit_that_cannot_be_is_refused_with_what_to_write(line):
    with pytest.raises(SetFault, match=r"Write (minutes|after_time) = "):
        parse_set_file(f'draw = 1\nchapters = ["head"]\n{line}', "quiz")


# Its page.


@pytest.fixture
def folder(tmp_path, monkeypatch):
    monkeypatch.delenv("JUPYTERHUB_USER", raising=False)
    own = tmp_path / "quiz"
    own.mkdir()
    (own / "set.toml").write_text(toml_of(QUIZ), encoding="utf-8")
    return own


def page_of(folder):
    own, ticks = OwnSet(folder), iter(TICKS).__next__
    return SetTop(own, ticks), SetCard(own, 1, ticks)


def test_the_questions_wait_until_they_are_opened_and_the_clock_goes_on_after_a_restart(folder):
    top, card = page_of(folder)
    type_in(top.name, "Ana.R")
    assert "First open the questions" in card.problem.value
    assert "You have 30 minutes from when you open the questions." in str(
        top.opening.children[0].value
    )
    assert ("", "none") == (top.opening.layout.display, top.timing.layout.display)
    top.open.click()
    assert ("none", "") == (top.opening.layout.display, top.timing.layout.display)
    assert "First open" not in card.problem.value
    assert "29 min" in top.clock_left.time.value
    assert "Your time ends at " in top.stands.value
    top.clock_left.hide.click()
    assert "The clock is hidden." in top.clock_left.time.value
    again, card = page_of(folder)
    assert "29 min" in again.clock_left.time.value
    again.own.open_questions()  # a second page that had the button still
    (opening,) = read_sheet((folder / SHEET).read_bytes()).lines
    assert (SHOWN, WORK.code, ANA) == (opening.status, opening.of, opening.who)


@pytest.mark.parametrize(
    ("after", "says"),
    [("doesn't count", "so it doesn't count"), ("counts", "It counts all the same")],
)
def test_an_answer_after_the_time_is_kept_and_told(folder, after, says):
    (folder / "set.toml").write_text(toml_of(QUIZ._replace(after_time=after)), encoding="utf-8")
    top, card = page_of(folder)
    type_in(top.name, "Ana.R")
    top.open.click()
    (line,) = read_sheet((folder / SHEET).read_bytes()).lines
    then = timing.moment(line) - timedelta(minutes=31)
    early = line._replace(when=then.isoformat(timespec="microseconds").replace("+00:00", "Z"))
    (folder / SHEET).write_text(line_of(early) + "\n", encoding="utf-8")
    top, card = page_of(folder)
    assert "Time is up. Answers from now on" in words(top.clock_left.calm.value)
    assert "Your time ended at " in top.stands.value
    type_in(card.answer, right(cases_for(WORK, ANA)[0]))
    assert says in words(card.said.value)
    assert 2 == len(read_sheet((folder / SHEET).read_bytes()).lines)


# Its marks.


def stamp(minutes):
    when = OPENED + timedelta(minutes=minutes)
    return when.isoformat(timespec="microseconds").replace("+00:00", "Z")


def opening(minutes=0.0):
    return timing.opening_line(QUIZ, ANA)._replace(when=stamp(minutes))


def answer(number, minutes, seconds=60.0):
    case = cases_for(WORK, ANA)[number - 1]
    typed = right(case)
    return Attempt(
        f"{number}-{minutes}", stamp(minutes), case.code, case.family.name, case.level, typed,
        grade(case, typed).status, seconds=seconds, of=WORK.code, who=ANA,
    )  # fmt: skip


def marked(assigned, *lines):
    return mark(assigned, ANA, b"".join(line_of(line).encode() + b"\n" for line in lines))


def test_answers_after_the_time_count_as_the_trainer_chose_and_it_is_said():
    lines = (opening(), answer(1, 29), answer(2, 31))
    without, too = marked(QUIZ, *lines), marked(TOO, *lines)
    assert ([5.0, 0.0], False) == ([one.points for one in without.questions], without.needs_person)
    assert "1 answer came after the 30 minutes and didn't count." == without.reason
    assert without.reason == without.questions[1].reason
    assert ([5.0, 5.0], False) == ([one.points for one in too.questions], too.needs_person)
    assert "1 answer came after the 30 minutes; your trainer lets that count." == too.reason


def test_a_set_without_a_limit_and_work_in_time_are_marked_as_ever():
    inside = marked(QUIZ, opening(), answer(1, 1), answer(2, 29.9))
    assert (10.0, "", False) == (inside.points, inside.reason, inside.needs_person)
    free = QUIZ._replace(minutes=0)
    assert 10.0 == marked(free, answer(1, 1), answer(2, 500)).points


@pytest.mark.parametrize(
    ("lines", "why", "points"),
    [
        ((answer(1, 1), answer(2, 40)), NOT_OPENED, 5.0),
        ((answer(1, -1), opening(), answer(2, 5)), BEFORE, 10.0),
        ((opening(), answer(1, 5, seconds=3600.0)), SET_BACK, 5.0),
    ],
)
def test_times_that_do_not_fit_together_are_said_so_that_somebody_looks(lines, why, points):
    found = marked(QUIZ, *lines)
    assert (points, True) == (found.points, found.needs_person)
    assert why in found.reason


def test_an_answer_written_into_the_page_shows_no_time():
    cell = '{"cells": [{"cell_type": "markdown", "metadata": {"wire_to_water": {"answer": 1}}, "source": "Answer: 5 hp"}]}'
    found = mark(QUIZ, ANA, None, cell.encode())
    assert NO_TIME in found.questions[0].reason
    assert found.questions[0].needs_person
