"""What several tests share: Chromium, accessibility rules, and the workbook served and running.

A test that needs a browser carries `@pytest.mark.browser` and asks for `chromium` or `page`. Where
Chromium or axe-core is missing it is skipped with the reason; under CI (CI=true) it fails, so that
a broken machine cannot look like a passing one.
"""

import contextlib
import os
import re
import shutil
import subprocess
import sys
import urllib.request
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

import hypothesis
import pytest

from workbook.start.child import environment

# As `python3 -m workbook test` has it, also where pytest was started in another way.
os.environ["PATH"] = environment()["PATH"]

# A test is right or wrong, never late: the same one runs on a busy machine and in a browser's Python.
hypothesis.settings.register_profile("untimed", deadline=None)
hypothesis.settings.load_profile("untimed")

ROOT = Path(__file__).resolve().parent.parent
FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
)

# ms; a wait that is met at once costs nothing, and a busy machine can start a page slowly
PATIENCE = 100_000


def _absent(what: str):
    """Skip, or fail where everything must be there."""
    (pytest.fail if os.environ.get("CI") == "true" else pytest.skip)(f"{what}; see .ci/run")


def pytest_configure(config):
    if config.pluginmanager.has_plugin("rerunfailures"):
        from tests import tries

        config.pluginmanager.register(tries)


def pytest_collection_modifyitems(items):
    """Those that take long come first, so that a run of several at a time does not end with one. They do not
    go by turns with those that only compute: beside these a browser takes twice as long.
    """
    items.sort(key=lambda item: (item.get_closest_marker("browser") is None, _is_quick(item)))


def _is_quick(item) -> bool:
    return "workbook" not in item.path.relative_to(ROOT).parts[:2]


@pytest.fixture(scope="session")
def root() -> Path:
    """The project's own folder."""
    return ROOT


@pytest.fixture(scope="module")
def chromium():
    """A headless Chromium, driven by Playwright's plain (sync) functions.

    One for each module, not for the session: while Playwright is there, asyncio.run refuses to
    work on this thread, and other tests need it.
    """
    names = ("chromium", "chromium-browser", "google-chrome")
    places = [os.environ.get("CHROMIUM"), *map(shutil.which, names)]
    program = next((place for place in places if place and Path(place).exists()), None)
    if program is None:
        _absent("no Chromium was found here, nor through the variable CHROMIUM")
    from playwright.sync_api import expect, sync_playwright

    expect.set_options(timeout=PATIENCE)

    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program, args=list(FLAGS))
        yield browser
        browser.close()


@pytest.fixture(scope="module")
def new_page(chromium):
    """A context manager that opens a fresh page, for what several tests of a module share.

    `options` are those of Playwright's new_context, such as a time zone.
    """

    @contextlib.contextmanager
    def opened(height: int = 900, **options):
        size = {"width": 1200, "height": height}
        with chromium.new_context(viewport=size, **options) as context:
            context.set_default_timeout(PATIENCE)
            yield context.new_page()

    return opened


@pytest.fixture
def page(new_page):
    """A fresh page of its own: nothing of an earlier test is in it."""
    with new_page() as page:
        yield page


@pytest.fixture(scope="session")
def axe() -> Callable[..., list[str]]:
    """A function that finds accessibility faults in a part of a page.

    `axe(page, ".my-card")` returns one line for each broken rule (WCAG 2.0 to 2.2, A and AA) among
    what the CSS selector matches, and an empty list where there is none. Rules are axe-core's.
    """
    script = Path(os.environ.get("AXE_CORE", ROOT / "node_modules/axe-core")) / "axe.min.js"
    if not script.exists():
        _absent("axe-core was not found in node_modules, nor through the variable AXE_CORE")
    tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
    ask = "([selector, tags]) => axe.run(selector, {runOnly: {type: 'tag', values: tags}})"

    def faults(page, selector: str) -> list[str]:
        assert page.locator(selector).count() > 0, f"nothing on the page matches {selector}"
        if not page.evaluate("typeof axe === 'object'"):
            page.evaluate(script.read_text(encoding="utf-8"))
        found = page.evaluate(ask, [selector, tags])["violations"]
        return [
            f"{rule['id']}: {rule['help']}: {node['html'][:200]}"
            for rule in found
            for node in rule["nodes"]
        ]

    return faults


@dataclass(frozen=True)
class Served:
    """The workbook, open: its server's address, the key to it, and the reader's folder."""

    base: str
    token: str
    folder: Path
    output: str

    def url(self, name: str = "00-start-here.ipynb") -> str:
        """The address of one page in the view a reader gets."""
        return f"{self.base}/doc/workspaces/pages/tree/{name}?token={self.token}"

    def open(self, page, name: str = "00-start-here.ipynb", state: str = "ready") -> None:
        """Load one page in the browser and wait until everything on it has run, or it waits to be started."""
        page.goto(self.url(name))
        wait_for_page(page, state)

    def ask(self, what: str, method: str = "GET"):
        """What the server answers, as a file to read and close."""
        request = urllib.request.Request(f"{self.base}/{what}?token={self.token}", method=method)
        return urllib.request.urlopen(request)


def wait_for_page(page, state: str = "ready") -> None:
    """Wait until the page that is shown, and none that is being left, is so far."""
    wanted = f':is([data-state="{state}"], [data-state="stopped"])'
    came = page.locator(f".wtw-page:not([data-left]){wanted}")
    came.wait_for(timeout=PATIENCE)
    assert came.get_attribute("data-state") == state, came.locator(".wtw-strip").inner_text()


@pytest.fixture(scope="module")
def serve(tmp_path_factory) -> Iterator[Callable[..., Served]]:
    """A function that opens the workbook as a reader does, but for the browser.

    `serve()` opens this checkout; `serve(root)` another copy of the project; `serve(course=True)` a
    trainer's course. The folder and the settings are temporary. Everything is closed when the tests
    of the module end.
    """
    with contextlib.ExitStack() as opened:

        def open_workbook(root: Path = ROOT, course: bool = False) -> Served:
            home = tmp_path_factory.mktemp("reader")
            return opened.enter_context(_workbook(root, home, course))

        yield open_workbook


@pytest.fixture(scope="session")
def workbook_server(tmp_path_factory) -> Iterator[Served]:
    """The workbook of this checkout with all its chapters, opened once for all tests.

    For a test of a card:

        @pytest.mark.browser
        def test_a_card_says_what_it_read(workbook_server, page):
            workbook_server.open(page, "01-horsepower.ipynb")
            page.get_by_label("Your answer").fill("12.5 hp")

    Pages share one reader's folder, so what one test records another can see. A test that needs a
    reader with no history calls `serve()` for one of its own.
    """
    with _workbook(ROOT, tmp_path_factory.mktemp("reader"), course=False) as served:
        yield served


@contextlib.contextmanager
def _workbook(root: Path, home: Path, course: bool) -> Iterator[Served]:
    folder = home / ("pumps-2026" if course else "Wire to Water")
    words = ["trainer", str(folder)] if course else ["--folder", str(folder)]
    command = [sys.executable, "-u", "-m", "workbook", *words, "--no-browser"]
    environment = {
        **{name: value for name, value in os.environ.items() if not name.startswith("XDG_")},
        "HOME": str(home),
        # What runs the tests has it all.
        "WIRE_TO_WATER_SET_UP_FOR": f"requirements{'-class' * course}.txt",
        "PYTHONPATH": str(root),
    }
    with subprocess.Popen(
        command, cwd=root, env=environment, text=True, stdout=subprocess.PIPE
    ) as launcher:
        try:
            heard = ""
            while not (found := re.search(r"(http://[^/]+)/\S+token=(\S+)", heard)):
                line = launcher.stdout.readline()
                assert line, f"the workbook did not open: {heard}"
                heard += line
            yield Served(found[1], found[2], folder, heard)
        finally:
            launcher.terminate()
