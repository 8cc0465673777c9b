"""The notebook of a set: whole, the same each time, and what nbgrader itself takes."""

import ast
import json
import os
import re
import subprocess
import sys
from dataclasses import replace

import nbformat
import pytest

from solver.sets.credit import Credit
from solver.sets.work_set import set_of
from workbook.start.folder import CannotWrite
from workbook.trainer.coming_in.handed_in import plain_answers
from workbook.trainer.course import make_course
from workbook.trainer.gradebook.rules import grade_id
from workbook.trainer.sets.notebook import NotOurs, notebook_of, write_source
from workbook.trainer.sets.set_file import Assigned, read_set_file
from workbook.ui.cautions import topics

WORK = set_of(chapters=["horsepower", "insulation"], count=12, seed=48213)
WEEK = Assigned("week-3", "Week 3: power", WORK, points=5.0, tries=3, counts="last")
NUMBERS = range(1, 13)
LONGEST = 19  # words in a sentence: under 20


@pytest.fixture
def written(tmp_path):
    return write_source(WEEK, tmp_path)


def cells(kind, assigned=WEEK):
    return [cell for cell in notebook_of(assigned)["cells"] if cell["cell_type"] == kind]


def prose(assigned=WEEK):
    return "\n".join(cell["source"] for cell in cells("markdown", assigned))


def test_it_is_a_valid_notebook_with_the_mark_of_a_set(written):
    page = nbformat.read(written, as_version=nbformat.NO_CONVERT)
    nbformat.validate(page)
    mark = page.metadata.wire_to_water
    assert (True, WORK.code) == (mark.page, mark.set)
    assert "python3" == page.metadata.kernelspec.name


def test_it_lies_where_nbgrader_looks_with_its_set_beside_it(written, tmp_path):
    assert tmp_path / "source" / "week-3" / "week-3.ipynb" == written
    assert WEEK == read_set_file(written.with_name("set.toml"))
    assert ["set.toml", "week-3.ipynb"] == sorted(path.name for path in written.parent.iterdir())


def test_each_question_has_a_heading_a_card_a_plain_answer_and_a_mark():
    ids = [cell["id"] for cell in notebook_of(WEEK)["cells"]]
    parts = ("heading", "card", "answer", "question")
    questions = [f"{part}-{number:02}" for number in NUMBERS for part in parts]
    first, last = (
        ["title", "cautions-first", "cautions", "how", "who"],
        ["hand-in-first", "hand-in"],
    )
    assert [*first, *questions, *last] == ids


def test_code_is_one_hidden_call_that_needs_no_other_cell_and_keeps_no_output():
    for cell in cells("code"):
        comment, bring, empty, call = cell["source"].splitlines()
        assert re.fullmatch(r"# [A-Z][^.!]*\.", comment)
        assert ("from workbook import page", "") == (bring, empty)
        assert isinstance(ast.parse(call).body[0].value, ast.Call)
        assert ([], None) == (cell["outputs"], cell["execution_count"])
        assert cell["metadata"]["jupyter"]["source_hidden"]


def test_the_workbook_in_the_browser_knows_every_line_of_it(root):
    (script,) = root.glob("workbook/start/settings/labextensions/wire-to-water/static/page.*.js")
    line = re.search(r"SET_LINE =\s+/(\^.*\$)/;", script.read_text(encoding="utf-8"))[1]
    assert [] == [c["source"] for c in cells("code") if not re.fullmatch(line, c["source"])]


def test_the_grade_cells_are_locked_numbered_and_worth_the_points_of_the_set():
    marked = [
        cell["metadata"]["nbgrader"] for cell in cells("code") if "nbgrader" in cell["metadata"]
    ]
    assert [grade_id(number) for number in NUMBERS] == [mark["grade_id"] for mark in marked]
    assert {(5, True, True, False, False, 3)} == {
        tuple(
            mark[key] for key in ("points", "grade", "locked", "solution", "task", "schema_version")
        )
        for mark in marked
    }


def test_only_the_cells_to_write_into_can_be_changed():
    open_ = [c["id"] for c in notebook_of(WEEK)["cells"] if c["metadata"].get("editable", True)]
    assert [f"answer-{number:02}" for number in NUMBERS] == open_
    assert all(not cell["metadata"]["deletable"] for cell in notebook_of(WEEK)["cells"])


def test_an_empty_answer_cell_is_no_answer_and_one_written_into_is():
    page = notebook_of(WEEK)
    assert {} == plain_answers(json.dumps(page).encode())
    cell = next(cell for cell in page["cells"] if cell["id"] == "answer-03")
    cell["source"] += "12.5 hp"
    assert {3: "12.5 hp"} == plain_answers(json.dumps(page).encode())


def test_the_same_set_gives_the_same_file_and_another_set_another(written):
    first = written.read_bytes()
    write_source(WEEK, written.parents[2])
    assert first == written.read_bytes()
    write_source(WEEK._replace(points=2.0), written.parents[2])
    assert first != written.read_bytes()


def test_what_a_trainer_wrote_into_the_file_of_the_set_stays_where_it_means_the_same(written):
    file = written.with_name("set.toml")
    own = "# For the Tuesday group.\n" + file.read_text(encoding="utf-8")
    file.write_text(own, encoding="utf-8")
    write_source(WEEK, written.parents[2])
    assert own == file.read_text(encoding="utf-8")
    write_source(WEEK._replace(tries=1), written.parents[2])
    assert 1 == read_set_file(file).tries


def test_a_notebook_that_was_changed_by_hand_is_never_written_over(written):
    page = json.loads(written.read_text(encoding="utf-8"))
    page["cells"][0]["source"] = "# Mine"
    written.write_text(json.dumps(page), encoding="utf-8")
    with pytest.raises(NotOurs, match=r"week-3\.ipynb was changed by hand\. Move it, or"):
        write_source(WEEK, written.parents[2])
    assert "# Mine" in written.read_text(encoding="utf-8")


def test_a_folder_that_cannot_be_written_to_is_said(tmp_path):
    (tmp_path / "source").write_text("a file stands in the way")
    with pytest.raises(CannotWrite, match="can't be written to"):
        write_source(WEEK, tmp_path)


def test_a_title_is_shown_as_it_was_written():
    title = cells("markdown", WEEK._replace(title="Week *3*: <b> & #1"))[0]["source"]
    assert title.startswith("# Week \\*3\\*: \\<b\\> & \\#1\n")


@pytest.mark.parametrize(
    ("chapter", "topic"),
    [("insulation", "insulation"), ("speed", "drives"), ("wet_well", "wet_well")],
)
def test_the_cautions_are_those_of_the_chapters_and_come_first(chapter, topic):
    week = WEEK._replace(work=set_of(chapters=[chapter], count=2))
    first = cells("code", week)[0]["source"]
    named = re.findall(r'"(\w+)"', first)
    assert topic in named
    assert "electrical" in named
    assert [each for each in topics() if each in named] == named


@pytest.mark.parametrize(
    ("changed", "says"),
    [
        ({"tries": 0}, "Your last answer to a question counts."),
        ({"tries": 1}, "You have one try for each question."),
        ({"tries": 4}, "You have 4 tries for each question."),
        ({"counts": "first"}, "Later ones show you where you stand."),
        ({"points": 1.0}, "Each is worth 1 point."),
        ({"points": 2.5}, "Each is worth 2.5 points."),
        (
            {"credit": Credit(each_try=0.25)},
            "Each try after the first takes 25% off: right on the second try earns 75%.",
        ),
        ({"work": replace(WORK, each=False)}, "Everyone has the same numbers."),
    ],
)
def test_what_the_set_asks_of_people_stands_at_its_head(changed, says):
    assert says in prose(WEEK._replace(**changed))


def test_sentences_are_under_twenty_words_and_calm():
    for credit in (Credit(), Credit(each_try=0.1)):
        for line in prose(WEEK._replace(credit=credit)).splitlines():
            assert "!" not in line
            for sentence in re.split(r"(?<=[.?:])\s+", line):
                assert len(sentence.split()) <= LONGEST, sentence


# nbgrader itself


@pytest.fixture
def nbgrader(root, tmp_path):
    """Types a command of nbgrader's into a course that has the set; what it answers."""
    course = make_course(tmp_path / "class").root
    write_source(WEEK._replace(work=set_of(chapters=["head"], count=3, seed=5)), course)

    def run(*words):
        command = [sys.executable, "-m", "nbgrader", *words]
        own = {"PYTHONPATH": str(root), "HOME": str(tmp_path)}
        kept = {name: value for name, value in os.environ.items() if not name.startswith("XDG_")}
        told = subprocess.run(
            command, cwd=course, env={**kept, **own}, capture_output=True, text=True
        )
        assert 0 == told.returncode, told.stderr
        return told.stdout + told.stderr

    run.course = course
    return run


def test_nbgrader_validates_it_in_the_trainers_folder_and_leaves_nothing_there(nbgrader):
    source = nbgrader.course / "source" / "week-3"
    assert "Success! Your notebook passes all the tests." in nbgrader(
        "validate", str(source / "week-3.ipynb")
    )
    assert ["set.toml", "week-3.ipynb"] == sorted(path.name for path in source.iterdir())


def test_nbgrader_generates_what_goes_out_with_its_cells_locked_and_its_names_kept(nbgrader):
    nbgrader("generate_assignment", "week-3")
    source, release = (
        nbformat.read(nbgrader.course / step / "week-3" / "week-3.ipynb", as_version=4)
        for step in ("source", "release")
    )
    assert [cell.id for cell in source.cells] == [cell.id for cell in release.cells]
    assert [cell.source for cell in source.cells] == [cell.source for cell in release.cells]
    assert source.metadata.wire_to_water == release.metadata.wire_to_water
    marked = [cell for cell in release.cells if "nbgrader" in cell.metadata]
    assert ["question-01", "question-02", "question-03"] == [
        cell.metadata.nbgrader.grade_id for cell in marked
    ]
    assert all(cell.metadata.nbgrader.checksum for cell in marked)
    assert not any(cell.metadata.editable or cell.metadata.deletable for cell in marked)
    assert (nbgrader.course / "release" / "week-3" / "set.toml").exists()
