"""Shares as bars, each under its name, for names are long."""

from .chart import BLUE, INK, Axis, Bar, Chart, Note
from .view import View

__all__ = ["shares"]

ROW = 46.0  # px: a name and its bar
WIDEST = 50  # percent: a longer bar has its number inside


def shares(view: View, label: str) -> tuple[Chart]:
    """A bar a row under its name; the row's second cell is beside or in it.

    `view.known` has the shares by name, 0 to 100; `label` says what they are shares of.
    """
    chart = Chart(Axis(0, 100, label), Axis(len(view.rows), 0, ticks=()), ROW * len(view.rows))
    for row, (name, said, *_) in enumerate(view.rows):
        share = view.known[name]
        inside = share > WIDEST
        chart.put(
            Bar(0, row + 0.5, share, 0.4, BLUE),
            Note(0, row + 0.5, name, dy=-5),
            Note(
                share, row + 0.7, said, "end" if inside else "start",
                dx=-7 if inside else 7, dy=6, color="#fff" if inside else INK,
            ),
        )  # fmt: skip
    return (chart,)
