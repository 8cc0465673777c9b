"""Codes of printed sheets: each read back, none that is nearly right, none of another person."""

import contextlib

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from solver import BadCode, SolverError
from solver.sets.sheet_code import MOST_SHEETS, SheetCode, read_sheet_code, sheet_code

WORK = "SET-2047-0U-10-E-1-48213-31"
CODES = st.builds(
    sheet_code,
    st.text("SET-0123456789U", min_size=1),
    st.integers(1, MOST_SHEETS),
    st.text("abc.-", min_size=1),
)
CODE = sheet_code(WORK, 17, "ana.r")
SIGNS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"
ALIKE = ({"0", "O"}, {"1", "I", "L"})


@given(CODES)
def test_a_code_comes_back_from_its_text(code):
    assert code == read_sheet_code(str(code))


@given(CODES)
def test_a_code_may_be_typed_in_small_letters_with_spaces_without_hyphens_or_without_its_letters(
    code,
):
    text = str(code)
    for typed in (text.lower(), text.replace("-", " "), text.replace("-", "–"), text[3:]):
        assert code == read_sheet_code(f" {typed} ")
    assert code == read_sheet_code(text.replace("-", "").replace("0", "o").replace("1", "l"))


@given(CODES)
def test_a_spreadsheet_finds_no_number_month_or_leading_zero_in_a_code(code):
    assert str(code).startswith("SH-")
    # Typed without its hyphens and its first letters it is no number, nor one with an exponent.
    packed = str(code)[3:].replace("-", "")
    assert packed[-3:].isalpha()
    assert code == read_sheet_code(packed)


@given(CODES)
def test_a_code_as_version_0_1_0_wrote_it_is_the_same_sheet(code):
    first = code.as_first
    assert code == read_sheet_code(first) == read_sheet_code(first[3:].replace("-", ""))


@settings(max_examples=30)
@given(CODES)
def test_every_single_mistyped_character_is_refused(code):
    text = str(code)
    for at, right in enumerate(text):
        for wrong in SIGNS:
            if right != "-" and wrong != right and not any({wrong, right} <= two for two in ALIKE):
                with pytest.raises(BadCode, match=r"isn't the code|wrong character"):
                    read_sheet_code(text[:at] + wrong + text[at + 1 :])


@settings(max_examples=30)
@given(CODES)
def test_every_swap_of_two_neighbours_is_refused(code):
    packed = str(code).replace("-", "")
    for at in range(len(packed) - 1):
        if packed[at] != packed[at + 1]:
            swapped = packed[:at] + packed[at + 1] + packed[at] + packed[at + 2 :]
            with pytest.raises(BadCode, match=r"isn't the code|wrong character"):
                read_sheet_code(swapped)


@pytest.mark.parametrize(
    "text",
    ["BP-2U1-7-KMZ", "EXAM-33-2U-20-60-C-1-48213-92", "SH", "17", "x" * 500, "SH-\x00", "٣" * 14],
)
def test_a_text_that_is_no_code_is_refused_with_one_as_an_example(text):
    with pytest.raises(
        BadCode, match=r"isn't the code of a sheet\. A code looks like SH-4821-017-"
    ):
        read_sheet_code(text)


def test_the_example_in_the_refusal_can_be_read():
    with pytest.raises(BadCode, match="A code looks like") as refused:
        read_sheet_code("sheet 17")
    example = str(refused.value).partition("looks like ")[2].partition(";")[0]
    assert SheetCode(4821, 17, 35051) == read_sheet_code(example)


@pytest.mark.parametrize("text", ["", "  ", "\t"])
def test_an_empty_text_is_told_from_a_wrong_one(text):
    with pytest.raises(BadCode, match="There is no sheet code here"):
        read_sheet_code(text)


@pytest.mark.parametrize(
    "text",
    ["3.434E+13", "3,43402E+13", "34340177722054.0", "2034-01-17", "3/4/2017", "17.3.2024",
     "4-Mar", "17-Sep-24", "Sep-17", "#NAME?", "########", "2034-01-17 00:00:00"],
)  # fmt: skip
def test_a_code_that_a_spreadsheet_made_a_date_or_a_number_is_told_as_that(text):
    with pytest.raises(BadCode, match="that a spreadsheet made a date or a number"):
        read_sheet_code(text)


@given(st.text(max_size=80))
@example("\ud800")
@example("SH-3434-000-77220-54")
def test_any_text_is_a_code_or_one_refusal(text):
    with contextlib.suppress(BadCode):
        assert str(read_sheet_code(text)).startswith("SH-")


def test_a_code_fits_its_set_and_its_person_alone():
    assert CODE.is_of_set(WORK)
    assert CODE.is_of(WORK, "ana.r")
    other = WORK.replace("48213", "48214")
    assert not CODE.is_of_set(other)
    assert not CODE.is_of(other, "ana.r")
    people = [f"sheet-{number:03}" for number in range(1, 1000)]
    assert [] == [person for person in people if CODE.is_of(WORK, person)]


def test_the_codes_of_many_sheets_are_all_different_whoever_has_them():
    codes = {str(sheet_code(WORK, number, "one")) for number in range(1, 2001)}
    assert 2000 == len(codes)
    marks = {sheet_code(WORK, 1, f"p{number}").of_person for number in range(500)}
    assert len(marks) > 490


@pytest.mark.parametrize("number", [0, -1, MOST_SHEETS + 1])
def test_a_number_that_no_sheet_has_is_refused(number):
    with pytest.raises(SolverError, match="Sheets are numbered 1 to 99,999; you asked for "):
        sheet_code(WORK, number, "ana.r")


def test_the_same_set_and_person_have_the_same_code_on_every_machine():
    assert "SH-1422-017-68672-TCQ" == str(CODE)
