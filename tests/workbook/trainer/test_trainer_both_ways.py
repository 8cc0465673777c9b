"""A set with all there is, graded at once and by nbgrader's own commands: the same marks, by hand or not.

It has a number, a choice, an order and a case of find the fault, three tries with a cost and a cost for
being late. What each must get is worked out here, and not by the marking.
"""

import argparse
import shutil
from datetime import UTC, datetime

import pytest

from solver.fault.review import sure_way
from solver.fault.way import way_of
from solver.sets.work_set import cases_for, faults_for
from solver.topics.catalogue import CATALOGUE
from tests.workbook.trainer.in_course import Kept, kept_in
from tests.workbook.trainer.nbgrader_steps import nbgrader
from tests.workbook.trainer.sheets import line, right, sheet, wrong
from workbook.fault import attempt_of_way
from workbook.log import line_of
from workbook.trainer.course import course_at, make_course
from workbook.trainer.giving import extend, override
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.marking.bulk import mark_all
from workbook.trainer.sets.notebook import write_source
from workbook.trainer.sets.set_file import parse_set_file

NAME, ANA, BEN, CLEO = "week-5", "ana.r", "ben.k", "cleo.d"
WEEK = parse_set_file(
    f"""
catalogue = {CATALOGUE}
draw = 7
families = ["brake_power", "most_lost", "lock_and_try"]
count = 3
points = 2
tries = 3
choice_tries = 0
due = 2025-11-26T12:00:00Z
late = 0.5

[credit]
each_try = 0.25

[faults]
count = 1
level = 1
points = 10
unsafe = 0.2
""",
    NAME,
)
NUMBER, CHOICE, ORDER = (
    next(
        at
        for at, case in enumerate(cases_for(WEEK.work, ANA), 1)
        if (bool(case.choices), case.ordered) == kind
    )
    for kind in ((False, False), (True, False), (True, True))
)
IN_TIME, LATE = "2025-11-25 20:00:00 UTC", "2025-11-26 13:00:00 UTC"


def worked(person: str, *before: str) -> bytes:
    """All right: the number at the third try, and the case after these other steps."""
    code = str(faults_for(WEEK.work, person)[0].code)
    words = (*before, *sure_way(code).words)
    ways = [way_of(code, words[:many]) for many in range(1, len(words) + 1)]
    kept = "".join(f"{line_of(attempt_of_way(way, WEEK.work.code, person))}\n" for way in ways)
    tries = [line(WEEK, person, NUMBER, wrong, at) for at in (1, 2)]
    answers = [line(WEEK, person, NUMBER, right, 3)]
    answers += [line(WEEK, person, n, right) for n in (CHOICE, ORDER)]
    return sheet(*tries, *answers) + kept.encode()


def at(number: float, choice: float, order: float, case: float) -> tuple[float, ...]:
    """Points by question; the problems come in an order of chance, and the case is last."""
    points = {NUMBER: number, CHOICE: choice, ORDER: order, 4: case}
    return tuple(points[n] for n in range(1, 5))


SENT = {
    ANA: (worked(ANA), IN_TIME, at(1, 2, 2, 10), None),
    BEN: (worked(BEN, "insulation"), LATE, at(1, 2, 2, 8), 6.5),
    CLEO: (sheet(line(WEEK, CLEO, CHOICE, right)), LATE, at(0, 2, 0, 0), 1.0),
}


@pytest.fixture(scope="module")
def ways(tmp_path_factory):
    """Two copies of a course, graded in the two ways."""
    base = tmp_path_factory.mktemp("both")
    course = make_course(base / "at-once")
    write_source(WEEK, course.root)
    nbgrader(course.root, NAME, "generate_assignment")
    page = course.folder("release", NAME) / f"{NAME}.ipynb"
    for person, (data, when, _, _) in SENT.items():
        folder = course.folder("submitted", NAME, person)
        folder.mkdir(parents=True)
        (folder / SHEET).write_bytes(data)
        (folder / "timestamp.txt").write_text(when)
        shutil.copy(page, folder)
    shutil.copytree(course.root, base / "by-nbgrader")
    mark_all(course.root, NAME)
    other = course_at(base / "by-nbgrader")
    nbgrader(other.root, NAME, *(f"autograde {person}" for person in SENT))
    return course, other


def kept(course) -> dict[str, list[Kept]]:
    rows = kept_in(course.root / "gradebook.db")
    return {person: [row for row in rows if row.person == person] for person in SENT}


def by_hand(course) -> None:
    """More time for Ben, and points for Cleo."""
    usual = {"set": NAME, "course": course.root, "remove": False, "group": "", "note": "was sick"}
    until = datetime(2025, 11, 27, tzinfo=UTC).replace(tzinfo=None)
    list(extend(argparse.Namespace(**usual, person=BEN, due=until)))
    given = {"question": NUMBER, "points": 1.5, "reason": "shown at the board"}
    list(override(argparse.Namespace(**usual, person=CLEO, **given)))


def test_both_ways_give_every_kind_of_question_the_points_that_are_due(ways):
    at_once, by_nbgrader = map(kept, ways)
    assert at_once == by_nbgrader
    for person, (_, _, points, penalty) in SENT.items():
        rows = at_once[person]
        assert points == tuple(row.score for row in rows)
        assert {penalty} == {row.penalty for row in rows}


def test_more_time_and_points_by_hand_are_the_same_in_both_and_stay_when_nbgrader_grades_again(
    ways,
):
    for course in ways:
        by_hand(course)
    nbgrader(ways[1].root, NAME, *(f"autograde {person}" for person in (BEN, CLEO)))
    mark_all(ways[0].root, NAME)
    at_once, by_nbgrader = map(kept, ways)
    assert at_once == by_nbgrader
    assert {None} == {row.penalty for row in at_once[BEN]}
    assert 1.5 == at_once[CLEO][NUMBER - 1].by_hand
    assert {1.75} == {row.penalty for row in at_once[CLEO]}
