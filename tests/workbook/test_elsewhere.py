"""The same problems on a second device: by a link, by a text, by a QR code."""

import re
from urllib.parse import parse_qs, quote, urlsplit

import pytest
import segno

from solver import SolverError
from solver.sets.paper import CHAPTERS, Paper, checked
from solver.sets.paper_questions import cases_of
from tests.workbook.group.members import WEDNESDAY
from workbook.exam.elsewhere import in_address, link_of, on_another_device, printed_qr
from workbook.exam.practice_exam import ExamPanel
from workbook.group.make_panel import MakePanel
from workbook.group.own_group import OwnGroup
from workbook.log import Log
from workbook.ui import static_site
from workbook.ui.qr import MOST, QUIET, elsewhere, qr_svg

SITE = "https://example.org/pumps"
EXAM = checked(Paper(CHAPTERS[:3], 0, "us", 5, 30, True, 7))


@pytest.fixture(autouse=True)
def nothing_told(monkeypatch):
    monkeypatch.setattr(static_site, "_told", {})


def tell(query):
    static_site.tell(quote(f"{SITE}/", safe=""), quote(query, safe=""))


def modules(svg):
    """The dark modules of a drawn code, without the white around it."""
    return {(int(x) - QUIET, int(y) - QUIET) for x, y in re.findall(r"M(\d+),(\d+)h1v1h-1z", svg)}


def scanned(text):
    """The dark modules of the code of a text, by the library alone."""
    rows = segno.make(text, error="m", micro=False).matrix
    return {(x, y) for y, row in enumerate(rows) for x, on in enumerate(row) if on}


def test_the_drawn_code_has_each_module_and_white_around_it():
    svg = qr_svg("EXAM-1", 'Says "this"')
    assert scanned("EXAM-1") == modules(svg)
    side = int(re.search(r'viewBox="0 0 (\d+)', svg)[1])
    assert QUIET == side - QUIET - 1 - max(x for x, _ in modules(svg))
    assert 'aria-label="Says &quot;this&quot;"' in svg


def test_a_link_too_long_for_a_camera_stands_alone():
    assert "<svg" in elsewhere(f"{SITE}?{'a' * 100}", "Open it")
    assert "<svg" not in elsewhere(f"{SITE}?{'a' * MOST}", "Open it")


def test_a_link_to_an_exam_opens_the_same_problems(tmp_path):
    link = link_of(EXAM, SITE)
    tell(urlsplit(link).query)
    found, fault = in_address()
    assert ("", EXAM.code) == (fault, found.code)
    assert [case.code for case in cases_of(EXAM)] == [case.code for case in cases_of(found)]
    panel = ExamPanel(tmp_path, lambda attempts: None, tmp_path)
    panel.clock = iter(range(0, 100_000, 5)).__next__
    assert "" == panel.start.linked.layout.display
    panel.start.linked.click()
    assert EXAM.code == panel.sit.desk.sitting.paper.code


def test_the_text_of_an_exam_is_what_its_printed_code_holds_without_a_site():
    told = printed_qr(EXAM, "")
    assert scanned(EXAM.code) == modules(told["svg"])
    assert "Type it at “Exam code”" in told["says"]
    told = printed_qr(EXAM, f" {SITE} ")
    assert scanned(link_of(EXAM, SITE)) == modules(told["svg"])


def test_an_exam_is_offered_to_another_device_on_the_site_alone():
    assert "" == on_another_device(EXAM)
    tell("")
    shown = on_another_device(EXAM)
    assert scanned(link_of(EXAM, SITE)) == modules(shown)
    assert "Open this exam on another device" in shown


@pytest.mark.parametrize("text", ["", "EXAM-0", "<script>"])
def test_a_link_without_a_good_code_starts_nothing(text, tmp_path):
    tell(f"path=15-practice-exam.ipynb&exam={quote(text)}")
    found, fault = in_address()
    assert found is None
    assert bool(text) == ("The exam in your link can't be opened." in fault)
    panel = ExamPanel(tmp_path, lambda attempts: None, tmp_path)
    assert "none" == panel.start.linked.layout.display
    assert "<script>" not in panel.start.not_linked.replace("“<script>”", "")


def test_what_is_no_address_is_told():
    with pytest.raises(SolverError, match="isn't a web address"):
        link_of(EXAM, "pumps")


def test_a_set_that_is_made_has_its_link_as_a_code(tmp_path):
    tell("")
    maker = MakePanel(OwnGroup(Log(tmp_path / "attempts.jsonl")))
    maker.clock = iter(range(0, 100_000, 5)).__next__
    maker.codes.box.value = " ".join(WEDNESDAY.codes)
    maker.make.click()
    assert scanned(maker.link) == modules(maker.made.value)
    [text] = parse_qs(urlsplit(maker.link).query)["set"]
    assert WEDNESDAY.codes == maker.problems.codes
    assert maker.problems.text == text
