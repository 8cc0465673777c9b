"""Turning to a page in a JupyterLab that is loaded already, as a link in the workbook does.

To load JupyterLab takes seven seconds of a processor, to turn to another page in it two. So a test that
is not about opening turns to its page in a window that the tests of its file share.
"""

import contextlib
import itertools

from tests.conftest import wait_for_page

__all__ = ["Windows", "turn_to"]

WIDTH = 1200
TURNS = itertools.count(1)
# A link is followed only where the address changes, so each has a number. What is loaded anew forgets it.
TURN = """([href, turn]) => {
  window.turned = turn;
  for (const page of document.querySelectorAll('.wtw-page')) page.dataset.left = '';
  const link = document.createElement('a');
  link.href = href;
  document.body.append(link);
  link.click();
  link.remove();
}"""


def turn_to(served, page, name: str, state: str = "ready") -> None:
    """Leave the page shown for another of its workbook, or for the same as new, and wait until it has run."""
    turn = next(TURNS)
    page.evaluate(TURN, [f"{served.url(name)}&turn={turn}", turn])
    wait_for_page(page, state)
    assert turn == page.evaluate("window.turned"), "a link loaded all of JupyterLab"


class Windows:
    """One window for each workbook, in which the tests of a file turn to their pages."""

    def __init__(self, new_page):
        self._new_page, self._opened = new_page, {}
        self._stack = contextlib.ExitStack()

    def show(self, served, name: str, state: str = "ready", height: int = 900):
        """The page as new, light and wide; in a window that is loaded now where there is none."""
        page = self._opened.get(served.base)
        if page:
            self._turn(served, page, name, state, height)
        else:
            page = self._stack.enter_context(self._new_page(height))
            served.open(page, name, state)
            self._opened[served.base] = page
        return page

    def _turn(self, served, page, name, state, height) -> None:
        try:
            page.emulate_media(color_scheme="light")
            page.set_viewport_size({"width": WIDTH, "height": height})
            turn_to(served, page, name, state)
        except Exception:
            self.close()  # the next is loaded
            raise

    def close(self) -> None:
        """Close all, so that what comes next is loaded."""
        self._opened.clear()
        self._stack.close()
