"""What came of a day, under the button that asked for it: the result, how to keep it, the years, the lesson."""

from collections.abc import Sequence

from ipywidgets import HTML, VBox

from solver.own.record import Examined, examine
from workbook.ui.controls import Panel
from workbook.ui.markup import Markup, joined, tag

from .findings import examined_html
from .keep import Keep
from .lesson_card import LessonPart
from .reading import Pump
from .trends import trends_html

__all__ = ["Outcome"]

MOST_FOLLOWED = 300  # days of one pump that are worked for its trends, the last of the file


class Outcome:
    """The parts that show a day; `years` are all days of its pump, where there are several."""

    def __init__(self, panel: Panel):
        self.examined: Examined | None = None
        self._years: Sequence[Pump] = ()
        self.result, self.trends = HTML(), HTML()
        self.keep, self.lesson = Keep(panel), LessonPart(panel)
        self.box = VBox([self.result, self.keep.box, self.trends, self.lesson.box])

    def show(self, pump: Pump, years: Sequence[Pump] = (), *, said: bool = True) -> Examined:
        """Work a day and show it; with `said`, the notes on its row too."""
        examined = examine(pump.record)
        messages = pump.messages if said else ()
        self.examined, self.result.value = examined, examined_html(examined, messages)
        self.keep.show(pump, examined, years)
        self.lesson.show(examined)
        if years is not self._years:
            self._years, self.trends.value = years, _over_the_years(years)
        return examined


def _over_the_years(years: Sequence[Pump]) -> Markup:
    if not years:
        return Markup()
    followed = [examine(one.record) for one in years[-MOST_FOLLOWED:]]
    return joined(tag("h4", "Over the years"), trends_html(followed))
