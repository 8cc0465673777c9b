"""Small parts that every panel uses: a button pressed once, lists and boxes to choose from, a region that speaks.

ipywidgets shows nothing when a callback fails, and runs it once for each click of a double click.
JupyterLab may hand clicks and texts to two threads at once. All that is dealt with here.
"""

from collections.abc import Callable, Iterable, Mapping
from threading import RLock
from time import monotonic
from typing import Any, TypeVar

from ipywidgets import HTML, Box, Button, Checkbox, Dropdown, Layout, VBox, Widget

from . import left
from .markup import Markup, tag
from .pieces import css, say

__all__ = [
    "AUTO",
    "LABELLED",
    "PAUSE",
    "UNIT_CHOICES",
    "Chooser",
    "Fold",
    "Panel",
    "Tick",
    "button",
    "chooser",
    "classed",
    "group_of_ticks",
    "link",
    "marked",
    "opens",
    "row",
    "show",
    "tick",
]

UNIT_CHOICES = [("US units", "us"), ("Metric units", "si")]

PAUSE = 0.35  # seconds; the second click of a double click comes sooner, a second thought later
START = "If nothing here responds, choose Run and then Run All Cells."
AUTO = {"width": "auto"}
LABELLED = {"description_width": "initial"}

Part = TypeVar("Part", bound=Widget)


def classed(widget: Part, *names: str) -> Part:
    """The widget, with these names for look.css."""
    for name in names:
        widget.add_class(name)
    return widget


def row(look: str, *parts: Widget) -> Box:
    """Parts beside each other, under a name for look.css."""
    return classed(Box(parts), look)


def marked(part: Widget, name: str, on: object) -> None:
    """Give a part a name for look.css, or take it away."""
    (part.add_class if on else part.remove_class)(name)


def show(part: Widget, shown: object = True) -> None:
    """Show a part of a panel, or take it out of sight; the one way to do so."""
    part.layout.display = "" if shown else "none"


def button(text: str, action: Callable[[], None], *, first: bool = False) -> Button:
    """A button that does `action` at each click. `first` marks the one used most."""
    made = Button(description=text, layout=AUTO)
    made.on_click(lambda _: action())
    return classed(made, "w2w-button", *["w2w-first"] * first)


def link(text: str, action: Callable[[], None]) -> Button:
    """A button that looks like a link: for what is seldom asked for."""
    return classed(button(text, action), "w2w-link")


def opens(button: Part, opened: object) -> Part:
    """The button that opens a part, which now is open or not: page.js has a screen reader say so."""
    marked(classed(button, "w2w-opens"), "w2w-opened", opened)
    return button


class Fold:
    """A part that opens under a quiet button of that name, and closes again."""

    def __init__(self, panel: "Panel", name: str, part: Widget):
        self.name, self.part, self.open = name, part, False
        self.button = opens(link(name, panel.once(self.toggle)), False)
        show(part, False)

    def toggle(self) -> None:
        """Open it, or close it."""
        self.open = not self.open
        self.button.description = f"Close: {self.name.lower()}" if self.open else self.name
        opens(self.button, self.open)
        show(self.part, self.open)


class _Chosen(Widget):
    """Mixed into a control: `action` hears of what somebody chooses, and not of what is put there."""

    value: Any
    options: Any

    def hear(self, action: Callable[[Any], object]) -> None:
        """Tell `action` each value chosen."""
        self._action = lambda change: action(change["new"])
        self.observe(self._action, "value")

    def put(self, value: object, options: Iterable[tuple[str, object]] | None = None) -> None:
        """Set it to a value, of other options where those are given, and tell nobody."""
        self.unobserve(self._action, "value")
        try:
            if options is not None:
                self.options = tuple(options)
            self.value = value
        finally:
            self.observe(self._action, "value")


class Chooser(_Chosen, Dropdown):
    """A list to choose one from."""


class Tick(_Chosen, Checkbox):
    """A box to check."""


def chooser(
    label: str,
    options: Iterable[tuple[str, Any] | str],
    action: Callable[[Any], object] = lambda _: None,
    value: object = None,
) -> Chooser:
    """A list to choose one from, at first `value` or the first; `action` gets the value chosen."""
    made = Chooser(description=label, options=options, style=LABELLED, layout=AUTO)
    made.value = made.value if value is None else value
    made.hear(action)
    return classed(made, "w2w-field")


def tick(label: str, on: bool, action: Callable[[bool], object]) -> Tick:
    """A box to check, with its label."""
    made = Tick(value=on, description=label, indent=False, layout=AUTO)
    made.hear(action)
    return classed(made, "w2w-tick")


def group_of_ticks(label: str, boxes: Mapping[Any, Widget], *classes: str) -> VBox:
    """Boxes to check under a heading."""
    head = HTML(tag("p", label, cls="w2w-want"))
    return VBox([head, classed(Box(list(boxes.values())), "w2w-ticks", *classes)])


class Panel(VBox):
    """What a cell shows: parts under each other, a region `said` for what happened.

    Where the page has stopped, the browser shows no widget; the line under it says what to do.
    """

    def __init__(self, *names: str, clock: Callable[[], float] = monotonic):
        super().__init__()
        self.said = HTML(say(""))
        self.clock = clock
        self._one_at_a_time = RLock()
        classed(self, "w2w-panel", *names)

    def put(self, *parts: Widget) -> None:
        """Show these parts, in the look of the workbook; a page of ours has that already."""
        look = [] if left.is_watched() else [HTML(css(), layout=Layout(display="none"))]
        self.children = (*look, *parts)

    def safely(self, action: Callable[..., object]) -> Callable[..., None]:
        """The same action; should it fail, one sentence says so."""

        def run(*args: Any) -> None:
            try:
                with self._one_at_a_time:
                    action(*args)
            except Exception as error:
                what = f"{type(error).__name__}: {error}"[:200]
                self.said.value = say(
                    "fault",
                    f"This panel ran into something it can't handle ({what}).",
                    "What you typed is kept. Choose something else, or start the page again.",
                )

        return run

    def once(self, action: Callable[[], object]) -> Callable[[], None]:
        """The action for a click; a click right after the last was done is a double click."""
        done = -PAUSE

        def run() -> None:
            nonlocal done
            if self.clock() - done >= PAUSE:
                action()
            done = self.clock()

        return self.safely(run)

    def plain(self) -> dict[str, str]:
        """What a page that can show no widgets has in its place, by its kind."""
        return {"text/plain": START}

    def _ipython_display_(self) -> None:
        from IPython.display import display

        shown = {**super()._repr_mimebundle_(), **self.plain()}
        display(shown, raw=True)
        display({"text/html": _start_line(), "text/plain": START}, raw=True)


def _start_line() -> Markup:
    small = tag("small", START)
    return tag("p", small, cls="w2w-start", style="color: var(--jp-ui-font-color1, #444)")
