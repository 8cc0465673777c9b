"""A set's whole way on a real JupyterHub: given out, answered by two people, marked, given back."""

import os
import shutil
from pathlib import Path
from types import SimpleNamespace

import pytest
from nbgrader.api import Gradebook
from traitlets.config import PyFileConfigLoader

from solver.sets.work_set import case_for, set_of
from tests.workbook.trainer.hub import PROXY, Person, hub
from tests.workbook.trainer.nbgrader_steps import nbgrader
from workbook.trainer.course import make_course
from workbook.trainer.marking.bulk import mark_all
from workbook.trainer.marking.feedback_pages import write_feedback
from workbook.trainer.sets.notebook import write_source
from workbook.trainer.sets.set_file import Assigned

WORK = set_of(families=["brake_power"], level=1, count=2, seed=7)
WEEK = Assigned("week-1", "Week 1", WORK, points=10)
PAGE = "week-1/week-1.ipynb"
HUB = "workbook/trainer/hub"
SET = {"course_id": "class", "assignment_id": "week-1"}
STEPS = ("autograde", "generate_feedback")
# What choosing Check on the cards of the page does, in the kernel of the page.
ANSWER = """
from pathlib import Path
from workbook import page
from workbook.trainer.learner.own_set import own_set
page.set_work()
for number, text in enumerate({typed!r}, 1):
    page.set_question(number)
    print(own_set(Path()).question(number, lambda: 0.0).answer(text).verdict.status)
"""


def scores(course):
    with Gradebook(course.gradebook, course.name) as gradebook:
        return {each["student"]: each["score"] for each in gradebook.submission_dicts("week-1")}


@pytest.fixture(scope="module")
def exchange(tmp_path_factory):
    folder = tmp_path_factory.mktemp("exchange")
    folder.chmod(0o777)
    return folder


@pytest.fixture(scope="module")
def address(root, tmp_path_factory, exchange):
    programs = f"{root / 'node_modules/.bin'}{os.pathsep}{os.environ['PATH']}"
    if shutil.which(PROXY, path=programs) is None:
        absent = pytest.fail if os.environ.get("CI") == "true" else pytest.skip
        absent(f"{PROXY} was not found in node_modules; see .ci/run")
    with hub(root, tmp_path_factory.mktemp("homes"), exchange) as address:
        yield address


@pytest.fixture
def course(tmp_path, exchange):
    return make_course(tmp_path / "class", exchange=str(exchange))


def answers(person, wrong_from=3):
    """The right answers of a person, and wrong ones from a question on."""
    cases = [case_for(WORK, person, number) for number in (1, 2)]
    right = [f"{case.answer:.6g}" for case in cases]
    return [*right[: wrong_from - 1], *["0.001"] * (3 - wrong_from)]


def test_a_set_goes_out_over_a_hub_is_answered_marked_and_its_feedback_comes_back(course, address):
    ana, ben = Person(address, "ana.r"), Person(address, "ben")
    write_source(WEEK, course.root)
    nbgrader(course.root, "week-1", "generate_assignment", "release_assignment")
    for person in (ana, ben):
        person.wait_for_server()
        listed = person("POST", "assignments/fetch", **SET)
        assert ["fetched"] == [each["status"] for each in listed["value"]]
    assert "right\nright\n" == ana.run(PAGE, ANSWER.format(typed=answers("ana.r")))
    assert "right\nwrong\n" == ben.run(PAGE, ANSWER.format(typed=answers("ben", wrong_from=2)))
    for person in (ana, ben):
        person("POST", "assignments/submit", **SET)
    marked = [f"{step} {name}" for step in STEPS for name in ("ana.r", "ben")]
    nbgrader(course.root, "week-1", "collect", *marked)
    expected = {"ana.r": 20.0, "ben": 10.0}
    assert expected == scores(course)
    assert () == mark_all(course.root, "week-1").to_look_at
    assert expected == scores(course)
    assert 1 == write_feedback(course, "week-1", people=["ben"])  # in the place of nbgrader's own
    nbgrader(course.root, "week-1", "release_feedback")
    assert "(Score: 20.0 / 20.0)" in feedback(ana)
    assert "<b>10 of 20 points</b>" in feedback(ben)


def feedback(person):
    """The page that comes when somebody asks for what came of their work."""
    listed = person("POST", "assignments/fetch_feedback", **SET)
    (handed_in,) = listed["value"][-1]["submissions"]
    (page,) = handed_in["notebooks"]
    return person("GET", f"api/contents/{page['local_feedback_path']}")["content"]


def test_a_learner_has_the_list_of_work_and_none_of_the_tools_for_marking(address):
    ana = Person(address, "ana.r")
    ana.wait_for_server()
    pages = [f"{ana.base}{page}" for page in ("assignments?course_id=class", "formgrader/")]
    assert [200, 404] == [ana.browser.get(page).status_code for page in pages]


def test_a_trainer_gets_none_of_the_settings_of_a_learner(root):
    config = PyFileConfigLoader("jupyterhub_config.py", path=str(root / HUB)).load_config()
    variables = config.Spawner.environment
    trainer, learner = (SimpleNamespace(user=SimpleNamespace(admin=is_one)) for is_one in (1, 0))
    for name in ("JUPYTER_CONFIG_PATH", "JUPYTER_PATH"):
        assert "" == variables[name](trainer)
        assert all(Path(each).is_dir() for each in variables[name](learner).split(os.pathsep))


def test_nobody_reaches_the_server_of_somebody_else(address):
    ana, ben = Person(address, "ana.r"), Person(address, "ben")
    ana.wait_for_server()
    assert 403 == ben.browser.get(f"{ana.base}api/contents").status_code
