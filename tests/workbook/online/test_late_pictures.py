"""Pictures in the static site come when the page is ready, and no panel waits for them."""

import asyncio
import sys
from functools import partial
from types import SimpleNamespace

import pytest

from workbook.figures import Beside, Plotted, View, draw_shares, show
from workbook.ui import static_site


@pytest.fixture
def browser(monkeypatch):
    """A browser's Python, as far as pictures go; `asked` are the packages it was asked for."""
    asked = []

    async def load(name, **options):
        asked.append(name)

    for name in ("_ready", "_fetching", "_failed"):
        monkeypatch.setattr(static_site, name, [])
    monkeypatch.setattr(static_site, "_waiting", {})
    monkeypatch.setattr(static_site, "BREATH", 0)
    monkeypatch.setattr(static_site, "in_browser", lambda: True)
    monkeypatch.setitem(sys.modules, "pyodide_js", SimpleNamespace(loadPackage=load))
    return asked


def wait_for(*redraws):
    """Ask for pictures, say that the page is ready, and let everything come."""

    async def run():
        said = [static_site.no_picture(redraw) for redraw in redraws]
        static_site.fetch_pictures()
        while static_site._fetching:
            await asyncio.sleep(0)
        return said

    return asyncio.run(run())


def test_outside_a_browser_nothing_is_promised():
    assert static_site.no_picture(lambda: None) == static_site.MISSING


def test_nothing_is_fetched_before_the_page_is_ready(browser):
    assert static_site.no_picture(lambda: None) == static_site.COMING
    assert [] == browser


def test_each_panel_draws_once_when_the_pictures_can_be_had(browser):
    drawn = []
    first, second = (lambda: drawn.append("first")), (lambda: drawn.append("second"))
    assert [static_site.COMING] * 3 == wait_for(first, second, first)
    assert ["first", "second"] == sorted(drawn)
    assert ["matplotlib"] == browser


def test_a_page_without_pictures_fetches_nothing(browser):
    assert [] == wait_for()
    assert [] == browser


def test_where_they_cannot_be_had_the_panel_says_so_for_good(browser, monkeypatch):
    monkeypatch.setattr(static_site, "PARTS", ("no_such_module_anywhere",))
    said = []
    wait_for(lambda: said.append(static_site.no_picture(lambda: None)))
    assert [static_site.FAILED] == said
    assert 1 == len(browser)


def test_a_picture_of_a_report_comes_after_its_table(browser, monkeypatch):
    missing = {name: None for name in sys.modules if name.split(".")[0] == "matplotlib"}
    plotted = Plotted("one", partial(draw_shares, label="Of the points, %"), 2)
    view = View("", "One bar.", ("Question", "Of the points"), (("1", "40%"),), {"1": 40.0}, "")
    beside = Beside()
    with monkeypatch.context() as without:
        for name in {**missing, "matplotlib": None}:
            without.setitem(sys.modules, name, None)
        beside.show(plotted, view)
    assert f"<p>{static_site.COMING}</p>" == beside.picture.value
    assert "<table>" in beside.table.value
    wait_for()
    assert beside.picture.value.startswith("<svg")


def test_a_figure_to_explore_waits_for_nothing(browser):
    figure = show("legs")
    assert figure.beside.picture.value.startswith("<svg")
    wait_for()
    assert [] == browser
