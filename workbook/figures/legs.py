"""Three legs against their average, and both methods of unbalance."""

from typing import TYPE_CHECKING

from solver.algebra.expression import Known, Percent
from solver.topics.formulas import BALANCE
from solver.units.show import exact

from .view import Figure, Scale, Slide, Values, View, shown, told, valued, worked

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["LEGS"]

LEGS_NAMED = {"amps_a": "A", "amps_b": "B", "amps_c": "C"}
# Percent of the average. Pump makers' manuals ask for 5 or less; under 10 is acceptable by
# common practice, no source.
IDEAL, MOST = 5, 10


def aside(leg: str, known: Values, units: str) -> float:
    """How far a leg stands from the average, in percent of it; below is negative."""
    average = Known("amps_average")
    return valued(Percent((Known(leg) - average) / average), known, units)


def verdict(unbalance: float) -> str:
    """What the largest deviation asks for."""
    unbalance = round(unbalance, 6)  # 5 comes out as 5.000000000000001
    if unbalance <= IDEAL:
        return f"This is within the {IDEAL}% that pump makers' manuals ask for."
    if unbalance <= MOST:
        return f"This is over the {IDEAL}% that pump makers' manuals ask for: find out why."
    return f"This is over {MOST}%: have a qualified person look at it."


def view(values: Values, units: str) -> View:
    """The three legs, their average and the two unbalances."""
    known = worked(values, "current_unbalance", BALANCE, units)
    known |= worked(known, "current_spread", BALANCE, units)
    rows = [
        (f"Leg {letter}", told(known[leg], leg, units, exact), _signed(aside(leg, known, units)))
        for leg, letter in LEGS_NAMED.items()
    ]
    rows += [("Average", shown(known, "amps_average", units), "")]
    deviation, unbalance = (shown(known, n, units) for n in ("amps_deviation", "current_unbalance"))
    distance, spread = (shown(known, n, units) for n in ("amps_range", "current_spread"))
    rows += [("Largest deviation (NEMA MG 1 method)", deviation, unbalance)]
    rows += [("Highest minus lowest (field practice)", distance, spread)]
    says = verdict(known["current_unbalance"])
    headline = (
        f"By largest deviation the unbalance is {unbalance}. "
        f"By highest minus lowest it is {spread}."
    )
    sides = "; ".join(" ".join(row).rstrip() for row in rows)
    alt = f"Bars of three legs against their average. {sides}. {says}"
    columns = ("Reading", "Amps", "From the average")
    return View(f"{headline} {says}", alt, columns, tuple(rows), known, units)


def _signed(percent: float) -> str:
    """A deviation with its sign, as it is noted.

    >>> _signed(-8.0), _signed(2.0431)
    ('−8%', '+2.043%')
    """
    return f"{percent:+.4g}%".replace("-", "−").replace("+0%", "0%")


def draw(axes: "Axes", view: View) -> None:
    """A bar for each leg from the average outward; below them, the span from lowest to highest."""
    sides = [aside(leg, view.known, view.units) for leg in LEGS_NAMED]
    furthest = max(map(abs, sides))
    counts = [abs(side) == furthest > 0 for side in sides]
    axes.axvspan(-IDEAL, IDEAL, color="C2", alpha=0.25, linewidth=0)
    for limit in (-MOST, MOST):
        axes.axvline(limit, color="C3", linestyle="--")
    for row, (side, far) in enumerate(zip(sides, counts, strict=True)):
        axes.barh(row, side, height=0.5, color="C1" if far else "C0", hatch="////" if far else "")
    axes.axvline(0, color="C0")
    span = {"arrowstyle": "<->", "color": "C1", "shrinkA": 0, "shrinkB": 0, "linewidth": 2}
    axes.annotate("", (min(sides), 3), (max(sides), 3), arrowprops=span)
    reach = max(12, furthest * 1.08)
    axes.set(xlim=(-reach, reach), ylim=(3.6, -0.6))
    if reach < 3 * MOST:
        axes.set_xticks((-MOST, -IDEAL, 0, IDEAL, MOST))
    axes.set_xlabel(f"Percent of the average\nBand: within {IDEAL}%. Dashes: {MOST}%.")
    _note_beside(axes, view, counts)


def _note_beside(axes: "Axes", view: View, far: list[bool]) -> None:
    """The amps on the left and the percentages on the right; those that count are bold."""
    *legs, _, _, spread = view.rows
    left = [f"{name[-1]}  {amps}" for name, amps, _ in legs] + ["high − low"]
    right = [side for _, _, side in legs] + [spread[2]]
    axes.set_yticks(range(4), left)
    beside = axes.secondary_yaxis("right")
    beside.set_yticks(range(4), right)
    beside.spines["right"].set_visible(False)
    for text, bold in zip(beside.get_yticklabels(), [*far, True], strict=True):
        text.set_fontweight("bold" if bold else "normal")


AMPS = Scale(20, 80, 0.5, 50)

LEGS = Figure(
    "legs",
    "Three legs against their average",
    tuple(
        Slide(leg, AMPS._replace(start=start), label=f"Leg {LEGS_NAMED[leg]}, amps")
        for leg, start in (("amps_a", 46.5), ("amps_b", 41.5), ("amps_c", 48))
    ),
    view,
    draw,
    height=3.0,
    systems=("us",),
)
