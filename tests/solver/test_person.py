"""Who somebody is: one id however it is typed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from solver import SolverError
from solver.sets.work_set import person_id


@pytest.mark.parametrize(
    ("expected", "text"),
    [
        ("ana.r", "Ana.R"),
        ("ana.r", " ana.r\n"),
        ("ana", "\uff21\uff2e\uff21"),
        ("jos\u00e9", "JOSE\u0301"),
        ("strasse-7", "Stra\u00dfe-7"),
        ("p_017@plant", "P_017@plant"),
        ("иван", "Иван"),
        ("हिन्दी", "हिन्दी"),
        ("7", "7"),
        ("a" * 40, "A" * 40),
    ],
)
def test_an_id_is_trimmed_in_small_letters_and_of_one_form(expected, text):
    assert expected == person_id(text)


@pytest.mark.parametrize(
    "text",
    ["", " ", "a" * 41, "ana r", "ana/r", "..", ".", "../x", "-x", "_x", ".ana", "ana.", "a\\b",
     "a\0b", "a:b", "a\u202eb", "a\u200db", "½", "<b>", "a,b", "*", "\u0301a", "a\nb"],
)  # fmt: skip
def test_what_cannot_be_an_id_is_refused_with_what_to_type(text):
    with pytest.raises(SolverError, match=r"An id has up to 40 letters, digits and \. _ - @, and"):
        person_id(text)


@given(st.text(st.characters(categories=["L", "M", "N", "P"]), min_size=1, max_size=12))
def test_an_id_is_its_own_id(text):
    try:
        found = person_id(text)
    except SolverError:
        return
    assert found == person_id(found) == person_id(f" {text}\n")


def test_every_letter_there_is_gives_an_id_that_stays_the_same():
    for sign in map(chr, range(0x30000)):
        if sign.isalnum():
            try:
                found = person_id(sign)
            except SolverError:
                continue
            assert found == person_id(found), ascii(sign)
