"""Answers typed back from paper, in files as spreadsheets make and spoil them."""

import csv
import io

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from workbook.trainer.on_paper.marks import marks_csv
from workbook.trainer.on_paper.typed import NoSheets, TypedFile

from .sheets import mistaken, right
from .typed_back import ANA, BEN, NUMERIC, RIGHT, marked, messages, one, row, text


@pytest.mark.parametrize("separator", [",", ";", "\t", "|"])
@pytest.mark.parametrize("coding", ["utf-8", "utf-8-sig", "utf-16"])
@pytest.mark.parametrize("end", ["\r\n", "\n"])
def test_any_separator_coding_and_line_end_is_read(separator, coding, end):
    made = text(row(ANA), row(BEN), separator=separator, end=end)
    found = marked(made.encode(coding))
    assert [("ana.r", 40.0), ("ben.k", 40.0)] == [(m.marked.person, m.marked.points) for m in found]


def test_decimal_commas_are_read_where_commas_do_not_part_the_cells():
    answers = ["12,5", "0,125", RIGHT[2], "3,75 hp"]
    (found,) = TypedFile(io.BytesIO(text(row(ANA, answers), separator=";").encode()), 4)
    assert {1: "12.5", 2: "0.125", 3: RIGHT[2], 4: "3.75 hp"} == found.answers


def test_a_comma_that_may_be_thousands_gives_no_points_by_accident():
    at = NUMERIC[0]
    answers = list(RIGHT)
    answers[at] = "1,234"
    found = one(text(row(ANA, answers), separator=";"))
    question = found.questions[at]
    assert (0.0, "unreadable", True) == (question.points, question.status, question.needs_person)
    assert "“1,234” could have a decimal comma or a thousands comma." in question.says
    # Where commas part the cells, a comma inside one is of thousands, as on a card.
    assert "unreadable" != one(text(row(ANA, answers))).questions[at].status


def test_an_answer_parted_by_its_own_comma_shifts_no_other_answer():
    line = ",".join([str(ANA.code), "ana.r", "", "12,5", *RIGHT[1:]])
    found = one(text() + line + "\r\n")
    assert ("", ()) == (found.person, found.questions)
    assert "a comma may have split an answer" in found.reason


def test_empty_cells_beyond_the_headings_are_harmless():
    assert 40.0 == one(text([*row(ANA), "", " "])).points


def test_a_row_that_ends_early_has_blanks():
    found = one(text(row(ANA)[:5]))
    assert ["right", "right", "blank", "blank"] == [each.status for each in found.questions]


@pytest.mark.parametrize(
    "cell",
    [
        "4-Mar",
        "Mar-24",
        "3/4/2024",
        "2024-03-04",
        "2024-03-04 00:00:00",
        "#NAME?",
        "########",
        "4. März",
    ],
)
def test_an_answer_that_a_spreadsheet_spoilt_gives_nothing_and_a_person_looks(cell):
    answers = list(RIGHT)
    answers[NUMERIC[0]] = cell
    found = one(text(row(ANA, answers)))
    assert (0.0, "unreadable") == found.questions[NUMERIC[0]][1:4:2]
    assert found.needs_person


@pytest.mark.parametrize(
    "cell", ["12 gpm", "12 hp", "12 day", "3-1/2 hp", "3 1/2", "1e3", "-5", "8 MGD", "12 mA"]
)
def test_an_answer_with_its_unit_is_not_taken_for_a_date(cell):
    (found,) = TypedFile(io.BytesIO(text(row(ANA, [cell] * 4)).encode()), 4)
    assert {} == found.odd


def test_letters_of_another_coding_in_a_name_are_nothing_to_look_at():
    line = ",".join([str(BEN.code), "", "José", *[right(case) for case in BEN.cases]])
    assert not one((text() + line).encode("cp1252")).needs_person
    line = ",".join([str(BEN.code), "", "", "½é", *RIGHT[1:]])
    assert "isn't UTF-8" in one((text() + line).encode("cp1252")).reason


def test_a_quotation_mark_that_stays_open_is_told_and_spoils_no_other_row():
    line = ",".join([str(ANA.code), "", '"', *RIGHT])
    first, second = marked(text() + line + "\r\n" + text(row(BEN)).partition("\r\n")[2])
    assert "A quotation mark was opened and never closed." in first.marked.reason
    assert ("ben.k", 40.0) == (second.marked.person, second.marked.points)


def test_columns_may_be_headed_and_ordered_in_other_ways():
    head = ["Q2", "Question 1", "CODE", "q 03", "4."]
    one_two = [RIGHT[1], RIGHT[0], str(ANA.code), RIGHT[2], RIGHT[3]]
    assert 40.0 == one(text(one_two, head=head)).points
    assert 40.0 == one("sep=,\r\nWeek 3,,\r\n" + text(one_two, head=head)).points


def test_what_is_wrong_with_the_headings_is_said_once_for_the_file():
    head = ["sheet", "1", "1", "2", "hours", "9", "4"]
    assert [
        "Columns 2 and 3 both are “1”; column 2 is read.",
        "Column “hours” isn't one of the 4 questions, so it isn't read.",
        "Column “9” isn't one of the 4 questions, so it isn't read.",
        "No column has the heading of question 3.",
    ] == messages(text(head=head))
    assert ["Row 1 comes before the headings: “Week 3”."] == messages("Week 3,\n" + text())
    assert [] == messages(text())


@pytest.mark.parametrize("data", ["", "\n\n", "Week 3", "1,2,3,4\n", "name;1;2\n", "\x00\x01"])
def test_a_file_without_a_column_for_codes_is_refused_with_what_to_write(data):
    with pytest.raises(NoSheets, match=r"has the heading “sheet”\. Use the file made"):
        marked(data)


@settings(max_examples=150)
@given(st.lists(st.lists(st.text(max_size=40), max_size=9), max_size=6), st.sampled_from(",;\t"))
@example([["\ud800".encode("utf-8", "replace").decode()]], ",")
@example([[str(ANA.code), "ana.r", "", "9" * 300, "\u0663", "nan", "1e999"]], ",")
def test_whatever_stands_in_the_rows_each_has_its_marks_and_a_reason_or_none(rows, separator):
    found = marked(text(*rows, separator=separator).encode("utf-8", "surrogatepass"))
    for each in found:
        assert each.marked.person in ("", "ana.r", "ben.k", "00123")
        assert each.marked.needs_person == bool(each.marked.reason)
    assert len(marks_csv(found, 4).splitlines()) >= 1 + len(found)


@settings(max_examples=150)
@given(st.binary(max_size=300))
def test_any_bytes_after_the_headings_are_marked_or_told(data):
    for each in marked(text().encode() + data):
        assert each.marked.person in ("", "ana.r", "ben.k", "00123")


def test_ten_thousand_rows_are_marked_and_one_sheet_in_all_of_them_counts_once():
    made = text(*[row(ANA)] * 9_900, *[row(BEN, ["1", *RIGHT[1:]])] * 50, *[["x" * 40]] * 50)
    found = marked(made)
    assert 10_000 == len(found)
    assert ["ana.r", "ben.k"] == [each.marked.person for each in found if each.marked.person]


# Marks for a spreadsheet


def test_the_marks_have_the_points_the_mistake_and_the_reason_of_every_row():
    at = NUMERIC[0]
    answers = list(RIGHT)
    answers[at] = mistaken(ANA.cases[at])
    found = marked(text(row(ANA, answers), ["no code"]))
    head, first, second = csv.reader(io.StringIO(marks_csv(found, 4).decode("utf-8-sig")))
    told = dict(zip(head, first, strict=True))
    assert ("ana.r", "34.0", "40.0", "") == tuple(
        told[k] for k in ("person", "points", "out of", "why")
    )
    assert ANA.cases[at].mistakes[0].id == told[f"{at + 1} mistake"]
    assert ("mistake", "4.0") == (told[f"{at + 1} state"], told[f"{at + 1} points"])
    assert ["3", "no code", "", "", "", "yes"] == second[:6]
    assert "isn't the code of a sheet" in second[6]


def test_what_was_typed_is_no_formula_in_the_spreadsheet_of_the_marks():
    found = marked(text(row(ANA, ["=1+1", "@x", "+1", "-cmd|' /C calc'!A0"]), ["=cmd()", "=x"]))
    cells = [
        cell
        for line in csv.reader(io.StringIO(marks_csv(found, 4).decode("utf-8-sig")))
        for cell in line
    ]
    starting = [cell for cell in cells if cell.startswith(("=", "@", "+", "-"))]
    assert ["+1"] == starting  # a number, which a spreadsheet shows as one
    assert "'=1+1" in cells
    assert "'=cmd()" in cells
