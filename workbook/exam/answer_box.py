"""The answer box of an exam: its text is sent by Enter, and by every button that leads away."""

from collections.abc import Callable

from workbook.ui.controls import Panel
from workbook.ui.entry import Entry

__all__ = ["AnswerBox"]


class AnswerBox(Entry):
    """`send` gets the text, and what to do once it is taken: None after Enter.

    A click may overtake the text that stands in the box, so the button waits for it as Enter does.
    """

    def __init__(self, panel: Panel, send: Callable[[str, Callable | None], None]):
        super().__init__(panel, "Your answer", self._with_what_follows)
        self._safely, self._told, self._then = panel.safely, send, None

    def _with_what_follows(self, text: str) -> None:
        then, self._then = self._then, None
        self._told(text, then)

    def _message(self, widget, content: dict, buffers) -> None:
        if content.get("event") == "submit":
            self._then = None
        super()._message(widget, content, buffers)

    def before(self, then: Callable | None) -> Callable[[], None]:
        """What a button does: have the text taken, then this."""

        def press() -> None:
            self._then = then
            self.gate.click()

        return self._safely(press)
