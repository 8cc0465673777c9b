"""The place for an answer: a box, rows to choose from or to put in order, and the button that Enter presses.

answer.js, with order.js for rows in order, shows it and tells what is typed, letter by letter, and each press with the text it sends.
"""

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

from anywidget import AnyWidget
from traitlets import Dict, Float, Int, Unicode, observe

from .controls import PAUSE, Panel

__all__ = ["NEXT", "Answer"]

NEXT = "Next"
SCRIPT = "".join(
    Path(__file__).with_name(name).read_text(encoding="utf-8") for name in ("order.js", "answer.js")
)
MOST = 1000  # letters of an answer; no number has so many


class Answer(AnyWidget):
    """What is asked, what was typed, and `send`, which gets the text at each press.

    `value` is the text as it stands; of choices, the number of the chosen one; of steps in order, their letters. Whoever shows a new
    question calls `ask`, which takes the place of what was typed. `checks` is what the main button
    says until `lead_on` makes it lead to what comes next; with another text typed, it checks again.

    `handled` counts the presses of which the outcome is shown. The browser leaves out the second press of
    a double click by its own clock; one that was made before an outcome was seen is known by the count.
    """

    _esm = Unicode(SCRIPT).tag(sync=True)
    _onward: Callable[[], object] | None = None
    asked = Dict().tag(sync=True)
    main = Unicode().tag(sync=True)
    focus_asked = Int(0).tag(sync=True)
    handled = Int(0).tag(sync=True)
    pause = Float(1000 * PAUSE).tag(sync=True)  # ms
    value = Unicode()

    def __init__(self, panel: Panel, send: Callable[[str], object], checks: str = "Check"):
        super().__init__()
        self._sends, self._checks, self._count = send, checks, 0
        self.press = panel.safely(self._press)
        self.on_msg(panel.safely(self._heard))
        self.add_class("w2w-answer")
        self.ask("Your answer")

    def ask(
        self,
        label: str,
        choices: Sequence[str] = (),
        number: bool = True,
        text: str = "",
        ordered: bool = False,
    ) -> None:
        """Ask anew, with this text in place. `number`: a telephone shows its number keys.

        `ordered`: the choices are steps to put in order.
        """
        self._count += 1  # the same question again is a new one
        asked = {"label": label, "choices": list(choices), "number": number, "text": text}
        asked["ordered"] = ordered
        self.value = self._sent = text
        self.lead_on(None)
        self.asked = {**asked, "count": self._count}

    def fill(self, text: str) -> None:
        """Put a text in place that nobody typed."""
        asked = self.asked
        self.ask(asked["label"], asked["choices"], asked["number"], text, asked["ordered"])

    def lead_on(self, onward: Callable[[], object] | None) -> None:
        """Let the main button do this from now on, or check again."""
        self._onward = onward
        self.main = NEXT if onward else self._checks

    def focus(self) -> None:
        """The keyboard leads here."""
        self.focus_asked += 1

    def told(self) -> None:
        """What became of the answer has been said: it comes into sight."""
        self.send({"kind": "told"})

    @property
    def unsent(self) -> str:
        """What was typed and never sent."""
        return "" if self.value == self._sent else self.value.strip()

    def take(self) -> str:
        """The text as it stands, which counts as sent from now on."""
        self._sent = self.value
        return self._sent

    def _press(self) -> None:
        try:
            if self._onward:
                self._onward()
            else:
                self._sends(self.take())
        finally:
            self.handled += 1

    @observe("value")
    def _changed(self, _: object) -> None:
        if self._onward and self.value != self._sent:
            self.lead_on(None)

    def _heard(self, _: object, content: dict[str, Any], buffers: object) -> None:
        """A letter was typed, or the main button pressed, on the question of that count."""
        if content.get("count") != self._count:
            return
        self.value = str(content.get("text", ""))[:MOST]
        if content.get("kind") == "press" and not self._is_early(content):
            self.press()

    def _is_early(self, content: dict[str, Any]) -> bool:
        """Whether it was pressed before the outcome of the press before could be seen.

        So a second press on Check, when it already says Next, is meant for Check.
        """
        if self._onward:
            return content.get("main") != NEXT
        return self.value == self._sent and content.get("handled") != self.handled
