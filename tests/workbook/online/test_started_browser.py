"""A started Python that the browser makes and keeps: its next start, its chance, and what spoils it."""

import pytest

from solver import draw
from tests.workbook.online.serving import Served

pytestmark = pytest.mark.browser

PATIENCE = 180_000  # ms; a busy machine starts Python slowly
OPTIONS = """const lockFileURL = location.href;
  const { packages: listed } = await (await fetch(lockFileURL)).json();
  const packages = Object.keys(listed);"""
MAKE = f"""async () => {{
  {OPTIONS}
  const maker = new Worker("/static/making.mjs", {{ type: "module" }});
  maker.postMessage({{ lockFileURL, packages }});
  return new Promise((done) => maker.addEventListener("message", ({{ data }}) => {{
    maker.terminate();
    done(data);
  }}));
}}"""
# Loaded with no packages, Python has the workbook only where it is taken up as it was kept.
START = """async (code) => {
  const { loadPyodide } = await import("/static/loading.mjs");
  const python = await loadPyodide({ lockFileURL: location.href, packages: [] });
  return python.runPython(code).toJs();
}"""
CHANCE = """import os, random, secrets, sys, uuid
[random.random(), secrets.token_hex(8), uuid.uuid4().hex, os.urandom(8).hex()]"""
WORKS = """from datetime import datetime
from js import Date
from workbook import page
from solver import case_from_code, draw
import fractions, wave  # one that was loaded before, one from the library
case = draw("motor_power", 5, "us", 2)
late = abs(datetime.now().timestamp() - Date.now() / 1000) < 5
[case.question, case.code, case_from_code(case.code).question == case.question, late]"""
KNOWN = "import sys; ['workbook.page' in sys.modules]"
# The browser's own store: spoil what is kept, or tell that a start never ended.
STORE = """async (change) => {
  const cache = await caches.open((await caches.keys()).find((name) => name.startsWith("python of")));
  const [{ url }] = (await cache.keys()).filter(({ url }) => !url.endsWith("&history"));
  if (change === "spoil") await cache.put(url, new Response(new Uint8Array(1000)));
  if (change === "begun") await cache.put(`${url}&history`, new Response('{"begun": true, "faults": 1, "tries": 0}'));
}"""
NAMES = """async () => (await (await caches.open((await caches.keys())[0])).keys())
  .map(({ url }) => url.endsWith("&history") ? "history" : "kept")"""


@pytest.fixture(scope="module")
def page(chromium, built):
    """A page of the built site's own address, on which nothing runs by itself: the list of its packages."""
    lock = next(built.out.glob("static/wheels/*/pyodide-lock.json")).relative_to(built.out)
    with Served(built.out) as site, chromium.new_context() as context:
        page = context.new_page()
        page.set_default_timeout(PATIENCE)
        page.goto(f"{site.address}/{lock.as_posix()}")
        yield page


def start(page, code):
    """What a fresh Python says to this."""
    page.reload()
    return page.evaluate(START, code)


@pytest.fixture(scope="module")
def kept(page):
    """The same page, once the browser has made one; it makes no second one."""
    assert "kept" == page.evaluate(MAKE)
    assert "nothing to do" == page.evaluate(MAKE)
    return page


def test_it_has_the_workbook_in_its_memory_and_works(kept):
    case = draw("motor_power", 5, "us", 2)
    assert [case.question, case.code, True, True] == start(kept, WORKS)


def test_chance_is_drawn_anew_after_each_start(kept):
    first, second = start(kept, CHANCE), start(kept, CHANCE)
    assert [] == [drawn for drawn in first if drawn in second]


def test_two_pages_opened_at_once_both_take_it_up_and_neither_counts_a_fault(kept):
    other = kept.context.new_page()
    other.goto(kept.url)
    kept.reload()
    for each in (kept, other):
        each.evaluate(f"code => {{ window.started = ({START})(code); }}", KNOWN)
    assert [[True], [True]] == [each.evaluate("window.started") for each in (kept, other)]
    other.close()
    assert ["kept"] == kept.evaluate(NAMES)


@pytest.mark.parametrize("fault", ["spoil", "begun"])
def test_one_that_does_not_start_is_thrown_away_in_silence(kept, fault):
    kept.evaluate(STORE, fault)
    assert [False] == start(kept, KNOWN)
    assert ["history"] == kept.evaluate(NAMES)
    # After two faults none is made any more.
    assert ("kept" if fault == "spoil" else "nothing to do") == kept.evaluate(MAKE)
