"""What an answer earns."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from solver import Verdict, draw, grade
from solver.sets.credit import Credit, share_of

CREDIT = Credit(
    right=1.0, close=0.8, mistake=0.5, by_mistake={"brake_power.left_out.x": 0.25}, each_try=0.1
)


def verdict(status, mistake=None):
    return Verdict(status, "", mistake)


@pytest.mark.parametrize(
    ("share", "status", "mistake"),
    [
        (1.0, "right", None),
        (0.8, "close", None),
        (0.5, "mistake", "water_power.added"),
        (0.25, "mistake", "brake_power.left_out.x"),
        (0.0, "wrong", None),
        (0.0, "unreadable", None),
    ],
)
def test_a_first_try_earns_the_share_of_its_verdict(share, status, mistake):
    assert share == share_of(CREDIT, verdict(status, mistake), 1)


@pytest.mark.parametrize(("share", "tries"), [(1.0, 1), (0.9, 2), (0.7, 4), (0.0, 11), (0.0, 999)])
def test_each_earlier_try_takes_its_part_off_and_never_more_than_all(share, tries):
    assert share == share_of(CREDIT, verdict("right"), tries)


def test_without_a_part_for_tries_the_last_of_many_earns_as_much_as_the_first():
    assert 1.0 == share_of(Credit(), verdict("right"), 50)


def test_a_mistake_that_is_not_named_in_the_credit_earns_what_mistakes_do():
    case = draw("brake_power", 7, level=2)
    for mistake in case.mistakes:
        found = grade(case, f"{mistake.value:.6g} hp")
        named = Credit(by_mistake={mistake.id: 0.9})
        assert 0.9 == share_of(named, found, 1)
        assert 0.5 == share_of(Credit(by_mistake={"another": 0.9}), found, 1)


@given(
    st.builds(Credit, *[st.floats(-5, 5)] * 3, st.just({"m": 3.0}), st.floats(0, 9)),
    st.sampled_from(["right", "close", "mistake", "wrong", "unreadable", "new"]),
    st.integers(-3, 99),
)
def test_a_share_is_never_below_nothing_nor_above_all(credit, status, tries):
    assert 0 <= share_of(credit, verdict(status, "m"), tries) <= 1


@given(st.sampled_from(["right", "close", "mistake"]), st.integers(1, 20), st.floats(0, 1))
def test_a_later_try_never_earns_more(status, tries, each_try):
    credit = CREDIT._replace(each_try=each_try)
    earlier, later = (share_of(credit, verdict(status), at) for at in (tries, tries + 1))
    assert later <= earlier
