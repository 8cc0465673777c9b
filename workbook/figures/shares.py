"""Shares as bars: one under each name, from none to all."""

from typing import TYPE_CHECKING

from .view import View

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["draw_shares"]


def draw_shares(axes: "Axes", view: View, label: str) -> None:
    """A bar a row under its name, for names are long; the row's second cell is beside or in it.

    `view.known` has the shares by name, 0 to 100; `label` says what they are shares of.
    """
    places = range(len(view.rows))
    axes.barh(places, list(view.known.values()), color="C0", height=0.4)
    for place, (name, said, *_) in zip(places, view.rows, strict=True):
        share = view.known[name]
        inside = share > 50
        axes.text(0, place - 0.24, name, va="bottom")
        axes.annotate(
            said, (share, place), xytext=(-5 if inside else 5, 0), textcoords="offset points",
            ha="right" if inside else "left", va="center", color="white" if inside else None,
        )  # fmt: skip
    axes.set(xlim=(0, 100), ylim=(len(view.rows) - 0.7, -0.75), xlabel=label)
    axes.set_yticks([])
