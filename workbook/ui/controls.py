"""Small parts that every panel uses: a button pressed once, a list, a region that speaks.

ipywidgets shows nothing when a callback fails, and runs it once for each click of a double click.
JupyterLab may hand clicks and texts to two threads at once. All that is dealt with here.
"""

from collections.abc import Callable
from html import escape
from threading import RLock
from time import monotonic

from ipywidgets import HTML, Button, Dropdown, Layout, VBox, Widget

from .saying import heard, say
from .shown import css

__all__ = [
    "AUTO",
    "LABELLED",
    "PAUSE",
    "SYSTEMS",
    "Panel",
    "button",
    "chooser",
    "classed",
    "heard",
    "say",
]

SYSTEMS = [("US units", "us"), ("Metric units", "si")]

PAUSE = 0.35  # seconds; the second click of a double click comes sooner, a second thought later
START = (
    "If nothing here responds, choose Start this page again at the top, "
    "or Run and then Run All Cells."
)
AUTO = {"width": "auto"}
LABELLED = {"description_width": "initial"}


def classed(widget: Widget, *names: str) -> Widget:
    """The widget, with these names for look.css."""
    for name in names:
        widget.add_class(name)
    return widget


def button(text: str, action: Callable[[], None], *, first: bool = False) -> Button:
    """A button that does `action` at each click. `first` marks the one used most."""
    made = Button(description=text, layout=AUTO)
    made.on_click(lambda _: action())
    return classed(made, "w2w-button", *["w2w-first"] * first)


def chooser(
    label: str, options: list, action: Callable[[object], None], value: object = None
) -> Dropdown:
    """A list to choose one from, at first `value` or the first; `action` gets the value chosen."""
    made = Dropdown(description=label, options=options, style=LABELLED, layout=AUTO)
    made.value = made.value if value is None else value
    made.observe(lambda change: action(change["new"]), "value")
    return classed(made, "w2w-field")


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
        """Show these parts, in the look of the workbook."""
        self.children = (HTML(css(), layout=Layout(display="none")), *parts)

    def safely(self, action: Callable) -> Callable:
        """The same action; should it fail, one sentence says so."""

        def run(*args) -> None:
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

    def once(self, action: Callable[[], None]) -> Callable[[], None]:
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
        line = (
            f'<p style="color: var(--jp-ui-font-color1, #444)"><small>{escape(START)}</small></p>'
        )
        display({"text/html": line, "text/plain": START}, raw=True)
