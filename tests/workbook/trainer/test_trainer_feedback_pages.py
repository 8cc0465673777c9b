"""A page of feedback for each person of a class that was marked at once."""

import re
import shutil

import pytest

from tests.workbook.trainer.marked import ANA, BEN, by_hand, hand_in, made_ready
from tests.workbook.trainer.sheets import right
from tests.workbook.trainer.week_three import COUNT, NAME, answers
from workbook.trainer import nbgrader_commands
from workbook.trainer.course import course_at
from workbook.trainer.marking.bulk import mark_all
from workbook.trainer.marking.feedback_pages import write_feedback


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """A course whose set nbgrader has made ready, and nothing handed in."""
    return made_ready(tmp_path_factory.mktemp("pages") / "pumps").root


@pytest.fixture
def course(made, tmp_path):
    """The same course for one test."""
    shutil.copytree(made, tmp_path / "pumps")
    return course_at(tmp_path / "pumps")


def test_a_page_tells_what_was_decided_by_hand_and_shows_it_as_text(course):
    hand_in(course, ANA, answers(ANA, right), "2025-11-26 12:00:01 UTC")
    mark_all(course.root, NAME)
    by_hand(course, manual_score=1.25, manual_comment="<b>Mind</b> the units.")
    mark_all(course.root, NAME)
    assert 1 == write_feedback(course, NAME)
    page = (course.root / f"feedback/{ANA}/{NAME}/{NAME}.html").read_text(encoding="utf-8")
    assert "Your trainer gave 1.25 points for this question." in page
    assert "Your trainer says: &lt;b&gt;Mind&lt;/b&gt; the units." in page
    assert "It was late, which took 2.325 off." in page
    assert "<b>20.925 of 24 points</b>" in page
    assert page.count("<h4>The worked solution</h4>") == COUNT


def test_pages_are_written_over_those_that_nbgrader_made_unwritable(course):
    hand_in(course, ANA, answers(ANA, right), "2098-01-01 12:00:01 UTC")
    mark_all(course.root, NAME)
    for step in ("autograded", "feedback"):
        folder = course.folder(step, NAME, ANA)
        folder.mkdir(parents=True)
        for name in (f"{NAME}.ipynb", f"{NAME}.html", "timestamp.txt"):
            (folder / name).write_text("old")
            (folder / name).chmod(0o444)
    write_feedback(course, NAME)
    assert "2098-01-01 12:00:01 UTC" == (folder / "timestamp.txt").read_text()
    assert "The worked solution" in (folder / f"{NAME}.html").read_text(encoding="utf-8")


def test_nbgrader_gives_out_pages_that_it_did_not_make(tmp_path):
    exchange = str(tmp_path / "exchange")
    course = made_ready(tmp_path / "pumps", "release_assignment", exchange=exchange)
    for person in (ANA, BEN):  # neither has a secret, as nobody has who sent work by mail
        hand_in(course, person, answers(person, right))
    mark_all(course.root, NAME)
    write_feedback(course, NAME)
    nbgrader_commands.release_feedback(course, NAME)
    given = [p.read_text(encoding="utf-8") for p in tmp_path.glob("exchange/pumps/feedback/*.html")]
    assert {f"Graded for {person}:" for person in (ANA, BEN)} == {
        re.search("Graded for .*?:", page)[0] for page in given
    }


def test_who_is_not_marked_yet_gets_no_page(course):
    hand_in(course, ANA, answers(ANA, right))
    mark_all(course.root, NAME)
    hand_in(course, BEN, answers(BEN, right))
    assert 1 == write_feedback(course, NAME)
    assert not course.folder("feedback", NAME, BEN).exists()
