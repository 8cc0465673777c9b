"""A course folder, its people, and the commands that make and use it."""

import argparse
import re
import subprocess
import sys
from pkgutil import resolve_name

import pytest

from solver import SolverError
from workbook import commands
from workbook.start import child
from workbook.trainer import nbgrader_commands, steps
from workbook.trainer.command import mark_options
from workbook.trainer.course import (
    CONFIG,
    SETTINGS,
    CourseFault,
    Person,
    course_at,
    keep_people,
    make_course,
    people_in,
    read_people,
)


@pytest.fixture
def course(tmp_path):
    return make_course(tmp_path / "pumps")


def people(tmp_path, *lines):
    path = tmp_path / "class.csv"
    path.write_text("\n".join(lines), encoding="utf-8")
    return path


# The folder.


def test_a_course_is_a_folder_with_settings_that_nbgrader_reads(tmp_path):
    course = make_course(tmp_path / "pumps", exchange=str(tmp_path / "shared"))
    assert (tmp_path / "pumps", "pumps") == (course.root, course.name)
    assert f"sqlite:///{tmp_path}/pumps/gradebook.db" == course.gradebook
    assert str(tmp_path / "shared") == course.exchange
    assert ["nbgrader_config.py", "source", "submitted"] == sorted(
        p.name for p in course.root.iterdir()
    )


def test_a_course_that_is_there_stays_as_its_trainer_changed_it(course):
    with (course.root / CONFIG).open("a") as settings:
        settings.write('c.CourseDirectory.db_url = "postgresql+psycopg://host/grades"\n')
    again = make_course(course.root, name="other", exchange="elsewhere")
    assert ("pumps", "postgresql+psycopg://host/grades", "") == again[1:]


def test_a_course_can_be_moved(course, tmp_path):
    moved = course.root.rename(tmp_path / "moved")
    assert f"sqlite:///{moved}/gradebook.db" == course_at(moved).gradebook


def test_where_no_course_is_the_sentence_says_how_to_make_one(tmp_path):
    with pytest.raises(
        CourseFault, match=r"There is no course in .*nowhere\. To make one, type: .* course"
    ):
        course_at(tmp_path / "nowhere")


@pytest.mark.parametrize("name", ["a+b", "week 3", "pümpe", "x" * 61])
def test_a_name_that_nbgrader_cannot_have_is_refused(tmp_path, name):
    with pytest.raises(CourseFault, match=r"can't be the name of a class. Use letters, digits"):
        make_course(tmp_path / "pumps", name=name)
    assert not (tmp_path / "pumps").exists()


def test_settings_that_cannot_be_read_are_told(course):
    (course.root / CONFIG).write_text("c = get_config(\n")
    with pytest.raises(CourseFault, match=r"nbgrader_config.py can't be read: .*Undo your"):
        course_at(course.root)


def test_who_has_handed_in_are_the_folders_with_the_set(course):
    for folder in ("ben/week-3", "ana/week-3", "cleo/week-4"):
        (course.root / "submitted" / folder).mkdir(parents=True)
    (course.root / "submitted" / "notes.txt").touch()
    assert ["ana", "ben"] == course.handed_in("week-3")


# Its people.


def test_people_are_read_with_their_ids_in_one_form(tmp_path):
    path = people(tmp_path, "ID,First_Name,seat", " Ana.R ,Ana,4", "", "bo,,7")
    assert [Person("ana.r", "Ana"), Person("bo")] == read_people(path)


def test_a_list_from_a_spreadsheet_is_read_too(tmp_path):
    path = tmp_path / "class.csv"
    path.write_bytes(b'\xef\xbb\xbfid,last_name\r\n"ana.r","O""Neil"\r\n')
    assert [Person("ana.r", last_name='O"Neil')] == read_people(path)


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        (
            ["nickname,first_name", "ana,Ana"],
            "has no column “id”. Its first line is: id,first_name",
        ),
        (["id", "ana", "a na"], "line 3: An id has up to 40 letters"),
        (["id", "Ana", "ana"], "line 3: “ana” is already in line 2. Keep one of them."),
        (["id,last_name", f"ana,{'x' * 200}"], "is too long, or has a line end"),
        ([], "has no column “id”"),
    ],
)
def test_a_list_that_cannot_be_used_is_refused_by_its_line(tmp_path, lines, said):
    with pytest.raises(CourseFault, match=said):
        read_people(people(tmp_path, *lines))


RUIZ = Person("op03", "Ana", "Ruiz", "ana@example.org")


@pytest.mark.parametrize(
    "data",
    [
        "Name; ID; Email\nRuiz, Ana;op03;ana@example.org\n",
        "sep=;\r\nName;ID;Email\r\nAna Ruiz;OP03;ana@example.org\r\n",
        "Student ID\tFirst name\tSurname\tE-mail\nop03\tAna\tRuiz\tana@example.org\n",
        "last name,first name,email,username\nRuiz,Ana,ana@example.org,op03\n",
    ],
)
@pytest.mark.parametrize("coding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_a_list_is_read_as_schools_and_spreadsheets_write_it(tmp_path, data, coding):
    path = tmp_path / "class.csv"
    path.write_bytes(data.encode(coding))
    assert [RUIZ] == read_people(path)


def test_letters_of_a_windows_spreadsheet_and_names_with_commas_are_kept(tmp_path, course):
    path = tmp_path / "class.csv"
    path.write_bytes('id;last name;group\nzoe;"Müller, Jr.";night\n'.encode("cp1252"))
    (zoe,) = read_people(path)
    assert ("Müller, Jr.", "night") == (zoe.last_name, zoe.group)
    keep_people(course, [zoe])
    assert [zoe] == read_people(course.root / "people.csv")


def test_a_file_that_is_no_list_is_told(tmp_path):
    path = tmp_path / "class.xlsx"
    path.write_bytes(b"PK\x03\x04\x14\x00\x06\x00")
    with pytest.raises(CourseFault, match="In the spreadsheet, save it as CSV"):
        read_people(path)


def test_a_list_that_is_not_there_is_told(tmp_path):
    with pytest.raises(CourseFault, match=r"There is no file .*class.csv. Check its name"):
        read_people(tmp_path / "class.csv")


def test_the_people_of_a_course_are_those_kept_in_it(course):
    assert set() == people_in(course)
    keep_people(course, [Person("ana.r", "=Ana"), Person("bo")])
    assert {"ana.r", "bo"} == people_in(course)
    assert "ana.r,'=Ana,," in (course.root / "people.csv").read_text()


# What a trainer types.


def typed(*words):
    parser = argparse.ArgumentParser()
    mark_options(parser)
    return parser.parse_args(words)


def test_a_time_of_handing_in_is_taken_in_utc_without_an_offset():
    assert "2026-12-01 18:00:00" == str(typed("week-3", "--when", "2026-12-01T12:00-06:00").when)


def test_a_time_that_is_none_is_refused(capsys):
    with pytest.raises(SystemExit):
        typed("week-3", "--when", "noon")
    assert "noon isn't a time; type one such as 2026-12-01T18:00" in capsys.readouterr().err


@pytest.mark.parametrize("word", ["course", "set", "mark"])
def test_the_commands_are_among_those_of_the_workbook(word):
    assert "requirements-class.txt" == commands.COMMANDS[word].needs


def run(*words, folder):
    environment = child.environment(WIRE_TO_WATER_SET_UP_FOR="requirements-class.txt")
    command = [sys.executable, "-m", "workbook", *words]
    done = subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True)
    return done.returncode, done.stdout, done.stderr


def test_a_course_and_what_cannot_be_done_in_it_are_told_in_one_sentence_each(tmp_path):
    said = f"The course is in {tmp_path}/pumps.\n"
    assert (0, said, "") == run("course", "pumps", folder=tmp_path)
    none = "There is no set “week-3” yet. Add --chapters horsepower,head to make one, or --file.\n"
    assert (2, "", none) == run("set", "week-3", "--course", "pumps", folder=tmp_path)
    fault = f"There is no set.toml in {tmp_path}/pumps/source/week-3. Put one there, or check the folder.\n"
    assert (2, "", fault) == run("mark", "week-3", "--course", "pumps", folder=tmp_path)


def test_without_an_exchange_the_sentence_says_what_to_do_instead(course):
    for step in (
        nbgrader_commands.release,
        nbgrader_commands.collect,
        nbgrader_commands.release_feedback,
    ):
        with pytest.raises(
            CourseFault, match=r"has no exchange\. Give people the folder .*release"
        ):
            step(course, "week-3")


def test_nbgrader_has_nobody_to_mark_where_nobody_handed_in(course):
    with pytest.raises(CourseFault, match="Nobody has turned in “week-3” yet"):
        nbgrader_commands.autograde(course, "week-3")


def test_where_nbgrader_fails_its_words_are_kept_and_the_sentence_says_where(course):
    with pytest.raises(
        nbgrader_commands.StepFailed, match=r"Making what people get didn't work\. .*nbgrader.log"
    ):
        nbgrader_commands.generate_assignment(course, "week-3")
    log = (course.root / "nbgrader.log").read_text()
    assert log.startswith("$ nbgrader generate_assignment week-3 --force\n")
    assert "No notebooks were matched" in log


def test_of_many_people_to_look_at_the_first_are_named_and_the_others_counted():
    lines = list(steps._some(f"  p{n}: why" for n in range(25)))
    assert (21, "  And 5 more; the class report names them all.") == (len(lines), lines[-1])


def test_a_set_is_made_of_the_chapters_that_are_typed(course):
    options = argparse.Namespace(
        set="week-3",
        file=None,
        chapters="horsepower, head",
        families="",
        count=6,
        level=1,
        units="si",
        exam="",
        shares="",
        site="",
    )
    chosen = steps._chosen(course, options)
    assert (6, 1, "si", "week-3") == (
        chosen.work.count,
        chosen.work.level,
        chosen.work.units,
        chosen.title,
    )
    with pytest.raises(SolverError, match=r"There is no chapter “haed”. Did you mean “head”"):
        steps._chosen(course, argparse.Namespace(**{**vars(options), "chapters": "haed"}))


# A course's settings stay as version 0.1.0 wrote them, whatever becomes of our own modules.
WRITTEN_SINCE_THE_FIRST = {
    "workbook.trainer.only_grade_cells.TrainersNotebook",
    "workbook.trainer.only_grade_cells.MarkGradeCells",
    "workbook.trainer.only_grade_cells.OnlyMarks",
    "workbook.trainer.gradebook.saving.SaveMarks",
    "workbook.trainer.gradebook.saving.SaveDue",
    "workbook.trainer.gradebook.saving.LateShare",
}


def test_every_class_that_a_course_of_any_version_names_is_where_it_says():
    pytest.importorskip("nbgrader")
    named = set(re.findall(r'"(workbook\.[\w.]+)"', SETTINGS))
    for path in named | WRITTEN_SINCE_THE_FIRST:
        assert isinstance(resolve_name(path), type), path
