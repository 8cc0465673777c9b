"""Steps put in order in a browser: by drag, by buttons, by keys, by letters. Only the script, on an empty page."""

import pytest

from solver import draw
from workbook.practice import answer_label, question_html, title_html
from workbook.ui.answer import SCRIPT
from workbook.ui.pieces import css

pytestmark = pytest.mark.browser

CASE = draw("lock_and_try", 3, "us", 2)  # seven steps, A to G
ASKED = {
    "label": answer_label(CASE), "choices": list(CASE.choices),
    "number": False, "text": "", "ordered": True, "count": 1,
}  # fmt: skip
SHOW = """async ([script, asked]) => {
  const { default: { render } } = await import(
    URL.createObjectURL(new Blob([script], { type: "text/javascript" })));
  const state = { asked, main: "Check", focus_asked: 0 };
  window.sent = [];
  const model = {
    get: (name) => state[name], set: (name, value) => { state[name] = value; },
    send: (told) => window.sent.push(told), on: () => {}, off: () => {},
  };
  render({ model, el: document.querySelector(".asked-here") });
}"""


@pytest.fixture(params=[(1366, 768), (390, 844)], ids=["laptop", "phone"])
def shown(page, request):
    width, height = request.param
    page.set_viewport_size({"width": width, "height": height})
    page.set_content(
        f"<body>{css()}<div class='w2w-panel w2w-card'>{title_html(CASE)}"
        f"{question_html(CASE)}<div class='w2w-answering'><div class='asked-here'></div></div></div>"
    )
    page.evaluate(SHOW, [SCRIPT, ASKED])
    return page


def order(page):
    return "".join(page.eval_on_selector_all("li", "all => all.map(row => row.dataset.letter)"))


def typed(page):
    return page.get_by_label(ASKED["label"]).input_value()


def test_a_step_is_dragged_moved_by_its_buttons_and_by_arrow_keys(shown):
    rows, heard = shown.locator("li"), shown.get_by_role("status")
    assert "" == typed(shown)  # the order in which they come is nobody's answer
    grip, top = shown.locator(".w2w-grip").last.bounding_box(), rows.first.bounding_box()
    shown.mouse.move(grip["x"] + 5, grip["y"] + 9)
    shown.mouse.down()
    shown.mouse.move(grip["x"] + 5, top["y"] + 4, steps=12)
    shown.mouse.up()
    assert ("GABCDEF", "G A B C D E F") == (order(shown), typed(shown))
    rows.nth(2).get_by_role("button", name="Move up").click()
    assert ("GBACDEF", "B is now number 2 of 7.") == (order(shown), heard.inner_text())
    shown.keyboard.press("ArrowDown")
    shown.keyboard.press("ArrowDown")  # the focus goes along with the step
    assert "GACBDEF" == order(shown)
    rows.first.get_by_role("button", name="Move up").click()  # it is at the top already
    assert "G A C B D E F" == typed(shown)


def test_letters_typed_move_the_steps_and_enter_sends_them_once(shown):
    box = shown.get_by_label(ASKED["label"])
    box.fill("dc")
    assert "DCABEFG" == order(shown)
    box.press("Enter")
    sent = shown.evaluate("window.sent")
    assert [("press", "dc")] == [
        (told["kind"], told["text"]) for told in sent if told["kind"] == "press"
    ]


def test_each_button_is_large_enough_for_a_thumb_and_is_told_by_its_step(shown):
    for button in shown.locator("li button").all():
        box = button.bounding_box()
        assert box["width"] >= 44
        assert box["height"] >= 44
    named = shown.get_by_role("button", name=f"Move down: {CASE.choices[0]}")
    assert 1 == named.count()
