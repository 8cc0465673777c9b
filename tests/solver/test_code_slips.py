"""Slips in codes of every kind, and what a code looks like."""

import pytest

from solver.engine.code import check_letters, dashed
from tests.benchmarks.code_edits import KINDS, counts

CODES = 40  # of each kind; `python -m tests.benchmarks.code_edits` tries 5,000


@pytest.mark.parametrize("kind", KINDS)
def test_a_replaced_sign_or_two_swapped_never_give_another_code_and_other_slips_seldom(kind):
    found = counts(kind, CODES)
    assert [0, 0] == [found[slip][1] for slip in ("replaced", "swapped")]
    tried, bad = (
        sum(found[slip][n] for slip in ("dropped", "doubled", "inserted")) for n in (0, 1)
    )
    assert tried > 3000
    assert bad <= 2  # one in twelve thousand is to be expected


def test_check_letters_have_none_that_looks_like_a_digit():
    letters = {sign for n in range(5000) for sign in check_letters(f"WP-1U1-{n}")}
    assert not letters & set("OIL")
    assert 23 == len(letters)


def test_each_space_or_dash_is_one_hyphen_so_that_none_can_hide_a_lost_digit():
    assert "A-B--C" == dashed("a b--c")
    assert "A-B" == dashed("a - b") == dashed("a – b")
