"""Shares of the chapters: honest counts, a line of text, and the code that opens the same exam later."""

import re
from collections import Counter
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from solver.errors import BadCode, SolverError
from solver.render.paper import paper_json, paper_text
from solver.sets.paper import CHAPTERS, Paper, checked, read_paper
from solver.sets.paper_questions import cases_of, counts_by_chapter
from solver.sets.shares import counts_of, read_shares, shares_text
from solver.sets.work_set import cases_for, plan_of, read_set, set_of

LINE = "head 30, wet well 20, order 10"
PAPER = Paper(("head", "wet_well", "order"), 2, "us", 25, 60, True, 4821, shares=(30, 20, 10))


@given(st.integers(1, 200), st.lists(st.integers(1, 99), min_size=1, max_size=19))
def test_the_counts_come_to_the_whole_and_none_is_a_question_off_what_is_due(total, shares):
    counts = counts_of(total, shares)
    assert total == sum(counts)
    due = [Fraction(total * share, sum(shares)) for share in shares]
    assert all(abs(count - exact) < 1 for count, exact in zip(counts, due, strict=True))
    # Whoever got one of those left over had no less missing than whoever did not.
    more = [exact % 1 for count, exact in zip(counts, due, strict=True) if count > exact]
    less = [exact % 1 for count, exact in zip(counts, due, strict=True) if count < exact]
    assert not (more and less) or min(more) >= max(less)


def test_a_paper_has_as_many_of_each_chapter_as_its_shares_say():
    # 25 × 30/60 = 12.5, 25 × 20/60 = 8.33, 25 × 10/60 = 4.17: the one left over goes to head.
    wanted = {"head": 13, "wet_well": 8, "order": 4}
    assert wanted == counts_by_chapter(PAPER)
    assert wanted == Counter(case.family.chapter for case in cases_of(PAPER))
    assert wanted == paper_json(PAPER)["questions_by_chapter"]
    assert f"Shares: {LINE}" in paper_text(PAPER)


def test_the_code_has_the_mixture_and_opens_the_same_exam():
    assert "-S302010-" in PAPER.code
    again = read_paper(PAPER.code.lower().replace("-", " "))
    assert PAPER == again
    assert [case.code for case in cases_of(PAPER)] == [case.code for case in cases_of(again)]
    wrong = PAPER.code.replace("S302010", "S312010")
    with pytest.raises(BadCode, match="wrong character"):
        read_paper(wrong)


def test_a_paper_without_shares_has_the_code_it_always_had():
    plain = Paper(("horsepower", "head"), 2, "us", 20, 60, True, 48213, 2)
    assert "EXAM-33-2U-20-60-C-2-48213-TJK" == plain.code
    assert () == read_paper(plain.code).shares


@pytest.mark.parametrize("shares", [(30, 20), (30, 20, 0), (30, 20, 100)])
def test_shares_that_cannot_be_are_refused(shares):
    with pytest.raises(SolverError, match="Give each chapter a share from 1 to 99"):
        checked(replace(PAPER, shares=shares))


@pytest.mark.parametrize(
    "text",
    [LINE, "Head: 30%\nwet_well = 20 ;Order 10.", LINE.upper()],
)
def test_a_line_is_read_however_it_is_parted(text):
    assert {"head": 30, "wet_well": 20, "order": 10} == read_shares(text)


def test_other_names_of_a_chapter_may_have_commas_and_a_number():
    called = {"Drives, belts and bearings": "drives"}
    assert {"head": 5, "drives": 7} == read_shares(
        "21. Drives, belts and bearings: 7, head 5", called
    )


@given(st.dictionaries(st.sampled_from(CHAPTERS), st.integers(1, 99), min_size=1))
def test_what_is_written_is_read_again(shares):
    assert shares == read_shares(shares_text(shares))


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "There are no shares here. Write them like this: head 30, wet well 20."),
        ("head", "“head” isn't a chapter and its share."),
        ("haed 3", "There is no chapter “haed”. Did you mean “head”?"),
        ("head 3, Head 4", "“Head” is there twice. Write one share for it."),
        ("head 0", "The share of “head” is 0. Write a whole number from 1 to 99"),
        ("head 100", "The share of “head” is 100. Write a whole number from 1 to 99"),
    ],
)
def test_what_cannot_be_read_is_refused_with_what_to_write(text, says):
    with pytest.raises(SolverError, match=re.escape(says)):
        read_shares(text)


def test_a_set_has_as_many_of_each_chapter_as_its_shares_say_and_so_has_its_code():
    work = set_of(shares={"wet_well": 20, "head": 30, "order": 10}, count=12, seed=5)
    asked = Counter(asked.kind.chapter for asked in plan_of(work))
    assert {"head": 6, "wet_well": 4, "order": 2} == asked
    assert work == read_set(work.code)
    assert cases_for(work, "ana.r") == cases_for(read_set(work.code), "ana.r")


@pytest.mark.parametrize(
    "chosen",
    [
        {"shares": {"head": 0}},
        {"shares": {"head": 100}},
        {"shares": {"head": 5}, "families": ["brake_power"]},
        {"shares": {"head": 5}, "chapters": ["head", "speed"]},
        {"shares": {"head": 5, "speed": 3}, "chapters": ["head"]},
        {"shares": {"head": 5}, "catalogue": 1},
    ],
)
def test_shares_of_a_set_that_cannot_be_are_refused(chosen):
    with pytest.raises(SolverError):
        set_of(**chosen)
