"""Problem pictures in Chromium: no two labels touch, none leaves its picture, and all of it is large enough and low enough."""

import pytest

from solver import FAMILIES, draw
from solver.render.problem import drawing_for, picture_of
from solver.render.problem.sheet import SHEET
from tests.labels import LABELS, touching

LEVELS = [(family, level) for family in FAMILIES for level in range(1, len(family.levels) + 1)]
HIGHEST = {338: 220, 720: 220}  # px by width
READ = 390  # px of a curve that is read: the picture is the question
READ_TAGS = {family.tag for family in FAMILIES if family.name in SHEET.families}
MARKED = 38  # px for the lines that say where to look
STYLE = "<style>body { margin: 0; font-family: DejaVu Sans, sans-serif } div { width: %spx; margin: 0 0 9px 9px }</style>"


def pictures(units: str, mark: bool, answered: bool = False) -> dict[str, str]:
    """The pictures of all problems of one seed, by code."""
    found = {}
    for family, level in LEVELS:
        case = draw(family, 3 + 2 * mark + answered, units, level)
        step = case.steps[level % len(case.steps)].name if mark else ""
        drawing = picture_of(case, "" if step == "choice" else step, answered)
        if drawing:
            found[case.code] = drawing
    return found


@pytest.mark.browser
@pytest.mark.parametrize("width", HIGHEST)
@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("how", ["plain", "marked", "answered"])
def test_labels_of_a_problem_stand_clear_of_each_other(page, units, width, how):
    drawn = pictures(units, how == "marked", how == "answered")
    page.set_viewport_size({"width": width + 18, "height": 800})
    page.set_content(STYLE % width + "".join(f"<div>{one}</div>" for one in drawn.values()))
    found = page.evaluate(LABELS.replace("'svg'", "'svg.w2w-problem-picture'"))
    assert len(drawn) == len(found)
    met = {
        code: pairs
        for code, one in zip(drawn, found, strict=True)
        if (pairs := touching(one["labels"]))
    }
    assert {} == met
    for code, one in zip(drawn, found, strict=True):
        for label in one["labels"]:
            assert label["size"] >= 13, (code, label)
            assert label["left"] >= -1, (code, label)
            assert label["right"] <= one["width"] + 1, (code, label)
            assert -1 <= label["top"], (code, label)
            assert label["bottom"] <= label["tall"] + 2, (code, label)
            most = READ if code.partition("-")[0] in READ_TAGS else HIGHEST[width]
            assert label["tall"] <= most + (MARKED if how == "marked" else 0), code


@pytest.mark.browser
def test_axe_finds_no_fault_in_a_picture_of_each_drawing(page, axe):
    cases = [draw(family, 3, "us", level) for family, level in LEVELS]
    one_each = {drawing.title: case for case in cases if (drawing := drawing_for(case))}
    page.set_content("".join(map(picture_of, one_each.values())))
    assert [] == axe(page, "svg.w2w-problem-picture")
