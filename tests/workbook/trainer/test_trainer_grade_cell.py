"""Grade cells: what one does where nbgrader runs it, and what becomes of it where nothing is run."""

import json

import pytest

from solver import SolverError
from tests.workbook.trainer.in_course import kept_in
from tests.workbook.trainer.nbgrader_steps import nbgrader
from tests.workbook.trainer.sheets import line, mistaken, right, sheet
from tests.workbook.trainer.week_three import COUNT, NAME, SET, WEEK, answers
from workbook import page
from workbook.trainer.course import make_course
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.marking import grade_cell
from workbook.trainer.marking.bulk import mark_all
from workbook.trainer.marking.grade_cell import fill_in, show_plain_answers
from workbook.trainer.marking.marked import mark
from workbook.trainer.sets.notebook import notebook_of, write_source

ANA = "ana.r"


@pytest.fixture
def shown(monkeypatch):
    """What grade cells show, in order."""
    said = []
    monkeypatch.setattr(grade_cell, "_show", lambda data: said.append(data["text/plain"]))
    return said


def autograded(tmp_path, monkeypatch, data, beside=SET):
    """In the folder that nbgrader makes to run ANA's work in."""
    folder = tmp_path / "autograded" / ANA / NAME
    for place in (folder, tmp_path / "submitted" / ANA / NAME, tmp_path / "source" / NAME):
        place.mkdir(parents=True)
    (tmp_path / "source" / NAME / "set.toml").write_text(SET)
    (folder / "set.toml").write_text(beside)
    (tmp_path / "submitted" / ANA / NAME / SHEET).write_bytes(data)
    monkeypatch.setenv("NBGRADER_EXECUTION", "autograde")
    monkeypatch.chdir(folder)


def test_a_grade_cell_does_nothing_where_a_person_runs_it(shown):
    assert page.set_mark(1) is None
    assert [] == shown


def test_it_shows_the_feedback_and_ends_in_a_plain_float(tmp_path, monkeypatch, shown):
    data = sheet(line(WEEK, ANA, 1, right), line(WEEK, ANA, 2, mistaken))
    autograded(tmp_path, monkeypatch, data)
    points = [page.set_mark(number) for number in (1, 2, 3)]
    assert ([2.0, 1.0, 0.0], {float}) == (points, set(map(type, points)))
    assert ["right", "a known mistake", "no answer"] == [
        text.split(": ")[1].split(", 0")[0].split(", 1")[0].split(", 2")[0] for text in shown
    ]


def test_the_set_is_the_trainers_and_not_the_one_beside_the_notebook(tmp_path, monkeypatch, shown):
    autograded(tmp_path, monkeypatch, answers(ANA, right), SET.replace("points = 2", "points = 9"))
    assert 2.0 == page.set_mark(1)


def test_the_person_is_the_one_of_the_folder_whatever_the_sheet_says(tmp_path, monkeypatch, shown):
    autograded(tmp_path, monkeypatch, answers("ben.k", right))
    assert 0.0 == page.set_mark(1)


@pytest.mark.parametrize(("number", "beside"), [(COUNT + 1, SET), (1, "points = many")])
def test_what_cannot_be_marked_is_told_and_earns_nothing(
    tmp_path, monkeypatch, shown, number, beside
):
    autograded(tmp_path, monkeypatch, answers(ANA, right), beside)
    if beside != SET:
        (tmp_path / "source" / NAME / "set.toml").write_text(beside)
    assert 0.0 == page.set_mark(number)
    assert shown[0].startswith("This question couldn't be graded. ")


def test_cards_stay_away_while_nbgrader_marks(tmp_path, monkeypatch):
    autograded(tmp_path, monkeypatch, b"")
    assert [None] * 3 == [page.set_work(), page.set_question(1), page.set_work("end")]


def test_in_a_learners_folder_validate_says_how_the_work_stands(tmp_path, monkeypatch, shown):
    folder = tmp_path / NAME
    folder.mkdir()
    (folder / "set.toml").write_text(SET)
    (folder / "person.txt").write_text(ANA)
    (folder / SHEET).write_bytes(sheet(line(WEEK, ANA, 1, right)))
    monkeypatch.setenv("NBGRADER_EXECUTION", "validate")
    monkeypatch.chdir(folder)
    assert [2.0, 0.0] == [page.set_mark(1), page.set_mark(2)]


def test_in_a_trainers_folder_validate_proves_that_right_answers_get_everything(
    tmp_path, monkeypatch, shown
):
    course = make_course(tmp_path / "pumps")
    folder = write_source(WEEK, course.root).parent
    monkeypatch.setenv("NBGRADER_EXECUTION", "validate")
    monkeypatch.chdir(folder)
    assert {2.0} == {page.set_mark(number) for number in range(1, COUNT + 1)}


# The notebook filled in, in the place of running it.


def test_the_first_marked_cell_brings_the_look_and_no_other_does():
    filled = notebook_of(WEEK)
    fill_in(filled, mark(WEEK, ANA, answers(ANA, right)))
    html = [
        cell["outputs"][0]["data"]["text/html"] for cell in filled["cells"] if cell.get("outputs")
    ]
    assert COUNT == len(html)
    assert [True] + [False] * (COUNT - 1) == ["<style>" in each for each in html]


def test_plain_answers_are_shown_as_text():
    filled = notebook_of(WEEK)
    show_plain_answers(filled, {2: "<script>alert(1)</script>"})
    (shown,) = (cell["source"] for cell in filled["cells"] if "<pre>" in cell["source"])
    assert shown.endswith("<pre>&lt;script&gt;alert(1)&lt;/script&gt;</pre>")


def test_a_grade_cell_of_the_trainers_own_is_left_to_a_person(tmp_path):
    course = make_course(tmp_path / "pumps")
    path = write_source(WEEK, course.root)
    notebook = json.loads(path.read_text(encoding="utf-8"))
    own = json.loads(json.dumps(notebook["cells"][-3]))
    own |= {"id": "mine", "source": "assert 1 == 1"}
    own["metadata"]["nbgrader"]["grade_id"] = "mine"
    notebook["cells"].append(own)
    path.write_text(json.dumps(notebook), encoding="utf-8")
    nbgrader(course.root, NAME, "generate_assignment")
    folder = course.folder("submitted", NAME, ANA)
    folder.mkdir(parents=True)
    (folder / SHEET).write_bytes(answers(ANA, right))
    (folder / f"{NAME}.ipynb").write_text("{}")
    nbgrader(course.root, NAME, f"autograde {ANA}")
    kept = {row.cell: row for row in kept_in(course.root / "gradebook.db")}
    assert (None, True) == (kept["mine"].score, kept["mine"].look)
    assert (2.0, False) == (kept["question-01"].score, kept["question-01"].look)
    with pytest.raises(SolverError, match="other questions or points than the set “week-3”"):
        mark_all(course.root, NAME)
