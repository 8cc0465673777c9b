"""What the formulas of the wet well share: units in units, and a volume over a flow in minutes."""

from solver.algebra.expression import Constant, Expr, Figure
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import NONE

__all__ = [
    "CENTIMETRES_PER_METRE",
    "GALLONS_PER_CUBIC_FOOT",
    "INCHES_PER_FOOT",
    "LITRES_PER_CUBIC_METRE",
    "MINUTES_PER_HOUR",
    "SECONDS_PER_MINUTE",
    "both",
    "minutes",
]

GALLONS_PER_CUBIC_FOOT = Constant(
    "gallons_per_cubic_foot",
    "gallons per cubic foot",
    us=Figure(7.48, "gal / ft3", also=(7.4805, 7.481, 7.5), exact=7.480519),
    si=NONE,
    source="NIST SP 811 App. B (a cubic foot is 7.480519 gallons)",
)
INCHES_PER_FOOT = Constant(
    "inches_per_foot",
    "inches per foot",
    us=Figure(12, "in / ft", exact=12.0),
    si=NONE,
    source="definition of the foot",
)
CENTIMETRES_PER_METRE = Constant(
    "centimetres_per_metre",
    "centimeters per meter",
    us=NONE,
    si=Figure(100, "cm / m", exact=100.0),
    source="definition of the centimeter",
)
LITRES_PER_CUBIC_METRE = Constant(
    "litres_per_cubic_metre",
    "liters per cubic meter",
    us=NONE,
    si=Figure(1000, "L / m3", exact=1000.0),
    source="definition of the liter",
)
SECONDS_PER_MINUTE = Constant(
    "seconds_per_minute",
    "seconds per minute",
    us=Figure(60, "s / min", exact=60.0),
    si=Figure(60, "s / min", exact=60.0),
    source="definition of the minute",
)
MINUTES_PER_HOUR = Constant(
    "minutes_per_hour",
    "minutes per hour",
    us=Figure(60, "min / h", exact=60.0),
    si=Figure(60, "min / h", exact=60.0),
    source="definition of the hour",
)


def both(result: str, us: Expr, si: Expr, source: str, why: str, **more) -> tuple[Formula, Formula]:
    """One rule in gallons and gpm, and in cubic metres and litres a second."""
    return (
        Formula(result, us, source, why, systems=("us",), **more),
        Formula(result, si, source, why, systems=("si",), **more),
    )


def minutes(
    result: str, volume: Expr, rate: Expr, source: str, why: str, **more
) -> tuple[Formula, Formula]:
    """A volume over a flow, in minutes."""
    multiplied = Slip(
        "multiplied",
        volume * rate,
        "You multiplied volume by flow. Time is volume divided by flow.",
    )
    more = {**more, "slips": (multiplied, *more.get("slips", ()))}
    si = volume * LITRES_PER_CUBIC_METRE / rate / SECONDS_PER_MINUTE
    return both(result, volume / rate, si, source, why, **more)
