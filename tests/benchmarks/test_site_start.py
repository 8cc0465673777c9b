"""How soon the static site shows its first card, and what it loads, against a bare JupyterLite site.

Both sites are opened in Chromium in turn, from this computer, with the same runtime. Cold is a
browser that has never been there; warm is the same browser once more, when the site has kept what it
keeps. The bare notebook is run by a key as soon as it can be. It needs npm's `pyodide`, see `.ci/run`.
"""

import os
import time
from pathlib import Path
from statistics import median

import pytest

from tests.benchmarks.bare_site import NOTEBOOK, build_bare
from tests.conftest import PATIENCE
from tests.workbook.online.serving import Served
from workbook.online.build import build
from workbook.online.runtime import Brought

pytestmark = [pytest.mark.browser, pytest.mark.benchmark(group="site")]

CARD = ("?path=01-three-horsepowers.ipynb", ".w2w-card .w2w-question")
MOST = {"cold": 0.75, "warm": 0.4}  # of what the bare notebook takes: our own goal
# The rest of the site, and last a Python that has started.
KEPT = """async () => {
  const name = (await caches.keys()).find((each) => each.startsWith("python of"));
  return Boolean(name) && (await (await caches.open(name)).keys()).some(({ url }) => !url.endsWith("&history"));
}"""
BARE = (f"notebooks/index.html?path={NOTEBOOK}", ".widget-text input")


@pytest.fixture(scope="module")
def sites(root, tmp_path_factory):
    """The workbook's site and the bare one, both served; pairs of site and what to open."""
    folder = Path(os.environ.get("PYODIDE", root / "node_modules" / "pyodide"))
    runtime = Brought(folder)
    scratch = tmp_path_factory.mktemp("sites")
    build(scratch / "ours", runtime)
    build_bare(runtime, scratch / "bare", scratch)
    with Served(scratch / "ours") as ours, Served(scratch / "bare") as bare:
        yield (ours, scratch / "ours", *CARD), (bare, scratch / "bare", *BARE)


def opened(context, site, folder, path, shown) -> tuple[float, float]:
    """Seconds until it is shown, and megabytes of what was asked for until then."""
    page = context.new_page()
    page.set_default_timeout(PATIENCE)
    before, start = len(site.asked), time.perf_counter()
    page.goto(f"{site.address}/{path}")
    if path == BARE[0]:
        page.locator(".jp-CodeCell .cm-content").first.click()
        page.keyboard.press("Shift+Enter")
    page.locator(shown).first.wait_for()
    took = time.perf_counter() - start
    asked = {folder / each.split("?")[0].strip("/") for each in site.asked[before:]}
    size = sum(file.stat().st_size for file in asked if file.is_file())
    if path == CARD[0]:
        while not page.evaluate(KEPT):
            page.wait_for_timeout(500)
    page.close()
    return took, size / 1e6


def both_ways(chromium, *site):
    """Cold and warm: seconds and megabytes of each."""
    with chromium.new_context(viewport={"width": 1200, "height": 900}) as context:
        return opened(context, *site), opened(context, *site)


def test_the_first_card_comes_sooner_than_a_bare_notebooks_widget(
    benchmark, table, chromium, sites
):
    ours, bare = [], []
    benchmark.pedantic(
        lambda: ours.append(both_ways(chromium, *sites[0])),
        setup=lambda: bare.append(both_ways(chromium, *sites[1])),
        rounds=3,
    )
    slow = []
    for number, (way, most) in enumerate(MOST.items()):
        (seconds, size), (theirs, their_size) = (
            [median(run[number][part] for run in runs) for part in (0, 1)] for runs in (ours, bare)
        )
        table[f"first card of the site, {way}"] = (
            f"{seconds:6.1f} s {seconds / theirs:5.2f} x a bare notebook (at most {most}), "
            f"{size:5.1f} MB {size / their_size:5.2f} x"
        )
        slow += [way] * (seconds > most * theirs)
    assert [] == slow
