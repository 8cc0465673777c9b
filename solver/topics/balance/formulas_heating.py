"""What unbalanced volts do to a motor: the load it may carry, and the heat in its windings."""

from bisect import bisect_left, bisect_right
from collections.abc import Callable
from functools import partial

from solver.algebra.expression import Constant, Figure, Fraction, Known, Lookup, Number
from solver.algebra.formula import Formula, Slip
from solver.topics.tables import derating_factor, table_rows, table_source

__all__ = ["HEATING"]

TIP_SHEET_7 = (
    "US DOE Motor Systems Tip Sheet 7 (DOE/GO-102012-3733): about twice the unbalance squared"
)

RISE_PER_SQUARE = Constant(
    "rise_per_square",
    "2 in the heating rule",
    us=Figure(2, "/ %"),
    si=Figure(2, "/ %"),
    source=TIP_SHEET_7,
)


motor_size, voltage_unbalance = map(Known, ("motor_size", "voltage_unbalance"))
balanced_rise, extra_rise, added_rise = map(Known, ("balanced_rise", "extra_rise", "added_rise"))


def row_beside(unbalance: float, units: str, *, after: bool) -> float:
    """The derating (percent) of the table's row before or after an unbalance (percent).

    Raises:
        IndexError: the table has no row after; nobody makes that mistake there.
    """
    rows = table_rows("derating")
    at = [row["unbalance"] for row in rows]
    where = bisect_right(at, unbalance) if after else max(bisect_left(at, unbalance) - 1, 0)
    return rows[where]["derating"]


def on_the_graph(read: Callable[[float, str], float] = derating_factor) -> Lookup:
    """Percent of nameplate power at the voltage unbalance, read by `read`."""
    graph = "the derating graph read at"
    return Lookup(Known("voltage_unbalance"), read, graph, ("%", "%"), ("%", "%"))


HEATING = (
    Formula(
        "derating",
        on_the_graph(),
        table_source("derating"),
        "Unbalanced volts heat the windings, so the motor can't carry its full rating.",
        slips=(
            Slip(
                "row_before",
                on_the_graph(partial(row_beside, after=False)),
                "You used the point for a smaller unbalance. Read the graph at the unbalance you "
                "have, between two points if you need to.",
            ),
            Slip(
                "row_after",
                on_the_graph(partial(row_beside, after=True)),
                "You used the point for a larger unbalance. Read the graph at the unbalance you "
                "have, between two points if you need to.",
            ),
        ),
    ),
    Formula(
        "derated_power",
        motor_size * Fraction(Known("derating")),
        table_source("derating"),
        "The motor can carry only this percent of its nameplate rating.",
        slips=(
            Slip(
                "unbalance_taken_off",
                motor_size * (Number(1) - Fraction(voltage_unbalance)),
                "You took the percent of unbalance itself off the rating. Read the derating from "
                "the graph: it takes off more.",
            ),
        ),
    ),
    Formula(
        "extra_rise",
        RISE_PER_SQUARE * voltage_unbalance**2,
        TIP_SHEET_7,
        "The extra heat grows with the square of the unbalance, so a little unbalance costs a lot.",
        slips=(
            Slip(
                "two_squared_too",
                (RISE_PER_SQUARE * voltage_unbalance) ** 2,
                "You squared the 2 along with the unbalance. Square the unbalance first, then "
                "multiply by 2.",
            ),
        ),
    ),
    Formula(
        "added_rise",
        balanced_rise * Fraction(extra_rise),
        TIP_SHEET_7,
        "The extra is a percent of the rise on balanced volts.",
    ),
    Formula(
        "unbalanced_rise",
        balanced_rise + added_rise,
        TIP_SHEET_7,
        "The windings get the balanced rise plus the extra, so add the two.",
        slips=(
            Slip(
                "unbalance_added",
                balanced_rise * (Number(1) + Fraction(voltage_unbalance)),
                "You added the percent of unbalance itself. The extra rise is twice its square.",
            ),
        ),
    ),
)
