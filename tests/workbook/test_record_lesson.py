"""A record made a lesson on its page: its own numbers, fresh ones, and what is refused."""

import pytest

from solver import BadCode, case_from_code, draw
from solver.own.record import examine, lesson, read_entries
from tests.workbook.said import words
from workbook import page
from workbook.log import KEPT
from workbook.record.lesson_practice import LessonPractice

LEGS = {"amps_a": "25.5", "amps_b": "23", "amps_c": "26.5"}
MORE = {**LEGS, "flow": "450", "head": "62"}


def practice(own, picked=0, **texts):
    """Practice with a record; chance always gives `picked`, counted on."""
    numbers = iter(range(picked, 10**6))
    found = lesson(examine(read_entries(texts or MORE)[0]))
    return LessonPractice(found, own, lambda most: next(numbers) % most)


@pytest.fixture(autouse=True)
def _nothing_kept(monkeypatch, tmp_path):
    monkeypatch.setenv(KEPT, str(tmp_path))


@pytest.fixture
def panel():
    made = page.record()
    made.form.groups["volts and amps"].show()
    for name, text in LEGS.items():
        made.form.controls[name].value = text
    made.run.click()
    return made


# Practice


def test_own_problems_follow_one_another_and_begin_again_after_the_last():
    own = practice(True)
    asked = [own.case.question]
    for _ in own.exercises:
        own.new()
        asked.append(own.case.question)
    assert asked[0] == asked[-1]
    assert len(set(asked)) == len(own.exercises) > 3


def test_one_kind_can_be_chosen_and_stays():
    own = practice(True)
    own.choose(kind="current_unbalance 2")
    assert ("current_unbalance", 2) == (own.case.family.name, own.case.level)
    own.new()
    assert ("current_unbalance", 2) == (own.case.family.name, own.case.level)


def test_fresh_problems_have_codes_and_are_not_the_same_twice():
    fresh = practice(False)
    fresh.choose(kind="current_unbalance 2")
    first = fresh.case
    fresh.new()
    assert first.given != fresh.case.given
    assert fresh.case == case_from_code(fresh.case.code)


def test_fresh_problems_are_in_the_units_of_the_record():
    found = lesson(examine(read_entries({"flow": "28", "head": "19"}, "si")[0]))
    assert "si" == LessonPractice(found, False).case.units


def test_a_code_opens_any_problem_and_what_was_chosen_stays():
    fresh, other = practice(False), draw("brake_power", 5, "us", 2)
    fresh.open(other.code)
    assert other == fresh.case
    fresh.new()
    assert fresh.case.family in fresh.families
    with pytest.raises(BadCode, match="isn't a problem code"):
        fresh.open("nothing")


# The page


def test_the_own_numbers_of_a_record_are_asked_and_graded(panel):
    panel.outcome.lesson.own.click()
    card = panel.outcome.lesson.card
    card.choosing.kind.value = "current_unbalance 2"
    assert "25.5 A, 23 A and 26.5 A" in words(card.problem.value)
    card.answer.value = "8 %"
    card.answer.press()
    assert "✓ Right" in words(card.said.value)


def test_a_named_mistake_is_told_from_a_right_answer(panel):
    panel.outcome.lesson.own.click()
    card = panel.outcome.lesson.card
    card.choosing.kind.value = "current_unbalance 2"
    card.answer.value = "14 %"  # highest less lowest, over the average
    card.answer.press()
    assert "↺ Look again" in words(card.said.value)
    assert "look here" in words(card.said.value)


def test_own_numbers_have_no_code_and_the_page_says_how_to_share_them(panel):
    panel.outcome.lesson.own.click()
    panel.outcome.lesson.card.folds[1].button.click()
    shown = " ".join(part.value for part in _html(panel.outcome.lesson.card))
    assert "there is no code for them" in shown
    assert panel.outcome.lesson.card.code.entry.box not in list(_all(panel.outcome.lesson.card))


def test_the_problem_left_behind_is_named_and_an_unchecked_answer_with_it(panel):
    panel.outcome.lesson.own.click()
    card = panel.outcome.lesson.card
    title = card.practice.case.family.title
    card.answer.value = "11"
    card.skip.click()
    assert f"You typed “11” for “{title}” and didn't check it." in words(card.said.value)


def test_fresh_numbers_come_with_a_code_to_share(panel):
    panel.outcome.lesson.fresh.click()
    card = panel.outcome.lesson.card
    assert card.code.entry.box in list(_all(card))
    assert case_from_code(card.code.entry.box.value) == card.practice.case


def test_what_makes_no_fair_problem_is_listed_with_its_reason():
    made = page.record()
    made.form.groups["volts and amps"].show()
    names = (*LEGS, "volts_ab", "volts_bc", "volts_ca")
    for name, text in zip(names, ("21", "20", "19", "462", "463", "455"), strict=True):
        made.form.controls[name].value = text
    made.run.click()
    made.outcome.lesson.own.click()
    told = words(" ".join(part.value for part in _html(made.outcome.lesson.card)))
    assert "with these numbers; try fresh ones" in told
    assert "It is too close to a limit to be judged fairly." in told


def test_a_record_that_makes_no_problem_says_what_to_add():
    made = page.record()
    made.form.controls["pump"].value = "Pump 2"
    made.run.click()
    made.outcome.lesson.own.click()
    assert "These readings don't make a problem yet." in words(made.outcome.lesson.said.value)
    assert made.outcome.lesson.card is None


def test_where_no_own_number_is_fair_fresh_ones_are_offered():
    made = page.record()
    made.form.groups["windings"].show()
    for name, text in (("ohms_12", "1"), ("ohms_23", "1"), ("ohms_31", "1")):
        made.form.controls[name].value = text
    made.run.click()
    made.outcome.lesson.own.click()
    assert "Use fresh numbers." in words(made.outcome.lesson.said.value)
    made.outcome.lesson.fresh.click()
    assert made.outcome.lesson.card.practice.case.code


def test_another_record_leaves_the_card_and_what_is_typed_in_it(panel):
    panel.outcome.lesson.own.click()
    card = panel.outcome.lesson.card
    card.answer.value = "11"
    panel.form.controls["amps_a"].value = "26"
    panel.run.click()
    assert card is panel.outcome.lesson.card
    assert "11" == card.answer.value


@pytest.mark.parametrize("text", ["<script>alert(1)</script>", "<img src=x>"])
def test_no_name_of_a_record_reaches_the_lesson_as_html(panel, text):
    panel.form.controls["pump"].value = text
    panel.run.click()
    panel.outcome.lesson.own.click()
    shown = "".join(part.value for part in _html(panel.outcome.lesson.box))
    assert "<script" not in shown
    assert "<img" not in shown


def _all(widget):
    yield widget
    for child in getattr(widget, "children", ()):
        yield from _all(child)


def _html(widget):
    return [
        each
        for each in _all(widget)
        if type(each).__name__ == "HTML" and each.layout.display != "none"
    ]
