"""What the service worker keeps, on a site of three small files and no Python."""

import os
import shutil
import time

import pytest

from tests.workbook.online.serving import Served
from workbook.online.front import PARTS, WORKER, fill_worker

pytestmark = pytest.mark.browser

SHOW = """<title>Small</title><p id="edition">{edition}</p><script>
  navigator.serviceWorker.register("service-worker.js");
  navigator.serviceWorker.onmessage = ({{ data }}) => document.body.append(data, " ");
</script>"""
KEEP = "navigator.serviceWorker.ready.then(({ active }) => active.postMessage('keep'))"


def write(folder, edition, age=0):
    """Put an edition of the site in place of the one before, as if written `age` seconds ago.

    The browser looks for a newer worker whenever it likes, so no file is ever there by half and
    the worker comes last.
    """
    folder.mkdir(exist_ok=True)
    new = folder.with_name(f"{folder.name}-{edition}")
    new.mkdir()
    shutil.copy(PARTS / WORKER, new)
    (new / "index.html").write_text(SHOW.format(edition=edition))
    (new / "other.txt").write_text(f"other of {edition}")
    (new / "same.txt").write_text("never changed")
    fill_worker(new)
    written = time.time() - age  # the server tells editions apart by whole seconds
    for path in sorted(new.iterdir(), key=lambda path: path.name == WORKER):
        os.utime(path, (written, written))
        path.replace(folder / path.name)


@pytest.fixture
def small(tmp_path):
    write(tmp_path / "site", "first", age=60)
    with Served(tmp_path / "site") as site:
        yield site


def keep(page):
    page.evaluate(KEEP)
    page.get_by_text("kept").wait_for()


def look_for_a_newer_edition(page):
    """Have the browser look, and wait until the newer worker has all of its edition."""
    page.evaluate("""async () => {
      const found = await navigator.serviceWorker.ready;
      await found.update();
      while (!found.waiting) await new Promise((done) => setTimeout(done, 50));
    }""")


def read(page, name):
    return page.evaluate("name => fetch(name).then((file) => file.text())", name)


def test_what_was_kept_is_there_without_a_network(small, page):
    page.goto(small.address)
    keep(page)
    small.stop()
    try:
        page.goto(f"{small.address}/?path=whatever")
        assert "first" == page.locator("#edition").inner_text()
        assert "other of first" == read(page, "other.txt")
    finally:
        small.start()


def controlled(page):
    """Wait until what the page asks for goes through the worker."""
    page.wait_for_function("() => navigator.serviceWorker.controller !== null")


def test_a_file_serves_as_soon_as_it_is_kept_and_comes_once(small, page):
    page.goto(small.address)
    controlled(page)
    both = "Promise.all([1, 2].map(() => fetch('other.txt').then((file) => file.text())))"
    assert ["other of first"] * 2 == page.evaluate(both)
    page.reload()
    assert "other of first" == read(page, "other.txt")
    keep(page)
    assert 1 == small.asked.count("/other.txt")


def test_before_all_is_kept_a_newer_edition_comes_whole_from_the_network(small, page, tmp_path):
    page.goto(small.address)
    controlled(page)
    assert "other of first" == read(page, "other.txt")
    write(tmp_path / "site", "second")
    page.reload()
    assert "second" == page.locator("#edition").inner_text()
    page.evaluate("""async () => {
      const text = () => fetch("other.txt").then((file) => file.text());
      while (await text() !== "other of second") await new Promise((done) => setTimeout(done, 50));
    }""")


def test_a_file_that_the_host_adds_to_is_kept_as_it_comes(small, page, tmp_path):
    (tmp_path / "site" / "other.txt").write_text("other of first, and a line of the host")
    page.goto(small.address)
    keep(page)
    small.stop()
    try:
        assert "and a line of the host" in read(page, "other.txt")
    finally:
        small.start()


def test_how_much_is_kept_is_told_meanwhile(small, page):
    page.goto(small.address)
    controlled(page)
    told = page.evaluate("""() => new Promise((done) => {
      const heard = [];
      navigator.serviceWorker.addEventListener("message", ({ data }) =>
        data === "kept" ? done(heard) : heard.push([data.kept, data.of]));
      navigator.serviceWorker.controller.postMessage("keep");
    })""")
    assert 3 == len(told)
    assert sorted(told) == told
    assert told[-1][0] == told[-1][1] > 0


def test_a_newer_edition_takes_over_whole_once_the_pages_are_closed(small, page, tmp_path):
    page.goto(small.address)
    keep(page)
    write(tmp_path / "site", "second")
    page.reload()
    look_for_a_newer_edition(page)
    assert "first" == page.locator("#edition").inner_text()
    assert "other of first" == read(page, "other.txt")
    context = page.context
    page.close()
    later = context.new_page()
    later.goto(small.address)
    assert "second" == later.locator("#edition").inner_text()
    assert "other of second" == read(later, "other.txt")


def test_a_file_that_has_not_changed_is_not_fetched_again(small, page, tmp_path):
    page.goto(small.address)
    keep(page)
    before = small.asked.count("/same.txt")
    write(tmp_path / "site", "second")
    look_for_a_newer_edition(page)
    assert before == small.asked.count("/same.txt")
    assert small.asked.count("/other.txt") == 2
