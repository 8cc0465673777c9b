"""A class marked at once: what it writes into nbgrader's gradebook, and what it leaves alone."""

import shutil
from datetime import UTC, datetime

import pytest
from nbgrader.api import Base, Gradebook
from sqlalchemy import create_engine, text

from solver import SolverError
from tests.workbook.trainer.in_course import kept_in
from tests.workbook.trainer.marked import ANA, BEN, by_hand, hand_in, kept, made_ready
from tests.workbook.trainer.sheets import line, right, sheet, wrong
from tests.workbook.trainer.week_three import COUNT, NAME, SET, WEEK, answers, numeric
from workbook.trainer.course import course_at
from workbook.trainer.gradebook.tables import TABLES, GradebookFault
from workbook.trainer.marking import bulk
from workbook.trainer.marking.bulk import mark_all


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """A course whose set nbgrader has made ready, and nothing handed in."""
    return made_ready(tmp_path_factory.mktemp("bulk") / "pumps").root


@pytest.fixture
def course(made, tmp_path):
    """The same course for one test."""
    shutil.copytree(made, tmp_path / "pumps")
    return course_at(tmp_path / "pumps")


def test_the_tables_are_those_of_nbgraders_own_models():
    for table in TABLES.tables.values():
        theirs = Base.metadata.tables[table.name]
        for column in table.columns:
            assert column.type.python_type is theirs.columns[column.name].type.python_type
        required = {c.name for c in theirs.columns if not (c.nullable or c.default)}
        if table.name not in ("assignment", "notebook", "base_cell", "grade_cells"):  # only read
            assert required <= {column.name for column in table.columns}


def test_nbgrader_can_read_what_was_written_as_its_own(course):
    hand_in(course, ANA, answers(ANA, right))
    mark_all(course.root, NAME)
    with Gradebook(course.gradebook) as gradebook:
        submission = gradebook.find_submission(NAME, ANA)
        assert (24.0, 24.0, False) == (
            submission.score, submission.max_score, submission.needs_manual_grade
        )  # fmt: skip
        assert 24.0 == gradebook.average_assignment_score(NAME)
        assert {"question-01"} < {remark.name for remark in submission.notebooks[0].comments}
        gradebook.remove_submission(NAME, ANA)
    assert [] == kept(course)


def test_a_score_given_by_hand_stays_and_a_late_share_is_taken_off_it(course):
    hand_in(course, ANA, answers(ANA, right), "2025-11-26 12:00:01 UTC")
    mark_all(course.root, NAME)
    assert 2.4 == kept(course)[0].penalty
    by_hand(course, manual_score=1.0, extra_credit=0.5, needs_manual_grade=False)
    mark_all(course.root, NAME)
    first = kept(course)[0]
    assert (2.0, 1.0, False) == (first.score, first.by_hand, first.look)
    assert 2.35 == first.penalty


def test_what_somebody_looked_at_stays_so_until_the_work_changes(course):
    status = line(WEEK, ANA, number := numeric(ANA)[0], wrong, status="right")
    hand_in(course, ANA, sheet(status))
    mark_all(course.root, NAME)
    assert kept(course)[number - 1].look
    by_hand(course, number, needs_manual_grade=False)
    mark_all(course.root, NAME)
    assert not kept(course)[number - 1].look
    hand_in(course, ANA, sheet(status, line(WEEK, ANA, number, right, 2)))
    mark_all(course.root, NAME)
    assert (1.8, True) == (kept(course)[number - 1].score, kept(course)[number - 1].look)


def test_more_time_that_nbgrader_gave_somebody_counts(course):
    for person in (ANA, BEN):
        hand_in(course, person, answers(person, right), "2025-11-26 18:00:00 UTC")
    mark_all(course.root, NAME)
    with Gradebook(course.gradebook) as gradebook:
        gradebook.grant_extension(NAME, ANA, hours=7)
    assert 1 == mark_all(course.root, NAME).late
    assert (None, 2.4) == (kept(course)[0].penalty, kept(course, BEN)[0].penalty)


def test_either_all_of_a_class_is_written_or_nothing(course, monkeypatch):
    for number in range(3):
        hand_in(course, f"p{number}", answers(f"p{number}", right))
    calls = []

    def breaks_off(*words):
        calls.append(keep(*words))
        if len(calls) == 2:
            raise SolverError("The power went.")
        return calls[-1]

    keep = bulk.keep_scores
    monkeypatch.setattr(bulk, "AT_ONCE", 1)
    monkeypatch.setattr(bulk, "keep_scores", breaks_off)
    with pytest.raises(SolverError, match="The power went"):
        mark_all(course.root, NAME)
    assert [] == kept_in(course.root / "gradebook.db")
    monkeypatch.undo()
    assert 3 == mark_all(course.root, NAME).people


def test_a_folder_that_can_be_nobodys_is_told_and_the_others_are_marked(course):
    hand_in(course, ANA, answers(ANA, right))
    hand_in(course, "no one", answers(ANA, right))
    found = mark_all(course.root, NAME)
    assert (1, True) == (found.people, found.notes[0].startswith("no one: not graded. An id has"))


@pytest.mark.parametrize("when", ["yesterday, I think", "0001-01-01T00:00:00+14:00"])
def test_a_time_that_cannot_be_read_is_told_and_counts_as_in_time(course, when):
    hand_in(course, ANA, answers(ANA, right), when)
    found = mark_all(course.root, NAME)
    assert (
        "ana.r: timestamp.txt has no time in it, so this doesn't count as late.",
    ) == found.notes
    assert (0, None) == (found.late, kept(course)[0].when)


def test_names_in_the_gradebook_stay(course):
    with Gradebook(course.gradebook) as gradebook:
        gradebook.add_student(ANA, first_name="Ana")
    hand_in(course, ANA, answers(ANA, right))
    mark_all(course.root, NAME)
    with Gradebook(course.gradebook) as gradebook:
        assert "Ana" == gradebook.find_student(ANA).first_name


def test_only_those_asked_for_are_marked(course):
    for person in (ANA, BEN):
        hand_in(course, person, answers(person, right))
    assert 1 == mark_all(course.root, NAME, people=[BEN]).people
    assert ([], COUNT) == (kept(course), len(kept(course, BEN)))


# What cannot be marked, and what to do.


def test_a_gradebook_that_is_not_there_is_told_and_not_made(course):
    with pytest.raises(GradebookFault, match=r"There is no gradebook .*none\.db yet"):
        mark_all(course.root, NAME, f"sqlite:///{course.root}/none.db")
    assert not (course.root / "none.db").exists()


def test_a_set_that_nbgrader_has_not_made_ready_is_told(course):
    shutil.copytree(course.root / "source" / NAME, course.root / "source/week-4")
    with pytest.raises(GradebookFault, match=r"has no set “week-4” yet\. .*workbook set week-4"):
        mark_all(course.root, "week-4")


def test_points_changed_since_the_set_was_made_are_told_and_nothing_is_marked(course):
    path = course.root / f"source/{NAME}/set.toml"
    path.write_text(SET.replace("points = 2", "points = 3"))
    hand_in(course, ANA, answers(ANA, right))
    with pytest.raises(GradebookFault, match=r"other questions or points .* workbook set week-3"):
        mark_all(course.root, NAME)
    assert [] == kept(course)


def test_a_gradebook_that_another_program_holds_is_told(course):
    hand_in(course, ANA, answers(ANA, right))
    other = create_engine(course.gradebook)
    with other.connect() as holding:
        holding.execute(text("begin exclusive"))
        with pytest.raises(GradebookFault, match=r"nothing in it was changed: database is locked"):
            mark_all(course.root, NAME, f"{course.gradebook}?timeout=0.05")
    other.dispose()


def test_times_are_kept_in_utc(course):
    hand_in(course, ANA, answers(ANA, right), "2026-12-01 12:00:00 America/Chicago")
    mark_all(course.root, NAME)
    expected = datetime(2026, 12, 1, 18, tzinfo=UTC)
    assert f"{expected:%Y-%m-%d %H:%M:%S}.000000" == kept(course)[0].when
