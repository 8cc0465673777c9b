"""Pages that tests turn to in a JupyterLab that is loaded already."""

import pytest

from tests.workbook.turning import Windows


@pytest.fixture(scope="module")
def windows(new_page):
    """The windows that the tests of a module share."""
    windows = Windows(new_page)
    yield windows
    windows.close()


@pytest.fixture
def show(request, windows):
    """A function that shows a page of a workbook as new: `show(served, name)`.

    A test that is tried again gets a window that is loaded anew, whatever its first try left.
    """
    if getattr(request.node, "execution_count", 1) > 1:
        windows.close()
    return windows.show
