"""Three legs against their average, and both methods of unbalance."""

from solver.algebra.expression import Known, Percent
from solver.topics.formulas import BALANCE
from solver.units.show import exact

from .chart import BLUE, GREEN, ORANGE, PINK, Axis, Bar, Chart, Line, Note
from .view import Figure, Scale, Slide, Values, View, shown, told, valued, worked

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


def draw(view: View) -> tuple[Chart, ...]:
    """A bar for each leg from the average outward; below them, the span from lowest to highest."""
    sides = [aside(leg, view.known, view.units) for leg in LEGS_NAMED]
    furthest = max(map(abs, sides))
    reach = max(12, furthest * 1.08)
    limits = [(at, f"{at:g}".replace("-", "−")) for at in (-MOST, -IDEAL, 0, IDEAL, MOST)]
    across = Axis(
        -reach, reach, f"Percent of the average\nBand: within {IDEAL}%. Dashes: {MOST}%.",
        limits if reach < 3 * MOST else None,
    )  # fmt: skip
    *legs, _, _, spread = view.rows
    left = [f"{name[-1]}  {amps}" for name, amps, _ in legs] + ["high − low"]
    right = [side for _, _, side in legs] + [spread[2]]
    chart = Chart(across, Axis(3.6, -0.6, ticks=list(enumerate(left))), 150, right=94)
    chart.put(Bar(-IDEAL, -0.6, 2 * IDEAL, 4.2, GREEN, faint=True))
    chart.put(*(Line([(at, -0.6), (at, 3.6)], PINK, dashed=True) for at in (-MOST, MOST)))
    far = [abs(side) == furthest > 0 for side in sides]
    for row, (side, counts) in enumerate(zip(sides, far, strict=True)):
        chart.put(Bar(0, row - 0.25, side, 0.5, ORANGE if counts else BLUE, hatched=counts))
    chart.put(Line([(0, -0.6), (0, 3.6)], BLUE))
    chart.put(Line([(min(sides), 3), (max(sides), 3)], ORANGE, width=3))
    chart.put(*(Line([(at, 2.8), (at, 3.2)], ORANGE, width=3) for at in (min(sides), max(sides))))
    for row, (text, bold) in enumerate(zip(right, [*far, True], strict=True)):
        chart.put(Note(reach, row, text, bold=bold, dx=8, dy=5))
    return (chart,)


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
    systems=("us",),
)
