"""A problem's picture: every given in it, nothing that is asked before it is answered, and words for it."""

import re
from xml.etree import ElementTree

import pytest

from solver import FAMILIES, draw
from solver.render.problem import drawing_for, picture_of
from solver.render.problem.chosen import DRAWINGS
from solver.topics.tables import data_files
from solver.units.show import exact, figures, with_unit
from solver.vocabulary import QUANTITIES, quantity_named

from .drawn import SEEDS

SVG = "{http://www.w3.org/2000/svg}"
LEVELS = [(family, level) for family in FAMILIES for level in range(1, len(family.levels) + 1)]
EACH = min(SEEDS, 3)


def pictured(units: str, each: int = EACH):
    """Problems of every family and level that have a picture."""
    for family, level in LEVELS:
        for seed in range(each):
            case = draw(family, seed, units, level)
            if drawing_for(case):
                yield case


def said(drawing: str) -> str:
    """All that a picture shows, in letters, each text in bars: "|MHP|= ?|"."""
    root = ElementTree.fromstring(drawing)
    return "|".join(["", *("".join(text.itertext()) for text in root.iter(f"{SVG}tspan")), ""])


def words(drawing: str) -> str:
    return ElementTree.fromstring(drawing).find(f"{SVG}desc").text


def given(case, name: str) -> str:
    unit = quantity_named(name).unit(case.units)
    return with_unit(exact(case.given[name], unit), unit)


@pytest.mark.parametrize("units", ["us", "si"])
def test_every_given_is_in_the_picture_with_its_unit_and_in_its_words(units):
    for case in pictured(units):
        drawing = picture_of(case)
        shown, told = said(drawing), words(drawing)
        for name in case.given:
            assert f"|{given(case, name)}|" in shown, (case.code, name)
            assert given(case, name) in told, (case.code, name)


@pytest.mark.parametrize("units", ["us", "si"])
def test_the_answer_is_a_question_mark_until_it_is_answered(units):
    for case in pictured(units):
        if case.choices:
            assert "?" not in said(picture_of(case))
            continue
        answer = with_unit(figures(case.answer, case.unit), case.unit)
        drawing = picture_of(case)
        before, after = said(drawing), said(picture_of(case, answered=True))
        assert "|?|" in before, case.code
        assert f"|{answer}|" in after, case.code
        if answer not in [given(case, name) for name in case.given]:
            assert f"|{answer}|" not in before, case.code
            assert f" {answer}" not in words(drawing), case.code


def shape(drawing: str) -> str:
    """A picture without what it says."""
    return re.sub(r"<desc.*?</desc>|<text.*?</text>|<title.*?</title>", "", drawing)


def test_nothing_can_be_measured_on_a_band():
    looks = {
        shape(picture_of(draw("brake_power", seed, "us", 1), name="one")) for seed in range(EACH)
    }
    assert 1 == len(looks)


@pytest.mark.parametrize("units", ["us", "si"])
def test_every_step_of_a_problem_can_be_marked(units):
    for case in pictured(units, 1):
        assert "Look here" not in said(picture_of(case))
        for step in case.steps:
            if step.name == "choice":
                continue
            drawing = picture_of(case, mark=step.name)
            label = quantity_named(step.name).label(units)
            lines = said(drawing).replace("|Look here:|", "|Look here: ")
            assert f"|Look here: {label}|" in lines.replace(": |", ": "), (case.code, step.name)


def test_a_mark_is_at_the_machine_that_the_step_passes():
    case = draw("motor_power", 1, "us", 2)
    boxes = [picture_of(case, mark=step.name).count("stroke-dasharray") for step in case.steps]
    assert [1, 1, 1] == boxes


@pytest.mark.parametrize("drawing", DRAWINGS, ids=lambda drawing: str(drawing.title))
def test_a_drawing_names_quantities_that_there_are(drawing):
    assert set() == {*drawing.places, *drawing.named} - set(QUANTITIES)
    assert set(drawing.named) <= set(drawing.places)


def test_a_picture_has_a_title_and_words_of_its_own():
    case = draw("brake_power", 1)
    one, other = picture_of(case, name="one"), picture_of(case, name="other")
    assert 'aria-labelledby="one-title one-words"' in one
    assert 'id="other-words"' in other
    assert 'role="img"' in one


def test_families_with_a_picture(capsys):
    in_words = data_files(".toml")
    may = {family.name for family in FAMILIES} - in_words.keys()
    with_one = {case.family.name for case in pictured("us", 1)} & may
    with capsys.disabled():
        print(f"\n{len(with_one)} of {len(may)} families have a picture")
    assert len(with_one) > 0.8 * len(may)
