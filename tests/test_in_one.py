"""Many rows in one test: each is tried, and each that fails is told by its name."""

import pytest

from .in_one import in_one


@in_one("number, other", [(1, 1), (2, 3), (4, 4), (5, 6)], lambda row: f"row {row[0]}")
def same(number, other, fixture):
    assert number == other, fixture


def test_every_row_is_tried_and_all_that_fail_are_told():
    with pytest.raises(BaseExceptionGroup, match="2 of 4 failed") as told:
        same(fixture="kept")
    assert [["of row 2"], ["of row 5"]] == [fault.__notes__ for fault in told.value.exceptions]


def test_no_rows_are_no_test_that_passes():
    with pytest.raises(AssertionError, match="there are no rows"):
        in_one("row", [])(print)()
