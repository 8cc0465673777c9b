"""A whole class from its list to the record of completion on the page alone, and by the lines it prints."""

import re
import subprocess
from datetime import UTC, datetime
from html import unescape
from io import BytesIO
from zipfile import ZipFile

import pytest

from solver import SolverError
from tests.workbook.trainer.sheets import right
from tests.workbook.trainer.week_three import NAME, WEEK, answers
from workbook.start import child
from workbook.trainer.course import CONFIG, make_course
from workbook.trainer.doing.course_panel import CoursePanel
from workbook.trainer.doing.line import do
from workbook.trainer.doing.sent import kept_files
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.sets.notebook import write_source

SAVED = datetime(2025, 11, 25, 20, tzinfo=UTC)
PEOPLE = "Name;ID;Email\nRuiz, Ana;op01;ana@example.org\nBen Kay;op02;ben@example.org\n"


def upload(name, data):
    return {
        "name": name, "type": "", "size": len(data), "content": memoryview(data),
        "last_modified": SAVED,
    }  # fmt: skip


def packed(person):
    held = BytesIO()
    with ZipFile(held, "w") as pack:
        pack.writestr(f"{person}/{NAME}/{SHEET}", answers(person, right))
    return held.getvalue()


@pytest.fixture
def panel(tmp_path):
    course = make_course(tmp_path / "my pumps", name="pumps")
    write_source(WEEK, course.root)
    return CoursePanel(course.root, clock=iter(range(0, 99_999, 5)).__next__)


def said(panel, step):
    panel.steps[step].run.click()
    return unescape(re.sub("<[^>]+>", " ", panel.steps[step].said.value))


def test_a_class_goes_from_its_list_to_the_record_of_completion_on_the_page_alone(panel):
    root = panel.course
    assert "Choose the file with the list first." in said(panel, "list")
    panel.people.value = (upload("class.csv", PEOPLE.encode("cp1252")),)
    assert "2 people are on its list." in said(panel, "list")
    given = said(panel, "give out")
    assert "Guessing alone earns" in given
    with ZipFile(root / "to-send" / f"{NAME}.zip") as out:
        assert {f"{NAME}/{NAME}.ipynb", f"{NAME}/set.toml", f"{NAME}/class-list.txt"} <= set(
            out.namelist()
        )
    assert "Not yet: Ana Ruiz (op01), Ben Kay (op02)." in panel.stand.value
    panel.files.value = tuple(upload(f"{NAME}-{p}.zip", packed(p)) for p in ("op01", "op02"))
    marked = said(panel, "take in")
    assert "Work from 2 people was taken in." in marked
    assert () == panel.files.value
    assert 1 == len(panel.steps["take in"].links.children)
    assert "2 people have turned it in.</p><p>Nobody is missing." in panel.stand.value
    again = said(panel, "take in")
    assert "2 files were taken in before, and nothing in them is new." in again
    assert panel.hand.whose.options == ("Ana Ruiz (op01)", "Ben Kay (op02)")
    panel.hand.whose.value, panel.hand.number.value = "Ben Kay (op02)", "1"
    panel.hand.points.value, panel.hand.reason.value = "0.5", "copied at the board"
    assert "op02 has 0.5 points for question 1" in said(panel, "override")
    panel.over.day.value, panel.over.topic.value, panel.over.hours.value = (
        "2026-12-01",
        "Power",
        "2",
    )
    assert "2026-12-01 is kept: Power, 2 hours, 0 absent." in said(panel, "attend")
    assert "has 2 people and 1 set." in said(panel, "grades")
    assert "Type your name" in said(panel, "completion")
    panel.over.trainer.value = "R. Vance"
    assert "has 2 records." in said(panel, "completion")
    assert "Ana Ruiz" in (root / "to-send" / "completion.html").read_text("utf-8")
    assert "all" in said(panel, "backup")
    (backup,) = root.parent.glob("my pumps-backup-*.zip")
    with ZipFile(backup) as kept:
        assert {f"my pumps/{CONFIG}", "my pumps/gradebook.db"} <= set(kept.namelist())


def test_the_line_that_a_step_prints_runs_as_it_is_from_any_folder(panel, tmp_path):
    panel.over.day.value, panel.over.topic.value, panel.over.hours.value = (
        "2026-12-01",
        "Power & head",
        "2",
    )
    said(panel, "attend")
    line = unescape(re.search("<code>(.+?)</code>", panel.steps["attend"].said.value)[1])
    environment = child.environment(WIRE_TO_WATER_SET_UP_FOR="requirements-class.txt")
    done = subprocess.run(
        line, shell=True, cwd=tmp_path, env=environment, capture_output=True, text=True
    )
    assert (0, "") == (done.returncode, done.stderr)
    assert "2026-12-01 is changed: Power & head, 2 hours, 0 absent." in done.stdout


def test_words_that_cannot_be_read_are_told_and_not_the_end_of_the_page(panel):
    panel.over.day.value = "tomorrow"
    assert "tomorrow isn't a day; type one such as 2026-12-01" in said(panel, "attend")
    with pytest.raises(SolverError, match="Unrecognized arguments: --what"):
        list(do(["grades", "--what"]))


def test_a_file_that_is_dropped_is_kept_with_its_time_and_never_over_another(tmp_path):
    folder = kept_files(tmp_path, "week-3", [upload("a.zip", b"1"), upload("a.zip", b"2")])
    kept_files(tmp_path, "week-3", [upload("a.zip", b"1"), upload("../../x.zip", b"3")])
    assert ["a (2).zip", "a.zip", "x.zip"] == sorted(path.name for path in folder.iterdir())
    assert SAVED.timestamp() == (folder / "a.zip").stat().st_mtime
