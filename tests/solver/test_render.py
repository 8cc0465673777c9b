"""A case as text, HTML and JSON: whole, escaped, and at full precision where programs read it."""

import json
import re
from html.parser import HTMLParser
from xml.etree import ElementTree

import pytest

from solver import draw, grade
from solver.algebra.expression import Known
from solver.engine.steps import Step
from solver.own.work import work
from solver.render.html import formula_html, rule_html, step_html
from solver.render.text import (
    case_json,
    case_text,
    given_rows,
    steps_text,
    verdict_json,
    work_json,
    work_text,
)
from solver.topics.formulas import FORMULAS
from solver.units.show import exact, with_unit

from .drawn import IN_TURN, each, seeds

BRAKE = draw("brake_power", 7, level=2)
NASTY = """<script>alert("x")</script> & 'quotes' {braces} $5"""


def cases(problem, count: int = 5):
    family, level, units = problem
    return [draw(family, seed, units, level) for seed in seeds(count)]


def test_a_problem_for_the_terminal_has_question_givens_steps_and_code():
    case = draw("water_power", 7)
    expected = """\
Water horsepower from flow and head (level 1)

{question}

  flow: 1,750 gpm
  total dynamic head (TDH): 71.5 ft

Step 1: water horsepower (WHP)
  water horsepower = flow × total dynamic head / 3,960
  water horsepower = 1,750 gpm × 71.5 ft / (3,960 gpm·ft/hp) = 31.6 hp
  Pumping more water, or pumping it higher, takes more power. The constant turns flow times head into water horsepower.

Code: WP-1U2-7-DHA"""
    assert expected.format(question=case.question) == case_text(case)


def test_the_solution_may_be_held_back():
    text = case_text(BRAKE, solution=False)
    assert "Step" not in text
    assert BRAKE.question in text
    assert text.endswith(f"Code: {BRAKE.code}")


def test_choices_are_numbered_for_the_terminal():
    case = draw("which_power", 7)
    for number, choice in enumerate(case.choices, 1):
        assert f"  {number}) {choice}\n" in case_text(case)


@each(IN_TURN)
def test_each_step_is_numbered_named_and_told_why(problem):
    for case in cases(problem, 3):
        text = steps_text(case.steps, case.known, case.given, case.units)
        heads = re.findall(r"^Step (\d+)(?:: \S|$)", text, re.MULTILINE)
        assert [str(number) for number in range(1, len(case.steps) + 1)] == heads
        assert all(step.why in text for step in case.steps)


@each(IN_TURN)
def test_json_keeps_every_figure_of_every_value(problem):
    for case in cases(problem):
        found = json.loads(json.dumps(case_json(case)))
        assert case.answer == found["answer"]["value"]
        assert dict(case.given) == {n: row["value"] for n, row in found["given"].items()}
        assert [s.value for s in case.steps] == [row["value"] for row in found["steps"]]
        assert [m.value for m in case.mistakes] == [row["value"] for row in found["mistakes"]]
        assert (case.low, case.high) == tuple(found["accepted"].values())


@each(IN_TURN)
def test_json_has_no_number_that_json_does_not_know(problem):
    for case in cases(problem):
        json.dumps(case_json(case), allow_nan=False)
        json.dumps(verdict_json(grade(case, "1")), allow_nan=False)


def test_own_numbers_in_json_have_null_for_what_cannot_be_worked():
    found = json.loads(json.dumps(work_json(work({"flow": "450 gpm"}, "water_power"))))
    assert found["answer"] is None
    assert [] == found["steps"]


class Text(HTMLParser):
    """The words of a piece of HTML, as a browser would show them."""

    def __init__(self):
        super().__init__()
        self.words: list[str] = []

    def handle_data(self, data: str):
        self.words.append(data)


def words_of(html: str) -> str:
    reader = Text()
    reader.feed(html)
    return "".join(reader.words)


@each(IN_TURN)
def test_a_step_is_well_formed_html_and_holds_its_result_and_why(problem):
    for case in cases(problem, 3):
        for number, step in enumerate(case.steps, 1):
            html = step_html(number, step, case.known, case.given, case.units)
            root = ElementTree.fromstring(html)
            assert "li" == root.tag
            assert f"Step {number}" in words_of(html)
            assert step.why in words_of(html)
            ElementTree.fromstring(rule_html(step, case.units))


@pytest.mark.parametrize("units", ["us", "si"])
def test_every_formula_is_well_formed_html_and_is_heard_in_words(units):
    for formula in FORMULAS:
        if units in formula.systems:
            root = ElementTree.fromstring(formula_html(formula, units))
            assert " = " in root.attrib["aria-label"]


def test_a_squared_quantity_has_brackets_on_the_page_so_that_its_unit_is_no_square():
    # 7 ft across squared is 49 ft²; "7 ft²" is an area of 7.
    case = draw("well_volume", 1, "us", 2)
    html = step_html(1, case.steps[0], case.known, case.given, case.units)
    diameter = with_unit(exact(case.given["well_diameter"]), "ft")
    assert f"(wet well diameter)2= 0.785 × ({diameter})2" in words_of(html)


@pytest.mark.parametrize(
    "step",
    [
        Step("choice", 1.0, "choice", NASTY, None, NASTY, NASTY),
        Step("brake_power", 1.0, "hp", NASTY, Known("water_power")),
    ],
    ids=["judgement", "formula"],
)
def test_words_with_marks_of_html_in_them_are_shown_and_not_obeyed(step):
    html = step_html(1, step, {"water_power": 1.0}, {}, "us")
    assert "<script" not in html
    assert NASTY in words_of(html)
    ElementTree.fromstring(html)


def test_a_rule_with_marks_of_html_in_it_is_shown_and_not_obeyed():
    html = rule_html(Step("choice", 1.0, "choice", "It is so.", None, NASTY), "us")
    assert "<script" not in html
    assert NASTY == words_of(html)


def test_givens_stand_in_the_order_of_the_question_whole_and_with_units():
    assert [name for name, _ in given_rows(BRAKE.given, "us")] == [
        "flow",
        "total dynamic head (TDH)",
        "pump efficiency",
    ]
    for (_, shown), value in zip(given_rows(BRAKE.given, "us"), BRAKE.given.values(), strict=True):
        assert f"{value:,.10g}" in shown


def test_own_numbers_for_the_terminal_end_with_what_is_wrong():
    text = work_text(work({"water_power": "13 hp", "brake_power": "10 hp"}, "pump_efficiency"))
    assert "Step 1: pump efficiency" in text
    assert "The pump efficiency is 130%." in text
    assert any(
        line.startswith("The pump efficiency comes to 130%.") for line in text.splitlines()[-2:]
    )
