"""A gradebook on a PostgreSQL server, as one for many trainers is: marks are those of SQLite."""

import os

import pytest
from sqlalchemy import create_engine, text

from tests.workbook.trainer.class_of_thirty import CLASS
from tests.workbook.trainer.in_course import KEPT, Kept
from tests.workbook.trainer.nbgrader_steps import nbgrader
from tests.workbook.trainer.postgres import postgres, programs
from tests.workbook.trainer.week_three import NAME, WEEK, files_of
from workbook.trainer.course import CONFIG, course_at, make_course
from workbook.trainer.marking.bulk import Summary, mark_all
from workbook.trainer.sets.notebook import write_source

WHEN = "2025-11-25 18:00:00 UTC"
LATE = "2025-11-26 12:01:00 UTC"
BY_NBGRADER = ("ada.b", "mia.n", "oda.p")  # all right; late; a torn sheet


@pytest.fixture(scope="module")
def address():
    found = programs()
    if found is None:
        absent = pytest.fail if os.environ.get("CI") == "true" else pytest.skip
        absent("no PostgreSQL was found here; see .ci/run")
    with postgres(found) as address:
        yield address


@pytest.fixture(scope="module")
def course(tmp_path_factory, address):
    """A course with what the class of thirty handed in, whose settings name the server."""
    course = make_course(tmp_path_factory.mktemp("on_a_server") / "pumps")
    write_source(WEEK, course.root)
    nbgrader(course.root, NAME, "generate_assignment")
    with (course.root / CONFIG).open("a") as settings:
        settings.write(f"c.CourseDirectory.db_url = {address!r}\n")
    released = (course.folder("release", NAME) / f"{NAME}.ipynb").read_bytes()
    for person in CLASS:
        folder = course.folder("submitted", NAME, person.id)
        folder.mkdir(parents=True)
        files = {**files_of(person, released), "timestamp.txt": _when(person.late)}
        for name, data in files.items():
            (folder / name).write_bytes(data)
    marked = [f"autograde {person}" for person in BY_NBGRADER]
    nbgrader(course.root, NAME, "generate_assignment", *marked)
    return course_at(course.root)


def _when(late):
    return (LATE if late else WHEN).encode()


def kept(address):
    """All that a gradebook says of each question of each person."""
    engine = create_engine(address)
    try:
        with engine.connect() as connection:
            rows = connection.execute(text(KEPT)).all()
    finally:
        engine.dispose()
    found = (Kept(*row)._replace(look=bool(row[4]), flagged=bool(row[8])) for row in rows)
    return {(each.person, each.cell): each._replace(when=str(each.when)[:19]) for each in found}


def test_the_gradebook_that_a_course_names_in_its_settings_is_used(course, address):
    assert address == course.gradebook


def test_nbgrader_and_the_bulk_way_give_a_class_on_a_server_the_marks_of_a_file(course, address):
    by_nbgrader = kept(address)
    assert set(BY_NBGRADER) == {person for person, _ in by_nbgrader}
    in_file = f"sqlite:///{course.root / 'gradebook.db'}"
    expected = mark_all(course.root, NAME, in_file)
    assert (30, 3) == (expected.people, expected.late)
    here = mark_all(course.root, NAME)
    assert set(BY_NBGRADER) == set(expected.new) - set(here.new)  # those were marked here before
    assert expected == here._replace(new=expected.new)
    assert kept(in_file) == kept(address)
    assert by_nbgrader == {key: row for key, row in kept(address).items() if key in by_nbgrader}


def test_marking_again_on_a_server_changes_nothing(course, address):
    before = kept(address)
    assert isinstance(mark_all(course.root, NAME), Summary)
    assert before == kept(address)
