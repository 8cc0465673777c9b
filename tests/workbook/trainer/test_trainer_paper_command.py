"""The command that prints a set as sheets and marks what was typed back."""

import pytest

from solver.sets.sheet_code import sheet_code
from solver.topics.catalogue import CATALOGUE
from workbook.commands import main
from workbook.trainer.on_paper.sheets import answers_csv

from .typed_back import ANA, BEN, SHEETS, WORK, row, text

SET = f"""
catalogue = {WORK.catalogue}
title = "Week 3"
draw = 7
level = 1
count = 4
families = ["brake_power", "energy_cost", "check_valve", "static_head"]
points = 10
"""


@pytest.fixture
def paper(monkeypatch, capsys, tmp_path):
    """Runs the command in a course with a set and a list of people; its status and what it said."""
    monkeypatch.setenv("WIRE_TO_WATER_SET_UP_FOR", "requirements.txt")
    monkeypatch.chdir(tmp_path)
    (tmp_path / "source/week-3").mkdir(parents=True)
    (tmp_path / "source/week-3/set.toml").write_text(SET)
    (tmp_path / "people.csv").write_text(
        "id,first_name,last_name\nana.r,Ana,Rivet\nben.k,Ben,\n00123,,\n"
    )

    def run(*words):
        try:
            status = main(["paper", *words])
        except SystemExit as ended:
            status = ended.code
        return status, *capsys.readouterr()

    return run


def test_the_command_prints_the_sheets_of_a_list_and_marks_what_was_typed(paper, tmp_path):
    status, said, _ = paper("week-3", "--people", "people.csv", "--pdf", "w.pdf", "--solved", "2")
    assert 0 == status
    assert "w.pdf has 3 sheets, each with its code; the key comes last." in said
    assert (tmp_path / "w.pdf").read_bytes().startswith(b"%PDF")
    assert answers_csv(SHEETS) == (tmp_path / "w-answers.csv").read_bytes()
    (tmp_path / "w-answers.csv").write_text(text(row(ANA), row(BEN, ["1", "", "", ""]), ["?"]))
    status, said, _ = paper("source/week-3", "--mark", "w-answers.csv", "--people", "people.csv")
    assert 0 == status
    assert "Row 2, ana.r: 40 of 40 points.\n" in said
    assert "Row 4: “?” isn't the code of a sheet." in said
    assert "2 sheets graded. You need to look at 0 of them. 1 row not counted." in said
    assert "No row counts for 1 of the list: 00123." in said


MARKING = ("week-3", "--mark", "w-answers.csv", "--people", "people.csv")


def test_a_file_that_names_no_catalogue_is_given_todays_and_marks_the_same_questions(
    paper, tmp_path
):
    """A trainer writes no such line; one of version 0.1.0 has none either, and its numbers are gone."""
    path = tmp_path / "source/week-3/set.toml"
    path.write_text(SET.replace(f"catalogue = {WORK.catalogue}\n", "# mine\n"))
    assert 0 == paper("week-3", "--people", "people.csv", "--pdf", "w.pdf")[0]
    assert path.read_text().startswith(
        f"catalogue = {CATALOGUE}  # keeps the questions as they are"
    )
    assert "# mine" in path.read_text()
    (tmp_path / "w-answers.csv").write_text(text(row(ANA), row(BEN, ["1", "", "", ""])))
    assert "Row 2, ana.r: 40 of 40 points.\n" in paper(*MARKING)[1]


def test_the_command_writes_the_marks_and_says_only_what_is_to_be_looked_at(paper, tmp_path):
    (tmp_path / "a.csv").write_text(text(row(ANA), row(BEN, [""] * 4), *[["?"]] * 30))
    status, said, _ = paper(
        "week-3", "--mark", "a.csv", "--people", "people.csv", "--csv", "m.csv", "--report"
    )
    assert 0 == status
    assert "ana.r: 40 of 40" not in said
    assert "Row 3, ben.k: 0 of 40 points. This row has no answers." in said
    assert "And 11 more to look at; each one is in m.csv." in said
    assert 33 == len((tmp_path / "m.csv").read_text("utf-8-sig").splitlines())
    assert "Week 3\n------" in said


def test_answers_that_somebody_typed_are_never_written_over(paper, tmp_path):
    typed = text(row(ANA))
    (tmp_path / "w-answers.csv").write_bytes(typed.encode())
    status, said, _ = paper("week-3", "--sheets", "2", "--pdf", "w.pdf")
    assert 0 == status
    assert "w-answers.csv is already there and was left alone." in said
    assert typed == (tmp_path / "w-answers.csv").read_bytes().decode()
    status, _, told = paper("week-3", "--mark", "w-answers.csv", "--csv", "w-answers.csv")
    assert (
        2,
        "The result would overwrite the file you are reading. Give --csv another name.\n",
    ) == (
        status,
        told,
    )
    assert typed == (tmp_path / "w-answers.csv").read_bytes().decode()


def test_a_part_of_the_sheets_has_the_codes_it_has_among_all(paper, tmp_path):
    assert 0 == paper("week-3", "--sheets", "31-33", "--pdf", "w.pdf")[0]
    lines = (tmp_path / "w-answers.csv").read_text("utf-8-sig").splitlines()
    assert str(sheet_code(WORK.code, 32, "sheet-032")) == lines[2].split(",")[0]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["week-3"], "Type --pdf and a name to print, or --mark and a file to grade it."),
        (["week-3", "--pdf", "w.pdf"], "Type --sheets 30 for numbered sheets, or --people"),
        (["week-3", "--pdf", "w.pdf", "--sheets", "0"], "Argument --sheets: 0 isn't a number of sheets; type"),
        (["week-3", "--pdf", "w.pdf", "--sheets", "9-3"], "Argument --sheets: 9-3 isn't a number of sheets"),
        (["week-3", "--pdf", "w.pdf", "--sheets", "4", "--people", "people.csv"], "The list has 3 people; there is no sheet 4."),
        (["week-3", "--pdf", "w.pdf", "--sheets", "3", "--solved", "4"], "There is no sheet “4” to work in full. Type numbers from 1 to 3."),
        (["week-3", "--pdf", "w.pdf", "--sheets", "9999"], "One PDF holds 2,500 sheets of this set."),
        (["week-3", "--pdf", "no/w.pdf", "--sheets", "3"], "no/w.pdf: No such file or directory. Check the name and the folder."),
        (["week-4", "--pdf", "w.pdf", "--sheets", "3"], "There is no set.toml in "),
        (["week-3", "--mark", "none.csv"], "none.csv: No such file or directory."),
        (["week-3", "--mark", "people.csv"], "No row near the top has the heading “sheet”."),
        (["week-3", "--pdf", "w.pdf", "--people", "none.csv"], "There is no file none.csv."),
    ],
)  # fmt: skip
def test_the_command_refuses_in_one_line_that_says_what_to_type(paper, words, said, tmp_path):
    status, out, told = paper(*words)
    assert (2, "") == (status, out)
    assert told.startswith(said)
    assert 1 == told.count("\n")
    assert not (tmp_path / "w.pdf").exists()
