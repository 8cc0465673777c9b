"""Three legs against their average, and both definitions of unbalance."""

from typing import TYPE_CHECKING

from solver.expression import Known, Percent
from solver.formulas import BALANCE
from solver.show import exact

from .view import Figure, Scale, Slide, Values, View, shown, told, valued, worked

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["LEGS"]

LEGS_NAMED = {"amps_a": "A", "amps_b": "B", "amps_c": "C"}
# Percent of the average. Pump manuals ask for 5 or less (Grundfos SP manual 10.6.3); under 10
# is acceptable by common practice, no source.
IDEAL, MOST = 5, 10


def aside(leg: str, known: Values, units: str) -> float:
    """How far a leg stands from the average, in percent of it; below is negative."""
    average = Known("amps_average")
    return valued(Percent((Known(leg) - average) / average), known, units)


def verdict(unbalance: float) -> str:
    """What the largest deviation asks for."""
    if unbalance <= IDEAL:
        return f"This is within the {IDEAL}% that pump manuals ask for."
    if unbalance <= MOST:
        return f"This is over the {IDEAL}% of pump manuals: find out why."
    return f"This is over {MOST}%: have the motor and its supply looked at."


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
    rows += [("Largest deviation (NEMA MG 1)", deviation, unbalance)]
    rows += [("Highest less lowest (field practice)", distance, spread)]
    says = verdict(known["current_unbalance"])
    headline = f"By largest deviation the unbalance is {unbalance}; by highest less lowest {spread}."
    sides = "; ".join(f"{name.lower()} {amps} {side}".rstrip() for name, amps, side in rows)
    alt = f"Three legs against their average: {sides}. {says}"
    columns = ("Reading", "Amps", "Of the average")
    return View(f"{headline} {says}", alt, columns, tuple(rows), known, units)


def _signed(percent: float) -> str:
    """A deviation with its sign, as it is noted.

    >>> _signed(-8.0), _signed(2.04)
    ('−8%', '+2.04%')
    """
    return f"{percent:+.3g}%".replace("-", "−")


def draw(axes: "Axes", view: View) -> None:
    """A bar for each leg, left or right of the average, with the limits and the spread."""
    known, units = view.known, view.units
    sides = [aside(leg, known, units) for leg in LEGS_NAMED]
    furthest = max(sides, key=abs)
    axes.axvspan(-IDEAL, IDEAL, color="C2", alpha=0.18, linewidth=0)
    for limit in (-MOST, MOST):
        axes.axvline(limit, color="C3", linestyle="--")
    for row, (leg, side) in enumerate(zip(LEGS_NAMED, sides, strict=True)):
        far = side == furthest
        axes.barh(row, side, height=0.44, color="C1" if far else "C0", hatch="////" if far else "")
    axes.axvline(0, color="C0")
    axes.annotate(
        "", (min(sides), 3), (max(sides), 3), arrowprops={"arrowstyle": "<->", "color": "C1"}
    )
    axes.set_yticks(range(3), [f"{letter}  {known[leg]:g} A" for leg, letter in LEGS_NAMED.items()])
    axes.set_ylim(3.5, -0.7)
    reach = max(15, abs(furthest) * 1.15)
    axes.set_xlim(-reach, reach)
    axes.set_xlabel("Percent above or below the average")


AMPS = Scale(20, 80, 0.5, 50)

LEGS = Figure(
    "legs",
    "Three legs against their average",
    tuple(
        Slide(leg, AMPS._replace(start=start), AMPS._replace(start=start))
        for leg, start in (("amps_a", 46.5), ("amps_b", 41.5), ("amps_c", 48))
    ),
    view,
    draw,
    height=2.7,
    systems=("us",),
)
