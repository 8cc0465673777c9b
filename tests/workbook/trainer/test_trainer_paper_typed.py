"""Answers typed back from paper: whose they are, and their marks by the rules of all marking."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from workbook.trainer.course import Person
from workbook.trainer.marking.marked import mark_typed
from workbook.trainer.on_paper.sheets import answers_csv, numbered, sheets_of

from .sheets import mistaken, wrong
from .typed_back import (
    ANA,
    BEN,
    NUMERIC,
    PEOPLE,
    RIGHT,
    SHEETS,
    WEEK,
    WORK,
    ZERO,
    marked,
    one,
    row,
    text,
)


def test_right_answers_have_all_the_points():
    found = one(text(row(ANA)))
    assert ("ana.r", 40.0, 40.0) == (found.person, found.points, found.out_of)
    assert (False, "") == (found.needs_person, found.reason)


def test_each_answer_has_what_the_set_gives_for_it():
    at = NUMERIC[0]
    answers = list(RIGHT)
    answers[at] = mistaken(ANA.cases[at])
    answers[NUMERIC[1]] = wrong(ANA.cases[NUMERIC[1]])
    answers[NUMERIC[2]] = ""
    found = one(text(row(ANA, answers)))
    by_status = {each.status: each for each in found.questions}
    assert {"right": 10.0, "mistake": 4.0, "wrong": 0.0, "blank": 0.0} == {
        status: each.points for status, each in by_status.items()
    }
    assert ANA.cases[at].mistakes[0].says == by_status["mistake"].says
    assert not found.needs_person


def test_marks_are_those_of_the_same_answers_handed_in_otherwise():
    answers = [wrong(ANA.cases[0]) if at == 0 and 0 in NUMERIC else a for at, a in enumerate(RIGHT)]
    assert mark_typed(WEEK, "ana.r", dict(enumerate(answers, 1))) == one(text(row(ANA, answers)))


def test_an_answer_that_cannot_be_read_gives_nothing_and_a_person_looks():
    answers = list(RIGHT)
    answers[NUMERIC[0]] = "about a dozen"
    found = one(text(row(ANA, answers)))
    assert 30.0 == found.points
    assert f"Look at question {NUMERIC[0] + 1}." == found.reason
    assert "has no number in it" in found.questions[NUMERIC[0]].says


def test_a_row_without_answers_is_a_person_s_with_nothing_and_says_so():
    found = one(text(row(ANA, [""] * 4)))
    assert ("ana.r", 0.0, 40.0, True) == (
        found.person,
        found.points,
        found.out_of,
        found.needs_person,
    )
    assert "This row has no answers." == found.reason


def test_the_file_as_it_is_made_reads_back_and_every_sheet_is_its_person_s():
    found = marked(answers_csv(SHEETS), people=())
    assert ["ana.r", "ben.k", "00123"] == [each.marked.person for each in found]
    assert [2, 3, 4] == [each.row for each in found]
    sheets = sheets_of(WEEK, numbered(120))
    found = marked(answers_csv(sheets), people=())
    assert [sheet.person for sheet in sheets] == [each.marked.person for each in found]


# Whose sheet


def test_a_code_alone_is_enough_with_the_list_it_was_printed_for():
    assert "ben.k" == one(text(row(BEN))).person
    assert "ben.k" == one(text(row(BEN, who="Ben"))).person
    assert "ben.k" == one(text(row(BEN, who=" BEN.K "))).person


def test_an_id_that_lost_its_zeros_in_a_spreadsheet_is_still_that_person_s():
    assert ("00123", False) == one(text(row(ZERO, who="123")))[::4]


def test_a_code_without_a_list_and_without_an_id_is_nobody_s():
    found = one(text(row(BEN)), people=())
    assert ("", (), True) == (found.person, found.questions, found.needs_person)
    assert (
        "Nobody on this list has this sheet. Use the list of people it was printed for."
        == found.reason
    )


def test_a_row_that_names_another_than_its_code_gives_nobody_marks():
    for said in ("ana.r", "Ana Rivet", "eve"):
        found = one(text(row(BEN, who=said)))
        assert ("", ()) == (found.person, found.questions)
        assert f"This is the code of ben.k’s sheet, but the row says “{said}”." in found.reason


def test_where_the_list_has_changed_the_sheet_is_still_its_person_s_and_somebody_looks():
    found = one(text(row(BEN)), people=[PEOPLE[1], Person("zoe"), PEOPLE[0]])
    assert ("ben.k", 40.0, True) == (found.person, found.points, found.needs_person)
    assert "The list of people has changed since this sheet was printed." in found.reason
    gone = one(text(row(BEN)), people=[PEOPLE[0], Person("zoe")])
    assert ("", 0) == (gone.person, gone.points)


def test_a_sheet_of_another_set_counts_for_nobody():
    other = WEEK._replace(work=replace(WORK, seed=8))
    (sheet,) = sheets_of(other, PEOPLE[:1])
    found = one(text([str(sheet.code), "ana.r", "", *RIGHT]))
    assert ("", 0) == (found.person, found.points)
    assert "This sheet is from another set, or from this set before it was changed." == found.reason


@pytest.mark.parametrize(
    ("code", "said"),
    [
        ("", "There is no sheet code here."),
        ("sheet 1", "isn't the code of a sheet. A code looks like SH-"),
        ("4.82101E+13", "looks like a code that a spreadsheet made a date or a number."),
        ("2034-01-17", "looks like a code that a spreadsheet made a date or a number."),
        (str(ANA.code)[:-1] + "0", "isn't the code of a sheet"),
        (str(ANA.code).replace("-001-", "-002-"), "has a wrong character somewhere."),
        ("=SH-1", "isn't the code of a sheet"),
    ],
)
def test_a_wrong_code_gives_nobody_marks_and_says_why(code, said):
    found = one(text([code, "ana.r", "", *RIGHT]))
    assert ("", (), True) == (found.person, found.questions, found.needs_person)
    assert said in found.reason
    assert found.reason.endswith(".")


def test_a_code_is_read_however_it_was_typed():
    plain = str(ANA.code)
    for typed in (
        plain.lower(),
        plain.replace("-", " "),
        plain.replace("-", ""),
        plain[3:].replace("-", ""),
    ):
        assert "ana.r" == one(text([typed, "", "", *RIGHT])).person


@settings(max_examples=200)
@given(
    st.sampled_from(SHEETS),
    st.lists(st.tuples(st.integers(0, 19), st.sampled_from("0123456789SH-")), max_size=3),
    st.sampled_from(["", "ana.r", "ben.k", "Ana Rivet", "00123", "123"]),
)
def test_a_damaged_code_never_gives_the_marks_to_another_person(sheet, changes, who):
    letters = list(str(sheet.code))
    for at, letter in changes:
        letters[at % len(letters)] = letter
    assert one(text(["".join(letters), who, "", *RIGHT])).person in ("", sheet.person)


# Sheets that stand twice


def test_the_same_row_twice_counts_once_and_nobody_has_to_look_at_the_first():
    first, second = marked(text(row(ANA), row(ANA)))
    assert (40.0, False) == (first.marked.points, first.marked.needs_person)
    assert ("", "Row 2 has this sheet too, and is the one that counts.") == (
        second.marked.person,
        second.marked.reason,
    )


def test_of_two_rows_with_other_answers_the_first_counts_and_a_person_looks():
    other = ["9", *RIGHT[1:]]
    first, middle, second = marked(text(row(ANA), row(BEN), row(ANA, other)))
    assert (40.0, True) == (first.marked.points, first.marked.needs_person)
    assert (
        "Row 4 has this sheet too, with other answers. Delete one of them." == first.marked.reason
    )
    assert ("ben.k", False) == (middle.marked.person, middle.marked.needs_person)
    assert ("", "Row 2 has") == (second.marked.person, second.marked.reason[:9])


def test_a_row_left_empty_yields_to_one_with_answers_further_down():
    first, second = marked(text(row(ANA, [""] * 4), row(ANA)))
    assert ("", "ana.r", 40.0) == (first.marked.person, second.marked.person, second.marked.points)
    assert not second.marked.needs_person
