"""One person over all sets: the rows, both files, hours in class, groups, the record of completion."""

import argparse
import csv
import shutil
from datetime import date
from io import StringIO

import pytest

from solver import SolverError
from tests.workbook.trainer.marked import ANA, BEN, hand_in, made_ready
from tests.workbook.trainer.sheets import right, wrong
from tests.workbook.trainer.week_three import NAME, WEEK, answers, numeric
from workbook import commands
from workbook.trainer.course import Person, course_at, keep_people
from workbook.trainer.giving import extend
from workbook.trainer.gradebook.given import extensions_of
from workbook.trainer.marking.bulk import mark_all
from workbook.trainer.over_all.attendance import hours_of, meetings
from workbook.trainer.over_all.files import lms_csv, wide_csv
from workbook.trainer.over_all.rows import over_all
from workbook.trainer.over_all.steps import attend, completion, grades
from workbook.trainer.report.gathered import gathered
from workbook.trainer.sets.as_toml import toml_of
from workbook.trainer.sets.set_file import SET_FILE, parse_set_file

PEOPLE = [
    Person(ANA, "Ana", "Ruiz, Jr.", "ana@example.org", "day"),
    Person(BEN, "Ben", "", "ben@example.org", "night"),
    Person("cleo", "Cleo", "", "", "night"),
]


@pytest.fixture(scope="module")
def ready(tmp_path_factory):
    course = made_ready(tmp_path_factory.mktemp("over") / "pumps")
    hand_in(course, ANA, answers(ANA, right), "2025-11-26 13:00:00 UTC")
    hand_in(course, BEN, answers(BEN, wrong, which=numeric(BEN)))
    hand_in(course, "gone.g", answers("gone.g", right))
    mark_all(course.root, NAME)
    keep_people(course, PEOPLE)
    return course


@pytest.fixture
def course(ready, tmp_path):
    shutil.copytree(ready.root, tmp_path / "pumps")
    return course_at(tmp_path / "pumps")


def typed(course, *words):
    """What the command of these words does, with its options read as they are typed."""
    options = commands._read([*words, "--course", str(course.root)])
    step = {"grades": grades, "attend": attend, "completion": completion, "extend": extend}
    return list(step[options.command](options))


def rows_of(data):
    return list(csv.DictReader(StringIO(data.decode("utf-8-sig"), newline="")))


def test_a_row_a_person_with_points_late_tries_minutes_and_blank_for_what_never_came(course):
    told = over_all(course)
    ana, ben, cleo = rows_of(wide_csv(told, 0.7))
    got = [ana[f"{NAME} {each}"] for each in ("points", "out of", "percent", "late", "tries")]
    assert ["21.6", "24.0", "90.0", "yes", "12"] == got
    assert str(round(12 * 41.5 / 60, 1)) == ana[f"{NAME} minutes"]
    assert ("yes", "no") == (ana["passed at 70%"], ben["passed at 70%"])
    assert ("", "", "0.0") == (cleo[f"{NAME} points"], cleo[f"{NAME} tries"], cleo["percent"])
    assert "Ruiz, Jr." == ana["last name"]
    assert ("gone.g",) == told.gone


def test_the_file_for_a_learning_management_system_has_id_email_and_a_column_a_set(course):
    rows = rows_of(lms_csv(over_all(course)))
    item = f"{WEEK.title} [24]"
    assert ["id", "email", item] == list(rows[0])
    assert [("ana@example.org", "21.6"), ("ben@example.org", "0.0"), ("", "")] == [
        (row["email"], row[item]) for row in rows
    ]


def test_the_grades_are_told_and_written_without_who_left_the_list(course, tmp_path):
    said = typed(course, "grades", "--pass", "80")
    assert f"{ANA}: 90%, passed" == said[0]
    assert f"cleo: 0%, under the pass mark; not turned in: {NAME}" == said[2]
    assert said[3].startswith("Left out, as they aren't on the list: gone.g.")
    out = tmp_path / "all.csv"
    assert f"{out} has 3 people and 1 set." == typed(course, "grades", "--csv", str(out))[0]
    assert b"gone.g" not in out.read_bytes()


def test_hours_are_those_of_the_meetings_somebody_was_at(course):
    typed(course, "attend", "2026-12-01", "--topic", "Pump power", "--hours", "2")
    said = typed(
        course, "attend", "2026-12-03", "--topic", "Head", "--hours", "1.5", "--absent", BEN
    )
    assert "The meeting of 2026-12-03 is kept: Head, 1.5 hours, 1 absent." == said[0]
    typed(course, "attend", "2026-12-01", "--topic", "Pump power", "--hours", "3")
    assert {ANA: 4.5, BEN: 3.0} == hours_of(meetings(course.root), [ANA, BEN])
    with pytest.raises(SolverError, match="“zed” isn't on the list"):
        typed(course, "attend", "2026-12-04", "--topic", "A", "--hours", "1", "--absent", "zed")
    with pytest.raises(SolverError, match="Type the topic and the hours"):
        typed(course, "attend", "2026-12-04")


def test_the_record_of_completion_has_names_topics_and_hours_and_claims_nothing(course, tmp_path):
    typed(course, "attend", "2026-12-01", "--topic", "Pump power", "--hours", "2")
    out = tmp_path / "records.html"
    said = typed(course, "completion", "--trainer", "R. Vance", "--out", str(out))
    assert [f"{out} has 1 record. Open it in a browser and print it."] == said
    page = out.read_text("utf-8")
    for part in ("Ana Ruiz, Jr.", "R. Vance, trainer", "December 1, 2026", "Pump power", "21.6"):
        assert part in page
    assert "It isn&#39;t accredited" in page
    assert "Cleo" not in page
    with pytest.raises(SolverError, match="Type your name"):
        typed(course, "completion", "--out", str(out))
    with pytest.raises(SolverError, match="Nobody has 99% of the points"):
        typed(course, "completion", "--trainer", "R. Vance", "--pass", "99")


def test_a_group_can_have_another_due_time_and_a_set_of_its_own(course):
    typed(course, "extend", NAME, "--group", "night", "--due", "2026-01-01T12:00+00:00")
    assert {BEN, "cleo"} == set(extensions_of(course.root, NAME))
    with pytest.raises(SolverError, match="There are: day, night"):
        typed(course, "extend", NAME, "--group", "dawn", "--due", "2026-01-01")
    path = course.folder("source", NAME) / SET_FILE
    night = parse_set_file('group = "night"\n' + path.read_text("utf-8"), NAME)
    assert night == parse_set_file(toml_of(night), NAME)
    path.write_text(toml_of(night), "utf-8")
    absent = [one.person for one in gathered(course.root, NAME).facts.people if not one.handed_in]
    assert ["cleo"] == absent
    told = over_all(course)
    assert [0.0, 24.0, 24.0] == [told.worth(row.person) for row in told.rows]


def test_a_day_that_is_none_is_told(capsys):
    with pytest.raises(SystemExit):
        commands._read(["attend", "today"])
    assert "today isn't a day; type one such as 2026-12-01" in capsys.readouterr().err
    assert date(2026, 12, 1) == commands._read(["attend", "2026-12-01"]).day
    assert isinstance(commands._read(["grades"]), argparse.Namespace)
