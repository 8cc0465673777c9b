"""Whatever is handed in is marked: nothing raises, nothing odd earns more, all of it can be kept."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from solver.topics.catalogue import CATALOGUE
from tests.workbook.trainer.sheets import line, mistaken, right, sheet, wrong
from workbook.log import Attempt
from workbook.trainer.coming_in.handed_in import plain_answers
from workbook.trainer.learner.answer_sheet import read_sheet
from workbook.trainer.marking.feedback import comment_of, feedback_html
from workbook.trainer.marking.marked import mark
from workbook.trainer.sets.set_file import parse_set_file

ANA, BEN = "ana.r", "ben"
TEXT = """
draw = 48216
chapters = ["horsepower", "machine"]
count = 4
points = 10
tries = 5
numbers = "the same for all"
credit.each_try = 0.1
"""
WEEK = parse_set_file(
    TEXT, "week-3", CATALOGUE
)  # the same numbers: so a line of another could do harm
HONEST = sheet(
    *(line(WEEK, ANA, at, answer, tries)
      for at in range(1, 5) for tries, answer in enumerate((mistaken, right), 1))
)  # fmt: skip
EARNED = mark(WEEK, ANA, HONEST, None).points
WORDS = st.text(max_size=30)  # lone surrogates too
VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | WORDS | st.just(10**400),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(WORDS, inner, max_size=3),
    max_leaves=6,
)
LINES = st.builds(
    lambda at, answer, changed: line(WEEK, ANA, at, answer)._asdict() | changed,
    st.integers(1, 4),
    st.sampled_from([right, mistaken]) | WORDS,
    st.dictionaries(st.sampled_from(Attempt._fields), VALUES, max_size=2),
)
SHEETS = st.lists(LINES, max_size=6).map(
    lambda lines: "\n".join(json.dumps({"v": 1, **each}) for each in lines).encode()
)


def checked(data, notebook=None):
    """The marks, which are the same each time, within bounds, and can be written anywhere."""
    found = mark(WEEK, ANA, data, notebook)
    assert found == mark(WEEK, ANA, data, notebook)
    assert [1, 2, 3, 4] == [each.number for each in found.questions]
    for each in found.questions:
        assert 0 <= each.points <= each.out_of == 10
        assert each.needs_person <= bool(each.reason)
        said = each.typed + each.reason + each.says + comment_of(each) + feedback_html(each)
        assert "\x00" not in said
        assert len(said.encode()) < 100_000
    assert found.needs_person <= bool(found.reason)
    assert len(found.reason) < 3000
    return found


@given(st.binary(max_size=400), st.binary(max_size=400))
def test_any_bytes(data, notebook):
    assert 0 == checked(data, notebook).points


@given(SHEETS)
def test_lines_with_anything_in_any_field(data):
    checked(data)


@given(st.integers(0, len(HONEST)))
def test_a_sheet_that_ends_anywhere_never_earns_more_and_says_where_it_is_torn(end):
    found = checked(HONEST[:end])
    assert found.points <= EARNED
    at_an_end = HONEST[:end].endswith((b"\n", b"}")) or not end
    assert (not at_an_end) == any("part of it is missing" in each for each in reasons(found))


def reasons(found):
    return [found.reason, *(each.reason for each in found.questions)]


@given(st.integers(0, len(HONEST) - 1), st.binary(max_size=3), st.integers(0, 3))
def test_a_sheet_changed_anywhere_is_marked(at, put_in, left_out):
    checked(HONEST[:at] + put_in + HONEST[at + left_out :])


@given(st.data())
def test_lines_in_any_order_any_number_of_times_give_the_same_marks(data):
    lines = HONEST.splitlines()
    more = data.draw(st.lists(st.sampled_from(lines), max_size=8))
    shuffled = data.draw(st.permutations(lines + more))
    assert mark(WEEK, ANA, HONEST, None) == mark(WEEK, ANA, b"\n".join(shuffled), None)


@given(SHEETS)
def test_nothing_of_anothers_sheet_earns_a_point(data):
    lines = [json.loads(each) | {"who": BEN} for each in data.splitlines()]
    found = checked("\n".join(map(json.dumps, lines)).encode())
    assert 0 == found.points


@given(SHEETS, st.integers(1, 4))
def test_more_lines_never_raise_what_the_last_try_within_the_limit_earns(data, at):
    used_up = [line(WEEK, ANA, at, wrong_or_first, n) for n in range(1, 6)]
    later = [
        json.dumps({"v": 1, **json.loads(each), "when": f"2027-01-01T00:00:{n:02}Z"}).encode()
        for n, each in enumerate(data.splitlines())
    ]
    found = checked(sheet(*used_up, *later))
    assert 0 == found.questions[at - 1].points


def wrong_or_first(case):
    """An answer that earns nothing."""
    return "0" if case.choices else wrong(case)


@pytest.mark.parametrize(
    "data",
    [
        b"\x00" * 10_000,
        b"[" * 100_000,
        b'{"a":' * 3_000,
        b"\xef\xbb\xbf" + b"\n" * 9,
        b'"\\ud800"\n' * 1_000,
        b"9" * 19_000 + b"\n",
        b"\n" * 100_000,
        b"x\n" * 100_000,
        b"PK\x03\x04" + bytes(range(256)) * 40,
    ],
    ids=lambda data: repr(data[:12]),
)
def test_what_is_no_sheet_earns_nothing(data):
    assert 0 == checked(data).points


def test_a_sheet_saved_with_a_mark_of_order_and_windows_ends_is_read():
    windows = b"\xef\xbb\xbf" + HONEST.replace(b"\n", b"\r\n")
    assert mark(WEEK, ANA, HONEST, None) == mark(WEEK, ANA, windows, None)


def test_a_sheet_saved_in_other_letters_is_looked_at_and_earns_no_more():
    found = checked(HONEST.decode().encode("utf-16"))
    assert found.needs_person
    assert found.points <= EARNED


def test_a_hundred_thousand_lines_are_marked_by_those_at_the_beginning():
    others = [line(WEEK, ANA, 1, right, n, id=f"{n}", who=BEN) for n in range(100)]
    found = checked(HONEST + sheet(*others) * 1_000)
    assert (EARNED, True) == (found.points, found.needs_person)


@given(VALUES, st.integers() | st.booleans() | WORDS)
def test_a_notebook_with_anything_in_it_gives_no_answer_or_words(value, number):
    cell = {"cell_type": "markdown", "metadata": {"wire_to_water": {"answer": number}}}
    for page in (
        value,
        {"cells": value},
        {"cells": [value, {**cell, "source": value}, {"metadata": value}]},
        {"cells": [{**cell, "source": ["Answer: 7", value]}, {**cell, "metadata": value}]},
    ):
        found = plain_answers(json.dumps(page).encode())
        assert all(type(at) is int and text for at, text in found.items())
        checked(None, json.dumps(page).encode())


@pytest.mark.parametrize("data", [None, b"", b"{", b"[" * 100_000, b"\xff", b'{"cells": 7}', b"7"])
def test_what_is_no_notebook_has_no_answers(data):
    assert {} == plain_answers(data)


def test_reading_a_sheet_keeps_the_order_of_the_file():
    lines = [line(WEEK, ANA, at, right) for at in (3, 1, 2)]
    assert tuple(lines) == read_sheet(sheet(*lines)).lines
