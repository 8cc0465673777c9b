"""Python of browsers from its usual address, from the site's own copy, and with its library as bytecode."""

import shutil

import pytest

from tests.workbook.online.serving import Served
from workbook.online import command
from workbook.online.build import Built
from workbook.online.front import PARTS, WORKER, fill_worker
from workbook.online.runtime import LOCK, Brought, Usual, place

pytestmark = pytest.mark.browser

PATIENCE = 180_000  # ms; a busy machine starts Python slowly
WORKS = """async () => {
  const { loadPyodide } = await import("/static/loading.mjs");
  const python = await loadPyodide({ lockFileURL: "/lock.json" });
  return python.runPython("import decimal; decimal.__file__");
}"""
KEPT = """() => new Promise((done) => {
  navigator.serviceWorker.addEventListener("message", ({ data }) => typeof data === "string" && done(data));
  navigator.serviceWorker.register("service-worker.js");
  navigator.serviceWorker.ready.then(({ active }) => active.postMessage("keep"));
})"""


@pytest.fixture(scope="module")
def made(runtime, tmp_path_factory):
    """A folder with both: the usual address, here a server that can be stopped, and the copy."""
    folder = tmp_path_factory.mktemp("both")
    with Served(runtime) as usual:
        both = Brought(runtime, Usual(usual.address))
        first = place(both, folder)
        (folder / "index.html").write_text('<title>Both</title><link rel="icon" href="data:,">')
        (folder / "lock.json").write_bytes(both.read(LOCK))
        shutil.copy(PARTS / WORKER, folder)
        fill_worker(folder, first)
        with Served(folder) as site:
            yield site, usual, both, folder


def run(page, site):
    page.set_default_timeout(PATIENCE)
    page.goto(site.address)
    site.asked.clear()
    return page.evaluate(WORKS)


def test_python_comes_from_the_usual_address_and_its_library_from_the_site(made, page):
    site, usual, _, _ = made
    assert run(page, site).endswith("decimal.pyc")
    assert "/pyodide.asm.wasm" in usual.asked
    assert {
        "/lock.json",
        *(f"/static/{name}" for name in ("library.zip", "loading.mjs", "started.mjs")),
    } == set(site.asked)


def test_where_that_is_out_of_reach_the_sites_own_copy_serves_also_for_offline(made, page):
    site, usual, _, folder = made
    usual.stop()
    library = folder / "static/library.zip"
    aside = library.rename(library.with_suffix(".aside"))
    try:
        assert run(page, site).endswith("decimal.py")
        assert "/static/pyodide/pyodide.asm.wasm" in site.asked
        aside.rename(library)
        assert "kept" == page.evaluate(KEPT)
    finally:
        usual.start()


def test_the_command_says_what_each_host_sees(made):
    _, usual, both, folder = made
    said = list(command.sentences(Built(folder, True), both))
    assert f"Readers' browsers load Python from {usual.address}" in said
    assert "Where they can't reach that, they load your own host's copy of it instead." in said
    assert any(line.startswith("Your own host sees") for line in said)
