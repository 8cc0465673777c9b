"""Common slips of whole chains are named, over all families; none is taken for a right answer."""

import re
from collections import Counter
from math import isclose

import pytest

from solver import Case, draw, grade
from solver.engine.choices import choices_of
from solver.engine.common_slips import common_slips
from solver.engine.mistake import CLOSE, THIS, Mistake
from solver.engine.plan import find_plan
from solver.engine.telling import told as told_as

from .drawn import NUMERIC, NUMERIC_IN_TURN, each
from .slips_by_hand import KINDS, Slipped, slips_of
from .test_mistakes import faults, sentences

LEAST = {"two slips together": 0.75}  # of the others at least nine in ten
EACH = (3, 8)


def cases(problem) -> list[Case]:
    family, level, units = problem
    return [draw(family, seed, units, level) for seed in EACH]


def told(case: Case, slipped: Slipped) -> Mistake | None:
    """The mistake that an answer is told to be, where it fits the slip that was made."""
    verdict = grade(case, f"{slipped.value:.4g}")
    if verdict.status != "mistake":
        return None
    every = [one for mistake in case.mistakes for one in (mistake, *mistake.others)]
    found = next(one for one in every if one.id == verdict.mistake)
    for one in (found, *found.others):
        same_sum = isclose(one.value, slipped.value, rel_tol=1e-6)
        if same_sum or any(part in one.id for part in KINDS[slipped.kind]):
            return found
    return None


def test_nine_in_ten_common_slips_are_named_by_what_was_done():
    made, named_right = Counter(), Counter()
    for problem in NUMERIC:
        for case in cases(problem):
            for slipped in slips_of(case):
                made[slipped.kind] += 1
                named_right[slipped.kind] += told(case, slipped) is not None
    assert set(KINDS) == set(made)
    for kind, count in made.items():
        assert named_right[kind] >= LEAST.get(kind, 0.9) * count, (kind, named_right[kind], count)
    assert named_right.total() >= 0.95 * made.total()


@each(NUMERIC_IN_TURN)
def test_no_common_slip_is_near_the_right_answer_or_changes_a_mistake_of_one_link(problem):
    for case in cases(problem):
        single = len(case.single_mistakes)
        first = [(one.id, one.value, one.low, one.high) for one in case.mistakes[:single]]
        assert first == [(one.id, one.value, one.low, one.high) for one in case.single_mistakes]
        for one in case.mistakes[single:]:
            assert one.high < case.low or one.low > case.high, (case.code, one.id)
            assert one.low <= one.value <= one.high
            assert not isclose(one.value, case.answer, rel_tol=CLOSE), (case.code, one.id)
        assert len({one.id for one in case.mistakes}) == len(case.mistakes)


@each(NUMERIC_IN_TURN)
def test_a_common_slip_is_told_in_short_plain_sentences(problem):
    family, level, units = problem
    given = family.level(level)
    plan = find_plan(given.given, family.asks(given), family.formulas, units)
    for slip in common_slips(plan).values():
        did = slip.did.replace(THIS, "Your 12.5")
        assert "" == faults(f"{did} {slip.why}"), f"{slip.id}: {did} {slip.why}"
        assert 1 == len(sentences(did)), f"{slip.id}: {did}"
        assert slip.why, f"{slip.id} has no reason"


@each(NUMERIC_IN_TURN[::5])
def test_choices_come_of_the_mistakes_of_one_link_so_that_old_exams_stay(problem):
    for case in cases(problem):
        single = {one.id for one in case.single_mistakes}
        assert {choice.mistake for choice in choices_of(case)} <= {*single, "decimal_point", ""}


def test_two_causes_of_one_number_are_both_told_the_likelier_first():
    drawn = (case for problem in NUMERIC for case in cases(problem))
    case, one = next((c, m) for c in drawn for m in c.mistakes if m.others)
    says = grade(case, f"{one.others[0].value:.6g}").says
    also = re.search(r"You also get this number if you |It is also the right answer in ", says)
    assert says.index(one.did.removeprefix(THIS)) < also.start()


def test_two_ways_to_say_one_slip_are_told_once():
    """Horsepower where kilowatts are asked is the 0.746 left out, whatever the numbers."""
    case = draw("input_power", 7, "us", 2)
    left_out = next(m for m in case.mistakes if m.id.endswith("left_out.kilowatts_per_horsepower"))
    assert "hp" not in {m.id.rpartition(".")[2] for m in (*case.mistakes, *left_out.others)}


@pytest.mark.parametrize(
    ("kind", "level", "units", "slip", "says"),
    [
        ("motor_power", 2, "us", "both.water_power-left_out-water_power_constant.brake_power-left_out",
         "You left out the 3,960 and the pump efficiency. Divide by both. "),
        ("motor_power", 2, "us", "both.brake_power-multiplied_by-pump_efficiency.motor_power-left_out",
         "You multiplied by the pump efficiency and left out the motor efficiency. Divide by both. "),
        ("input_power", 2, "us", "both.brake_power-left_out-pump_efficiency.input_power-left_out",
         "You left out the pump efficiency and the 0.746. Divide by the pump efficiency and multiply by 0.746. "),
        ("total_head", 3, "us", "head.left_out.minor_loss", "You left out the minor losses. Add them in. "),
        ("total_head", 2, "us", "head.left_out.friction_head", "You left out the friction loss. Add it in. "),
        ("c_factor", 1, "si", "left_out.hazen_williams",
         "You left out the Hazen-Williams constant. Divide by the Hazen-Williams constant. "),
    ],
)  # fmt: skip
def test_a_slip_is_said_as_a_person_says_it(kind, level, units, slip, says):
    case = draw(kind, 7, units, level)
    every = [one for mistake in case.mistakes for one in (mistake, *mistake.others)]
    found = next(one for one in every if slip in one.id)
    assert says in told_as(case, found, found.value)


@each(NUMERIC_IN_TURN)
def test_no_number_out_of_proportion_is_told_as_a_computer_writes_it(problem):
    for case in cases(problem):
        for mistake in case.mistakes:
            for one in (mistake, *mistake.others):
                says = told_as(case, one, one.value)
                assert [] == re.findall(r"\de[+-]?\d|\d(?:,\d{3}){3}|0\.0000000", says), says


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("9.495", "Your 9.495 is right in kilowatts. The question asks for horsepower."),
        ("8.667", "So far so good: 2,200 gpm × 15.6 ft / 3,960 = 8.667 hp."),
    ],
)
def test_what_was_done_is_said_with_the_learner_s_numbers(typed, says):
    case = draw("motor_power", 7, "us", 2)
    assert says in grade(case, typed).says
