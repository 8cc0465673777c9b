"""The pictures of a class report, each with the same numbers as a table."""

from collections.abc import Sequence
from functools import partial
from typing import TYPE_CHECKING

from workbook.figures import Figure, View, draw_shares

from .facts import BINS, ClassFacts, Question

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["Pictured", "hardest_picture", "percent", "spread_picture"]

Pictured = tuple[Figure, View]
PEOPLE_TICKS = 5


def percent(share: float) -> str:
    """A share as a whole percentage; only all is 100%, and only nothing is 0%.

    >>> percent(0.666), percent(0.999), percent(0.001)
    ('67%', '99%', '1%')
    """
    whole = round(100 * share)
    if 0 < share < 1:
        whole = min(max(whole, 1), 99)
    return f"{whole}%"


def _pictured(name: str, view: View, draw, height: float) -> Pictured:
    return Figure(name, view.headline, (), lambda values, units: view, draw, height), view


def spread_picture(told: ClassFacts) -> Pictured:
    """How many people have how much of the points, a tenth at a time."""
    names = [_tenth(at) for at in range(BINS)]
    rows = tuple((name, str(many)) for name, many in zip(names, told.spread, strict=True))
    known = dict(zip(names, told.spread, strict=True))
    said = "; ".join(f"{name} of the points: {counted_people(int(many))}" for name, many in rows)
    alt = f"How many people got what percent of the points. {said}."
    view = View("How the points are spread out", alt, ("Points", "People"), rows, known, "")
    return _pictured("class-spread", view, _draw_spread, 2.8)


def _tenth(at: int) -> str:
    """A tenth of the points as a label; the last one holds all of them too."""
    low, high = 100 * at // BINS, 100 * (at + 1) // BINS
    return f"{low} to {high}%" if at == BINS - 1 else f"{low} to under {high}%"


def counted_people(many: int) -> str:
    """A number of people.

    >>> counted_people(1), counted_people(1200)
    ('1 person', '1,200 people')
    """
    return "1 person" if many == 1 else f"{many:,} people"


def _draw_spread(axes: "Axes", view: View) -> None:
    """A bar for each tenth, with its number above it."""
    counts = list(view.known.values())
    most = max(*counts, 1)
    axes.bar(range(BINS), counts, width=0.92, align="edge", color="C0")
    for at, many in enumerate(counts):
        if many:
            axes.text(at + 0.46, many, f"{many:,.0f}", ha="center", va="bottom")
    axes.set(xlim=(0, BINS), ylim=(0, 1.14 * most), xlabel="Points, %", ylabel="People")
    axes.set_xticks(range(0, BINS + 1, 2), [str(100 * at // BINS) for at in range(0, BINS + 1, 2)])
    axes.locator_params(axis="y", nbins=PEOPLE_TICKS, integer=True, min_n_ticks=1)


def hardest_picture(hardest: Sequence[Question]) -> Pictured:
    """The share of the points in each of these questions, the hardest first."""
    rows = tuple(
        (
            f"{one.number}. {one.family.title}",
            percent(one.share),
            str(one.missed),
            str(one.counts["blank"]),
        )
        for one in hardest
    )
    known = {row[0]: 100 * one.share for row, one in zip(rows, hardest, strict=True)}
    said = "; ".join(f"question {name}: {share}" for name, share, *_ in rows)
    alt = f"The share of the points that the class has in its hardest questions. {said}."
    columns = ("Question", "Of the points", "Wrong answers", "Blank")
    view = View("The hardest questions", alt, columns, rows, known, "")
    draw = partial(draw_shares, label="Of the points, %")
    return _pictured("class-hardest", view, draw, 0.8 + 0.5 * len(rows))
