"""What a trainer gives by hand, and what changes: more time, points, a due time, answers from paper."""

import argparse
import shutil
from datetime import UTC, datetime
from zipfile import ZipFile

import pytest

from solver import SolverError
from solver.sets.work_set import cases_for
from tests.workbook.trainer.marked import ANA, BEN, hand_in, made_ready
from tests.workbook.trainer.sheets import right, wrong
from tests.workbook.trainer.week_three import COUNT, NAME, POINTS, WEEK, answers, numeric
from workbook.trainer.course import Person, course_at, keep_people, make_course
from workbook.trainer.giving import extend, override
from workbook.trainer.gradebook.given import Extension, extensions_of, keep_extension
from workbook.trainer.marking.bulk import mark_all
from workbook.trainer.marking.feedback_pages import sending_zip, write_feedback
from workbook.trainer.marking.marked import mark_typed
from workbook.trainer.on_paper.keeping import keep_answers
from workbook.trainer.on_paper.marks import RowMark
from workbook.trainer.report.gathered import gathered
from workbook.trainer.sets.set_file import SET_FILE
from workbook.trainer.steps import _summed_up

LATE = "2025-11-26 13:00:00 UTC"
ALL = POINTS * COUNT


@pytest.fixture(scope="module")
def ready(tmp_path_factory):
    return made_ready(tmp_path_factory.mktemp("given") / "pumps")


@pytest.fixture
def course(ready, tmp_path):
    """A fresh copy: Ana all right and late, Ben half of it and in time."""
    shutil.copytree(ready.root, tmp_path / "pumps")
    course = course_at(tmp_path / "pumps")
    keep_people(course, [Person(ANA, "Ana", "Ruiz"), Person(BEN, "Ben"), Person("cleo", "Cleo")])
    hand_in(course, ANA, answers(ANA, right), LATE)
    hand_in(course, BEN, answers(BEN, wrong, which=numeric(BEN)), "2025-11-25 20:00:00 UTC")
    return course


def told(step, course, person, **more):
    usual = {"set": NAME, "course": course.root, "person": person, "remove": False, "note": ""}
    usual |= {"group": "", "due": None, "question": 1, "points": None, "reason": ""}
    return list(step(argparse.Namespace(**(usual | more))))


def totals(course):
    return {one.person: one.points for one in gathered(course.root, NAME).facts.people}


def test_more_time_takes_the_cost_away_at_once_and_every_time_and_can_be_taken_back(course):
    assert 1 == mark_all(course.root, NAME).late
    until = datetime(2025, 11, 27, tzinfo=UTC).replace(tzinfo=None)
    said = told(extend, course, ANA, due=until, note="was sick")
    assert f"  {ANA}: 24, and it was 21.6 (+2.4)" == said[-1]
    for _ in range(2):
        again = mark_all(course.root, NAME)
        assert (0, (), ()) == (again.late, again.moved, again.new)
    write_feedback(course, NAME)
    page = (course.root / f"feedback/{ANA}/{NAME}/{NAME}.html").read_text("utf-8")
    assert ": was sick" in page
    assert "Graded for Ana Ruiz (ana.r): <b>24 of 24 points</b>" in page
    assert f"  {ANA}: 21.6, and it was 24 (-2.4)" == told(extend, course, ANA, remove=True)[-1]


def test_points_by_hand_are_one_number_everywhere_and_stay_through_every_grading(course):
    mark_all(course.root, NAME)
    said = told(override, course, BEN, question=2, points=1.5, reason="shown at the board")
    assert f"{BEN} has 1.5 points for question 2: shown at the board" == said[0]
    for _ in range(2):
        mark_all(course.root, NAME)
        assert 1.5 == totals(course)[BEN]
    write_feedback(course, NAME)
    page = (course.root / f"feedback/{BEN}/{NAME}/{NAME}.html").read_text("utf-8")
    assert "1.5 of 24 points" in page
    assert "1.5 of 2 points" in page
    assert "Your trainer says: shown at the board" in page
    told(override, course, BEN, question=2, remove=True)
    assert 0 == totals(course)[BEN]


@pytest.mark.parametrize(
    ("step", "more", "why"),
    [
        (override, {"question": 99}, "there is no 99"),
        (override, {"points": 1.0}, "Type the points and why"),
        (override, {"points": 9.0, "reason": "a"}, "is worth 2 points; you typed 9"),
        (override, {"remove": True}, "has no points by hand"),
        (extend, {}, "Type until when"),
        (extend, {"person": "zed"}, "“zed” isn't on the list"),
    ],
)
def test_what_cannot_be_given_is_told_and_nothing_is_kept(course, step, more, why):
    with pytest.raises(SolverError, match=why):
        told(step, course, more.pop("person", BEN), **more)
    assert not list(course.root.glob("*rrides.csv")) + list(course.root.glob("exten*.csv"))


def test_another_due_time_alone_counts_at_the_next_grading_and_says_whose_points_moved(course):
    mark_all(course.root, NAME)
    path = course.folder("source", NAME) / SET_FILE
    path.write_text(path.read_text("utf-8").replace("2025-11-26T12", "2025-11-26T14"), "utf-8")
    found = mark_all(course.root, NAME)
    assert ((ANA, 21.6, 24.0),) == found.moved
    assert "has another due time now: 2025-11-26 14:00 UTC" in found.notes[0]
    assert ((), ()) == mark_all(course.root, NAME)[3:5]


def test_a_second_grading_tells_of_nobody_again(course):
    hand_in(course, "cleo", b"not a sheet")
    first = list(_summed_up(NAME, mark_all(course.root, NAME)))
    again = list(_summed_up(NAME, mark_all(course.root, NAME)))
    assert any(line.startswith("  cleo: ") for line in first)
    assert not any("cleo" in line for line in again)
    assert "1 person you were told about before still need a look, or had one." == again[-1]


def test_answers_from_paper_are_graded_given_back_and_reported_like_any_others(course):
    case = cases_for(WEEK.work, "cleo")[0]
    typed = {1: right(case)}
    marked = mark_typed(WEEK, "cleo", typed, {}, ["The list has changed."])
    row = RowMark(2, "AAAA", marked, typed, {}, ("The list has changed.",))
    other = RowMark(3, "BBBB", mark_typed(WEEK, ANA, typed), typed)
    said = list(keep_answers(course, WEEK, [row, other]))
    assert said[0].startswith(f"{ANA} has turned in work from a computer too.")
    assert "1 sheet is new in the course; 0 were there already." == said[1]
    found = mark_all(course.root, NAME)
    assert ("cleo", "The list has changed.") in found.to_look_at
    assert POINTS == totals(course)["cleo"]
    write_feedback(course, NAME)
    with ZipFile(sending_zip(course, NAME)) as packed:
        names = [
            f"{NAME} Ana Ruiz (ana.r).html", f"{NAME} Ben (ben.k).html", f"{NAME} Cleo (cleo).html",
        ]  # fmt: skip
        assert names == sorted(packed.namelist())
        assert f"You typed “{typed[1]}”" in packed.read(names[2]).decode()
    again = list(keep_answers(course, WEEK, [row._replace(answers={1: "7"})]))
    assert "cleo had other answers from paper before." in again[0]
    assert (course.root / f"earlier/cleo/{NAME}-1/on-paper.json").exists()


def test_a_row_of_the_file_that_cannot_be_read_is_left_out(tmp_path):
    root = make_course(tmp_path / "pumps").root
    keep_extension(root, NAME, ANA, Extension(datetime(2025, 1, 2, 3), "=1+1"))
    with (root / "extensions.csv").open("a") as file:
        file.write(f"{NAME},ben.k,soon,\n")
    assert {ANA: Extension(datetime(2025, 1, 2, 3), "=1+1")} == extensions_of(root, NAME)
