"""The practice card: what counts as a try, what is said, what is shown, and what is kept."""

import re
import subprocess
import sys
from functools import partial
from itertools import pairwise
from operator import itemgetter

import pytest

from solver import FAMILIES, BadCode, draw, family_named
from solver.engine.grading import as_typed
from solver.units.show import figures
from tests.workbook.said import type_in, words
from workbook import page
from workbook.practice import answer_label, chain_html
from workbook.practice.card import Card
from workbook.practice.practice import MIXED, Practice
from workbook.ui.chapter import families_of
from workbook.ui.controls import PAUSE, Panel
from workbook.ui.entry import Entry, Gate
from workbook.ui.pieces import say

CHAPTERS = tuple(dict.fromkeys(family.chapter for family in FAMILIES))
HORSEPOWER = families_of("horsepower")


class Clock:
    """A clock that moves by a second each time it is read, unless it is told to stand still."""

    now, step = 0.0, 1.0

    def __call__(self):
        self.now += self.step
        return self.now


def picks(*numbers):
    """Chance that gives these numbers in turn, then the last one for ever."""
    left = list(numbers)
    return lambda below: (left.pop(0) if len(left) > 1 else left[0]) % below


def practice(*numbers, families=HORSEPOWER, **more):
    return Practice(families, picks(*numbers or (7,)), **more)


def right(case):
    return f"{as_typed(case, case.answer)} {'' if case.choices else case.unit}"


@pytest.fixture
def card():
    return Card(practice(0, 7), Clock())


# What counts as a try


def test_the_first_problem_is_the_chapters_first_kind_at_level_one():
    assert draw("water_power", 7, "us", 1) == practice(0, 7).case


def test_a_right_answer_is_said_to_be_right_and_counted():
    at = practice()
    reply = at.answer(right(at.case))
    assert ("right", True, "Try 1.") == (
        reply.verdict.status,
        reply.counted,
        reply.note,
    )
    assert at.solved


def test_tries_are_counted():
    at = practice()
    notes = [at.answer(f"{number}00000 hp").note for number in (1, 2, 3)]
    assert [f"Try {number}." for number in (1, 2, 3)] == notes


@pytest.mark.parametrize("text", ["", "twelve", "12 psi", "1,5 hp", "3 4 hp"])
def test_what_cannot_be_read_is_not_a_try(text):
    at = practice()
    reply = at.answer(text)
    assert ("unreadable", False, 0) == (reply.verdict.status, reply.counted, at.tries)
    assert "This doesn't count as a try." == reply.note


def test_the_same_answer_in_other_words_is_not_counted_again():
    at = practice()
    at.answer("99999 hp")
    assert not at.answer("99,999").counted
    assert 1 == at.tries


def test_nothing_counts_after_the_right_answer_or_the_worked_solution():
    at = practice()
    at.answer(right(at.case))
    assert "You already have the right answer, so this one doesn't count." == at.answer("1 hp").note
    at.new()
    at.reveal()
    assert not at.answer(right(at.case)).counted
    assert 0 == at.tries


def test_each_counted_try_is_told_with_the_help_seen_before_it():
    heard = []
    at = practice(on_try=heard.append)
    at.answer("unreadable")
    at.hint()
    at.answer("99999 hp")
    assert [("99999 hp", "wrong", 1, 1)] == [
        (t.text, t.verdict.status, t.number, t.hints) for t in heard
    ]


def test_other_rooms_grade_and_show_problems_without_widgets(root):
    code = "import sys, workbook.practice; sys.exit('ipywidgets' in sys.modules)"
    assert 0 == subprocess.run([sys.executable, "-c", code], cwd=root, check=False).returncode


# Going from problem to problem


def test_new_numbers_are_never_the_same_problem():
    at = practice(0, 7)  # chance would give seed 7 again
    first = at.case
    at.new()
    assert (first.family, 8) == (at.case.family, at.case.seed)


def test_seeds_stay_below_100000_so_that_codes_stay_short():
    seen = []

    def pick(below):
        seen.append(below)
        return below - 1

    assert len("WP-1U1-99999-XXX") >= len(Practice(HORSEPOWER, pick).case.code)
    assert 100_000 == max(seen)


def test_mixed_problems_change_their_kind_each_time():
    at = practice(0)
    at.choose(kind=MIXED)
    kinds = [at.case.family.name]
    for _ in range(5):
        at.new()
        kinds.append(at.case.family.name)
    assert all(one != next_one for one, next_one in pairwise(kinds))


def test_a_level_that_a_kind_lacks_becomes_its_highest():
    at = practice()
    at.choose(level=3)
    at.choose(kind="which_power")
    assert (2, 2) == (at.level, at.case.level)


def test_units_change_the_problem_and_stay():
    at = practice()
    at.choose(units="si")
    at.new()
    assert "kW" == at.case.unit


def test_a_code_shows_its_problem_and_sets_kind_level_and_units():
    case = draw("motor_power", 12, "si", 3)
    at = practice()
    at.open(case.code.lower())
    assert (case, "motor_power", 3, "si") == (at.case, at.kind, at.level, at.units)


def test_a_code_of_another_chapter_opens_here_too():
    case = draw("current_unbalance", 4, "us", 1)
    at = practice()
    at.open(case.code)
    assert case == at.case
    assert "current_unbalance" == at.kind
    assert "current_unbalance" in [name for _, name in at.kinds]
    at.new()
    assert case.family == at.case.family


def test_a_bad_code_leaves_the_problem_as_it_was():
    at = practice()
    at.hint()
    before = (at.case, at.hints)
    with pytest.raises(BadCode, match="wrong character"):
        at.open(at.case.code[:-1] + ("K" if at.case.code[-1] != "K" else "M"))
    assert before == (at.case, at.hints)


def test_hints_ask_first_then_tell_the_way_the_formulas_and_the_numbers():
    at = practice()
    at.open(draw("motor_power", 5, "us", 2).code)
    shown = []
    while at.hint():
        shown.append(at.hinted[-1])
    assert ["Ask yourself", "The way", "The formulas", "The numbers"] == [h.title for h in shown]
    assert "Which machines come between them? Are you going toward the wire" in shown[0].says
    assert [False, False, True, True] == [hint.steps == at.case.steps for hint in shown]
    for hint in shown[:2]:
        assert not re.search(r"\d|[×/=]", hint.says), hint.says


# The card


def test_a_wrong_answer_is_named_with_its_place_in_the_chain(card):
    case = draw("motor_power", 5, "us", 2)
    card.practice.open(case.code)
    card._show()
    mistake = next(m for m in case.mistakes if m.id.startswith("brake_power."))
    type_in(card.answer, f"{mistake.value:.5g}")
    told = words(card.said.value)
    assert "Look again" in told
    assert mistake.says in told
    assert "brake horsepower ← look here motor horsepower" in told


def test_every_mistake_of_every_family_can_be_shown():
    for family in FAMILIES:
        case = draw(family, 3, "us", 2)
        for mistake in case.mistakes:
            place = chain_html(case, mistake.id)
            assert place.count("look here") == (1 if len(case.steps) > 1 and place else 0)


def test_what_was_read_is_always_said(card):
    type_in(card.answer, "12 kW")
    assert "Read as 12 kW, which is 16.09 hp." in words(card.said.value)


def test_unreadable_text_stays_in_the_box(card):
    type_in(card.answer, "12 psi")
    assert "12 psi" == card.answer.value
    assert "Not read" in words(card.said.value)
    assert "psi is a pressure" in words(card.said.value)


def test_a_second_click_right_after_the_first_does_nothing(card):
    card.clock.step = PAUSE / 10
    first = card.practice.case
    card.skip.click()
    second = card.practice.case
    card.skip.click()
    assert first != second
    assert second == card.practice.case
    card.help.more.click()
    card.help.more.click()
    assert 1 == card.practice.hints


def hear(answer, kind, text, main=None, count=None, handled=None):
    """What the browser tells: a letter typed, or the main button pressed."""
    told = {"kind": kind, "text": text, "main": main or answer.main}
    seen = answer.handled if handled is None else handled
    count = count or answer.asked["count"]
    answer._handle_custom_msg({**told, "handled": seen, "count": count}, [])


def test_two_presses_before_the_outcome_is_seen_are_one_try_and_a_later_one_is_heard(card):
    before = card.answer.handled
    hear(card.answer, "press", "99999")
    said = card.said.value
    hear(card.answer, "press", "99999", handled=before)  # on a slow computer, seconds later
    assert (1, said) == (card.practice.tries, card.said.value)
    hear(card.answer, "press", "99999")
    assert "You already gave this answer" in words(card.said.value)


def test_a_press_brings_its_text_along(card):
    hear(card.answer, "press", "99999")
    assert ("99999", 1) == (card.answer.value, card.practice.tries)


def test_two_answers_in_quick_succession_are_both_checked(card):
    before = card.answer.handled
    hear(card.answer, "press", "99999")
    hear(card.answer, "press", "88888", handled=before)
    assert 2 == card.practice.tries


def test_the_second_press_of_a_double_click_never_passes_over_the_verdict(card):
    case = card.practice.case
    hear(card.answer, "press", right(case))
    hear(card.answer, "press", right(case), main="Check")  # long after, but meant for Check
    assert case == card.practice.case
    count = card.answer.asked["count"]
    hear(card.answer, "press", right(case))
    hear(card.answer, "press", right(case), count=count)
    assert (0, "", "") == (card.practice.tries, card.answer.value, card.answer.unsent)
    assert "New problem." in words(card.said.value)


def test_a_press_on_the_problem_before_is_not_one_on_this(card):
    before = card.answer.asked["count"]
    card.skip.click()
    hear(card.answer, "press", "99999", count=before)
    assert (0, "") == (card.practice.tries, card.answer.value)


def test_the_same_answer_sent_again_later_is_told_kindly(card):
    type_in(card.answer, "99999")
    card.answer.press()
    assert "You already gave this answer, so it doesn't count again." in words(card.said.value)


def test_a_problem_skipped_keeps_what_was_typed_in_sight_with_its_code(card):
    code = card.practice.case.code
    card.answer.value = "12.5 hp"
    card.skip.click()
    told = words(card.said.value)
    assert "" == card.answer.value
    assert told.startswith(f"You typed “12.5 hp” for {code} and didn't check it.")


def test_a_new_problem_is_heard_and_no_box_announces_it(card):
    card.skip.click()
    assert f"New problem. {card.practice.case.question}" == words(card.said.value)
    assert "w2w-say" not in card.said.value


def test_after_the_right_answer_the_main_button_leads_to_the_next_problem(card):
    first = card.practice.case
    assert "Check" == card.answer.main
    type_in(card.answer, right(first))
    assert "Next" == card.answer.main
    card.answer.press()
    assert ("Check", "", 0) == (card.answer.main, card.answer.value, card.practice.tries)
    assert first != card.practice.case


def test_another_text_after_the_right_one_is_checked_not_passed_over(card):
    type_in(card.answer, right(card.practice.case))
    hear(card.answer, "typed", "12")
    assert "Check" == card.answer.main


def test_one_more_like_this_comes_after_a_miss_and_after_the_right_answer(card):
    before = card.practice.case
    assert "none" == card.more.layout.display
    type_in(card.answer, "99999")
    assert "" == card.more.layout.display
    card.more.click()
    after = card.practice.case
    assert (before.family, before.level, before.units) == (after.family, after.level, after.units)
    assert before != after
    assert "You asked for one more like the last" in words(card.above.value)
    card.skip.click()
    assert "You asked" not in words(card.above.value)


def test_a_miss_links_the_page_that_explains_it(card):
    type_in(card.answer, "99999")
    assert 'href="01-three-horsepowers.ipynb"' in card.said.value
    on_the_page = Card(practice(), Clock(), explains="horsepower")
    type_in(on_the_page.answer, "99999")
    assert "This page explains it, below the problem." in words(on_the_page.said.value)
    assert "href" not in on_the_page.said.value


def test_the_small_line_has_why_the_number_of_today_and_the_code():
    card = Card(practice(), Clock(), done=lambda: {"WP-1U1-1-XXX", "WP-1U1-2-XXX"})
    assert f"Level 1 · problem 3 today · {card.practice.case.code}" == words(card.above.value)


def test_controls_follow_a_code_and_make_no_other_problem(card):
    case = draw("impossible_powers", 9, "si", 2)
    type_in(card.code.entry, case.code)
    assert case == card.practice.case
    assert ("impossible_powers", 2, "si") == (
        card.choosing.kind.value,
        card.choosing.level.value,
        card.choosing.units.value,
    )
    assert case.code == card.code.entry.box.value


def test_a_bad_code_is_kept_and_explained_and_the_answer_box_stays(card):
    before = card.practice.case
    card.answer.value = "12"
    type_in(card.code.entry, "WP-1U1-7")
    assert (before, "WP-1U1-7", "12") == (
        card.practice.case,
        card.code.entry.box.value,
        card.answer.value,
    )
    assert "Your problem is still here." in words(card.code.said.value)


def test_changing_the_level_makes_a_problem_of_that_level(card):
    card.choosing.level.value = 3
    assert 3 == card.practice.case.level
    card.choosing.kind.value = "which_power"
    assert (2, ("1", "2")) == (
        card.choosing.level.value,
        tuple(text for text, _ in card.choosing.level.options),
    )


def test_the_first_hint_asks_and_only_the_third_has_the_formula(card):
    type_in(card.code.entry, draw("water_power", 7).code)
    card.help.more.click()
    assert "Hint 1 of 4: Ask yourself" in words(card.help.hints.value)
    card.help.more.click()
    assert "flow ×" not in words(card.help.hints.value)
    card.help.more.click()
    told = words(card.help.hints.value)
    assert "flow × " in told
    assert not re.search(r"\d+ (gpm|ft)", told)
    card.help.more.click()
    case, shown = card.practice.case, words(card.help.hints.value)
    assert re.search(r"\d+ gpm × [\d.]+ ft", shown)
    assert figures(case.answer, case.unit) not in shown


def test_after_the_last_hint_the_card_says_what_is_left(card):
    type_in(card.code.entry, draw("water_power", 7).code)
    for _ in range(5):
        card.help.more.click()
    assert "That was the last hint." in words(card.said.value)


def test_the_worked_solution_opens_and_closes_and_gives_the_hints_back(card):
    card.help.more.click()
    hints = card.help.hints.value
    card.help.worked.click()
    assert ("Hide the steps", "") == (card.help.worked.description, card.help.hints.value)
    card.help.worked.click()
    assert (hints, "Show the steps") == (card.help.hints.value, card.help.worked.description)
    assert "none" == card.help.steps.box.layout.display


def test_the_steps_open_one_by_one_or_all_at_once(card):
    case = draw("motor_power", 5, "us", 2)
    for press, shown in (("next", 2), ("rest", 3)):
        type_in(card.code.entry, draw("motor_power", 6, "us", 2).code)
        type_in(card.code.entry, case.code)
        card.help.worked.click()
        assert 1 == card.help.steps.shown.value.count('class="w2w-step"')
        getattr(card.help.steps, press).click()
        assert shown == card.help.steps.shown.value.count('class="w2w-step"')
    assert all(step.why in words(card.help.steps.shown.value) for step in case.steps)
    assert "none" == card.help.steps.buttons.layout.display


def test_a_first_step_is_help_and_only_the_whole_solution_ends_the_counting():
    heard = []
    card = Card(practice(on_try=heard.append), Clock())
    type_in(card.code.entry, draw("motor_power", 5, "us", 2).code)
    card.help.worked.click()
    type_in(card.answer, "99999 hp")
    assert (4, 1, False) == (heard[0].hints, card.practice.tries, card.practice.solution)
    card.help.steps.rest.click()
    assert card.practice.solution
    type_in(card.answer, "88888 hp")
    assert 1 == card.practice.tries


def test_a_choice_is_answered_by_its_number(card):
    case = draw("which_power", 5)
    type_in(card.code.entry, case.code)
    assert f"Choose one, 1 to {len(case.choices)}" == card.answer.asked["label"]
    assert list(case.choices) == card.answer.asked["choices"]
    assert "w2w-choices" not in card.problem.value
    type_in(card.answer, f"{case.answer:g}")
    assert words(card.said.value).startswith("✓ Right")
    assert "Read as choice" in words(card.said.value)


@pytest.mark.parametrize("family", FAMILIES, ids=lambda family: family.name)
def test_every_family_can_be_shown_answered_and_opened_to_its_solution(family):
    at = Practice([family], picks(5))
    card = Card(at)
    for units in ("us", "si"):
        for level in at.levels:
            at.choose(level=level, units=units)
            card._show()
            card.help._reveal()
            card.help.steps._show(len(at.case.steps))
            card._answer(right(at.case))
            assert "✓ Right" in words(card.said.value)
            assert len(at.case.steps) == card.help.steps.shown.value.count('class="w2w-step"')


def test_learner_text_is_shown_as_text_never_as_markup(card):
    nasty = "<img src=x onerror=alert(1)>"
    type_in(card.answer, nasty)
    type_in(card.code.entry, nasty)
    card.answer.value = nasty + "2"
    card.skip.click()
    shown = card.said.value + card.code.said.value
    assert "<img" not in shown
    assert "&lt;img" in shown


def test_a_fault_in_the_card_is_said_in_a_sentence_and_keeps_the_answer(card, monkeypatch):
    def breaks(text):
        raise ZeroDivisionError("<b>no</b>")

    monkeypatch.setattr(card.practice, "answer", breaks)
    type_in(card.answer, "12")
    told = words(card.said.value)
    assert "Something went wrong" in told
    assert "ZeroDivisionError" in told
    assert "<b>no" not in card.said.value
    assert "12" == card.answer.value


def test_the_label_gives_the_unit_in_words_and_how_exactly():
    assert "Your answer, in hp, to three figures" == answer_label(draw("brake_power", 1))
    assert "in percent" in answer_label(draw("pump_efficiency", 1))
    assert "in m³" in answer_label(draw("well_volume", 1, "si"))


def test_a_telephone_shows_its_number_keys_for_a_number_alone(card):
    assert card.answer.asked["number"]
    type_in(card.code.entry, draw("which_power", 5).code)
    assert not card.answer.asked["number"]


def test_each_state_has_a_word_and_a_mark_of_its_own():
    states = ("right", "mistake", "close", "wrong", "unreadable")
    said = {tuple(words(say(state)).split(" ", 1)) for state in states}
    assert len(states) == len({mark for mark, _ in said}) == len({word for _, word in said})


@pytest.mark.parametrize("name", [*CHAPTERS, "brake_power"])
def test_a_card_opens_over_a_chapter_or_one_family(name):
    card = page.practice(name)
    assert {f.name for f in families_of(name)} == {f.name for f in card.practice.families}


def test_an_unknown_chapter_is_refused_with_those_there_are():
    with pytest.raises(LookupError, match="The chapters are: horsepower"):
        page.practice("horsepwer")


def test_a_cell_says_how_to_start_the_page_where_no_widget_can_be_shown(card, monkeypatch):
    shown = []
    monkeypatch.setattr("IPython.display.display", lambda data, raw: shown.append(data))
    card._ipython_display_()
    assert [True, False] == ["application/vnd.jupyter.widget-view+json" in data for data in shown]
    assert all("choose Run and then Run All Cells" in data["text/plain"] for data in shown)
    assert "choose Run and then Run All Cells" in shown[1]["text/html"]


# The box: Enter comes before its text


class Loop:
    """A loop in which nothing comes late by itself: `passes` is when all its time has passed."""

    def __init__(self):
        self.late = []

    def call_later(self, seconds, call, *given):
        self.late.append((seconds, partial(call, *given)))

    def passes(self):
        calls, self.late = sorted(self.late, key=itemgetter(0)), []
        for _, call in calls:
            call()


@pytest.fixture
def loop(monkeypatch):
    loop = Loop()
    monkeypatch.setattr("workbook.ui.entry.asyncio.get_running_loop", lambda: loop)
    return loop


class Heard(list):
    def __call__(self):
        self.append(len(self))


def gate(clock=None):
    panel = Panel(clock=clock or Clock())
    heard = []
    return Entry(panel, "Box", heard.append), heard


def enter(entry):
    entry.box._handle_custom_msg({"event": "submit"}, [])


def test_enter_waits_for_the_text_that_follows_it(loop):
    entry, heard = gate()
    enter(entry)
    assert [] == heard
    entry.box.value = "12"
    assert ["12"] == heard
    loop.passes()
    assert ["12"] == heard


def test_enter_on_a_text_already_here_sends_it_after_a_moment(loop):
    entry, heard = gate()
    entry.box.value = "12"  # the learner left the box, and came back
    enter(entry)
    assert [] == heard
    loop.passes()
    assert ["12"] == heard


def test_leaving_the_box_sends_nothing():
    entry, heard = gate()
    entry.box.value = "12"
    assert ([], "12") == (heard, entry.unsent)


def test_a_click_that_overtakes_its_text_waits_for_it(loop):
    entry, heard = gate()
    entry.gate.click()
    entry.box.value = "12"
    loop.passes()
    assert ["12"] == heard


def test_a_click_long_after_the_box_was_left_waits_for_what_was_typed_since(loop):
    entry, heard = gate()
    entry.box.value = "12"
    entry.gate.click()
    entry.box.value = "13"
    loop.passes()
    assert ["13"] == heard


def test_two_answers_in_quick_succession_are_both_sent(loop):
    clock = Clock()
    clock.step = PAUSE / 100
    entry, heard = gate(clock)
    for text in ("12", "13"):
        enter(entry)
        entry.box.value = text
    loop.passes()
    assert ["12", "13"] == heard


def test_text_put_in_by_the_card_is_nobodys_answer():
    entry, heard = gate()
    entry.fill("WP-1U1-7-12")
    assert ([], "") == (heard, entry.unsent)


def test_a_shared_gate_works_once_for_several_boxes():
    panel, heard = Panel(clock=Clock()), Heard()
    shared = Gate(panel, heard)
    boxes = [Entry(panel, label, lambda _: None, shared) for label in "AB"]
    boxes[0].box.value = boxes[1].box.value = "1"
    shared.click()
    assert [0] == heard


def test_families_of_one_name_are_one_family():
    assert (family_named("brake_power"),) == families_of("brake_power")
