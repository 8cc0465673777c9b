"""Alignment, grease, wear rings and vibration.

`DRIVES` has every formula of the chapter; those of belts and torque are in `formulas_belts.py`.
"""

from solver.algebra.expression import Constant, Figure, Known, Number, Percent
from solver.algebra.formula import Formula, Slip

from .formulas_belts import BELTS, TURNING

__all__ = ["DRIVES"]

PLAIN = "arithmetic"
GREASE = Constant(
    "grease_rule",
    "grease per bearing area",
    us=Figure(0.114, "oz / in in", also=(0.1138,)),
    si=Figure(0.005, "g / mm mm"),
    source="bearing handbooks, from memory: 0.114 D B in ounces, 0.005 D B in grams",
)

gap_difference, coupling_diameter = Known("gap_difference"), Known("coupling_diameter")
ALIGNING = (
    "rim-and-face alignment, as in makers' alignment instructions; ANSI/ASA S2.75 (from memory)"
)
ALIGNMENT = (
    Formula(
        "parallel_offset",
        Known("rim_reading") / 2,
        ALIGNING,
        "From one side to the other the indicator shows the offset twice, so halve the reading.",
        slips=(
            Slip(
                "whole_reading",
                Known("rim_reading"),
                "You used the whole reading. The shafts are off by half of it.",
            ),
            Slip(
                "doubled",
                Known("rim_reading") * 2,
                "You doubled the reading. It shows the offset twice already, so halve it.",
            ),
        ),
    ),
    Formula(
        "gap_difference",
        Known("wide_gap") - Known("narrow_gap"),
        PLAIN,
        "Only the difference between the gaps shows the angle.",
    ),
    Formula(
        "shim_thickness",
        gap_difference * Known("foot_spacing") / coupling_diameter,
        ALIGNING,
        "The angle at the coupling is the angle at the feet, so scale the gap up.",
        slips=(
            Slip(
                "gap_alone",
                gap_difference,
                "You used the gap difference as the shim. The feet are farther apart than the coupling "
                "is wide, so scale it up.",
            ),
            Slip(
                "upside_down",
                gap_difference * coupling_diameter / Known("foot_spacing"),
                "You put the ratio in upside down. The feet are farther apart, so the shim is thicker "
                "than the gap difference.",
            ),
        ),
    ),
)

bearing = Known("bearing_diameter") * Known("bearing_width")
GREASING = (
    *(
        Formula(
            "grease_amount",
            GREASE * bearing,
            GREASE.source,
            "A bigger bearing takes more grease. The motor's or pump's manual comes before any rule.",
            slips=(
                Slip(
                    "other_rule",
                    Number(other) * bearing,
                    "You used the number of the other rule. Inches take 0.114, and millimeters take 0.005.",
                ),
            ),
            systems=(units,),
        )
        for units, other in (("us", 0.005), ("si", 0.114))
    ),
    Formula(
        "grease_strokes",
        Known("grease_amount") / Known("grease_per_stroke"),
        PLAIN,
        "Divide the grease the bearing takes by what one stroke gives. Weigh ten strokes once to know that.",
    ),
    Formula(
        "hours_since_greased",
        Known("hour_meter") - Known("hour_meter_greased"),
        PLAIN,
        "The hour meter counts run hours only.",
    ),
    Formula(
        "hours_left",
        Known("grease_interval") - Known("hours_since_greased"),
        PLAIN,
        "What is left of the interval is the interval minus the hours already run.",
    ),
    Formula(
        "days_to_grease",
        Known("hours_left") / Known("hours_per_day"),
        PLAIN,
        "Run hours left, divided by run hours per day, gives days on the calendar.",
    ),
    Formula(
        "days_to_grease",
        Known("grease_interval") / Known("hours_per_day"),
        PLAIN,
        "The interval is in run hours. Divide by run hours per day to get days on the calendar.",
        slips=(
            Slip(
                "around_the_clock",
                Known("grease_interval") / 24,
                "You divided by 24, as if it ran around the clock. Divide by the hours it runs per day.",
            ),
        ),
        unless=("hour_meter", "hours_since_greased", "hours_left"),
    ),
)

RINGS = (
    Formula(
        "ring_gap",
        Known("case_ring_bore") - Known("impeller_ring_diameter"),
        "geometry: diametral clearance",
        "The clearance is how much wider the bore is than the ring that turns in it.",
        slips=(
            Slip(
                "one_side",
                (Known("case_ring_bore") - Known("impeller_ring_diameter")) / 2,
                "You halved it. Wear-ring clearance is given on the diameter, both sides together.",
            ),
        ),
    ),
    Formula(
        "ring_wear",
        Percent(Known("ring_gap") / Known("new_ring_gap")),
        PLAIN,
        "Compare the clearance now with the clearance when it was new.",
    ),
)

VIBRATION = (
    Formula(
        "vibration_change",
        Known("bearing_vibration") - Known("earlier_vibration"),
        "ISO 20816-1: the change of a reading at the same point, load and speed",
        "A reading is compared with the one before it, taken at the same point, load and speed.",
    ),
)

DRIVES = (*BELTS, *TURNING, *ALIGNMENT, *GREASING, *RINGS, *VIBRATION)
