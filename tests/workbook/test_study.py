"""What the log says of each skill, when it is due, what comes next, and why."""

from datetime import UTC, datetime, timedelta
from itertools import count
from statistics import median

import pytest

from solver import FAMILIES, draw
from tests.benchmarks.learners import at_random, by_schedule, needed
from workbook.log import SHOWN, Attempt
from workbook.practice.guided import Focused, Guided
from workbook.practice.keeper import attempt_of, units_of
from workbook.practice.practice import Practice
from workbook.study import Study, level_of, skill_of, suggestions

NOW = datetime(2026, 11, 25, 19, tzinfo=UTC)
NUMBER = count()
WATER, BRAKE, MOTOR = FAMILIES[:3]
SLIP = "brake_power.multiplied_by.pump_efficiency"


def one(status="right", family=BRAKE, days_ago=0.0, **fields):
    """An attempt of so many days ago; each is a little later than the one made before it."""
    order = next(NUMBER)
    when = NOW - timedelta(days=days_ago) - timedelta(seconds=10_000 - order)
    code = draw(family, 7, "us", fields.get("level", 1)).code
    known = {"level": 1, "typed": "9", "tries": 1, **fields}
    return Attempt(str(order), when.isoformat(), code, family.name, status=status, **known)


def next_of(*made, families=(WATER, BRAKE, MOTOR), now=NOW):
    return Study(made).next(families, now)


def test_only_the_first_answer_to_a_problem_says_what_somebody_can_do():
    skill = skill_of("brake_power", [one("wrong"), one("right", tries=2)])
    assert (0, 1) == (skill.unaided, len(skill.lately))


def test_a_hint_or_the_solution_makes_it_not_unaided():
    made = [one(), one(hints=1), one(SHOWN, tries=0, solution=True)]
    assert 1 == skill_of("brake_power", made).unaided


def test_a_solution_opened_after_a_wrong_answer_is_not_another_problem():
    made = [one("wrong"), one(SHOWN, tries=1, solution=True)]
    assert 1 == skill_of("brake_power", made).problems


def test_the_usual_time_is_the_middle_one_of_right_answers():
    made = [one(seconds=20.0), one(seconds=90.0), one(seconds=40.0), one("wrong", seconds=1.0)]
    assert 40.0 == skill_of("brake_power", made).seconds


@pytest.mark.parametrize(
    ("made", "level"),
    [
        ([], 1),
        ([one()], 1),
        ([one(), one()], 2),
        ([one(), one("close"), one()], 1),
        ([one(), one(), one(level=2), one(level=2)], 3),
        ([one(), one(), one("wrong", level=2), one("wrong", level=2)], 1),
        ([one()] * 2 + [one(level=2)] * 2 + [one(level=3)] * 9, 3),
    ],
)
def test_two_in_a_row_lead_a_level_up_or_down(made, level):
    assert level == level_of(made, 3)


def test_a_kind_never_tried_is_suggested_in_the_order_of_the_chapters():
    assert ["water_power", "brake_power", "motor_power"] == [s.family.name for s in next_of()]
    assert {"You haven't tried this kind of problem yet."} == {s.why for s in next_of()}


def test_what_went_wrong_comes_back_the_same_evening():
    first, *_ = next_of(one("wrong", days_ago=0.02))
    assert ("brake_power", "You missed this last time, so it comes back soon.") == (
        first.family.name,
        first.why,
    )


def test_what_went_right_stays_away_for_days_and_then_comes_back():
    made = [one(days_ago=9), one(days_ago=8.9)]
    assert "brake_power" != next_of(*made, now=NOW - timedelta(days=8))[0].family.name
    late = next_of(*made, now=NOW + timedelta(days=40))[0]
    assert "brake_power" == late.family.name
    assert "You got this right before. See whether you still have it." == late.why


def test_each_time_it_goes_right_it_stays_away_longer_and_never_over_three_weeks():
    made, gaps, now = [], [], NOW
    for _ in range(4):
        made.append(one()._replace(when=now.isoformat()))
        due = Study(made).cards["brake_power"].due
        gaps.append(due - now)
        now = due
    assert gaps[0] < gaps[1] <= gaps[2] <= gaps[3] <= timedelta(days=21)


def test_a_mistake_made_twice_comes_first_with_the_reason():
    made = [one("mistake", mistake=SLIP), one("mistake", mistake=SLIP), one("wrong", WATER)]
    first = next_of(*made)[0]
    assert ("brake_power", SLIP) == (first.family.name, first.mistake)
    assert "You made the same mistake here twice lately." == first.why


def test_a_mistake_no_longer_recurs_after_two_right_without_help():
    slips = [one("mistake", mistake=SLIP), one("mistake", mistake=SLIP)]
    assert 1 == len(skill_of("brake_power", [*slips, one()]).recurring)
    assert () == skill_of("brake_power", [*slips, one(), one()]).recurring


def test_every_third_problem_is_of_a_new_kind_while_there_are_any():
    made = [one("wrong", WATER, days_ago=1)] * 3
    assert "water_power" != next_of(*made)[0].family.name
    assert "water_power" == next_of(*made[:2])[0].family.name


def test_when_nothing_is_due_the_least_sure_kind_is_named_with_its_chance():
    made = [one(), one(family=WATER, days_ago=3), one(family=WATER, days_ago=2)]
    last = suggestions([WATER, BRAKE], Study(made).skills, Study(made).cards, NOW)[-1]
    assert (
        "You're caught up for now. Of the kinds you know, you're least sure of this one" in last.why
    )


def test_adding_attempts_one_by_one_gives_the_same_study_as_all_at_once():
    made = [one(status, family) for status in ("right", "wrong") for family in (WATER, BRAKE)] * 3
    grown = Study()
    for attempt in made:
        grown.add(attempt)
    whole = Study(made)
    assert (whole.skills, whole.cards, whole.since_new) == (
        grown.skills,
        grown.cards,
        grown.since_new,
    )


def test_a_study_that_follows_a_log_is_as_one_made_from_it_wherever_the_log_grew():
    made = [one(status, family) for status in ("right", "wrong") for family in (WATER, BRAKE)] * 3
    grown = Study()
    for part in (made[:4], made[:4], made[:9], made[2:9], made):  # also in front
        grown.follow(part)
    whole = Study(made)
    assert (whole.skills, whole.cards, whole.times) == (grown.skills, grown.cards, grown.times)


@pytest.mark.parametrize(
    ("last", "short"),
    [
        (one(days_ago=40), "coming back"),
        (one(days_ago=40, hints=1), "with help"),
        (one("close", days_ago=40), "close"),
        (one("wrong", days_ago=40), "went wrong"),
        (one(SHOWN, days_ago=40, tries=0, solution=True), "solution seen"),
        (one(), "least sure"),
    ],
)
def test_a_word_or_two_say_why_a_kind_comes(last, short):
    (only,) = next_of(last, families=[BRAKE])
    assert short == only.short


def test_the_schedule_takes_invented_learners_to_mastery_sooner_than_chance():
    # tests/benchmarks does the same with a thousand.
    ours, chance = needed(20, by_schedule), needed(20, at_random)
    assert 0.8 > median(one / other for one, other in zip(ours, chance, strict=True))


# Practice that follows the study


class Pick:
    """Chance that can be repeated."""

    def __init__(self):
        self.turn = 0

    def __call__(self, n):
        self.turn = self.turn * 48271 % 2147483647 or 48271
        return self.turn % n


def guided(*past, **fields):
    log = list(past)
    return Guided(
        [WATER, BRAKE, MOTOR],
        Pick(),
        lambda told: log.append(attempt_of(told)),
        lambda: log,
        now=lambda: NOW,
        **fields,
    )


def test_the_next_problem_is_the_one_suggested_and_says_why():
    at = guided(one("wrong", MOTOR, days_ago=1))
    assert "motor_power" == at.case.family.name
    assert "You missed this last time, so it comes back soon." == at.why


def test_a_recurring_mistake_brings_a_problem_in_which_it_has_an_answer_of_its_own():
    slip = "motor_power.multiplied_by.motor_efficiency"
    at = guided(*[one("mistake", MOTOR, mistake=slip, days_ago=1)] * 2)
    for _ in range(5):
        if at.case.family is MOTOR:
            assert slip in [mistake.id for mistake in at.case.mistakes]
        at.new()


def test_the_same_kind_does_not_come_twice_in_a_row():
    at = guided(one("wrong", MOTOR, days_ago=1))
    before = at.case.family
    at.new()
    assert before is not at.case.family


def test_an_answer_here_changes_what_comes_next():
    at = guided()
    assert "water_power" == at.case.family.name
    at.answer(str(at.case.answer))
    assert "water_power" != at.next[0].family.name


def test_an_answer_on_another_card_or_page_changes_what_comes_next():
    log = [one("wrong", MOTOR, days_ago=1)]
    at = Guided([WATER, BRAKE, MOTOR], Pick(), past=lambda: log, now=lambda: NOW)
    assert "motor_power" == at.next[0].family.name
    log.append(one(family=MOTOR))
    assert "motor_power" != at.next[0].family.name


def test_a_problem_opened_by_its_code_says_so():
    at = guided()
    at.open(draw(MOTOR, 7).code)
    assert "You opened it by its code." == at.why


def test_units_are_those_of_the_last_problem():
    metric = one()._replace(code=draw(BRAKE, 7, "si").code)
    assert "si" == units_of([one(), metric])
    assert "us" == units_of([one(), metric._replace(code="not a code")][:1])


def test_focused_practice_keeps_to_its_kind_level_and_units():
    at = Focused(MOTOR, 2, "si", pick=Pick())
    for _ in range(3):
        assert (MOTOR, 2, "si") == (at.case.family, at.case.level, at.case.units)
        at.new()


# What a card tells the log


def told(*answers, hints=0):
    heard = []
    clock = iter(range(0, 10_000, 30))
    at = Practice([BRAKE], Pick(), heard.append, lambda: next(clock))
    for _ in range(hints):
        at.hint()
    for answer in answers:
        at.answer(answer)
    return at, heard


def test_each_counted_try_is_told_with_its_time_and_help():
    at, heard = told("1", "what", "2", hints=1)
    kept = [attempt_of(one) for one in heard]
    assert [("1", 1, 30.0, 1), ("2", 2, 60.0, 1)] == [
        (a.typed, a.tries, a.seconds, a.hints) for a in kept
    ]
    assert {(at.case.code, "brake_power", 1)} == {(a.code, a.family, a.level) for a in kept}


def test_a_solution_opened_before_the_right_answer_is_told_once():
    at, heard = told("1")
    at.reveal()
    at.reveal()
    shown = attempt_of(heard[-1])
    assert 2 == len(heard)
    assert (SHOWN, 1, True) == (shown.status, shown.tries, shown.solution)


def test_a_solution_read_after_the_right_answer_is_not_told():
    at, heard = told()
    at.answer(str(at.case.answer))
    at.reveal()
    assert ["right"] == [attempt_of(one).status for one in heard]


def test_what_could_not_be_kept_is_said_with_the_answer():
    at = Practice([BRAKE], Pick(), lambda told: "This was not saved. The disk is full.")
    assert "This was not saved. The disk is full." == at.answer("1").fault
    assert "This was not saved. The disk is full." == at.reveal()
