"""The clock of an exam: it keeps a sitting going, and stands still by itself when the page is closed."""

from workbook.log import NotKept
from workbook.ui.controls import Panel
from workbook.ui.time_left import TimeLeft

from .sitting import Sitting

__all__ = ["Clock"]

OVER = "Time is up. You can go on: answers from now on are kept and counted separately."


class Clock(TimeLeft):
    """Shows the time of a sitting and keeps it going. `box` stands at the head of the panel."""

    def __init__(self, panel: Panel):
        super().__init__(panel, self._beat, OVER)
        self.sitting: Sitting | None = None

    def begin(self, sitting: Sitting) -> None:
        """The time of this sitting counts from now."""
        self.sitting = sitting
        sitting.go_on()
        self.start(sitting.left)

    def stop(self) -> None:
        """The pulse stops; the sitting is paused or ended by whoever calls this."""
        super().stop()
        self.sitting = None

    def _beat(self) -> None:
        if self.sitting is None:
            return
        fault = ""
        try:
            self.sitting.pulse()
        except NotKept as refusal:
            fault = str(refusal)
        self.show(self.sitting.left, fault)
