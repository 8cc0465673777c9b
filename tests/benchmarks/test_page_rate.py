"""How soon a page answers: a try and its result, a slider and its picture, against bare widgets.

The times are the browser's own, from the key to the first frame that shows what came of it. The bare
widgets are a box and a slider of ipywidgets whose every change is written into one line of HTML, on a
notebook in the same JupyterLab. The goals are 0.2 s for a result and 80 ms for a step of a slider.
"""

from statistics import median

import nbformat
import pytest

pytestmark = [pytest.mark.browser, pytest.mark.benchmark(group="page")]

TRIES, STEPS = 12, 20  # after two that do not count
BARE = """import ipywidgets
line, box, slider = ipywidgets.HTML("0"), ipywidgets.Text(), ipywidgets.IntSlider(0)
box.on_submit(lambda sent: setattr(line, "value", "read " + sent.value))
slider.observe(lambda change: setattr(line, "value", str(change.new)), "value")
ipywidgets.VBox([line, box, slider])"""
# Resolves to the ms from the next key that is pressed to the frame that shows a part changed.
WATCH = """part => {
  const before = part.innerHTML;
  let pressed = null;
  window.addEventListener("keydown", () => { pressed ??= performance.now(); }, {capture: true, once: true});
  window.took = new Promise(resolve => {
    const seen = new MutationObserver(() => {
      if (pressed === null || !part.textContent.trim() || part.innerHTML === before) return;
      seen.disconnect();
      requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - pressed)));
    });
    seen.observe(part, {subtree: true, childList: true, characterData: true, attributes: true});
  });
}"""


def after_key(page, key: str, part) -> float:
    """Milliseconds from a key to what it changes in a part of the page."""
    part.evaluate(WATCH)
    page.keyboard.press(key)
    return page.evaluate("window.took")


def tries(page, box, part) -> float:
    """The middle time of some answers, each another number."""
    took = []
    for number in range(2 + TRIES):
        box.fill(f"{1000 + number}")
        took.append(after_key(page, "Enter", part))
        page.wait_for_timeout(300)
    return median(took[2:])


def steps(page, handle, part) -> float:
    """The middle time of some steps of a slider."""
    handle.focus()
    took = []
    for _ in range(2 + STEPS):
        took.append(after_key(page, "ArrowRight", part))
        page.wait_for_timeout(100)
    return median(took[2:])


@pytest.fixture(scope="module")
def bare(workbook_server, new_page):
    """The middle times of a bare box and a bare slider."""
    kernel = {"name": "python3", "display_name": "Python 3", "language": "python"}
    cells = [nbformat.v4.new_code_cell(BARE)]
    notebook = nbformat.v4.new_notebook(cells=cells, metadata={"kernelspec": kernel})
    nbformat.write(notebook, workbook_server.folder / "bare.ipynb")
    with new_page() as page:
        page.goto(workbook_server.url("bare.ipynb"))
        page.locator(".jp-CodeCell .cm-content").first.click()
        slider = page.locator(".noUi-handle").first
        while not slider.is_visible():  # a key that comes before the program is lost
            page.keyboard.press("Control+Enter")
            page.wait_for_timeout(1000)
        line = page.locator(".widget-html-content").first
        box = page.locator(".widget-text input").first
        yield tries(page, box, line), steps(page, slider, line)


def test_a_result_comes_within_twice_a_bare_boxs_echo(workbook_server, page, bare, table):
    workbook_server.open(page, "01-three-horsepowers.ipynb")
    card = page.locator(".w2w-card")
    took = tries(page, card.get_by_label("Your answer"), card.locator('[role="status"]').first)
    table["from an answer to its result"] = (
        f"{took:6.0f} ms {took / bare[0]:5.2f} x a bare box and its echo ({bare[0]:.0f} ms)"
    )
    assert took < 2 * bare[0]


def test_a_figure_follows_within_twice_a_bare_slider(workbook_server, page, bare, table):
    workbook_server.open(page, "01-three-horsepowers.ipynb")
    figure = page.locator(".w2w-panel", has=page.locator(".w2w-picture svg")).first
    took = steps(page, figure.locator(".noUi-handle").first, figure.locator(".w2w-picture").first)
    table["from a slider's step to its picture"] = (
        f"{took:6.0f} ms {took / bare[1]:5.2f} x a bare slider and its echo ({bare[1]:.0f} ms)"
    )
    assert took < 2 * bare[1]
