"""A page that is left takes its widgets along, and no others."""

from types import SimpleNamespace

import ipywidgets
import pytest

from workbook.ui import left
from workbook.ui.controls import Panel


@pytest.fixture
def asked_by(monkeypatch):
    """A function that says which page asks for what comes next."""
    monkeypatch.setattr(left, "_made", {})
    monkeypatch.setattr(left, "_watched", set())
    told = {}
    kernel = SimpleNamespace(get_parent=lambda: told)
    monkeypatch.setattr(left, "get_ipython", lambda: SimpleNamespace(kernel=kernel))
    before = ipywidgets.Widget._widget_construction_callback
    left.watch()
    yield lambda page: told.update(header={"session": page})
    ipywidgets.Widget.on_widget_constructed(before)


def open_of(*widgets):
    return [widget.comm is not None for widget in widgets]


def test_only_the_widgets_of_the_page_that_is_left_are_closed(asked_by):
    asked_by("one")
    mine = ipywidgets.Text()
    asked_by("two")
    other = ipywidgets.Text()
    asked_by("one")
    later = ipywidgets.HTML()  # as a click on that page makes it
    left.close("one")
    assert [False, True, False] == open_of(mine, other, later)
    assert not left._made.get("one")


def test_the_look_comes_with_a_page_of_ours_and_else_with_each_panel(asked_by):
    def has_look():
        panel = Panel()
        panel.put(ipywidgets.HTML("here"))
        return any("w2w-panel" in part.value for part in panel.children)

    asked_by("one")
    assert has_look()
    left.watch()
    assert not has_look()
    asked_by("another view")
    assert has_look()


def test_where_nobody_can_tell_the_page_a_widget_goes_with_any_page(asked_by):
    widget = ipywidgets.Text()
    left.close("one")
    assert [False] == open_of(widget)
