"""A clock that counts down: the time left, shown or hidden, and a calm word near its end.

The browser itself sends a pulse each second, through a player that nobody sees. No screen reader is
told each second; it hears the two sentences, and finds the time where it is.
"""

from collections.abc import Callable

from ipywidgets import HTML, Play

from .controls import Panel, button, row, show
from .markup import tag
from .pieces import say

__all__ = ["TimeLeft", "duration"]

SOON = 5 * 60  # seconds left when it is said
NEARLY = "Less than 5 minutes are left."
HIDE, SHOW = "Hide the clock", "Show the clock"
DAY = 86_400


def duration(seconds: float) -> str:
    """A time in minutes and seconds.

    >>> duration(2480.7), duration(42)
    ('41 min 20 s', '42 s')
    """
    minutes, rest = divmod(int(seconds), 60)
    return f"{minutes} min {rest} s" if minutes else f"{rest} s"


class TimeLeft:
    """Shows the seconds left and says when they run out; `beat` hears each pulse, and shows them anew.

    `box` has the time and the button that hides it; `calm` is where it speaks. `over` is said at the end.
    """

    def __init__(self, panel: Panel, beat: Callable[[], None], over: str):
        self._over, self._left = over, 0.0
        self.time, self.calm = HTML(), HTML(say(""))
        self.hide = button(HIDE, panel.once(self._toggle))
        self.pulse = Play(interval=1000, max=DAY, repeat=True)
        show(self.pulse, False)
        self.pulse.observe(panel.safely(lambda _: beat()), "value")
        self.box = row("w2w-clock", self.time, self.hide, self.pulse)
        self.stage = ""

    def start(self, left: float) -> None:
        """Nothing is said yet; the pulse goes from now on."""
        self.stage, self.calm.value = "", say("")
        self.pulse.playing = True
        self.show(left)

    def stop(self) -> None:
        """The pulse stops."""
        self.pulse.playing = False

    def show(self, left: float, fault: str = "") -> None:
        """So many seconds are left, below zero when the time is over; a fault is said in its place."""
        self._left = left
        hidden = self.hide.description == SHOW
        late = f"{duration(-left)} over the time"
        text = "The clock is hidden." if hidden else late if left < 0 else f"{duration(left)} left"
        self.time.value = tag("p", text, cls="w2w-time")
        stage = "over" if left <= 0 else "soon" if left < SOON else ""
        said = {"": "", "soon": NEARLY, "over": self._over}[stage]
        if fault:
            self.calm.value, self.stage = say("fault", fault), "fault"
        elif stage != self.stage:
            self.calm.value, self.stage = say("note", said) if said else say(""), stage

    def _toggle(self) -> None:
        self.hide.description = SHOW if self.hide.description == HIDE else HIDE
        self.show(self._left)
