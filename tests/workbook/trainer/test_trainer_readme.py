"""The README's walk for a trainer, typed just as it stands there."""

import re
import shutil
import subprocess

import pytest

from solver.sets.work_set import cases_for
from tests.workbook.trainer.sheets import line, mistaken, right, sheet
from workbook.start import child
from workbook.trainer.coming_in.packed import work_as_zip
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.sets.set_file import read_set_file

NAME = "week-3"
WALK = re.compile(r"^    (python3 -m workbook (\w+) .*~/pumps.*)$", re.MULTILINE)


MORE = ["extend", "override", "attend", "grades", "completion", "backup"]


@pytest.fixture(scope="module")
def walk(root):
    """The lines of the README, by the command they type."""
    readme = (root / "README.md").read_text(encoding="utf-8")
    lines = {found[2]: found[1] for found in WALK.finditer(readme)}
    first = ["course", "set", "mark", "class", "trainer"]
    assert [*first, *MORE] == list(lines)
    return lines


def answer(released, home, person, how):
    """Somebody copies the folder of the set, answers, and saves the work as one file."""
    own = home / "people" / person / NAME
    shutil.copytree(released, own)
    work = read_set_file(own / "set.toml")
    numbers = range(1, work.work.count + 1)
    (own / SHEET).write_bytes(sheet(*(line(work, person, number, how) for number in numbers)))
    packed, _ = work_as_zip(own, person)
    (home / "turned-in").mkdir(exist_ok=True)
    (home / "turned-in" / f"{NAME}-{person}.zip").write_bytes(packed)


def test_the_readmes_lines_take_a_class_from_its_list_to_feedback_grades_and_report(
    walk, root, tmp_path
):
    environment = child.environment(
        HOME=str(tmp_path), WIRE_TO_WATER_SET_UP_FOR="requirements-class.txt"
    )

    def typed(command):
        done = subprocess.run(
            walk[command], shell=True, cwd=root, env=environment, text=True, capture_output=True
        )  # fmt: skip
        assert (0, "") == (done.returncode, done.stderr)
        return done.stdout

    (tmp_path / "people.csv").write_text("id,first_name\nana.r,Ana\nBen.K,Ben\n")
    assert "2 people are on its list." in typed("course")
    released = tmp_path / "pumps" / "release" / NAME
    assert f"Give people the folder {released}." in typed("set")
    answer(released, tmp_path, "ana.r", right)
    answer(released, tmp_path, "ben.k", mistaken)
    said = typed("mark")
    assert "Work from 2 people was taken in." in said
    assert "“week-3” is graded for 2 people; 0 of them were late." in said
    assert "2 feedback pages are in" in said
    grades = (tmp_path / "grades.csv").read_text().splitlines()
    drawn = cases_for(read_set_file(released / "set.toml").work, "ben.k")
    half = 0.5 * sum(not case.choices for case in drawn)  # a wrong choice earns nothing
    assert [["ana.r", "12.0"], ["ben.k", str(half)]] == sorted(
        [row.split(",")[3], row.split(",")[9]] for row in grades[1:]
    )
    page = tmp_path / f"pumps/feedback/ben.k/{NAME}/{NAME}.html"
    work = read_set_file(released / "set.toml").work
    for case in cases_for(work, "ben.k"):
        assert case.code in page.read_text(encoding="utf-8")
    assert "2 people" in typed("class")
    assert "ben.k has 1 point for question 3" in typed("override")
    assert "is kept: Pump power, 2 hours, 1 absent." in typed("attend")
    assert "has 2 people and 1 set." in typed("grades")
    assert "has 1 record." in typed("completion")
    assert "files of the course" in typed("backup")
