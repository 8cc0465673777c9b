"""The clock of an exam: the time left, shown or hidden, and a calm word near its end.

The browser itself sends a pulse each second, through a player that nobody sees. So the time stands
still by itself when the page is closed. No screen reader is told each second; it hears the two
sentences, and finds the time where it stands.
"""

from ipywidgets import HTML, Play

from workbook.log import NotKept
from workbook.ui.controls import Panel, button, row, show
from workbook.ui.markup import tag
from workbook.ui.pieces import say

from .earlier import duration
from .sitting import Sitting

__all__ = ["Clock"]

SOON = 5 * 60  # seconds left when it is said
HIDE, SHOW = "Hide the clock", "Show the clock"
SENTENCES: dict[str, tuple[str, ...]] = {
    "": (),
    "soon": ("note", "Less than 5 minutes are left."),
    "over": (
        "note",
        "Time is up. You can go on: answers from now on are kept and counted separately.",
    ),
}
DAY = 86_400


class Clock:
    """Shows the time of a sitting and keeps it going. `box` stands at the head of the panel."""

    def __init__(self, panel: Panel):
        self.sitting: Sitting | None = None
        self.time, self.calm = HTML(), HTML(say(""))
        self.hide = button(HIDE, panel.once(self._toggle))
        self.pulse = Play(interval=1000, max=DAY, repeat=True)
        show(self.pulse, False)
        self.pulse.observe(panel.safely(self._beat), "value")
        self.box = row("w2w-clock", self.time, self.hide, self.pulse)
        self.stage = ""

    def start(self, sitting: Sitting) -> None:
        """The time of this sitting counts from now."""
        self.sitting, self.stage = sitting, ""
        self.calm.value = say("")
        sitting.go_on()
        self.pulse.playing = True
        self._show(sitting)

    def stop(self) -> None:
        """The pulse stops; the sitting is paused or ended by whoever calls this."""
        self.pulse.playing = False
        self.sitting = None

    def _beat(self, _: object) -> None:
        if self.sitting is None:
            return
        fault = ""
        try:
            self.sitting.pulse()
        except NotKept as refusal:
            fault = str(refusal)
        self._show(self.sitting, fault)

    def _toggle(self) -> None:
        self.hide.description = SHOW if self.hide.description == HIDE else HIDE
        if self.sitting:
            self._show(self.sitting)

    def _show(self, sitting: Sitting, fault: str = "") -> None:
        left = sitting.left
        hidden = self.hide.description == SHOW
        late = f"{duration(-left)} over the time"
        text = "The clock is hidden." if hidden else late if left < 0 else f"{duration(left)} left"
        self.time.value = tag("p", text, cls="w2w-time")
        stage = "over" if left <= 0 else "soon" if left < SOON else ""
        if fault:
            self.calm.value, self.stage = say("fault", fault), "fault"
        elif stage != self.stage:
            self.calm.value, self.stage = say(*SENTENCES[stage] or ("",)), stage
