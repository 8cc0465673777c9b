"""Question, picture, answer and button are seen without scrolling, on a laptop and on a phone.

Every family at every level is laid out by the workbook's own styles and script, and measured.
"""

import json

import pytest

from solver import FAMILIES, draw
from workbook.practice import answer_label, question_html, title_html
from workbook.practice.view import above_html, picture_html
from workbook.ui.answer import SCRIPT
from workbook.ui.pieces import css

pytestmark = pytest.mark.browser

BAR = 48  # px: the bar above the page
SIDES = 15  # px: what JupyterLab leaves beside a card
SHARE = 0.9
CASES = [
    draw(family, 7, "us", level)
    for family in FAMILIES
    for level in range(1, len(family.levels) + 1)
]


def laid_out(case):
    """A card as far as its answer, whose script finds its place by the code."""
    shown = (
        above_html(case, number=4),
        title_html(case),
        question_html(case, pictured=True),
        picture_html(case),
    )
    asks = {"label": answer_label(case), "choices": list(case.choices), "number": True, "text": ""}
    asks["ordered"] = case.ordered
    place = f"<div class='w2w-answering'><div class='asked-here' id='{case.code}'></div></div>"
    return f"<div class='w2w-panel w2w-card'>{''.join(shown)}{place}</div>", asks


@pytest.mark.parametrize(("width", "height"), [(1366, 768), (390, 844)])
def test_nine_problems_in_ten_are_seen_whole_with_their_button(page, width, height):
    cards = {case.code: laid_out(case) for case in CASES}
    page.set_viewport_size({"width": width, "height": height})
    body = "".join(html for html, _ in cards.values())
    page.set_content(f'<body style="margin: 0 {SIDES}px; font: 16px sans-serif">{css()}{body}')
    tall = page.evaluate(MEASURE, [SCRIPT, {code: asks for code, (_, asks) in cards.items()}])
    over = {code: px for code, px in tall.items() if px + BAR > height}
    share = 1 - len(over) / len(cards)
    print(f"\n{width} x {height}: {share:.1%} of {len(cards)} problems, over: {json.dumps(over)}")
    assert len(cards) == len(tall)
    assert SHARE <= share
    # What is read off a picture has to be on the screen with it.
    assert [] == [case.code for case in CASES if case.pictured and case.code in over]


# Each card's height from its top to the foot of its button, by its code.
MEASURE = """async ([script, asked]) => {
  const { default: { render } } = await import(
    URL.createObjectURL(new Blob([script], { type: "text/javascript" })));
  const tall = {};
  for (const place of document.querySelectorAll(".asked-here")) {
    const state = { asked: asked[place.id], main: "Check", focus_asked: 0 };
    const model = { get: (name) => state[name], set: () => {}, send: () => {}, on: () => {}, off: () => {} };
    render({ model, el: place });
    const top = place.closest(".w2w-card").getBoundingClientRect().top;
    tall[place.id] = Math.round(place.querySelector("button").getBoundingClientRect().bottom - top);
  }
  return tall;
}"""
