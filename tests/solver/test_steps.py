"""Steps as on a whiteboard, the same chain in one line, and hints that begin with a question."""

import re

import pytest

from solver import draw
from solver.algebra.expression import Known
from solver.algebra.tree import compiled, names
from solver.engine.telling import hints_of
from solver.render.text import one_line_text
from solver.units.show import figures

from .drawn import NUMERIC, NUMERIC_IN_TURN, PROBLEMS, each


@each(NUMERIC)
def test_each_step_uses_only_what_stands_before_it_and_the_last_is_the_answer(problem):
    family, level, units = problem
    case = draw(family, 4, units, level)
    known = dict(case.given)
    for step in case.steps:
        assert set(names(step.expr)) <= set(known), step.name
        known[step.name] = compiled(step.expr, units)(known)
        assert step.value == pytest.approx(known[step.name], rel=1e-12)
    assert (case.asked, case.answer) == (step.name, pytest.approx(step.value, rel=1e-12))


@each(NUMERIC)
def test_the_one_line_gives_the_answer_from_what_is_given(problem):
    family, level, units = problem
    case = draw(family, 4, units, level)
    if case.one_line is not None:
        assert set(names(case.one_line)) <= set(case.given)
        assert case.answer == pytest.approx(compiled(case.one_line, units)(case.given), rel=1e-12)


def test_a_chain_stands_in_one_line_as_on_a_formula_sheet():
    case = draw("brake_power", 7, "us", 2)
    assert one_line_text(case).endswith("/ (3,960 × pump efficiency (as a decimal))")
    assert "" == one_line_text(draw("water_power", 7))


@each(NUMERIC)
def test_no_step_only_gives_another_name_to_the_same_number(problem):
    family, level, units = problem
    for step in draw(family, 4, units, level).steps:
        assert not isinstance(step.expr, Known), step.name


def test_a_link_that_only_renames_is_no_step_and_the_water_side_comes_first():
    metric = draw("flow_from_power", 7, "si", 3)
    assert ["head", "brake_power", "water_power", "flow"] == [s.name for s in metric.steps]
    us = draw("pump_efficiency", 7, "us", 3)
    order = [step.name for step in us.steps]
    assert ["head", "water_power", "motor_power", "brake_power", "pump_efficiency"] == order


def figures_of(text):
    return set(re.findall(r"\d[\d,.]*\d|\d", text))


@each(PROBLEMS)
def test_the_first_hint_is_a_question_with_no_formula_and_nothing_of_the_answer(problem):
    family, level, units = problem
    for seed in (4, 9):
        case = draw(family, seed, units, level)
        first, *others = hints_of(case)
        assert first.says.endswith("?")
        assert () == first.steps
        assert not any(mark in first.says for mark in ("×", "÷", "√", " = ", " / ", "^"))
        results = {figures(step.value, step.unit) for step in case.steps}
        assert set() == figures_of(first.says) & results
        assert not any(choice.rstrip(".") in first.says for choice in case.choices)
        assert others


@each(NUMERIC_IN_TURN)
def test_the_first_hints_have_no_formula_and_no_hint_has_the_result(problem):
    family, level, units = problem
    case = draw(family, 4, units, level)
    first, way, formulas, last = hints_of(case)
    assert first.says.endswith("?")
    assert not any(mark in first.says + way.says for mark in ("×", " = "))
    assert case.steps == formulas.steps == last.steps
    assert (False, True) == (formulas.with_numbers, last.with_numbers)
