"""Static lift and head, the suction side, and the air pressure that pushes water to a pump."""

from collections.abc import Callable

from solver.algebra.expression import Constant, Figure, Known, Lookup
from solver.algebra.formula import Formula, Slip
from solver.errors import NotSolvable
from solver.topics.constants import HEAD_PER_PRESSURE
from solver.topics.tables import between_rows, table_rows, table_source

__all__ = ["HEAD_PER_VACUUM", "STATIC", "SUCTION"]

HEAD_PER_VACUUM = Constant(
    "head_per_vacuum",
    "head per unit of vacuum",
    us=Figure(1.133, "ft / inHg", also=(1.13, 1.134, 1.135), exact=1.133433),
    si=HEAD_PER_PRESSURE.si,
    source="NIST SP 811 App. B (3386.389 Pa per inch of mercury); 1.133 in common practice",
)

ATMOSPHERE = table_source("atmosphere_us")
LEVELS = "common practice, no source: static head is the difference of the two water levels"
CENTERLINE = "common practice, no source: lifts and heads are measured from the pump's centerline"
HI = "common practice of NPSH, as in the Hydraulic Institute's standards (from memory)"

discharge_elevation, suction_elevation = map(Known, ("discharge_elevation", "suction_elevation"))
discharge, lift, flooded = map(
    Known, ("static_discharge_head", "suction_lift", "static_suction_head")
)
atmosphere, vapor, loss = map(Known, ("atmospheric_head", "vapor_head", "suction_loss"))
available, required, margin = map(Known, ("npsh_available", "npsh_required", "npsh_margin"))

STATIC = (
    Formula(
        "static_head",
        discharge_elevation - suction_elevation,
        LEVELS,
        "Only the two water levels count, whatever route the pipe takes between them.",
        slips=(
            Slip(
                "elevation_for_head",
                discharge_elevation,
                "You used the discharge elevation alone. Subtract the elevation of the water you pump "
                "from.",
            ),
        ),
    ),
    Formula(
        "static_head",
        discharge + lift,
        CENTERLINE,
        "The water is below the pump, so the pump lifts it that far too.",
        slips=(
            Slip(
                "lift_taken_away",
                discharge - lift,
                "You subtracted the suction lift. Water below the pump has to be lifted up to it: add.",
            ),
            Slip(
                "lift_left_out",
                discharge,
                "You left out the static suction lift. The pump lifts the water that far too: add it.",
            ),
        ),
        turns=("static_discharge_head",),
    ),
    Formula(
        "static_head",
        discharge - flooded,
        CENTERLINE,
        "The water is above the pump, so its height helps the pump.",
        slips=(
            Slip(
                "suction_head_left_out",
                discharge,
                "You left out the static suction head. Water above the pump helps it: subtract it.",
            ),
        ),
        turns=("static_discharge_head",),
    ),
)


def thinner(altitude: float, units: str) -> float:
    """Head of the atmosphere (ft | m) at an altitude (ft | m), between rows by a line.

    Raises:
        NotSolvable: the altitude is outside the table.

    >>> round(thinner(1500, "us"), 2)
    32.1
    """
    name = f"atmosphere_{units}"
    head = between_rows(name, "altitude", "head", altitude)
    if head is None:
        raise NotSolvable(
            f"the altitude table goes from 0 to {table_rows(name)[-1]['altitude']:,.0f}, and "
            f"{altitude:,.0f} is outside it: give the barometric pressure instead"
        )
    return head


def sea_level(altitude: float, units: str) -> float:
    """Head of the atmosphere (ft | m) at sea level, whatever the altitude: a usual mistake."""
    return thinner(0, units)


def at_altitude(read: Callable[[float, str], float] = thinner) -> Lookup:
    """The head of the atmosphere at the altitude, read by `read`."""
    return Lookup(Known("altitude"), read, "the standard atmosphere at", ("ft", "m"), ("ft", "m"))


AIR = "Air pressure on the water is all that pushes it up to the pump."
TWICE = "Every loss before the pump leaves less pressure to keep the water from boiling."

SUCTION = (
    Formula(
        "dynamic_suction_lift",
        Known("suction_vacuum") * HEAD_PER_VACUUM,
        HEAD_PER_VACUUM.source,
        "The vacuum at the pump shows the whole lift: the height plus the losses in the suction pipe.",
        unless=("suction_gauge_height",),
    ),
    Formula(
        "dynamic_suction_lift",
        Known("suction_vacuum") * HEAD_PER_VACUUM - Known("suction_gauge_height"),
        CENTERLINE,
        "A gauge above the pump shows more vacuum than there is at the pump. "
        "If the gauge line holds air, use the height of the tap on the pipe.",
        turns=("suction_vacuum",),
    ),
    Formula(
        "dynamic_suction_lift",
        lift + loss,
        CENTERLINE,
        "While water flows, the loss in the suction pipe adds to the lift.",
        slips=(
            Slip(
                "loss_left_out",
                lift,
                "You left out the loss in the suction pipe. While water flows it adds to the lift.",
            ),
            Slip(
                "loss_taken_away",
                lift - loss,
                "You subtracted the loss in the suction pipe. It comes on top of the lift: add it.",
            ),
        ),
    ),
    Formula(
        "atmospheric_head",
        at_altitude(),
        ATMOSPHERE,
        "The higher you are, the thinner the air, and the less it pushes on the water.",
        slips=(
            Slip(
                "at_sea_level",
                at_altitude(sea_level),
                "You used the air pressure at sea level. Higher up, the air is thinner and pushes less.",
            ),
        ),
    ),
    Formula(
        "npsh_available",
        atmosphere - vapor - lift - loss,
        HI,
        f"{AIR} {TWICE}",
        unless=("static_suction_head",),
        turns=(),
    ),
    Formula(
        "npsh_available",
        atmosphere + flooded - vapor - loss,
        HI,
        f"Water above the pump helps the air push. {TWICE}",
        slips=(
            Slip(
                "head_taken_away",
                atmosphere - flooded - vapor - loss,
                "You subtracted the static suction head. Water above the pump helps: add it.",
            ),
        ),
        unless=("suction_lift",),
        turns=(),
    ),
    Formula(
        "npsh_available",
        atmosphere - vapor - Known("dynamic_suction_lift"),
        HI,
        f"{AIR} The vacuum reading already includes the lift and the losses.",
        slips=(
            Slip(
                "vapor_left_out",
                atmosphere - Known("dynamic_suction_lift"),
                "You left out the vapor pressure. Water starts to boil before its pressure is down to "
                "zero.",
            ),
        ),
        unless=("static_suction_head", "suction_lift"),
        turns=(),
    ),
    Formula(
        "npsh_usable",
        available - margin,
        HI,
        "The margin covers warm days, low levels and a dirty suction strainer.",
        turns=(),
    ),
    Formula(
        "greatest_lift",
        atmosphere - vapor - loss - required - margin,
        HI,
        "The pump needs its NPSHr and a margin at its inlet. What is left of the air pressure can "
        "lift the water.",
        slips=(
            Slip(
                "margin_left_out",
                atmosphere - vapor - loss - required,
                "You left out the margin. Without it, a warm day or a low level makes the pump "
                "cavitate.",
            ),
            Slip(
                "required_left_out",
                atmosphere - vapor - loss - margin,
                "You left out the NPSHr. The pump needs that much at its inlet.",
            ),
        ),
        turns=(),
    ),
)
