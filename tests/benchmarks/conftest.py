"""Benchmarks run only when asked for, and end with one small table of rates and ratios."""

import pytest


def pytest_ignore_collect(collection_path, config):
    """Leave the benchmarks out of an ordinary run."""
    return None if config.getoption("benchmark_enable") else True


@pytest.fixture(scope="session")
def table(request) -> dict[str, str]:
    """What was measured, by name; printed when the run ends."""
    request.config.stash[_TABLE] = {}
    return request.config.stash[_TABLE]


def pytest_terminal_summary(terminalreporter, config):
    """Print what was measured."""
    rows = config.stash.get(_TABLE, {})
    if rows:
        terminalreporter.section("rates and ratios")
        width = max(map(len, rows))
        for name, shown in rows.items():
            terminalreporter.line(f"{name:{width}}  {shown}")


_TABLE: pytest.StashKey[dict[str, str]] = pytest.StashKey()
