"""Many rows in one test, where each is so quick that to tell of it takes longer than to try it."""

import functools
import inspect
from collections.abc import Callable, Sequence

import pytest

__all__ = ["in_one", "try_all"]

FAULTS = (Exception, pytest.fail.Exception)


def try_all(test: Callable, rows: Sequence, called: Callable[[object], str] = str) -> None:
    """Try every row, and tell of all that fail, each with a note that says which it was."""
    assert rows, "there are no rows"
    failed = []
    for row in rows:
        try:
            test(row)
        except FAULTS as fault:
            fault.add_note(f"of {called(row)}")
            failed.append(fault)
    if len(failed) == 1:
        raise failed[0]
    if failed:
        raise BaseExceptionGroup(f"{len(failed)} of {len(rows)} failed", failed)


def in_one(
    names: str, rows: Sequence, called: Callable[[object], str] = str
) -> Callable[[Callable], Callable]:
    """As pytest.mark.parametrize, in a single test: every row is tried, and all that fail are told.

    `called` says in a few words which row it was.
    """
    keys = names.split(", ")

    def tested(test: Callable) -> Callable:
        @functools.wraps(test)
        def over(**fixtures) -> None:
            def of(row) -> None:
                test(**dict(zip(keys, row if len(keys) > 1 else [row], strict=True)), **fixtures)

            try_all(of, rows, called)

        asks = inspect.signature(test).parameters.values()
        left = [one for one in asks if one.name not in keys]
        over.__signature__ = inspect.Signature(left)
        del over.__wrapped__  # whose other arguments are none that pytest knows
        return over

    return tested
