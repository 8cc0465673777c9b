"""A box for text that is sent by the Enter key or by a button, once, and never by leaving it.

The Enter key arrives before the text it stands under, and a click may overtake the text too. So
what was asked for waits until the text has come, or until it is clear that none will.
"""

import asyncio
import re
from collections.abc import Callable
from typing import Any

from ipywidgets import Text, Textarea

from solver import SolverError

from .controls import AUTO, LABELLED, PAUSE, Panel, classed, marked

__all__ = ["Entry", "Gate", "Paste", "whole_number"]

AFTER_ENTER = 2.5  # seconds in which a changed text follows the key, on a starved computer too
AFTER_CLICK = 0.3  # seconds in which it follows a click
JUST_NOW = 0.1  # seconds before a click in which the text that it sends came


class Gate:
    """Does `action` once for each press, when the texts it needs are there."""

    def __init__(self, panel: Panel, action: Callable[[], None]):
        self._clock = panel.clock
        self._action = action
        self._fresh = False  # a text changed since the action was last done
        self._wanted = 0  # which press is waiting; 0 for none
        self._presses = 0
        self._changed_at = self._done_at = -PAUSE
        self.changed = panel.safely(self._changed)
        self.click = panel.safely(self._click)
        self.enter = panel.safely(lambda: self._wait(AFTER_ENTER))
        self._late = panel.safely(self._no_text_came)

    def _changed(self, _: object = None) -> None:
        self._fresh, self._changed_at = True, self._clock()
        if self._wanted:
            self._do()

    def _click(self) -> None:
        if self._fresh and self._clock() - self._changed_at < JUST_NOW:
            self._do()
        else:
            self._wait(AFTER_CLICK)

    def _wait(self, arrival: float) -> None:
        self._presses += 1
        self._wanted = self._presses
        again = not self._fresh and self._clock() - self._done_at < PAUSE
        try:
            asyncio.get_running_loop().call_later(arrival, self._late, self._wanted, again)
        except RuntimeError:  # no loop runs, so nothing can follow
            self._late(self._wanted, again)

    def _no_text_came(self, press: int, again: bool) -> None:
        """`again` tells the second click of a double click, or a click right after Enter."""
        if press != self._wanted:
            return
        if again:
            self._wanted = 0
        else:
            self._do()

    def _do(self) -> None:
        self._wanted, self._fresh = 0, False
        try:
            self._action()
        finally:
            self._done_at = self._clock()


class Entry:
    """A labelled box. `send` gets its text; `gate` is its own, or one shared by several boxes."""

    def __init__(
        self, panel: Panel, label: str, send: Callable[[str], None], gate: Gate | None = None
    ):
        self.box = Text(description=label, continuous_update=False, style=LABELLED, layout=AUTO)
        classed(self.box, "w2w-field")
        self._send, self._sent = send, ""
        self.gate = gate or Gate(panel, self._press)
        self.box.on_msg(self._message)
        self.box.observe(self.gate.changed, "value")

    def numbers(self, on: bool = True) -> "Entry":
        """Have a telephone show its number keys for this box, which have no letters and no minus."""
        marked(self.box, "w2w-number", on)
        return self

    def _message(self, _: object, content: dict[str, Any], buffers: object) -> None:
        if content.get("event") == "submit":
            self.gate.enter()

    def _press(self) -> None:
        self._sent = self.box.value
        self._send(self._sent)

    @property
    def unsent(self) -> str:
        """What was typed and never sent."""
        return "" if self.box.value == self._sent else self.box.value.strip()

    def fill(self, text: str) -> None:
        """Put a text in the box that nobody typed."""
        self._sent = text
        self.box.unobserve(self.gate.changed, "value")
        self.box.value = text
        self.box.observe(self.gate.changed, "value")


class Paste:
    """A labelled box of several lines, for buttons whose gates wait for its text.

    Into a box of one line, a browser pastes lines run together.
    """

    def __init__(self, label: str, *gates: Gate):
        self.box = Textarea(
            description=label, continuous_update=False, rows=4, style=LABELLED, layout=AUTO
        )
        classed(self.box, "w2w-field")
        self._heard = [gate.changed for gate in gates]
        self._listen()

    def _listen(self) -> None:
        for hear in self._heard:
            self.box.observe(hear, "value")

    def fill(self, text: str) -> None:
        """Put a text in the box that nobody typed."""
        for hear in self._heard:
            self.box.unobserve(hear, "value")
        self.box.value = text
        self._listen()


def whole_number(text: str, what: str, most: int) -> int:
    """A whole number from 1 to `most` that somebody typed.

    >>> whole_number("20 ", "questions", 200)
    20
    >>> whole_number("1.5", "minutes", 600)
    Traceback (most recent call last):
    solver.errors.SolverError: You typed “1.5” for the minutes. Type a whole number from 1 to 600.
    """
    plain = text.strip()
    if not re.fullmatch("[0-9]{1,6}", plain) or not 1 <= int(plain) <= most:
        got = f"You typed “{plain[:40]}” for the {what}."
        got = got if plain else f"The number of {what} is empty."
        raise SolverError(f"{got} Type a whole number from 1 to {most}.")
    return int(plain)
