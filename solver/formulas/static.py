"""Static lift and head, the suction side, and the air that pushes water up to a pump."""

from ..expression import Known
from ..formula import Formula, Slip
from .atmosphere import ATMOSPHERE, at_altitude, sea_level
from .head_factors import HEAD_PER_VACUUM

__all__ = ["STATIC", "SUCTION"]

LEVELS = "common practice, no source: static head is the difference of the two water levels"
CENTRE = "common practice, no source: lifts and heads are measured from the pump's centerline"
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
        "Only the levels of the water count, whatever way the pipe takes between them.",
        slips=(
            Slip(
                "elevation_for_head",
                discharge_elevation,
                "This is the elevation of the discharge. Take away that of the water pumped from.",
            ),
        ),
    ),
    Formula(
        "static_head",
        discharge + lift,
        CENTRE,
        "The water stands below the pump, so the pump lifts it that height too.",
        slips=(
            Slip(
                "lift_taken_away",
                discharge - lift,
                "The lift is taken away. Water below the pump must be lifted up to it: add.",
            ),
            Slip("lift_left_out", discharge, "Left out: the static suction lift."),
        ),
        turns=("static_discharge_head",),
    ),
    Formula(
        "static_head",
        discharge - flooded,
        CENTRE,
        "The water stands above the pump and helps it by that height.",
        slips=(Slip("suction_head_left_out", discharge, "Left out: the static suction head."),),
        turns=("static_discharge_head",),
    ),
)


AIR = "The air on the water is all that pushes it up to the pump."
TWICE = "Every loss before the pump leaves less to keep the water from boiling in it."

SUCTION = (
    Formula(
        "dynamic_suction_lift",
        Known("suction_vacuum") * HEAD_PER_VACUUM,
        HEAD_PER_VACUUM.source,
        "A vacuum at the pump is the height that it draws the water up, losses included.",
        unless=("suction_gauge_height",),
    ),
    Formula(
        "dynamic_suction_lift",
        Known("suction_vacuum") * HEAD_PER_VACUUM - Known("suction_gauge_height"),
        CENTRE,
        "A gauge above the pump shows more vacuum than the pump has. "
        "Where its line holds air, the height is that of its tapping.",
        turns=("suction_vacuum",),
    ),
    Formula(
        "dynamic_suction_lift",
        lift + loss,
        CENTRE,
        "While water flows, the suction pipe adds its loss to the lift.",
        slips=(
            Slip("loss_left_out", lift, "Left out: the loss in the suction pipe."),
            Slip(
                "loss_taken_away",
                lift - loss,
                "The loss is taken away. It comes on top of the lift: add.",
            ),
        ),
    ),
    Formula(
        "atmospheric_head",
        at_altitude(),
        ATMOSPHERE,
        "Higher up the air is thinner, and pushes the water less far.",
        slips=(
            Slip(
                "at_sea_level",
                at_altitude(sea_level),
                "This is the air at sea level. Higher up it is thinner.",
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
        f"Water above the pump helps the air to push. {TWICE}",
        slips=(
            Slip(
                "head_taken_away",
                atmosphere - flooded - vapor - loss,
                "The suction head is taken away. Water above the pump helps: add it.",
            ),
        ),
        unless=("suction_lift",),
        turns=(),
    ),
    Formula(
        "npsh_available",
        atmosphere - vapor - Known("dynamic_suction_lift"),
        HI,
        f"{AIR} The vacuum at the pump shows lift and losses together.",
        slips=(
            Slip(
                "vapor_left_out",
                atmosphere - Known("dynamic_suction_lift"),
                "Left out: the vapor head. Water boils before the pressure is gone.",
            ),
        ),
        unless=("static_suction_head", "suction_lift"),
        turns=(),
    ),
    Formula(
        "npsh_usable",
        available - margin,
        HI,
        "The margin is kept for warm days, low levels and a foul suction.",
        turns=(),
    ),
    Formula(
        "greatest_lift",
        atmosphere - vapor - loss - required - margin,
        HI,
        "What the pump itself needs, and a margin, must be left of the air's push.",
        slips=(
            Slip(
                "margin_left_out",
                atmosphere - vapor - loss - required,
                "Left out: the margin. Without it any warm day or low level cavitates the pump.",
            ),
            Slip(
                "required_left_out",
                atmosphere - vapor - loss - margin,
                "Left out: the NPSH that the pump requires.",
            ),
        ),
        turns=(),
    ),
)
