"""A trainer's set as a link to the static site: each person's own numbers, and what comes back."""

import re
import zlib
from base64 import urlsafe_b64decode, urlsafe_b64encode
from datetime import UTC, datetime
from html import unescape
from urllib.parse import parse_qs, urlsplit

import pytest

from solver import SolverError
from solver.engine.grading import as_typed
from solver.sets.fault_part import fault_part
from solver.sets.work_set import cases_for, set_of
from tests.workbook.trainer.in_course import kept_in
from workbook.log import KEPT
from workbook.trainer.coming_in.handed_in import read_handed
from workbook.trainer.coming_in.taking_in import take_in
from workbook.trainer.course import make_course
from workbook.trainer.doing.course_panel import CoursePanel
from workbook.trainer.learner import sent_set as sent_set_module
from workbook.trainer.learner.own_set import NotListed
from workbook.trainer.learner.sent_panel import SentPanel
from workbook.trainer.learner.sent_set import opened_before, sent_set
from workbook.trainer.marking.marked import mark_handed
from workbook.trainer.sets.as_text import MOST_LISTED, BadText, read_text, text_of
from workbook.trainer.sets.notebook import write_source
from workbook.trainer.sets.on_site import linked, sentences
from workbook.trainer.sets.set_file import Assigned
from workbook.ui import static_site

SITE = "https://example.org/pumps"
WEEK = Assigned("week-3", "Week 3: head", set_of(chapters=["head"], count=3, seed=7))
PEOPLE = ("op01", "op02")
TEXT = text_of(WEEK, PEOPLE)


@pytest.fixture(autouse=True)
def _own_folder(tmp_path, monkeypatch):
    monkeypatch.setenv(KEPT, str(tmp_path / "log"))
    sent_set_module._made.cache_clear()  # as when a page is opened anew


def packed(held):
    return f"W2WSET:{urlsafe_b64encode(zlib.compress(held)).decode()}."


def begun(person, text=TEXT):
    """The set of this person, opened as a reader does."""
    panel = SentPanel(clock=iter(range(0, 99_999, 5)).__next__)
    panel._open(text)
    panel.work.children[0]._begin(person)
    return panel


def answer(panel, person, number):
    """Answer question `number` right, in its card."""
    case = cases_for(WEEK.work, person)[number - 1]
    panel.work.children[number].children[1]._answer(as_typed(case, case.answer))


def test_a_link_holds_the_whole_set_and_no_id():
    link = linked(WEEK, f" {SITE} ", PEOPLE).link
    query = parse_qs(urlsplit(link).query)
    assert (WEEK, ["27-from-your-trainer.ipynb"]) == (
        read_text(query["class"][0]).assigned,
        query["path"],
    )
    assert 800 > len(link)  # so many fit a QR code that a camera reads (ui/qr.py)
    held = zlib.decompress(urlsafe_b64decode(TEXT[7:-1] + "==="))
    assert [] == [person for person in PEOPLE if person.encode() in held]


def test_a_text_is_read_from_a_message_that_was_broken_into_lines():
    broken = "\r\n".join(TEXT[at : at + 60] for at in range(0, len(TEXT), 60))
    assert WEEK == read_text(f"Hi all,\n\n{broken}\n\nSee you. Lena").assigned


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "There is no set in this text"),
        ("W2W[Wednesday] BP-2U1-7-KMZ [1-56C829]", "There is no set in this text"),
        (TEXT[:80], "Part of the set is missing"),
        (TEXT[:80] + ".", "Part of the set is missing"),
        (TEXT.replace(TEXT[40:44], ""), "Part of the set is missing"),
        (packed(b"../../etc\n\ndraw = 7"), "There is no set in this text"),
        (packed(b"week-3\n\ndraw = 7\nchapters = ['haed']"), "Did you mean “head”"),
        (packed(bytes(50_000_000)), "Part of the set is missing"),
    ],
)
def test_a_text_that_holds_no_set_is_refused_with_a_sentence(text, says):
    with pytest.raises(SolverError, match=says):
        read_text(text)


def test_what_a_file_does_and_does_not_prove_is_said():
    told = " ".join(sentences(linked(WEEK, SITE, PEOPLE)))
    assert "It doesn't prove who typed it" in told
    assert "whoever knows somebody's id can open that person's numbers" in told
    assert "doesn't go into the link" not in told
    many = linked(WEEK, SITE, [f"op{n}" for n in range(MOST_LISTED + 1)])
    assert "doesn't go into the link" in " ".join(sentences(many))


def test_what_is_no_address_is_told():
    with pytest.raises(SolverError, match="isn't a web address"):
        linked(WEEK, "pumps")


def test_each_person_of_a_device_has_their_own_numbers_and_sheet():
    panel = begun("op01")
    answer(panel, "op01", 1)
    own = sent_set(TEXT)
    assert "You have answered 1 of 3 questions." in panel.work.children[0].stands.value
    own.ask_again()
    own.begin_as("op02")
    assert [1, 2, 3] == own.unanswered()
    assert "op02" == next(iter(opened_before().values())).who
    own.ask_again()
    own.begin_as("op01")
    assert [2, 3] == own.unanswered()
    again = SentPanel()
    assert [("Choose one", ""), ("Week 3: head", TEXT)] == list(again.before.options)


def test_a_mistyped_id_is_doubted_and_a_changed_list_keeps_the_answers():
    answer(begun("op01"), "op01", 1)
    with pytest.raises(NotListed, match="“op11” isn't on your trainer's list"):
        sent_set(TEXT).begin_as("op11")
    later = sent_set(text_of(WEEK, (*PEOPLE, "op11")))
    assert ("op01", [2, 3]) == (later.person.id, later.unanswered())


def test_a_link_opens_the_set_by_itself_and_says_what_is_wrong(monkeypatch):
    monkeypatch.setitem(static_site._told, "query", f"class={TEXT.replace(':', '%3A')}")
    assert 5 == len(SentPanel().work.children)  # who, three questions, the file to send
    monkeypatch.setitem(static_site._told, "query", "class=W2WSET:abc.")
    wrong = SentPanel()
    assert (0, True) == (
        len(wrong.work.children),
        "Part of the set is missing" in wrong.said.value,
    )


def test_a_case_of_find_the_fault_is_in_the_link_too():
    work = set_of(chapters=["head"], count=1, seed=7, faults=fault_part(1, 1))
    panel = begun("op01", text_of(Assigned("week-4", "Week 4", work), PEOPLE))
    assert "w2w-faults" in panel.work.children[2].children[1]._dom_classes


def upload(name, data):
    return {
        "name": name, "type": "", "size": len(data), "content": memoryview(data),
        "last_modified": datetime(2025, 11, 25, 20, tzinfo=UTC),
    }  # fmt: skip


def test_a_class_works_by_the_link_and_its_files_are_graded_into_the_gradebook(tmp_path):
    course = make_course(tmp_path / "pumps", name="pumps")
    (course.root / "people.csv").write_text("id,first_name\nop01,Ana\nop02,Ben\n")
    write_source(WEEK, course.root)
    page = CoursePanel(course.root, clock=iter(range(0, 99_999, 5)).__next__)

    def said(step):
        page.steps[step].run.click()
        return unescape(re.sub("<[^>]+>", " ", page.steps[step].said.value))

    assert "Type the address of your website first" in said("on site")
    page.on_site.site.value = SITE
    assert "It doesn't prove who typed it" in said("on site")
    shown = page.steps["on site"].links.children[0].value
    assert "<svg" in shown
    link = unescape(re.search('href="(https://[^"]+)"', shown)[1])
    text = parse_qs(urlsplit(link).query)["class"][0]
    files = []
    for person, numbers in (("op01", (1, 2, 3)), ("op02", (1,))):
        own = sent_set(text)
        own.ask_again()
        panel = begun(person, text)
        for number in numbers:
            answer(panel, person, number)
        files.append(own.packed())
    # One as a browser saves it the second time, one as a telephone shares it.
    page.files.value = (
        upload(files[0].name.replace(".jsonl", " (1).jsonl"), files[0].data),
        upload(files[1].name.replace(".jsonl", ".txt"), files[1].data),
    )
    assert "Work from 2 people was taken in." in said("take in")
    scores = [(row.person, row.score, row.look) for row in kept_in(course.root / "gradebook.db")]
    assert [("op01", 1.0, False)] * 3 == scores[:3]
    assert [("op02", 1.0, False), ("op02", 0.0, False), ("op02", 0.0, False)] == scores[3:]


def test_a_sheet_under_another_name_is_not_taken_for_somebody_elses(tmp_path):
    course = make_course(tmp_path / "pumps", name="pumps")
    (course.root / "people.csv").write_text("id\nop01\nop02\n")
    write_source(WEEK, course.root)
    panel = begun("op01")
    answer(panel, "op01", 1)
    sent = tmp_path / "sent"
    sent.mkdir()
    data = sent_set(TEXT).packed().data
    (sent / "download.txt").write_bytes(data)
    assert ("op01",) == take_in(course, "week-3", sent).people
    (sent / "download.txt").rename(sent / "week-3-op02.txt")
    assert ("op02",) == take_in(course, "week-3", sent).people
    marks = {
        person: mark_handed(
            WEEK, read_handed(course.folder("submitted", "week-3", person), "week-3", person)
        )
        for person in PEOPLE
    }
    assert [1.0, 0.0] == [marks[person].points for person in PEOPLE]
    assert [False, True] == [marks[person].needs_person for person in PEOPLE]


def test_an_unknown_text_is_a_bad_text():
    with pytest.raises(BadText):
        sent_set("hello")
