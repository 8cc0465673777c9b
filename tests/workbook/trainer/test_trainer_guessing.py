"""What guessing earns, and that the usual set makes clicking every choice worth little."""

import pytest

from solver import grade
from solver.sets.credit import Credit
from solver.sets.work_set import cases_for, set_of
from solver.topics.catalogue import CATALOGUE, FIRST
from tests.workbook.trainer.sheets import choice, line, number, right, sheet
from workbook.trainer.learner.answer_sheet import AnswerSheet, Asked
from workbook.trainer.marking.marked import mark
from workbook.trainer.sets.guessing import guessing, guessing_share
from workbook.trainer.sets.set_file import Assigned, parse_set_file

CHOICES = 'draw = 48213\nfamilies = ["npsh_check"]\ncount = 1\n'


def test_what_guessing_earns_is_worked_out_by_hand():
    work = set_of(families=["npsh_check"], count=1, seed=48213)  # three choices
    plain = Assigned("week-3", "Week 3", work)
    assert pytest.approx(1.0) == guessing_share(plain)  # every choice can be clicked
    one = plain._replace(choice_tries=1, credit=Credit(wrong_choice=0.0))
    assert pytest.approx(1 / 3) == guessing_share(one)
    two = one._replace(choice_tries=2, credit=Credit(wrong_choice=0.0, each_try=0.25))
    assert pytest.approx((1 + 0.75 + 0) / 3) == guessing_share(two)
    slip = plain._replace(choice_tries=1)
    assert pytest.approx((1 + 0.5 + 0.5) / 3) == guessing_share(slip)
    assert "Guessing alone earns about 67% of the points. To make it less" in guessing(slip)
    numbers = Assigned("week-3", "", set_of(families=["brake_power"], count=2, seed=1))
    assert "Guessing alone earns nothing here." == guessing(numbers)


def test_a_new_set_has_three_tries_with_a_cost_and_one_at_choices_and_an_earlier_one_keeps_its_own():
    new, old = (parse_set_file(CHOICES, "week-3", of) for of in (CATALOGUE, FIRST))
    assert (3, 1, 0.25, 0.0) == (
        new.tries, new.choice_tries, new.credit.each_try, new.credit.wrong_choice,
    )  # fmt: skip
    assert (0, 0, Credit()) == (old.tries, old.choice_tries, old.credit)
    said = parse_set_file("tries = 0\n" + CHOICES + "[credit]\neach_try = 0", "week-3", CATALOGUE)
    assert (0, 0.0) == (said.tries, said.credit.each_try)


def test_clicking_every_choice_earns_what_the_first_click_does(tmp_path):
    week = parse_set_file(CHOICES, "week-3", CATALOGUE)
    (case,) = cases_for(week.work, "ana.r")
    wrong = [str(n) for n in (1, 2, 3) if grade(case, str(n)).status != "right"]
    asked = Asked(AnswerSheet(tmp_path / "sheet.jsonl", week, "ana.r"), 1, case)
    asked.answer(wrong[0])
    assert not asked.answer(right(case)).counted
    clicked = sheet(line(week, "ana.r", 1, wrong[0]), line(week, "ana.r", 1, right, 2))
    assert 0.0 == mark(week, "ana.r", clicked).points


def test_the_learner_is_told_what_the_next_try_is_worth(tmp_path):
    week = parse_set_file('draw = 1\nchapters = ["horsepower"]\ncount = 8', "w", CATALOGUE)
    n = number(week, "ana.r")
    case = cases_for(week.work, "ana.r")[n - 1]
    asked = Asked(AnswerSheet(tmp_path / "sheet.jsonl", week, "ana.r"), n, case)
    note = asked.answer("0.0001").note
    assert "Try 1. You have 2 tries left. A right answer now earns 75% of the points." == note
    assert choice(week, "ana.r") != n


def test_steps_in_any_order_earn_guessing_next_to_nothing_and_have_the_usual_tries():
    week = parse_set_file('draw = 3\nchapters = ["order"]\ncount = 4', "w", CATALOGUE)
    case = cases_for(week.work, "ana.r")[0]
    assert case.ordered
    assert 3 == week.tries_for(case)
    assert 0 < guessing_share(week) < 0.1


def test_a_practice_exam_is_set_like_any_work_with_one_try_and_own_numbers():
    from solver.sets.paper import Paper
    from workbook import commands
    from workbook.trainer.steps import _chosen

    code = Paper(("horsepower", "head"), 2, "si", 20, 60, True, 48213).code
    made = _chosen(None, commands._read(["set", "exam-1", "--exam", code]))
    assert ("Practice exam, 60 minutes", 20, 2, "si") == (
        made.title, made.work.count, made.work.level, made.work.units,
    )  # fmt: skip
    assert (1, "first", True) == (made.tries, made.counts, made.work.each)
    ana, ben = (cases_for(made.work, person) for person in ("ana", "ben"))
    assert [case.family for case in ana] == [case.family for case in ben]
    assert [case.code for case in ana] != [case.code for case in ben]
