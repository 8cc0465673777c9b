"""A class of a course: marked from what was handed in, told by the command and on the page."""

import argparse
import base64
import re
import shutil
from datetime import UTC, datetime
from html import unescape

import pytest

from solver.sets.work_set import set_of
from tests.workbook.trainer.a_class import handed_in, people
from workbook.trainer.course import Course, make_course
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.report import command
from workbook.trainer.report.class_panel import ClassPanel
from workbook.trainer.report.facts import facts
from workbook.trainer.report.files import mistakes_csv, people_csv, questions_csv
from workbook.trainer.report.gathered import Gathered, gathered
from workbook.trainer.report.words import hands
from workbook.trainer.sets.set_file import Assigned
from workbook.trainer.setting.keep import put
from workbook.ui.pages import shipped_pages

WEEK = Assigned(
    "week-3", "Week 3: power", set_of(chapters=["horsepower", "efficiency"], count=12, seed=48213)
)


@pytest.fixture(scope="module")
def course(tmp_path_factory):
    """A course in which most of 14 people handed in, two did not, and one folder has a bad name."""
    course = make_course(tmp_path_factory.mktemp("class") / "pumps")
    put(course.root, WEEK, datetime.now())
    ids = people(14)
    (course.root / "people.csv").write_text("\n".join(["id", *ids]), encoding="utf-8")
    for person, sheet in [*handed_in(WEEK, ids[:12]), ("Zoe Q", b"")]:
        folder = course.folder("submitted", WEEK.name, person)
        folder.mkdir(parents=True)
        (folder / SHEET).write_bytes(sheet)
    return course


def test_those_of_the_class_who_handed_in_nothing_are_there_and_a_bad_name_is_told(course):
    steps = []
    found = gathered(course.root, "week-3", lambda *step: steps.append(step))
    assert people(14) == [person.person for person in found.facts.people]
    assert people(12) == [person.person for person in found.facts.there]
    assert [(n, 13) for n in range(1, 13)] == steps
    assert "1 folder was left out, because that can't be an id: “Zoe Q”." in found.notes(
        hidden=False
    )
    assert "Zoe" not in " ".join(found.notes(hidden=True))
    gone = [one for one in hands(found.facts.people) if not one.person.handed_in]
    assert people(14)[12:] == [one.person.person for one in gone]
    assert {("Nothing was answered.",)} == {one.why for one in gone}


def test_before_anybody_has_handed_in_nobody_is_behind(course):
    put(course.root, WEEK._replace(name="week-4"), datetime.now())
    try:
        assert () == gathered(course.root, "week-4").facts.people
    finally:
        shutil.rmtree(course.folder("source", "week-4"))


def test_what_is_late_is_told_as_not_taken_off_here():
    late = WEEK._replace(due=datetime.now(UTC), late=0.1)
    told = Gathered(late, facts([]), 0, ()).notes(hidden=False)
    assert ["These points are before anything is taken off for being late."] == told
    assert [] == Gathered(WEEK, facts([]), 0, ()).notes(hidden=False)


def typed(*words, course):
    parser = argparse.ArgumentParser()
    command.options(parser)
    return command.run(parser.parse_args([*words, "--course", str(course.root)]))


def test_the_command_prints_the_report_with_names_or_without(course, capsys):
    assert 0 == typed("week-3", course=course)
    named = capsys.readouterr().out
    assert named.startswith("Week 3: power\n-------------\n12 people answered 12 questions.\n")
    assert "operator-0013  0 of 12" in named
    assert 0 == typed("week-3", "--no-names", "--low", "0", course=course)
    hidden = capsys.readouterr().out
    assert "operator" not in hidden
    assert "Under 70%" in named
    assert "Under" not in hidden.partition("Who needs help")[2].partition("Question by")[0]


def test_the_command_writes_the_files_that_are_asked_for_whole(course, tmp_path, capsys):
    out = {name: tmp_path / f"{name}.csv" for name in ("people", "questions", "mistakes")}
    words = [word for name, path in out.items() for word in (f"--{name}", str(path))]
    assert 0 == typed("week-3", *words, course=course)
    told = gathered(course.root, "week-3").facts
    assert people_csv(told) == out["people"].read_bytes()
    assert questions_csv(told) == out["questions"].read_bytes()
    assert mistakes_csv(told) == out["mistakes"].read_bytes()
    assert "" == capsys.readouterr().out


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["week-9"], "There is no set.toml in"),
        (["week-3", "--people", "a.csv", "--questions", "a.csv"], "Two files have the same name."),
        (
            ["week-3", "--people", "no/such/place/a.csv"],
            "No such file or directory. Check the name",
        ),
    ],
)
def test_what_the_command_cannot_do_is_one_line_and_status_2(course, words, told, capsys):
    assert 2 == typed(*words, course=course)
    assert told in capsys.readouterr().err


def test_a_folder_that_is_no_course_is_told_with_what_to_type(tmp_path, capsys):
    assert 2 == typed("week-3", course=Course(tmp_path, "", ""))
    assert "There is no course in" in capsys.readouterr().err


# The page


@pytest.fixture
def panel(course):
    return ClassPanel(course.root, clock=iter(range(0, 10_000, 5)).__next__)


def shown(panel):
    return " ".join(part.value for part in panel.parts.box.children if hasattr(part, "value"))


def test_the_class_is_shown_when_asked_for_and_names_go_and_come_at_a_tick(panel):
    assert "" == shown(panel)
    panel.see.click()
    assert "12 sheets graded." in panel.said.value
    assert "operator-0013" in shown(panel)
    panel.save.click()
    assert "They have people's ids in them" in unescape(panel.saves.value)
    panel.hidden.value = True
    assert "operator" not in shown(panel)
    assert "" == panel.saves.value  # those had names
    panel.save.click()
    assert "They have no names in them." in panel.saves.value
    held = re.findall(r"base64,([^\"]+)", panel.saves.value)
    assert 3 == len(held)
    assert all("operator" not in base64.b64decode(data).decode() for data in held)


def test_another_share_that_is_low_is_heard_without_marking_anew(panel, monkeypatch):
    panel.see.click()
    monkeypatch.setattr(
        "workbook.trainer.report.class_panel.gathered", lambda *_: pytest.fail("marked")
    )
    panel.low.value = 0.8
    many = shown(panel).count("Under 80%")
    panel.low.value = 0.5
    assert 0 < shown(panel).count("Under 50%") < many


def test_a_mistake_leads_to_the_chapter_that_teaches_it(panel):
    panel.see.click()
    found = set(re.findall(r'href="([^"]+\.ipynb)"', shown(panel)))
    assert found
    assert found <= {page.name for page in shipped_pages()}


def test_a_course_without_sets_says_where_to_make_one_and_finds_it_once_it_is_there(tmp_path):
    course = make_course(tmp_path / "new").root
    panel = ClassPanel(course, clock=iter(range(0, 10_000, 5)).__next__)
    assert "There is no set in this course yet." in panel.said.value
    panel.see.click()
    assert "There is no set in this course yet." in panel.said.value
    put(course, WEEK, datetime.now())
    panel.see.click()
    assert "Nobody has turned in anything yet." in shown(panel)


def test_a_set_that_went_bad_is_told_and_what_was_shown_stays(panel, course):
    panel.see.click()
    before, file = shown(panel), course.folder("source", "week-3") / "set.toml"
    kept = file.read_bytes()
    try:
        file.write_text("draw = ", encoding="utf-8")
        panel.see.click()
    finally:
        file.write_bytes(kept)
    assert "More is needed" in panel.said.value
    assert before == shown(panel)
