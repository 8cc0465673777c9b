"""The static site in Firefox: pages, the log, a crash, no network, a set by its link, a group's results.

It is skipped where no Firefox is, as in CI: `apt-get install firefox-esr` brings one.
"""

import shutil
from urllib.parse import urlencode

import pytest

from tests.workbook.group.members import WEDNESDAY, results
from tests.workbook.online.firefox import Firefox
from tests.workbook.online.serving import Served

pytestmark = pytest.mark.browser

READY = """document.querySelector('.wtw-page[data-state="ready"]')"""
BOX = "document.querySelector('.w2w-card .w2w-asking input.w2w-box')"
CHOICE = "document.querySelector('.w2w-card .w2w-choice input')"
BRING_IN = "[...document.querySelectorAll('button')].find(one => one.innerText.includes('Bring in results'))"
ANSWER = f"""(() => {{
  const box = {BOX};
  if (box) {{ box.value = "123.4"; box.dispatchEvent(new Event("input", {{ bubbles: true }})); }}
  else {CHOICE}.click();
  document.querySelector(".w2w-card .w2w-asking .w2w-first").click();
}})()"""

KEPT = """(async () => {
  const kept = async () => {
    const name = (await caches.keys()).find((each) => each.startsWith("python of"));
    return name && (await (await caches.open(name)).keys()).some(({ url }) => !url.endsWith("&history"));
  };
  while (!await kept()) await new Promise((done) => setTimeout(done, 250));
})()"""


def says(text):
    return f"document.body.innerText.includes({text!r})"


def test_nothing_is_lost_in_firefox_by_a_crash_or_without_a_network(built, tmp_path):
    program = shutil.which("firefox-esr") or shutil.which("firefox")
    if program is None:
        pytest.skip("there is no firefox-esr and no firefox here; apt-get install firefox-esr")
    profile = tmp_path / "profile"
    profile.mkdir()
    sent = []
    for name, data in results(tmp_path / "members").items():
        sent.append(tmp_path / name)
        sent[-1].write_bytes(data)
    with Served(built.out) as site:
        firefox = Firefox(program, profile)
        try:
            firefox.open(f"{site.address}/?path=01-three-horsepowers.ipynb")
            firefox.wait(READY)
            firefox.wait(f"{BOX} ?? {CHOICE}")
            firefox.run(ANSWER)
            firefox.wait("document.querySelector('.w2w-card .w2w-told .w2w-state')")
            firefox.wait(says("Saved on this device"))
            firefox.run(KEPT)  # the next start takes it up
            assert 1 == site.asked.count("/static/pyodide/pyodide.asm.wasm")
        finally:
            firefox.kill()
        site.stop()
        firefox = Firefox(program, profile)
        try:
            firefox.open(f"{site.address}/?path=14-your-study.ipynb")
            firefox.wait(READY)
            firefox.wait(says("You have worked on 1 problem, on 1 day."))
            query = urlencode({"path": "17-group-study.ipynb", "set": WEDNESDAY.text})
            firefox.open(f"{site.address}/?{query}")
            firefox.wait(READY)
            firefox.wait(says("“Wednesday pumps” is open below, with 3 questions."))
            firefox.choose(BRING_IN, sent)
            firefox.wait(says("5 members, 3 questions:"))
        finally:
            firefox.kill()
            site.start()
