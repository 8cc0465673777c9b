"""The figures to explore: each has sliders, a picture, and a table with the same numbers."""

from ipywidgets import Widget

from . import absorption, column, cost, cycle, legs, lift, losses, slowing, triangle
from .frame import Explorer

__all__ = ["FIGURES", "show"]

FIGURES = {
    figure.name: figure
    for figure in (
        losses.LOSSES,
        legs.LEGS,
        cost.COST,
        column.COLUMN,
        lift.LIFT,
        triangle.TRIANGLE,
        slowing.SLOWING,
        absorption.ABSORPTION,
        cycle.CYCLE,
    )
}


def show(name: str) -> Widget:
    """The figure called `name`, ready to be moved.

    Raises:
        ValueError: no figure has this name.

    >>> show("legs").alt[:31]
    'Bars of three legs against thei'
    """
    if name not in FIGURES:
        raise ValueError(f"No figure is called {name!r}; there are: {', '.join(FIGURES)}.")
    return Explorer(FIGURES[name])
