"""Choices: one right, the others apart from it and from each other, in an order the code fixes."""

from collections import Counter
from itertools import combinations

from solver import case_from_code, draw, grade
from solver.engine.choices import choices_of
from tests.solver.drawn import IN_TURN, JUDGEMENTS, NUMERIC, NUMERIC_IN_TURN, ORDERS, each, seeds

EACH = seeds(6)


def cases(problem):
    family, level, units = problem
    return [draw(family, seed, units, level) for seed in EACH]


def band(case, choice):
    """Where an answer would be taken for this choice: the solver's own bands."""
    if not choice.mistake:
        return case.low, case.high
    if choice.mistake == "decimal_point":
        shift = choice.value / case.answer
        return tuple(sorted((case.low * shift, case.high * shift)))
    return next((m.low, m.high) for m in case.mistakes if m.id == choice.mistake)


@each([problem for problem in IN_TURN if problem not in ORDERS])
def test_exactly_one_choice_is_right_and_every_text_differs(problem):
    for case in cases(problem):
        choices = choices_of(case)
        assert 1 == sum(not choice.mistake for choice in choices)
        assert len(choices) == len({choice.text for choice in choices})
        assert all(choice.says for choice in choices if choice.mistake)


@each(NUMERIC_IN_TURN)
def test_a_number_has_four_choices_and_no_two_within_each_other_s_band(problem):
    for case in cases(problem):
        choices = choices_of(case)
        assert 4 == len(choices)
        bands = [band(case, choice) for choice in choices]
        for (low, high), (other_low, other_high) in combinations(bands, 2):
            assert high < other_low or other_high < low, case.code


@each(NUMERIC_IN_TURN)
def test_the_text_of_a_choice_typed_as_an_answer_is_graded_as_the_choice_is(problem):
    for case in cases(problem):
        for choice in choices_of(case):
            verdict = grade(case, choice.text)
            assert (verdict.status == "right") == (not choice.mistake), (case.code, choice)
            assert verdict.counts


@each(JUDGEMENTS)
def test_a_judgement_keeps_its_own_choices_and_their_order(problem):
    for case in cases(problem):
        choices = choices_of(case)
        assert list(case.choices) == [choice.text for choice in choices]
        right = next(n for n, choice in enumerate(choices, 1) if not choice.mistake)
        assert case.answer == right


@each(NUMERIC[::7])
def test_the_code_fixes_the_order(problem):
    for case in cases(problem):
        assert choices_of(case) == choices_of(case_from_code(case.code))


def test_the_right_choice_stands_in_each_place_as_often():
    places = Counter()
    for family, level, units in NUMERIC:
        for seed in (1, 2, 3, 4):
            choices = choices_of(draw(family, seed, units, level))
            places[next(n for n, choice in enumerate(choices) if not choice.mistake)] += 1
    total = sum(places.values())
    # A quarter each; four standard deviations of so many draws.
    width = 4 * (total * 0.25 * 0.75) ** 0.5
    assert all(abs(places[place] - total / 4) < width for place in range(4)), places


def test_the_mistakes_are_told_apart_from_an_answer_that_nobody_would_believe():
    # Choices from known mistakes are within a factor of twelve where there are enough of them.
    case = case_from_code("BP-2U2-7-TBH")
    assert all(1 / 12 <= choice.value / case.answer <= 12 for choice in choices_of(case))
