"""A test in a browser that fails is tried again: three browsers on two processors may starve each other.

The second try meets what the first one left. The third has everything made anew, its server and its reader
too, so that a test that changes them can pass.
"""

import pytest
from pytest_rerunfailures import suspended_finalizers

AGAIN = pytest.mark.flaky(reruns=2)
FAILED = pytest.StashKey[bool]()


def pytest_collection_modifyitems(items):
    for item in items:
        if item.get_closest_marker("browser"):
            item.add_marker(AGAIN)


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item, call):
    report = yield
    item.stash[FAILED] = report.failed or (call.when != "setup" and item.stash[FAILED])
    return report


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_teardown(item):
    """After a second failure nothing is kept, nor what the plugin that tries again had put aside."""
    if getattr(item, "execution_count", 0) == 2 and item.stash[FAILED]:
        state = item.session._setupstate
        state.stack.update(suspended_finalizers)
        suspended_finalizers.clear()
        state.teardown_exact(None)
