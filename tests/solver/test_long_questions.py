"""A long question is a lead-in and a table of readings; as one text it still has everything."""

import pytest

from solver import FAMILIES, draw
from solver.render.text import case_json, case_text, question_rows
from workbook.practice import question_html
from workbook.ui.printing import asked

from .drawn import PROBLEMS, each

MOST_WORDS = 60
TABLED = [
    pytest.param(family, number, units, id=f"{family.name}-{number}-{units}")
    for family in FAMILIES
    for number, level in enumerate(family.levels, 1)
    if level.table
    for units in ("us", "si")
]


@each(PROBLEMS)
def test_no_question_has_more_than_sixty_words_beside_its_table(problem):
    family, level, units = problem
    for seed in range(3):
        lead = draw(family, seed, units, level).lead
        assert len(lead.split()) <= MOST_WORDS, lead


def test_there_are_such_questions():
    assert len(TABLED) >= 2 * 10


@pytest.mark.parametrize(("family", "level", "units"), TABLED)
def test_the_whole_question_and_every_view_have_each_row(family, level, units):
    case = draw(family, 5, units, level)
    assert len(case.table) == len(family.levels[level - 1].table)
    whole = case.question
    assert whole.startswith(case.lead)
    assert whole.endswith(".")
    text, card = case_text(case, solution=False), question_html(case, case.choices)
    sheet = asked(case, case.choices, table=False)
    assert whole == case_json(case)["question"]
    for label, value in case.table:
        assert f"{label}: {value}".lower() in whole.lower()
        assert f"  {label}: {value}" in text
        assert value in card
        assert value in [shown for _, shown in sheet["given"]]


@pytest.mark.parametrize(("family", "level", "units"), TABLED)
def test_a_row_stands_once_in_the_table_of_a_card(family, level, units):
    rows = question_rows(draw(family, 5, units, level))
    assert len(rows) == len(set(rows))


def test_a_short_question_has_no_table_of_its_own():
    case = draw("water_power", 7)
    assert () == case.table
    assert case.lead == case.question
