"""Mixed practice: what is drawn from, what comes back more often, and what is said of it."""

from collections import Counter
from itertools import pairwise
from random import Random

import pytest

from solver import FAMILIES, draw, family_named
from tests.workbook.said import words
from workbook import page
from workbook.practice.mixed import PROMISE, Kind, Mixed, Outcome, chances, owed
from workbook.practice.practice import Practice, alike
from workbook.practice.wanted import mixed_card
from workbook.ui.controls import PAUSE
from workbook.ui.pages import titles

TITLES = titles()
BRAKE, BALANCE = family_named("brake_power"), family_named("current_unbalance")
KINDS = [Kind(BRAKE, 1), Kind(BRAKE, 2), Kind(BALANCE, 1)]
WRONG = Outcome("brake_power", 2, "mistake")
RIGHT = Outcome("brake_power", 2, "right")


class Clock:
    """A clock that moves by a second each time it is read, unless it is told to stand still."""

    now, step = 0.0, 1.0

    def __call__(self):
        self.now += self.step
        return self.now


def by_chance(seed=1):
    return Random(seed).randrange


def mixed(families=FAMILIES, seed=1, **more):
    return Mixed(families, by_chance(seed), **more)


def drawn(practice, count):
    """The kinds of the next problems."""
    for _ in range(count):
        practice.new()
        yield Kind(practice.case.family, practice.case.level)


# What comes back: a pure function of the past


def test_with_no_past_each_chapter_has_an_equal_share_and_so_has_each_kind_in_it():
    assert [0.25, 0.25, 0.5] == chances(KINDS, owed([]))


def test_chances_add_up_to_one_whatever_the_past():
    pasts = [[], [WRONG], [RIGHT], [WRONG, WRONG, RIGHT], [WRONG] * 9, [*[WRONG] * 2, *[RIGHT] * 5]]
    assert [pytest.approx(1)] * len(pasts) == [sum(chances(KINDS, owed(past))) for past in pasts]


def test_what_went_wrong_has_a_third_of_all_problems_beside_its_usual_share():
    low, high, other = chances(KINDS, owed([WRONG]))
    assert (2 / 3 * 0.25, 2 / 3 * 0.25 + 1 / 3, 2 / 3 * 0.5) == pytest.approx((low, high, other))


def test_two_kinds_that_went_wrong_share_that_third_by_how_often_they_did():
    past = [WRONG, WRONG, Outcome("current_unbalance", 1, "wrong")]
    even, now = chances(KINDS, owed([])), chances(KINDS, owed(past))
    more = [b - 2 / 3 * a for a, b in zip(even, now, strict=True)]
    assert [0, 2 / 9, 1 / 9] == pytest.approx(more)


def test_a_kind_that_went_right_as_often_as_wrong_is_as_any_other():
    assert (
        chances(KINDS, owed([]))
        == chances(KINDS, owed([WRONG, RIGHT]))
        == chances(KINDS, owed([RIGHT, RIGHT]))
    )


def test_a_right_answer_long_ago_does_not_pay_for_a_wrong_one_now():
    assert {("brake_power", 2): 1} == owed([*[RIGHT] * 9, WRONG])


def test_no_kind_is_owed_more_than_three_times():
    assert {("brake_power", 2): 3} == owed([WRONG] * 20)
    assert {} == owed([*[WRONG] * 20, *[RIGHT] * 3])


@pytest.mark.parametrize("status", ["close", "unreadable"])
def test_a_close_answer_and_an_unread_one_change_nothing(status):
    assert {} == owed([Outcome("brake_power", 2, status)])
    assert {("brake_power", 2): 1} == owed([WRONG, Outcome("brake_power", 2, status)])


def test_another_level_of_the_same_family_is_another_kind():
    assert chances(KINDS, owed([]))[0] > chances(KINDS, owed([WRONG]))[0]


def test_attempts_at_what_is_not_drawn_from_change_nothing():
    assert chances(KINDS, owed([])) == chances(KINDS, owed([Outcome("water_power", 1, "wrong")]))


# Drawing


def test_every_kind_that_fits_is_drawn_and_no_other():
    practice = mixed()
    practice.want(chapters=("horsepower", "machine"), levels=(1, 3))
    fitting = {
        Kind(f, level)
        for f in FAMILIES
        for level in (1, 3)
        if f.chapter in ("horsepower", "machine") and level <= len(f.levels)
    }
    assert fitting == set(practice.pool) == set(drawn(practice, 600))


def test_what_went_wrong_is_drawn_more_often_than_before():
    kind = Kind(BALANCE, 1)
    before = Counter(drawn(mixed(), 600))[kind]
    after = Counter(drawn(mixed(past=[Outcome("current_unbalance", 1, "wrong")]), 600))[kind]
    # A third of 600, less the draws that follow one of the same family: 150 of them are due.
    assert before < 30
    assert 110 < after < 200


def test_the_next_problem_is_of_another_family_where_there_is_one():
    families = [case.family for case in _cases(mixed(past=[WRONG] * 3), 200)]
    assert all(one != other for one, other in pairwise(families))


def test_one_family_alone_never_asks_the_same_twice_running():
    practice = mixed([family_named("lockout")])
    cases = list(_cases(practice, 100))
    assert not any(alike(one, other) for one, other in pairwise(cases))


def test_new_numbers_of_a_question_in_words_are_another_question():
    practice = Practice([family_named("seal_oil")], by_chance())
    cases = list(_cases(practice, 100))
    assert not any(alike(one, other) for one, other in pairwise(cases))


def _cases(practice, count):
    yield practice.case
    for _ in drawn(practice, count):
        yield practice.case


def test_tries_of_this_session_are_remembered_and_passed_on():
    heard = []
    practice = mixed(on_try=heard.append)
    practice.open(draw("brake_power", 5, "us", 2).code)
    practice.answer("99999 hp")
    practice.answer("nonsense")
    assert {("brake_power", 2): 1} == practice.debts
    assert ["99999 hp"] == [each.text for each in heard]
    assert [Kind(BRAKE, 2)] == practice.returning


def test_a_kind_that_is_not_drawn_from_is_not_said_to_come_back():
    practice = mixed(past=[WRONG])
    practice.want(chapters=("balance",))
    assert [] == practice.returning


def test_what_is_wanted_counts_from_the_next_problem_and_the_present_one_stays():
    practice = mixed()
    before = practice.case
    practice.want(units="si", chapters=("machine",))
    assert (before, "us") == (practice.case, practice.units)
    practice.new()
    assert ("si", "machine") == (practice.case.units, practice.case.family.chapter)


def test_a_code_opens_its_problem_and_changes_nothing_that_is_wanted():
    practice = mixed()
    wanted, case = practice.wanted, draw("motor_power", 5, "si", 3)
    practice.open(case.code)
    assert (case, "si", wanted) == (practice.case, practice.units, practice.wanted)
    practice.new()
    assert "us" == practice.case.units


MISSING = {
    "no chapter": ({"chapters": ()}, "Check at least one chapter first."),
    "no level": ({"levels": ()}, "Check at least one level first."),
    "neither": ({"chapters": (), "levels": ()}, "Check at least one chapter and one level first."),
    "a level that is not there": (
        {"chapters": ("machine",), "levels": (3,)},
        "None of the chapters you checked has this level. Check another level.",
    ),
    "all there": ({}, ""),
}


@pytest.mark.parametrize(("changes", "says"), MISSING.values(), ids=MISSING)
def test_what_is_still_to_be_ticked_is_said(changes, says):
    practice = mixed()
    practice.want(**changes)
    assert says == practice.stuck


# The card


@pytest.fixture
def card():
    return mixed_card(mixed(), Clock())


def send(card, text):
    card.answer.value = text
    card.answer.press()


def test_the_page_call_opens_a_card_over_every_family():
    assert FAMILIES == page.mixed().practice.families


def test_the_card_says_in_one_sentence_what_it_does(card):
    assert "Mixed practice brings back more often what you missed." == PROMISE
    assert PROMISE in words(card.choosing.box.children[0].value)


def test_each_chapter_has_a_box_with_the_title_of_its_page(card):
    labels = {name: box.description for name, box in card.choosing.chapters.boxes.items()}
    assert {family.chapter for family in FAMILIES} == set(labels)
    assert labels.items() >= TITLES.items()
    # In the order of reading; a chapter whose page is not there yet comes last.
    assert list(TITLES) == list(labels)[: len(TITLES)]
    assert "4. Phase balance" == labels["balance"]


def test_ticks_are_told_and_hold_from_the_next_problem(card):
    before = card.practice.case
    for name, box in card.choosing.chapters.boxes.items():
        box.value = name == "balance"
    card.choosing.levels[1].value = False
    card.choosing.units.value = "si"
    assert before == card.practice.case
    told = words(card.choosing.said.value)
    assert told.endswith("Starting with the next problem: 1 chapter, level 2, Metric units.")
    card.skip.click()
    case = card.practice.case
    assert ("balance", 2, "si") == (case.family.chapter, case.level, case.units)


def test_without_a_chapter_the_problem_stays_and_what_to_tick_is_said(card):
    before = card.practice.case
    card.choosing.chapters.none.click()
    assert "Check at least one chapter first." in words(card.choosing.said.value)
    card.skip.click()
    assert before == card.practice.case
    assert "Check at least one chapter first." in words(card.said.value)
    card.choosing.chapters.all.click()
    card.skip.click()
    assert before != card.practice.case


def test_ticks_and_units_stay_when_a_code_is_opened(card):
    card.code.entry.box.value = draw("motor_power", 5, "si", 3).code
    card.code.entry.gate.click()
    assert 3 == card.practice.case.level
    assert ("us", False) == (card.choosing.units.value, card.choosing.levels[3].value)


def test_what_went_wrong_is_listed_until_it_goes_right(card):
    case = draw("brake_power", 5, "us", 2)
    card.code.entry.box.value = case.code
    card.code.entry.gate.click()
    send(card, "99999 hp")
    assert f"{case.family.title}, level 2" in words(card.choosing.coming.value)
    send(card, f"{case.answer:.5g} hp")
    assert "" == card.choosing.coming.value


def test_a_long_list_of_what_went_wrong_is_cut_short():
    kinds = [Kind(family, 1) for family in FAMILIES[:8]]
    past = [Outcome(kind.family.name, 1, "wrong") for kind in kinds]
    shown = words(mixed_card(mixed(past=past), Clock()).choosing.coming.value)
    assert shown.endswith("and 3 more")


def test_a_double_click_on_next_is_one_new_problem(card):
    card.clock.step = PAUSE / 10
    card.skip.click()
    second = card.practice.case
    card.skip.click()
    assert second == card.practice.case


def test_a_problem_in_words_says_its_reason_and_source(card):
    case = draw("lockout", 3)
    card.code.entry.box.value = case.code
    card.code.entry.gate.click()
    send(card, f"{case.answer:.0f}")
    assert "29 CFR 1910.147" in words(card.said.value) or "1910.333" in words(card.said.value)
